// What the grid knows of a row: its slot in the workbook, nothing else; every text is asked of the workbook when it is
// drawn. The empty row at a sheet's end, in which a new row begins, has the slot SPARE.

export interface RowHandle {
  readonly slot: number;
}

export const SPARE = -1;
