// Drawn seasons of a plan whose shares are of things that are counted, with weeks, decisions that stay, and several workers, on a
// sheet small enough for its answers to be written down.

import { describe, expect, test } from 'vitest';
import {
  type Asked,
  type Chances,
  type Command,
  Draws,
  type Figure,
  figureIn,
  joinDrawn,
  message,
  numberOf,
  putInput,
  rowId,
  rowNamed,
  uncertainInputs,
} from '../../engine/index.ts';
import { streams } from '../../ui/chance.ts';
import { type Book, opened } from '../book.ts';
import { besideFarm, computed, entered, number, plain, sheet } from '../workbook/small.ts';

const COUNT = 2000;
/** Four standard errors: one such check in 16,000 fails by chance, and the seeds are fixed. */
const SURE = 4;

/** Two sowings: of each seed 80 % and 50 % come up; the second is sown from what the first's chance was meant to be. */
function sowings(): Book {
  const book = opened(
    besideFarm(
      [
        sheet('Sowings', {
          key: 'Sowing',
          columns: [
            entered('Sowing', { type: 'text' }),
            entered('Chance', number('%')),
            entered('Wanted', plain),
            entered('Ready', { type: 'date' }),
            computed('Sown', plain, 'ROUNDUP([Wanted] / [Chance]; 0)'),
            computed('Comes up', number('%'), '[Chance]'),
            computed('Plants', plain, '[Sown] * [Comes up]'),
          ],
        }),
        sheet('Weeks', {
          rows: { from: 'span', first: 'DATE(2027; 5; 3)', last: 'DATE(2027; 5; 30)', step: 'week', as: 'Week' },
          columns: [
            computed(
              'Plants',
              plain,
              'SUMIFS(Sowings[Plants]; Sowings[Ready]; ">=" & [Week]; Sowings[Ready]; "<" & ([Week] + 7 days))',
            ),
          ],
        }),
        sheet('Large weeks', {
          rows: { from: 'each', table: 'Weeks', as: 'Week', where: '[Week].[Plants] > 225' },
          columns: [computed('Plants', plain, '[Week].[Plants]')],
        }),
      ],
      {
        Sowings: [
          { Sowing: 'A', Chance: '80%', Wanted: 200, Ready: '2027-05-05' },
          { Sowing: 'B', Chance: '50%', Wanted: 30, Ready: '2027-05-05' },
          { Sowing: 'C', Chance: '80%', Wanted: 160, Ready: '2027-05-20' },
        ],
      },
    ),
  );
  const { workbook } = book;
  const row = rowId(workbook, 'sowings', rowNamed(workbook, 'sowings', 'C') ?? 0);
  workbook.do([{ command: 'set cell', sheet: 'sowings', row, column: 'chance', entry: '70..90%' }], message('trial'));
  return book;
}

const CHANCES: Chances = {
  plan: ['sowings'],
  decided: ['sowings/sown'],
  counted: [{ sheet: 'sowings', share: 'comes-up', of: 'sown', isLeft: false }],
};
const PLANTS: Figure = { figure: 'formula', formula: 'SUM(Sowings[Plants])' };
const LARGE: Figure = { figure: 'formula', formula: "SUM('Large weeks'[Plants])" };
const ASKED: Asked = {
  figures: [PLANTS, LARGE],
  weekly: [{ id: 'plants', name: 'Plants', sheet: 'weeks', date: 'week', column: 'plants' }],
};

function drawn({ workbook }: Book, from: number, until: number, chances?: Chances) {
  const inputs = uncertainInputs(workbook, ['sowings']);
  const draws = new Draws(workbook, { inputs, asked: ASKED, from, until, ...(chances ? { chances } : {}) }, streams(4));
  expect(draws.step(until - from)).toBeUndefined();
  return draws.result();
}

function meanAndVariance(values: Float64Array) {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return { mean, variance: values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1) };
}

