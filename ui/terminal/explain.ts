// `explain`: why a cell is what it is, step by step down to what was entered. Each cell's steps are told once.

import type { Explanation, Workbook } from '../../engine/index.ts';
import type { Given } from './arguments.ts';
import { findColumn, findRow, findTable, placeInWords } from './places.ts';
import { openWorkbook } from './workbook-files.ts';
import { onOneLine, type World } from './world.ts';

export function explainCell({ words }: Given, world: World): number {
  const [file = '', tableName = '', key = '', columnName = ''] = words;
  const workbook = openWorkbook(file);
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
    if (step.formula !== '') world.out(`${deeper}= ${onOneLine(step.formula)}\n`);
    if (step.inValues !== '' && onOneLine(step.inValues) !== onOneLine(step.formula))
      world.out(`${deeper}= ${onOneLine(step.inValues)}\n`);
    if (step.why !== '') world.out(`${deeper}${onOneLine(step.why)}\n`);
    for (const { table: of, row: at, column: name } of step.rests) tell(workbook.explain(of, at, name), deeper);
  };
  tell(workbook.explain(table.name, row, column.name), '');
  return 0;
}

function idOf({ table, row, column }: Explanation): string {
  return JSON.stringify([table, row, column]);
}

const STANDING: Readonly<Record<Explanation['standing'], string>> = {
  entered: 'entered',
  computed: 'computed',
  override: 'typed over its formula',
  default: 'from the default',
};

function headOf(workbook: Workbook, step: Explanation): string {
  const place = placeInWords(workbook.table(step.table), step.rowName, step.column);
  return `${place}: ${onOneLine(step.shown)} (${STANDING[step.standing]})`;
}
