// npm run bench -- own: columns of a grower's own over the season's plantings that count, add up and look for others by what each row
// says: above, below, between, other than. What an edit of a figure that they add up costs with such a column and without it, how that
// grows with the farm, and what working the whole season out takes with it.

import type { Workbook } from '../../../engine/index.ts';
import { costOf, timedAlone } from '../cpu.ts';
import { copiedBook } from './copies.ts';
import { commandsOf, DATE_EDIT, type EditKind, edit, SPACING_EDIT } from './edits.ts';

const SEEDS = 'Plantings[Seeds needed]';
const OUT = 'Plantings[Planted out]';

/** By what a grower would call them. */
const COLUMNS: Readonly<Record<string, string>> = {
  'How many before it': `COUNTIFS(${OUT}; "<" & [Planted out])`,
  'Seeds before it': `SUMIFS(${SEEDS}; ${OUT}; "<" & [Planted out])`,
  'Seeds from it on': `SUMIFS(${SEEDS}; ${OUT}; ">=" & [Planted out])`,
  'Seeds in its 30 days': `SUMIFS(${SEEDS}; ${OUT}; ">=" & [Planted out]; ${OUT}; "<" & [Planted out] + 30 days)`,
  'Mean of those before it': `AVERAGEIFS(${SEEDS}; ${OUT}; "<" & [Planted out])`,
  'Most of those after it': `MAXIFS(${SEEDS}; ${OUT}; ">" & [Planted out])`,
  'How many need more': `COUNTIFS(${SEEDS}; ">" & [Seeds needed])`,
  'On other beds': `COUNTIFS(Plantings[Bed]; "<>" & [Bed])`,
  'Seeds of all others': `SUMIFS(${SEEDS}; Plantings[Planting]; "<>" & [Planting])`,
  'Others of its variety': `SUMIFS(${SEEDS}; Plantings[Variety]; [Variety]; Plantings[Planting]; "<>" & [Planting])`,
  'The next to go out': `FIRSTIFS(Plantings[Planting]; ${OUT}; ">" & [Planted out])`,
};

const [WARM, CALLS] = [3, 9];
const MESSAGE = { code: 'own column', parts: {} };

interface Costs {
  readonly everything: number;
  readonly spacing: number;
  readonly date: number;
}

function costs(workbook: Workbook, run: number): Costs {
  workbook.recalculateAll();
  const [everything] = timedAlone(() => workbook.recalculateAll());
  const one = (kind: EditKind): number => {
    const commands = commandsOf(kind, workbook, WARM + CALLS, run);
    for (const command of commands.slice(0, WARM)) edit(workbook, command);
    const measured = commands.slice(WARM);
    return costOf(measured.length, (call) => {
      const command = measured[call];
      if (command !== undefined) edit(workbook, command);
    }).p50;
  };
  return { everything, spacing: one(SPACING_EDIT), date: one(DATE_EDIT) };
}

/** Costs with each column, and without any. */
function measured(size: number): ReadonlyMap<string, Costs> {
  const { workbook } = copiedBook(size);
  let run = 20;
  // Code that runs for the first time costs more than any column.
  costs(workbook, 19);
  const found = new Map([['without such a column', costs(workbook, run)]]);
  for (const [name, formula] of Object.entries(COLUMNS)) {
    run += 1;
    const done = workbook.do([{ command: 'add formula', sheet: 'plantings', name, formula }], MESSAGE);
    const column = workbook.document.program.sheet('plantings')?.columns.find((one) => one.name === name);
    if (done.refused || column === undefined) throw new Error(done.refused ? done.why : `${name} was not added.`);
    if (column.diagnostic !== undefined) throw new Error(column.diagnostic.why);
    found.set(name, costs(workbook, run));
    workbook.do([{ command: 'remove column', sheet: 'plantings', column: column.id }], MESSAGE);
  }
  return found;
}

const digits = (cost: number): string => cost.toPrecision(3).padStart(8);

export function benchOwnColumns(sizes: readonly number[]): void {
  let before: { readonly size: number; readonly found: ReadonlyMap<string, Costs> } | undefined;
  for (const size of sizes) {
    const found = measured(size);
    console.log(
      `\n${size} plantings, CPU time in ms: a spacing edit, a date edit, everything again${before === undefined ? '' : `; and how many times that of ${before.size}`}`,
    );
    for (const [name, { spacing, date, everything }] of found) {
      const less = before?.found.get(name);
      const growth = less === undefined ? [] : [spacing / less.spacing, date / less.date, everything / less.everything];
      const said = [spacing, date, everything].map(digits).join('');
      console.log(
        `  ${name.padEnd(26)}${said}   ${growth.map((times) => `${times.toPrecision(2)} x`.padStart(8)).join('')}`,
      );
    }
    before = { size, found };
  }
}
