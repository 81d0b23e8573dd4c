// What the grid knows of a row: its slot in the workbook and its id, nothing else; every text is asked of the workbook when it
// is drawn. The empty row in which a new one begins, and the heads of groups, have slots and ids that no row has.

import type { RowGroup } from '../../../engine/index.ts';
import type { RowAt } from '../store/selection.ts';

export interface RowHandle extends RowAt {
  /** The rows that stand under this head; absent for a row. */
  readonly group?: RowGroup;
  /** The head's rows are folded away. */
  readonly folded?: boolean;
}

const SPARE_SLOT = -1;
const HEAD_SLOT = -2;

export const SPARE: RowHandle = { slot: SPARE_SLOT, id: ' new row' };

export function headOf(group: RowGroup, folded: boolean): RowHandle {
  return { slot: HEAD_SLOT, id: ` group ${group.key}`, group, folded };
}

/** The empty row. */
export function isSpare({ slot }: RowHandle): boolean {
  return slot === SPARE_SLOT;
}

/** The head of a group. */
export function isHead({ slot }: RowHandle): boolean {
  return slot === HEAD_SLOT;
}

/** A row of the sheet. */
export function isRow({ slot }: RowHandle): boolean {
  return slot >= 0;
}