describe('counted shares', () => {
  const book = sowings();
  const all = drawn(book, 0, COUNT, CHANCES);

  test('come out as whole numbers with the mean and spread of binomial ones, and sowings add up', () => {
    const [first, , third] = all.weekly[0]?.weeks ?? [];
    expect(all.weekly[0]?.weeks.length).toBe(4);
    const plants = first?.values ?? new Float64Array();
    expect(plants.every((value) => Math.abs(value - Math.round(value)) < 1e-9)).toBe(true);
    // A: 250 seeds at 80 %; B: 60 at 50 %. Sums of binomial counts have the sums of their means n p and variances n p (1 - p).
    const [mean, variance] = [200 + 30, 40 + 15];
    const found = meanAndVariance(plants);
    expect(Math.abs(found.mean - mean)).toBeLessThan(SURE * Math.sqrt(variance / COUNT));
    // The variance of a variance of near normal values is 2 v² / (n - 1).
    expect(Math.abs(found.variance - variance)).toBeLessThan(SURE * variance * Math.sqrt(2 / (COUNT - 1)));
    // C: 200 seeds, their chance triangular from 70 to 90 %: variance n E[p (1 - p)] + n² Var p, Var p = 0.2² / 24.
    const spread = 0.04 / 24;
    const ofMixture = 200 * (0.8 * 0.2 - spread) + 200 ** 2 * spread;
    const mixed = meanAndVariance(third?.values ?? new Float64Array());
    expect(Math.abs(mixed.mean - 160)).toBeLessThan(SURE * Math.sqrt(ofMixture / COUNT));
    expect(Math.abs(mixed.variance - ofMixture)).toBeLessThan(SURE * ofMixture * Math.sqrt(2 / (COUNT - 1)));
  });

  test('what is decided stays, and without chances seed follows the chance drawn', () => {
    // As many are wanted as come up: seed that follows leaves no spread but that of whole seeds.
    const follows = drawn(book, 0, 50).figures[0]?.values ?? new Float64Array();
    expect(Math.max(...follows) - Math.min(...follows)).toBeLessThan(1);
    const stays = all.figures[0]?.values ?? new Float64Array();
    expect(Math.max(...stays) - Math.min(...stays)).toBeGreaterThan(60);
  });

  test('seasons shared by workers are those of one, to the bit', () => {
    const parts = [drawn(book, 0, 30, CHANCES), drawn(book, 30, 31, CHANCES), drawn(book, 31, 100, CHANCES)];
    expect(joinDrawn(parts)).toEqual(drawn(book, 0, 100, CHANCES));
  });

  test('a season drawn is the season typed, rows that come and go with it', () => {
    const { workbook } = book;
    const { inputs, figures } = drawn(book, 0, 60);
    const branch = workbook.branch();
    const [input] = uncertainInputs(workbook, ['sowings']);
    if (input === undefined) throw new Error('no input');
    const typed = Array.from(inputs[0]?.values ?? [], (value) => {
      const command: Command = putInput(branch, input, { value, unit: undefined });
      branch.do([command], message('trial'));
      return [PLANTS, LARGE].map((figure) => numberOf(figureIn(branch, figure)));
    });
    expect(Array.from(figures[0]?.values ?? [])).toEqual(typed.map(([plants]) => plants));
    expect(Array.from(figures[1]?.values ?? [])).toEqual(typed.map(([, large]) => large));
    // Of drawn counts the large weeks are those with more than 225 plants.
    const sums = all.weekly[0]?.weeks.map(({ values }) => values) ?? [];
    const large = Array.from({ length: COUNT }, (_, at) => {
      return sums.reduce((sum, values) => sum + ((values[at] ?? 0) > 225 ? (values[at] ?? 0) : 0), 0);
    });
    expect(Array.from(all.figures[1]?.values ?? [])).toEqual(large);
    expect(Math.min(...large)).toBe(0);
    expect(Math.max(...large)).toBeGreaterThan(225);
  });
});

