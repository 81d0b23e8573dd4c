// npm run bench -- formulas: the formulas of the season that are worked out for all their rows when one row of another sheet changes,
// each with what it reads whole and what an edit of a row there costs in that column alone. queries/whole-tables.ts finds them.

import { type Command, rowId, rows, type Workbook } from '../../../engine/index.ts';
import { wholeTableFormulas } from '../../../engine/queries/whole-tables.ts';
import { copiedBook } from './copies.ts';
import { CLIMATE_EDIT, commandsOf, SPACING_EDIT } from './edits.ts';
import { type StepCost, stepCosts } from './where.ts';

const TRIES = 6;

/** What is typed, turn about, to change a row of a sheet that formulas read whole. */
const SOURCE_EDITS: Readonly<Record<string, readonly [column: string, one: string, other: string]>> = {
  'frost-years': ['last-frost', '2026-05-07', '2026-05-09'],
  'size-grades': ['to', '2 in', '2.1 in'],
  products: ['product', 'All the rest', 'Everything else'],
  stores: ['temperature', '34 degF', '36 degF'],
};

/** The sheets that no one types in change with another. */
function editsOf(workbook: Workbook, sheet: string): readonly Command[] {
  if (sheet === 'plantings') return commandsOf(SPACING_EDIT, workbook, TRIES);
  if (sheet === 'climate' || sheet === 'monthly-climate') return commandsOf(CLIMATE_EDIT, workbook, TRIES);
  const edit = SOURCE_EDITS[sheet];
  const slot = rows(workbook, sheet)[0];
  if (edit === undefined || slot === undefined) return [];
  const [column, one, other] = edit;
  const row = rowId(workbook, sheet, slot);
  return Array.from({ length: TRIES }, (_, call): Command => {
    return { command: 'set cell', sheet, row, column, entry: call % 2 === 0 ? one : other };
  });
}

export function listFormulas(size: number): void {
  const { workbook } = copiedBook(size);
  const { program } = workbook.document;
  const listed = wholeTableFormulas(workbook);
  const costs = new Map<string, readonly StepCost[]>();
  for (const sheet of new Set(listed.flatMap(({ reads }) => reads))) {
    const edits = editsOf(workbook, sheet);
    if (edits.length > 0) costs.set(sheet, stepCosts(workbook, edits, 2));
  }
  console.log(
    `${listed.length} formulas read the whole of another sheet. CPU time of an edit there, ${size} plantings:`,
  );
  for (const { sheet, column, reads } of listed) {
    const found = program.sheet(sheet)?.column(column);
    const said = reads.map((read) => {
      const step = costs.get(read)?.find(({ name }) => name === `${sheet}/${column}`);
      const cost = step === undefined ? 'not measured' : `${step.cost.toFixed(3)} ms`;
      return `${program.sheet(read)?.name ?? read}, ${cost}`;
    });
    console.log(`\n${program.sheet(sheet)?.name ?? sheet}, ${found?.name ?? column}: reads all of ${said.join('; ')}`);
    console.log(`  ${(found?.formula ?? '').replace(/\s+/g, ' ').slice(0, 200)}`);
  }
}
