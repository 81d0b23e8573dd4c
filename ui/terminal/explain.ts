// `explain`: why a cell is what it is, step by step as far down as is asked for. Each cell's steps are told once.

import { type Book, countReads, type Explanation, explain, sayWhy, sheetView } from '../../engine/index.ts';
import type { Given } from './arguments.ts';
import { findColumn, findRow, findTable, placeInWords } from './places.ts';
import { openWorkbook } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

/** Steps told where nobody says how many: a page or two. A margin rests on thousands of cells, thirty steps down. */
const STEPS = 2;
/** Cells of one column told one by one, as of a total; the others are counted. */
const MOST_OF_COLUMN = 5;

export async function explainCell({ words, values }: Given, world: World): Promise<number> {
  const [file = '', tableName = '', key = '', columnName = ''] = words;
  const steps = stepsAsked(values.get('steps'));
  const workbook = await openWorkbook(file, world);
  const table = findTable(workbook, file, tableName);
  const row = findRow(workbook, table, file, key);
  const column = findColumn(table, file, columnName);
  const told = new Set<string>();
  const unfollowed = new Set<string>();
  const tell = (step: Explanation, left: number, indent: string): void => {
    const id = idOf(step);
    world.out(`${indent}${headOf(workbook, step)}${told.has(id) && step.formula !== '' ? ' (see above)' : ''}\n`);
    if (told.has(id)) return;
    const deeper = `${indent}  `;
    const line = (text: string): void => world.out(`${deeper}${onOneLine(text)}\n`);
    const said = sayWhy(workbook, step.sheet, step.row, step.column)?.words ?? '';
    if (said !== '') line(said);
    if (left === 0 && step.rests.length > 0) {
      unfollowed.add(id);
      return;
    }
    told.add(id);
    if (step.formula !== '') line(`= ${step.formula}`);
    if (step.inValues !== '' && onOneLine(step.inValues) !== onOneLine(step.formula)) line(`= ${step.inValues}`);
    if (step.why !== '') line(step.why);
    const named = firstOfEachColumn(step.rests);
    for (const rest of named) tellCell(rest.sheet, rest.row, rest.column, left - 1, deeper);
    const more = countReads(workbook, step.sheet, step.row, step.column) - named.length;
    if (more > 0) line(`and ${more} more`);
  };
  const tellCell = (sheet: string, at: number, id: string, left: number, indent: string): void => {
    const step = explain(workbook, sheet, at, id);
    if (step !== undefined) tell(step, left, indent);
  };
  tellCell(table.id, row, column.id, steps, '');
  const open = [...unfollowed].filter((id) => !told.has(id)).length;
  if (open > 0) {
    const are = open === 1 ? 'One cell rests on others that are' : `${open} cells rest on others that are`;
    world.out(`\n${are} not told here: explain one of those, or go deeper with --steps ${steps + 1}.\n`);
  }
  return 0;
}

function stepsAsked(given: string | undefined): number {
  if (given === undefined) return STEPS;
  if (!/^[1-9]\d{0,3}$/.test(given)) return refuse(`--steps takes a whole number from 1 on, and not “${given}”.`);
  return Number(given);
}

function firstOfEachColumn(cells: readonly Explanation[]): readonly Explanation[] {
  const counts = new Map<string, number>();
  return cells.filter(({ sheet, column }) => {
    const key = JSON.stringify([sheet, column]);
    const count = (counts.get(key) ?? 0) + 1;
    counts.set(key, count);
    return count <= MOST_OF_COLUMN;
  });
}

function idOf({ sheet, row, column }: Explanation): string {
  return JSON.stringify([sheet, row, column]);
}

const ORIGIN: Readonly<Record<Explanation['origin'], string>> = {
  entered: 'entered',
  computed: 'computed',
  override: 'typed over its formula',
  default: 'from the default',
  made: 'from the rows of the sheet',
};

function headOf(book: Book, step: Explanation): string {
  const place = placeInWords(sheetView(book, step.sheet), step.rowName, step.columnName);
  return `${place}: ${onOneLine(step.shown)} (${ORIGIN[step.origin]})`;
}
