// `explain`: why a cell is what it is, step by step down to what was entered. Each cell's steps are told once.

import { type Book, type Explanation, explain, sayWhy, sheetView } from '../../engine/index.ts';
import type { Given } from './arguments.ts';
import { findColumn, findRow, findTable, placeInWords } from './places.ts';
import { openWorkbook } from './workbook-files.ts';
import { onOneLine, type World } from './world.ts';

export async function explainCell({ words }: Given, world: World): Promise<number> {
  const [file = '', tableName = '', key = '', columnName = ''] = words;
  const workbook = await openWorkbook(file, world);
  const table = findTable(workbook, file, tableName);
  const row = findRow(workbook, table, file, key);
  const column = findColumn(table, file, columnName);
  const told = new Set<string>();
  const tell = (step: Explanation, indent: string): void => {
    world.out(
      `${indent}${headOf(workbook, step)}${told.has(idOf(step)) && step.formula !== '' ? ' (see above)' : ''}\n`,
    );
    if (told.has(idOf(step))) return;
    told.add(idOf(step));
    const deeper = `${indent}  `;
    const said = sayWhy(workbook, step.sheet, step.row, step.column)?.words ?? '';
    if (said !== '') world.out(`${deeper}${onOneLine(said)}\n`);
    if (step.formula !== '') world.out(`${deeper}= ${onOneLine(step.formula)}\n`);
    if (step.inValues !== '' && onOneLine(step.inValues) !== onOneLine(step.formula))
      world.out(`${deeper}= ${onOneLine(step.inValues)}\n`);
    if (step.why !== '') world.out(`${deeper}${onOneLine(step.why)}\n`);
    for (const rest of step.rests) tellCell(rest.sheet, rest.row, rest.column, deeper);
  };
  const tellCell = (sheet: string, at: number, id: string, indent: string): void => {
    const step = explain(workbook, sheet, at, id);
    if (step !== undefined) tell(step, indent);
  };
  tellCell(table.id, row, column.id, '');
  return 0;
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
