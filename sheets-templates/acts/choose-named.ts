// What names plantings that are left out: links in rows of other sheets, which wait aside until those plantings are there again. Which
// planting it was is noted on each cell, for once the branch is kept and saved nobody else knows. Called by choose-amounts.ts.

import { type Book, type Command, namingOf, noteOn, sheetView } from '../../engine/index.ts';

/** A note has at most so many letters; one that would get longer stays as it is. */
const LONGEST_NOTE = 2000;

export interface NamingLeft {
  readonly notes: readonly Command[];
  /** Rows that name any, by the name of their sheet. */
  readonly rows: ReadonlyMap<string, number>;
}

/** The rows that name plantings with these ids, and what is noted on them. */
export function namingLeft(book: Book, left: readonly string[]): NamingLeft {
  const naming = namingOf(book, 'plantings', left);
  const notes = naming.flatMap(({ sheet, row, column, named }): Command[] => {
    const before = noteOn(book, sheet, row, column);
    const note = `${before === '' ? '' : `${before}\n`}It named ${named}, which was left out as amounts were chosen.`;
    return note.length > LONGEST_NOTE ? [] : [{ command: 'set note', sheet, row, column, note }];
  });
  const rows = new Map<string, Set<string>>();
  for (const { sheet, row } of naming) rows.set(sheet, (rows.get(sheet) ?? new Set()).add(row));
  return {
    notes,
    rows: new Map([...rows].map(([sheet, found]) => [sheetView(book, sheet)?.name ?? sheet, found.size])),
  };
}
