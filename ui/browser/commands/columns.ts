// What a person can do to columns of their own besides typing. The table of commands calls it.

import { type ColumnView, message } from '../../../engine/index.ts';
import { change, UNDO } from '../store/change.ts';
import { tell } from '../store/notices.ts';

/** Takes a column out; one of the sheet's own is refused with the sentence why. */
export function removeColumn(sheet: string, { id, name }: ColumnView): void {
  const done = change([{ command: 'remove column', sheet, column: id }], message('remove column', { column: name }));
  if (!done.refused) tell(`Removed the column ${name}.`, 'done', UNDO);
}
