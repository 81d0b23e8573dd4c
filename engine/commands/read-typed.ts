// What an entry means in a column of a workbook, names of rows found as people write them.

import { type ContentRead, readEntryAs } from '../document/entries.ts';
import { nearestName } from '../language/nearest.ts';
import type { ProgramColumn } from '../schema/compile.ts';
import type { CommandOf } from './command.ts';
import type { Draft } from './draft.ts';

/** What is typed, and whether as formulas have it rather than in the workbook’s locale. */
export type TypedEntry = Pick<CommandOf<'set cell'>, 'entry' | 'plain'>;

/** What an entry means in a column of a sheet, names of rows found as people write them; a row's own name stands on one line. */
export function readTyped(
  column: ProgramColumn,
  { entry, plain }: TypedEntry,
  { document }: Pick<Draft, 'document'>,
): ContentRead {
  const { type } = column;
  const context = document.entryIn(column, plain);
  const read = readEntryAs(withoutLines(entry, column, document), column, document.program, context, (of, name) => {
    const [slot] = document.namesOf(of).find(name);
    return slot === undefined ? undefined : document.rowIdOf(of, slot);
  });
  if (read.ok || type?.kind !== 'link' || entry.trim() === '') return read;
  const target = type.called ?? type.table;
  const [known, ...others] = rowsAlsoCalled(type.table, entry, document);
  if (known !== undefined) {
    const names = [known, ...others].map((one) => `“${one}”`).join(' or ');
    return { ok: false, why: `${target} has it as ${names}: type ${others.length === 0 ? 'that' : 'one of them'}.` };
  }
  const near = nearestRow(type.table, entry, document);
  const advice =
    near === undefined ? `add it to ${target} first` : `did you mean “${near}”? Else add it to ${target} first`;
  return { ok: false, why: `No row of ${target} is called “${entry.trim()}”: ${advice}.` };
}

/** Of a row's name the lines become one, as lists and links can have no other; any other entry stays as it is. */
function withoutLines(entry: string, column: ProgramColumn, { program }: Draft['document']): string {
  if (!/[\r\n]/.test(entry)) return entry;
  const isName = program.sheet(column.def.table.id)?.schema.key === column.id;
  return isName ? entry.replace(/\s*[\r\n]\s*/g, ' ') : entry;
}

/** Names of the rows that list a name among their other names, as people write them: with commas between, in any case. */
function rowsAlsoCalled(sheetId: string, name: string, document: Draft['document']): readonly string[] {
  const sheet = document.program.sheet(sheetId);
  const key = sheet?.schema.key === undefined ? undefined : sheet.column(sheet.schema.key);
  const others = sheet?.columns.find(({ declaration }) => declaration.otherNames === true);
  if (sheet === undefined || key === undefined || others === undefined) return [];
  const wanted = name.trim().toLowerCase();
  return Array.from(document.frame.rows(sheet.table)).flatMap((slot) => {
    const listed = document.typedAt(others, slot);
    const named = document.typedAt(key, slot);
    if (typeof listed !== 'string' || typeof named !== 'string') return [];
    return listed.split(',').some((one) => one.trim().toLowerCase() === wanted) ? [named] : [];
  });
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
