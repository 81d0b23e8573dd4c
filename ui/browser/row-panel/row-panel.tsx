// The panel beside the grid for the row in hand. The page mounts it in its right column and in the drawer.

import { selection, workbook } from '../state.ts';

/** The row in hand by its name. */
export function RowPanel() {
  const { table, row } = selection.value;
  if (row === undefined) return null;
  return <h2>{workbook().rowName(table, row)}</h2>;
}
