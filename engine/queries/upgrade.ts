// What another version of the template would change in a workbook: which formulas, how far their figures move, what comes and
// what goes. Tried on a branch, so that a person can read it before taking it; the workbook itself is left alone.

import { message } from '../commands/messages.ts';
import type { Workbook } from '../commands/workbook.ts';
import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { formulaText } from '../schema/lay-over.ts';
import type { OwnColumn, OwnSheet } from '../schema/own.ts';
import { entry } from '../schema/records.ts';
import { isComputed, isEnteredSheet } from '../schema/schema.ts';
import type { Book } from './book.ts';
import { type ColumnPlace, keptForm, lasting, matchRows, placeOf } from './matching.ts';
import { rows } from './rows.ts';
import { printed } from './sheets.ts';
import { inWords, rowName } from './shown.ts';

export interface FormulaChange extends ColumnPlace {
  /** As printed. */
  readonly before: string;
  readonly after: string;
}

/** A person's own formula, where the template's behind it changes. It stays. */
export interface OwnFormula extends FormulaChange {
  readonly own: string;
}

export interface MovedFigures extends ColumnPlace {
  /** How many rows read otherwise. */
  readonly count: number;
  /** The row whose figure moves most, with its unit before and after: '180 lb', 'blank'; long texts where they begin to differ. */
  readonly example: { readonly rowName: string; readonly before: string; readonly after: string };
}

/** What a person named, where the name changes because a column or sheet of the template has it, or has it no more. */
export interface NameChange extends ColumnPlace {
  readonly before: string;
  readonly after: string;
}

/** Rows of a sheet that both versions have, by their names. */
export interface RowsChange extends ColumnPlace {
  readonly names: readonly string[];
}

export interface Upgrade {
  readonly version: number;
  /** Columns that are new; '' for the column where the whole sheet is. */
  readonly added: readonly ColumnPlace[];
  /** Columns and sheets that the template no longer has, by their names before; what was typed there is kept aside. */
  readonly gone: readonly ColumnPlace[];
  /** Rows that the template newly ships. */
  readonly rowsAdded: readonly RowsChange[];
  /** Rows that it ships no more, which nobody touched or names. */
  readonly rowsGone: readonly RowsChange[];
  readonly formulas: readonly FormulaChange[];
  readonly own: readonly OwnFormula[];
  readonly moved: readonly MovedFigures[];
  /** Names of a person's own that change; every formula goes on reading what it read. */
  readonly named: readonly NameChange[];
}

/** What taking this version of the template into use would change; undefined where it can't be taken. */
export function upgradeTo(workbook: Workbook, version: number): Upgrade | undefined {
  return workbook.onBranch((branch) => upgradeOn(branch, workbook, version));
}

function upgradeOn(branch: Workbook, workbook: Workbook, version: number): Upgrade | undefined {
  if (branch.do([{ command: 'use template', version }], message('upgrade')).refused) return undefined;
  const before = workbook.document.program;
  const after = branch.document.program;
  const upgrade: { [K in keyof Upgrade]: Upgrade[K] extends readonly (infer T)[] ? T[] : Upgrade[K] } = {
    version,
    added: [],
    gone: [],
    rowsAdded: [],
    rowsGone: [],
    formulas: [],
    own: [],
    moved: [],
    named: [],
  };
  const { own } = after.schema;
  const nameChange = (place: ColumnPlace, was: string, is: string, given: OwnColumn | OwnSheet | undefined): void => {
    if (was === is || (given?.declaration === undefined && given?.name === undefined)) return;
    upgrade.named.push({ ...place, before: was, after: is });
  };
  for (const sheet of after.sheets) {
    const old = before.sheet(sheet.id);
    if (old === undefined) {
      upgrade.added.push(placeOf(sheet, undefined));
      continue;
    }
    nameChange(placeOf(sheet, undefined), old.name, sheet.name, entry(own, sheet.id));
    const matched = matchRows(workbook, branch, sheet.id);
    if (isEnteredSheet(sheet.schema)) {
      const came = namesOfOthers(branch, sheet.id, new Set(matched.map(([, slot]) => slot)));
      const went = namesOfOthers(workbook, sheet.id, new Set(matched.map(([slot]) => slot)));
      if (came.length > 0) upgrade.rowsAdded.push({ ...placeOf(sheet, undefined), names: came });
      if (went.length > 0) upgrade.rowsGone.push({ ...placeOf(sheet, undefined), names: went });
    }
    for (const column of sheet.columns) {
      const oldColumn = old.column(column.id);
      if (oldColumn === undefined) {
        upgrade.added.push(placeOf(sheet, column));
        continue;
      }
      const given = entry(entry(own, sheet.id)?.columns, column.id);
      nameChange(placeOf(sheet, column), oldColumn.name, column.name, given);
      if (column.role === 'made') continue;
      const change = formulaChange(workbook, branch, sheet, oldColumn, column);
      if (change !== undefined && 'own' in change) upgrade.own.push(change);
      else if (change !== undefined) upgrade.formulas.push(change);
      const moved = movedFigures(workbook, branch, placeOf(sheet, column), { oldColumn, column, matched });
      if (moved !== undefined) upgrade.moved.push(moved);
    }
    for (const column of old.columns) {
      if (sheet.column(column.id) === undefined) upgrade.gone.push(placeOf(old, column));
    }
  }
  for (const sheet of before.sheets) {
    if (after.sheet(sheet.id) === undefined) upgrade.gone.push(placeOf(sheet, undefined));
  }
  return upgrade;
}

