// What an entry means in a column of a workbook, names of rows found as people write them.

import { type ContentRead, readEntryAs } from '../document/entries.ts';
import { nearestName } from '../language/nearest.ts';
import type { ProgramColumn } from '../schema/compile.ts';
import type { CommandOf } from './command.ts';
import type { Draft } from './draft.ts';

/** What is typed, and whether as formulas have it rather than in the workbook’s locale. */
export type TypedEntry = Pick<CommandOf<'set cell'>, 'entry' | 'plain'>;

/** What an entry means in a column of a sheet, names of rows found as people write them. */
export function readTyped(
  column: ProgramColumn,
  { entry, plain }: TypedEntry,
  { document }: Pick<Draft, 'document'>,
): ContentRead {
  const { type } = column;
  const context = plain === true ? document.plainEntry : document.entry;
  const read = readEntryAs(entry, column, document.program, context, (of, name) => {
    const [slot] = document.namesOf(of).find(name);
    return slot === undefined ? undefined : document.rowIdOf(of, slot);
  });
  if (read.ok || type?.kind !== 'link' || entry.trim() === '') return read;
  const near = nearestRow(type.table, entry, document);
  const target = type.called ?? type.table;
  const advice =
    near === undefined ? `add it to ${target} first` : `did you mean “${near}”? Else add it to ${target} first`;
  return { ok: false, why: `No row of ${target} is called “${entry.trim()}”: ${advice}.` };
}

function nearestRow(sheetId: string, name: string, document: Draft['document']): string | undefined {
  const sheet = document.program.sheet(sheetId);
  const key = sheet?.schema.key === undefined ? undefined : sheet.column(sheet.schema.key);
  if (sheet === undefined || key === undefined) return undefined;
  const names = Array.from(document.frame.rows(sheet.table), (slot) => document.typedAt(key, slot));
  return nearestName(
    name,
    names.filter((one) => typeof one === 'string'),
  );
}
