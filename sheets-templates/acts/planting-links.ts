// The columns of a person's own sheets in which plantings are named. Apart from what is done with their rows, for the page asks it before
// any act is fetched.

import type { ColumnView, SheetView } from '../../engine/index.ts';

/** Of a sheet that is a person's own and whose rows are typed; none of any other. */
export function plantingLinks({ own, entered, columns }: SheetView): readonly ColumnView[] {
  return own && entered ? columns.filter(({ type }) => type?.kind === 'link' && type.table === 'plantings') : [];
}
