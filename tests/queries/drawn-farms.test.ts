// Seasons drawn of farms picked at random from the demo's plantings: every figure of the season and by week is, to the bit, what
// the plan works out with the drawn values typed, whichever seasons were drawn before; rows of weeks and lots come and go with them.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoFarm } from '../../demo/farm.ts';
import {
  Draws,
  figureIn,
  message,
  numberOf,
  putInput,
  rowId,
  rows,
  type Start,
  uncertainInputs,
  type Workbook,
} from '../../engine/index.ts';
import { weeklySums } from '../../engine/queries/by-week.ts';
import { PLAN_TOTALS, SEASON_CHANCES, WEEKLY_CHANCES } from '../../sheets-templates/index.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { streams } from '../../ui/chance.ts';
import { started } from '../book.ts';
import { runs } from '../runs.ts';

/** More than it takes a run to find out which steps have most of their rows worked out again each time. */
const SEASONS = 16;
const LEFT_OUT = ['plantings', 'successions', 'records', 'past-results', 'trials', 'bulbing-records', 'own-jobs'];

type Row = NonNullable<Start['rows'][string]>[number];

/** The demo with some of its plantings whose dates are typed. */
function farmOf(picked: readonly number[]): Workbook {
  const dated = (demoFarm.rows.plantings ?? []).filter((row) => row.sown !== undefined && row.succession === undefined);
  const plantings = new Set<Row>();
  for (const at of picked) plantings.add(dated[at % dated.length] ?? {});
  const kept = Object.entries(demoFarm.rows).filter(([sheet]) => !LEFT_OUT.includes(sheet));
  const start: Start = { ...demoFarm, rows: { ...Object.fromEntries(kept), plantings: [...plantings] } };
  const made = started(SEASON, start);
  if (!made.ok) throw new Error(made.problems.join('\n'));
  return made.workbook.workbook;
}

const FIGURES = PLAN_TOTALS.flatMap(({ id, figure }) => (figure.figure === 'formula' ? [{ id, figure }] : []));
const WEEKLY = WEEKLY_CHANCES.filter(({ fold = 'sum' }) => fold === 'sum');

/** What is asked for alone rests on fewer steps than all that may be asked for. */
const ASKED = [
  { figures: FIGURES.filter(({ id }) => id === 'margin'), weekly: [] },
  { figures: FIGURES.filter(({ id }) => id === 'lost'), weekly: WEEKLY.filter(({ id }) => id === 'in-store') },
  { figures: FIGURES, weekly: WEEKLY },
];

/** What is typed on made rows stays with them, so such rows keep their slots. */
function typeOnMadeRows(workbook: Workbook, at: number): void {
  for (const [sheet, column, entry] of [
    ['lots', 'share', '60%'],
    ['tasks', 'hours', '3 h'],
  ] as const) {
    const slots = rows(workbook, sheet);
    const row = rowId(workbook, sheet, slots[at % slots.length] ?? 0);
    const done = workbook.do([{ command: 'set cell', sheet, row, column, entry }], message('trial'));
    expect(done.refused).toBe(false);
  }
}

test.each([false, true])(
  'a season drawn of a farm is the season typed, with figures typed on made rows: %s',
  (isTyped) => {
    fc.assert(
      fc.property(fc.array(fc.nat(), { minLength: 3, maxLength: 8 }), fc.nat(), (picked, seed) => {
        const workbook = farmOf(picked);
        if (isTyped) typeOnMadeRows(workbook, seed);
        const inputs = uncertainInputs(workbook, SEASON_CHANCES.plan);
        const branch = workbook.branch();
        const drawn = ASKED.map(({ figures, weekly }) => {
          const asked = { figures: figures.map(({ figure }) => figure), weekly };
          const draws = new Draws(workbook, { inputs, asked, from: 0, until: SEASONS }, streams(seed));
          expect(draws.step(SEASONS)).toBeUndefined();
          return draws.result();
        });
        const margins = new Set(drawn[0]?.figures[0]?.values);
        expect(margins.size).toBe(SEASONS);
        for (const season of [0, 7, SEASONS - 2, SEASONS - 1]) {
          const commands = inputs.map((input, i) => {
            return putInput(branch, input, { value: drawn[0]?.inputs[i]?.values[season] ?? 0, unit: undefined });
          });
          branch.do(commands, message('trial'));
          ASKED.forEach(({ figures, weekly }, k) => {
            const typed = figures.map(({ figure }) => numberOf(figureIn(branch, figure)) ?? Number.NaN);
            expect(drawn[k]?.figures.map(({ values }) => values[season])).toEqual(typed);
            weekly.forEach((figure, i) => {
              const found = drawn[k]?.weekly[i]?.weeks.flatMap(({ week, values }) => {
                const value = values[season] ?? Number.NaN;
                return Number.isNaN(value) ? [] : [[week, value]];
              });
              expect(found).toEqual([...weeklySums(branch, figure)].sort(([a], [b]) => a - b));
            });
          });
        }
      }),
      { numRuns: runs(1, 8) },
    );
  },
);
