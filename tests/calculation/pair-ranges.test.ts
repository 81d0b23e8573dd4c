// Sheets of pairs whose condition compares one row with the other: the pairs there are, against all pairs looked at in plain
// JavaScript, through edits of what is compared, of which rows there are, and of what the rest of the condition says.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Book, type Edit, opened } from '../book.ts';
import { besideFarm, computed, entered, plain, sheet } from '../workbook/small.ts';

interface Planting {
  readonly name: string;
  readonly from: number | '';
  readonly to: number | '';
}

interface Week {
  readonly name: string;
  readonly start: number | '';
}

type Meets = (planting: Planting, week: Week) => boolean;

const filled = (...values: readonly (number | '')[]): boolean => values.every((value) => value !== '');
const within: Meets = ({ from, to }, { start }) =>
  filled(from, to, start) && Number(from) <= Number(start) && Number(start) < Number(to);

/** Conditions and what they mean; a blank on either side leaves the condition open, and no pair. */
const CONDITIONS: readonly (readonly [where: string, meets: Meets])[] = [
  ['AND([Planting].[From] <= [Week].[Start]; [Week].[Start] < [Planting].[To])', within],
  [
    '[Week].[Start] > [Planting].[From] + [Planting].[To]',
    ({ from, to }, { start }) => filled(from, to, start) && Number(start) > Number(from) + Number(to),
  ],
  [
    'AND([Planting].[From] < 2 * [Week].[Start]; [Planting].[To] <> 3)',
    ({ from, to }, { start }) => filled(from, to, start) && Number(from) < 2 * Number(start) && to !== 3,
  ],
  [
    'AND([Week].[Start] >= [Planting].[From]; [Week].[Start] <= [Planting].[To]; [Week].[Half] > [Planting].[From] / 4)',
    ({ from, to }, { start }) =>
      filled(from, to, start) &&
      Number(start) >= Number(from) &&
      Number(start) <= Number(to) &&
      Number(start) / 2 > Number(from) / 4,
  ],
  // What is asked of one of the two alone.
  ['[Week].[Start] > 2', (_, { start }) => filled(start) && Number(start) > 2],
  [
    'AND([Week].[Start] > 2; NOT([Planting].[From] = 3))',
    ({ from }, { start }) => filled(from, start) && Number(start) > 2 && from !== 3,
  ],
  [
    'AND([Planting].[From] <= [Week].[Start]; ISBLANK([Planting].[To]); [Week].[Start] <> 4)',
    ({ from, to }, { start }) => filled(from, start) && Number(from) <= Number(start) && to === '' && start !== 4,
  ],
  // No part that must hold: every pair is looked at.
  [
    'OR([Planting].[From] <= [Week].[Start]; [Week].[Start] = 0)',
    ({ from }, { start }) => {
      if (start === 0) return true;
      return filled(from, start) && Number(from) <= Number(start);
    },
  ],
];

function workbook(where: string, plantings: readonly Planting[], weeks: readonly Week[]): Book {
  const TEXT = { type: 'text' } as const;
  return opened(
    besideFarm(
      [
        sheet('Plantings', {
          key: 'Planting',
          columns: [entered('Planting', TEXT), entered('From', plain), entered('To', plain)],
        }),
        sheet('Weeks', {
          key: 'Week',
          columns: [entered('Week', TEXT), entered('Start', plain), computed('Half', plain, '[Start] / 2')],
        }),
        sheet('Meetings', {
          rows: { from: 'pairs', tables: ['Plantings', 'Weeks'], as: ['Planting', 'Week'], where },
          columns: [computed('All', plain, 'ROWS(Meetings)')],
        }),
      ],
      {
        Plantings: plantings.map(({ name, from, to }) => ({ Planting: name, From: from, To: to })),
        Weeks: weeks.map(({ name, start }) => ({ Week: name, Start: start })),
      },
    ),
  );
}

function met(book: Book): readonly string[] {
  return [...book.rows('Meetings')].map(
    (row) => `${book.cell('Meetings', row, 'Planting').text} in ${book.cell('Meetings', row, 'Week').text}`,
  );
}

const figure = fc.oneof(fc.nat({ max: 6 }), fc.constant('' as const));
const change = fc.record({
  table: fc.constantFrom('Plantings', 'Weeks'),
  at: fc.nat({ max: 9 }),
  what: fc.constantFrom('From', 'To', 'insert', 'remove'),
  figure,
});

test.each(CONDITIONS)('%s', (where, meets) => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(figure, figure), { maxLength: 4 }),
      fc.array(figure, { maxLength: 4 }),
      fc.array(change, { maxLength: 12 }),
      (spans, starts, changes) => {
        let plantings: readonly Planting[] = spans.map(([from, to], i) => ({ name: `P${i}`, from, to }));
        let weeks: readonly Week[] = starts.map((start, i) => ({ name: `W${i}`, start }));
        const book = workbook(where, plantings, weeks);
        const agree = (): void => {
          const wanted = plantings.flatMap((planting) =>
            weeks.filter((week) => meets(planting, week)).map((week) => `${planting.name} in ${week.name}`),
          );
          expect(met(book)).toEqual(wanted);
        };
        agree();
        changes.forEach(({ table, at, what, figure: value }, step) => {
          const list = table === 'Plantings' ? plantings : weeks;
          const row = book.rows(table)[at % Math.max(1, list.length)];
          const place = at % Math.max(1, list.length);
          const entry = String(value);
          const name = `${table === 'Plantings' ? 'P' : 'W'}new${step}`;
          const edits: Edit[] = [];
          if (what === 'insert') {
            if (table === 'Plantings') {
              edits.push({ edit: 'insert row', table, entries: { Planting: name, From: entry, To: '5' } });
              plantings = [...plantings, { name, from: value, to: 5 }];
            } else {
              edits.push({ edit: 'insert row', table, entries: { Week: name, Start: entry } });
              weeks = [...weeks, { name, start: value }];
            }
          } else if (row !== undefined && what === 'remove') {
            edits.push({ edit: 'remove row', table, row });
            plantings = plantings.filter((_, i) => table !== 'Plantings' || i !== place);
            weeks = weeks.filter((_, i) => table !== 'Weeks' || i !== place);
          } else if (row !== undefined && table === 'Plantings') {
            edits.push({ edit: 'cell', table, row, column: what, entry });
            const changed = what === 'From' ? { from: value } : { to: value };
            plantings = plantings.map((planting, i) => (i === place ? { ...planting, ...changed } : planting));
          } else if (row !== undefined) {
            edits.push({ edit: 'cell', table, row, column: 'Start', entry });
            weeks = weeks.map((week, i) => (i === place ? { ...week, start: value } : week));
          }
          book.edit(edits);
          agree();
        });
      },
    ),
    { numRuns: 40 },
  );
});