describe('years', () => {
  test('are warmer or colder by whole months, normally by what the month varies, low and high together', () => {
    const degrees = { type: 'temperature' } as const;
    const { workbook } = opened(
      besideFarm(
        [
          sheet('Months', {
            key: 'Month',
            columns: [entered('Month', { type: 'text' }), entered('Number', plain), entered('Spread', number('Cdeg'))],
          }),
          sheet('Days', {
            rows: { from: 'span', first: 'DATE(2027; 5; 31)', last: 'DATE(2027; 6; 3)', step: 'day', as: 'Day' },
            columns: [computed('Low', degrees, '5 degC'), computed('High', degrees, '15 degC')],
          }),
        ],
        {
          Months: [
            { Month: 'May', Number: '5', Spread: '1 Cdeg' },
            { Month: 'June', Number: '6', Spread: '2 Cdeg' },
          ],
        },
      ),
    );
    const figures: Figure[] = ['AVERAGE(Days[High])', 'AVERAGE(Days[Low])'].map((formula) => ({
      figure: 'formula',
      formula,
    }));
    const years = {
      days: { sheet: 'days', date: 'day', columns: ['low', 'high'] },
      months: { sheet: 'months', number: 'number', spread: 'spread' },
    };
    const chances: Chances = { plan: [], decided: [], counted: [], years };
    const order = { inputs: [], asked: { figures, weekly: [] }, from: 0, until: COUNT, chances };
    const draws = new Draws(workbook, order, streams(2));
    expect(draws.step(COUNT)).toBeUndefined();
    const [high, low] = draws.result().figures.map(({ values }) => values);
    const { mean, variance } = meanAndVariance(high ?? new Float64Array());
    // One day of four is in May: the mean moves by a quarter of May's 1 and three quarters of June's 2 degrees.
    const expected = 0.25 ** 2 + 1.5 ** 2;
    expect(Math.abs(mean - (273.15 + 15))).toBeLessThan(SURE * Math.sqrt(expected / COUNT));
    expect(Math.abs(variance - expected)).toBeLessThan(SURE * expected * Math.sqrt(2 / (COUNT - 1)));
    expect(high?.every((value, at) => Math.abs(value - (low?.[at] ?? 0) - 10) < 1e-9)).toBe(true);
  });

  test('that were measured are drawn whole, once there are ten of them', () => {
    const names = Array.from({ length: 12 }, (_, at) => `Month ${at + 1}`);
    const degrees = { type: 'temperature' } as const;
    // In year n May was n and June 10 n degrees warmer, so no mixture of two years looks like a year.
    const measured = Array.from({ length: 10 }, (_, n) => ({
      Year: String(2000 + n),
      ...Object.fromEntries(names.map((name, at) => [name, `${at === 4 ? n : at === 5 ? 10 * n : 0} Cdeg`])),
    }));
    const drawn = (count: number): readonly Float64Array[] => {
      const { workbook } = opened(
        besideFarm(
          [
            sheet('Months', {
              key: 'Month',
              columns: [
                entered('Month', { type: 'text' }),
                entered('Number', plain),
                entered('Spread', number('Cdeg')),
              ],
            }),
            sheet('Years', {
              key: 'Year',
              columns: [entered('Year', { type: 'text' }), ...names.map((name) => entered(name, number('Cdeg')))],
            }),
            sheet('Days', {
              rows: { from: 'span', first: 'DATE(2027; 5; 31)', last: 'DATE(2027; 6; 1)', step: 'day', as: 'Day' },
              columns: [computed('Low', degrees, '5 degC'), computed('High', degrees, '15 degC')],
            }),
          ],
          { Months: [{ Month: 'May', Number: '5', Spread: '1 Cdeg' }], Years: measured.slice(0, count) },
        ),
      );
      const figures: Figure[] = ['MIN(Days[High])', 'MAX(Days[High])'].map((formula) => ({
        figure: 'formula',
        formula,
      }));
      const years = {
        days: { sheet: 'days', date: 'day', columns: ['low', 'high'] },
        months: { sheet: 'months', number: 'number', spread: 'spread' },
        own: { sheet: 'years', months: names.map((name) => name.toLowerCase().replace(' ', '-')) },
      };
      const chances: Chances = { plan: [], decided: [], counted: [], years };
      const draws = new Draws(
        workbook,
        { inputs: [], asked: { figures, weekly: [] }, from: 0, until: COUNT, chances },
        streams(2),
      );
      expect(draws.step(COUNT)).toBeUndefined();
      return draws.result().figures.map(({ values }) => values.map((kelvin) => kelvin - 273.15 - 15));
    };
    const [may, june] = drawn(10);
    const seen = new Map<number, number>();
    for (const [at, warmer] of (may ?? []).entries()) {
      expect(june?.[at]).toBeCloseTo(10 * warmer, 6);
      seen.set(Math.round(warmer), (seen.get(Math.round(warmer)) ?? 0) + 1);
    }
    expect([...seen.keys()].sort((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
    for (const count of seen.values()) {
      expect(Math.abs(count - COUNT / 10)).toBeLessThan(SURE * Math.sqrt(COUNT * 0.1 * 0.9));
    }
    // With nine the spread of the months holds, which leaves June as it is.
    const warmest = drawn(9)[1] ?? new Float64Array();
    expect(warmest.length).toBe(COUNT);
    expect(Math.max(...warmest)).toBeLessThan(10);
  });
});