/** The names of a sheet's rows but for those in some slots. */
function namesOfOthers(book: Book, sheet: string, slots: ReadonlySet<number>): readonly string[] {
  return [...rows(book, sheet)].filter((slot) => !slots.has(slot)).map((slot) => rowName(book, sheet, slot));
}

function formulaChange(
  before: Book,
  after: Book,
  sheet: ProgramSheet,
  oldColumn: ProgramColumn,
  column: ProgramColumn,
): FormulaChange | OwnFormula | undefined {
  if (!isComputed(oldColumn) && !isComputed(column)) return undefined;
  const was = templateText(before, oldColumn);
  const is = templateText(after, column);
  if (was === is || keptForm(before, sheet.id, was) === keptForm(after, sheet.id, is)) return undefined;
  const change = { ...placeOf(sheet, column), before: was, after: is };
  if (column.own || column.templateFormula === undefined) return change;
  return { ...change, own: printed(column.formula, after.document.program.vocabulary) };
}

/** The template's formula as printed, whether a person's own stands in its place or not. */
function templateText({ document }: Book, column: ProgramColumn): string {
  const { schema, vocabulary } = document.program;
  const text = column.templateFormula === undefined ? column.formula : formulaText(column.templateFormula, schema);
  return text === '' ? '' : printed(text, vocabulary);
}

interface Compared {
  readonly oldColumn: ProgramColumn;
  readonly column: ProgramColumn;
  readonly matched: readonly (readonly [before: number, after: number])[];
}

function movedFigures(
  before: Book,
  after: Book,
  place: ColumnPlace,
  { oldColumn, column, matched }: Compared,
): MovedFigures | undefined {
  let count = 0;
  let most = Number.NEGATIVE_INFINITY;
  let example: readonly [number, number] | undefined;
  for (const [was, is] of matched) {
    const [a, b] = [lasting(before, oldColumn, was), lasting(after, column, is)];
    if (a === b) continue;
    count += 1;
    const size = typeof a === 'number' && typeof b === 'number' ? Math.abs(b - a) : -1;
    if (size <= most) continue;
    most = size;
    example = [was, is];
  }
  if (example === undefined) return undefined;
  const [was, is] = example;
  const [said, says] = excerpts(inWords(before, oldColumn, was), inWords(after, column, is));
  return { ...place, count, example: { rowName: rowName(after, place.sheet, is), before: said, after: says } };
}

/** Letters of a long text that a list of changes shows, and how many of them stand before the first difference. */
const EXCERPT = 80;
const LED_IN = 20;

/** Two texts; of long ones the part in which they begin to differ. */
function excerpts(before: string, after: string): readonly [before: string, after: string] {
  if (Math.max(before.length, after.length) <= EXCERPT) return [before, after];
  let same = 0;
  while (same < before.length && before[same] === after[same]) same += 1;
  const from = Math.max(0, same - LED_IN);
  const part = (text: string): string =>
    `${from === 0 ? '' : '... '}${text.slice(from, from + EXCERPT)}${text.length > from + EXCERPT ? ' ...' : ''}`;
  return [part(before), part(after)];
}
