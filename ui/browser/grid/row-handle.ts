// What the grid knows of a row: its slot in the workbook and its id, nothing else; every text is asked of the workbook when it
// is drawn. The empty row at a sheet's end, in which a new row begins, has a slot and an id that no row has.

import type { RowAt } from '../store/selection.ts';

export type RowHandle = RowAt;

export const SPARE: RowHandle = { slot: -1, id: ' new row' };

export function isSpare({ slot }: RowHandle): boolean {
  return slot === SPARE.slot;
}
