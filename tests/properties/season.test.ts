// The demo's whole season under random work: entered cells of every sheet, rows, overrides, formulas, units, the day, undo and
// redo. What edits leave behind is, to the last bit, what a fresh workbook made from the same entries works out.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoFarm } from '../../demo/farm.ts';
import { type ColumnView, cellValue, rows, type SheetView } from '../../engine/index.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { type Book, type Edit, opened, started } from '../book.ts';
import { runs } from '../runs.ts';
import { entered, number, SMALL, sheet } from '../workbook/small.ts';
import { snapshot } from './snapshot.ts';

function demo(): Book {
  const farm = started(SEASON, demoFarm);
  if (!farm.ok) throw new Error(farm.problems.join('\n'));
  return farm.workbook;
}

const RUNS = runs(1, 6);
const ACTS = runs(20, 60);
const COMPARED_EVERY = 10;

/** Chance numbers of one act, each taken for what it comes to stand for. */
interface Chances {
  readonly what: number;
  readonly table: number;
  readonly row: number;
  readonly column: number;
  readonly value: number;
}

const chances: fc.Arbitrary<Chances> = fc.record({
  what: fc.integer({ min: 0, max: 99 }),
  table: fc.nat({ max: 10_000 }),
  row: fc.nat({ max: 10_000 }),
  column: fc.nat({ max: 10_000 }),
  value: fc.nat({ max: 10_000 }),
});

function pick<T>(list: readonly T[], by: number): T | undefined {
  return list[by % Math.max(1, list.length)];
}

/** A date of 2027, or a year beside it. */
function dateEntry(by: number): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${2026 + (by % 3)}-${two(1 + (by % 12))}-${two(1 + (by % 28))}`;
}

/** An entry of the column's type as people type it; blank now and then. */
function entryFor(column: ColumnView, by: number, workbook: Book): string {
  const { type } = column;
  if (type === undefined || by % 9 === 0) return '';
  switch (type.kind) {
    case 'number':
      return String(pick([0, 1, 2, 0.5, 3.25, 12, 85, 40, 250, -1, by / 7], by) ?? '');
    case 'temperature':
      return `${by % 40} degF`;
    case 'date':
      return dateEntry(by);
    case 'yesno':
      return by % 2 === 0 ? 'yes' : 'no';
    case 'choice':
      return pick(type.options, by) ?? '';
    case 'link': {
      const row = pick([...workbook.rows(type.table)], by);
      return row === undefined ? '' : workbook.rowName(type.table, row);
    }
    case 'record':
      return '';
    case 'text':
      return `Text ${by % 50}`;
  }
}

/** Formulas that give the same type as the one that stands there, other values, or no value at all. */
function formulaFor({ formula }: ColumnView, by: number): string {
  return (
    pick([`IF(TRUE; ${formula})`, `IFERROR(${formula}; ${formula})`, `IF(FALSE; ${formula})`, `${formula} +`], by) ??
    formula
  );
}

function isTyped({ role }: ColumnView): boolean {
  return role === 'entered' || role === 'default';
}

function cellEdit(table: SheetView, column: ColumnView | undefined, { row, value }: Chances, workbook: Book): Edit[] {
  const at = pick([...workbook.rows(table.name)], row);
  if (at === undefined || column === undefined) return [];
  return [{ edit: 'cell', table: table.name, row: at, column: column.name, entry: entryFor(column, value, workbook) }];
}

function editsFor(by: Chances, workbook: Book): Edit[] {
  const table = pick(workbook.tables(), by.table);
  if (table === undefined) return [];
  const { name, columns } = table;
  const row = pick([...workbook.rows(name)], by.row);
  const computed = columns.filter((column) => column.role === 'computed' || column.role === 'default');
  if (by.what < 55) return cellEdit(table, pick(columns.filter(isTyped), by.column), by, workbook);
  if (by.what < 65) return cellEdit(table, pick(computed, by.column), by, workbook);
  if (by.what < 71) {
    const column = pick(computed, by.column);
    if (row === undefined || column === undefined) return [];
    return [{ edit: 'take back', table: name, row, column: column.name }];
  }
  if (by.what < 76) return row === undefined ? [] : [{ edit: 'remove row', table: name, row }];
  if (by.what < 82) {
    const entries = columns
      .filter((column) => isTyped(column) && (by.value + column.name.length) % 3 !== 0)
      .map((column) => [column.name, entryFor(column, by.value + column.name.length, workbook)]);
    return [{ edit: 'insert row', table: name, entries: Object.fromEntries(entries) }];
  }
  if (by.what < 88) {
    const column = pick(computed, by.column);
    if (column === undefined) return [];
    return [{ edit: 'formula', table: name, column: column.name, formula: formulaFor(column, by.value) }];
  }
  if (by.what < 90) return [{ edit: 'units', units: by.value % 2 === 0 ? 'us' : 'si' }];
  return [{ edit: 'today', today: 20_700 + (by.value % 600) }];
}

function perform(by: Chances, workbook: Book): void {
  if (by.what >= 95) workbook.redo();
  else if (by.what >= 91) workbook.undo();
  else workbook.edit(editsFor(by, workbook), 'Random work');
}

/** What somebody looks at between two acts, so that some figures are worked out and others wait. */
function look({ what, table, column, value }: Chances, { workbook }: Book): void {
  const sheets = workbook.document.program.sheets;
  const sheet = pick(sheets, table);
  const seen = sheet === undefined ? undefined : pick(sheet.columns, column);
  if (sheet === undefined || seen === undefined) return;
  if (what % 4 === 0) {
    let steps = 0;
    workbook.settle(() => ++steps <= value % 200);
  } else if (what % 4 === 1) for (const row of rows(workbook, sheet.id)) cellValue(workbook, sheet.id, row, seen.id);
  else if (what % 4 === 2) workbook.watch(() => sheet.columns.map(({ id }) => ({ sheet: sheet.id, column: id })));
}

test('the season equals one worked out afresh from its entries, whatever waits in between, bit for bit', {
  timeout: 300_000 * RUNS,
}, () => {
  let done = 0;
  fc.assert(
    fc.property(fc.array(chances, { minLength: ACTS, maxLength: ACTS }), (acts) => {
      const workbook = demo();
      const start = snapshot(workbook);
      acts.forEach((act, step) => {
        perform(act, workbook);
        look(act, workbook);
        if (step % COMPARED_EVERY === COMPARED_EVERY - 1) {
          const fresh = snapshot(workbook.reopened());
          if (act.value % 2 === 0) expect(snapshot(workbook.branch())).toEqual(fresh);
          expect(snapshot(workbook)).toEqual(fresh);
        }
      });
      while (workbook.undo() !== undefined) done += 1;
      expect(snapshot(workbook)).toEqual(start);
    }),
    { numRuns: RUNS, endOnFailure: true },
  );
  expect(done).toBeGreaterThan((RUNS * ACTS) / 4);
});

test('a figure keeps its last bit through a file, though the units were switched after it was typed', () => {
  const rain = sheet('Rain', {
    columns: [entered('Depth', number('in', 'mm')), entered('Weight', number('oz', 'kg'))],
  });
  const typed = Array.from({ length: 300 }, (_, at) => ({
    Depth: String((at + 1) / 7),
    Weight: String((at + 1) / 11),
  }));
  const workbook = opened({ ...SMALL, sheets: [rain], rows: { Rain: typed } });
  for (const units of ['si', 'us'] as const) {
    workbook.edit([{ edit: 'units', units }], 'Units');
    expect(snapshot(workbook.reopened())).toEqual(snapshot(workbook));
  }
});
