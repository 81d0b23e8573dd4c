// Formulas on scratch papers go on meaning the columns that they name when a sheet or column gets another name or place: like formulas
// of the sheets they read the new name from then on. The acts on sheets and columns call it; it changes nothing itself.

import { type Command, message, type Workbook } from '../../engine/index.ts';
import { isFormula, wordsOf } from './formula-words.ts';
import { ColumnNames } from './names.ts';

/** The commands, and behind them those that type each formula anew in which a name would mean another column, or none. */
export function withPapersFollowing(book: Workbook, commands: readonly Command[]): readonly Command[] {
  const formulas = [...book.document.papers.all()].flatMap(([paper, { cells }]) =>
    [...cells].flatMap(([cell, entry]) => (namesSomething(entry) ? [{ paper, cell, entry }] : [])),
  );
  if (formulas.length === 0) return commands;
  const before = new ColumnNames(book);
  const after = book.onBranch((branch) =>
    branch.do(commands, message('trial')).refused ? undefined : new ColumnNames(branch),
  );
  if (after === undefined) return commands;
  const typed = new Map<string, Record<string, string>>();
  for (const { paper, cell, entry } of formulas) {
    const now = withNamesOf(entry, before, after);
    if (now === entry) continue;
    const cells = typed.get(paper) ?? {};
    cells[cell] = now;
    typed.set(paper, cells);
  }
  return [...commands, ...Array.from(typed, ([paper, cells]): Command => ({ command: 'type on paper', paper, cells }))];
}

function namesSomething(entry: string): boolean {
  return isFormula(entry) && wordsOf(entry).some(({ kind }) => kind === 'name');
}

function withNamesOf(formula: string, before: ColumnNames, after: ColumnNames): string {
  return wordsOf(formula)
    .map(({ kind, text }) => (kind === 'name' ? renamed(text, before, after) : text))
    .join('');
}

function renamed(name: string, before: ColumnNames, after: ColumnNames): string {
  const meant = before.find(name);
  if (meant === undefined) return name;
  const now = after.find(name);
  const isSame = now !== undefined && now.sheet.id === meant.sheet.id && now.column.id === meant.column.id;
  return isSame ? name : (after.nameOf(meant) ?? name);
}
