// Ranges as people type them, and drawn seasons against what the mathematics of their distributions says.

import { beforeAll, describe, expect, test } from 'vitest';
import {
  type Command,
  cellView,
  chanceInWeek,
  chanceOf,
  Draws,
  drawnFrom,
  type Figure,
  hangsOn,
  intervalOf,
  leastShare,
  quantile,
  readWorkbookFile,
  rows,
  shareOfSpread,
  sharesOf,
  sheetView,
  type TypeDeclaration,
  tryEntry,
  uncertainInputs,
  type Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { streams } from '../../ui/chance.ts';
import { openFarm, shelf, VERSION_2 } from '../document/farm.ts';

const MESSAGE = { code: 'work', parts: {} };
const COUNT = 2000;
/** Four standard errors: one such check in 16,000 fails by chance, and the seeds are fixed. */
const SURE = 4;

function set(workbook: Workbook, at: number, column: string, entry: string) {
  const row = workbook.document.rowIdOf('plantings', rows(workbook, 'plantings')[at] ?? 0) ?? '';
  const command: Command = { command: 'set cell', sheet: 'plantings', row, column, entry };
  return workbook.do([command], MESSAGE);
}

function view(workbook: Workbook, column: string) {
  return cellView(workbook, 'plantings', rows(workbook, 'plantings')[0] ?? 0, column);
}

describe('ranges as they are typed', () => {
  test.each([
    ['length', '25..35 ft', '30', '25..35'],
    ['length', '20..25..35', '25', '20..25..35'],
    ['spacing', '20..30 cm', '25 cm', '20 cm..30 cm'],
    ['sown', '1 Feb..11 Feb', '6 Feb 2027', '1 Feb 2027..11 Feb 2027'],
  ])('%s %s', (column, entry, text, range) => {
    const workbook = openFarm();
    expect(set(workbook, 0, column, entry).refused).toBe(false);
    expect(view(workbook, column)).toMatchObject({ text, range });
    // The editor opens with the range, and typing that again changes nothing.
    expect(view(workbook, column).entry).toBe(range);
    set(workbook, 0, column, range);
    expect(view(workbook, column)).toMatchObject({ text, range });
    const read = readWorkbookFile(writeWorkbookFile(workbook.data()), shelf(VERSION_2));
    if (!read.ok) throw new Error(read.why);
    expect(view(openFarm(read.data), column).range).toBe(range);
    set(workbook, 0, column, column === 'sown' ? '1 Mar' : '30');
    expect(view(workbook, column).range).toBe('');
    workbook.undo();
    expect(view(workbook, column).range).toBe(range);
  });

  test.each([
    ['80..90%', 'share', { number: 85, unit: '%' }],
    ['85..95%', 'share', { number: 90, unit: '%' }],
    ['80..85%', 'share', { number: 82.5, unit: '%' }],
    ['9.1..9.2 m', 'length', { number: 9.15, unit: 'm' }],
    ['8..9.3 in', 'length', { number: 8.65, unit: 'in' }],
    ['-1..2 C', 'warmth', { number: 0.5, unit: 'degC' }],
  ])('the middle of %s is kept as a person would write it', (entry, which, content) => {
    const workbook = openFarm();
    const add = (name: string, type: TypeDeclaration): Command => ({
      command: 'add column',
      sheet: 'plantings',
      name,
      type,
    });
    const unit = { us: '%', si: '%' };
    workbook.do([add('share', { type: 'number', unit }), add('warmth', { type: 'temperature' })], MESSAGE);
    const column = sheetView(workbook, 'plantings')?.columns.find(({ name }) => name === which)?.id ?? which;
    expect(set(workbook, 0, column, entry).refused).toBe(false);
    const { document } = workbook;
    const row = document.rowIdOf('plantings', rows(workbook, 'plantings')[0] ?? 0) ?? '';
    expect(document.contentOf('plantings', row, column)).toMatchObject(content);
  });

  test.each([
    ['35..25 ft', '35 to 25 ft is not in order: write the lowest first and the highest last.'],
    ['25..', 'Write a range as two figures, 80..90%, or as low, likely and high, 75..80..90%.'],
    ['1..2..3..4', 'Write a range as two figures, 80..90%, or as low, likely and high, 75..80..90%.'],
  ])('%s is refused in one sentence', (entry, why) => {
    expect(set(openFarm(), 0, 'length', entry)).toMatchObject({ refused: true, why });
  });

  test('what is typed is said while it is typed', () => {
    expect(tryEntry(openFarm(), 'plantings', 'length', '25..35 ft')).toEqual({
      ok: true,
      text: '25 to 35 ft, likely 30 ft',
    });
  });
});

const LENGTHS: Figure = { figure: 'formula', formula: 'SUM(Plantings[Length])' };

function drawn(workbook: Workbook, figures: readonly Figure[], seed = 1, count = COUNT) {
  const inputs = uncertainInputs(workbook, ['plantings']);
  const order = { inputs, asked: { figures, weekly: [] }, from: 0, until: count };
  const draws = new Draws(workbook, order, streams(seed));
  expect(draws.step(Math.ceil(count / 2))).toBeUndefined();
  expect(draws.isDone).toBe(false);
  draws.step(count);
  return draws.result();
}

/** Variance of a triangular value (Kotz & van Dorp 2004, Beyond Beta, equation 1.9). */
function variance(low: number, likely: number, high: number): number {
  return (low ** 2 + likely ** 2 + high ** 2 - low * likely - low * high - likely * high) / 18;
}

const FOOT = 0.3048;

describe('drawn seasons', () => {
  let workbook: Workbook;
  beforeAll(() => {
    workbook = openFarm();
    set(workbook, 0, 'length', '20..30..60 ft');
    set(workbook, 1, 'length', '20..30 ft');
    set(workbook, 2, 'length', '10 ft');
  });

  test('mean, spread and shares of a sum are those of its parts', () => {
    const { inputs, figures } = drawn(workbook, [LENGTHS]);
    expect(inputs.map(({ name }) => name)).toEqual(['Plantings / P1 / Length', 'Plantings / P2 / Length']);
    const values = figures[0]?.values ?? new Float64Array();
    const [one, other] = [variance(20, 30, 60) * FOOT ** 2, variance(20, 25, 30) * FOOT ** 2];
    const mean = (110 / 3 + 25 + 10) * FOOT;
    const found = intervalOf(values);
    expect(Math.abs((found?.mean ?? 0) - mean)).toBeLessThan(SURE * Math.sqrt((one + other) / COUNT));
    // By hand: of the variance of 69.4 + 4.2 ft² the first has 94%.
    const shares = inputs.map((input) => shareOfSpread(input.values, values));
    expect(shares[0]).toBeCloseTo(one / (one + other), 1);
    expect(shares[1]).toBeCloseTo(other / (one + other), 1);
    expect((shares[0] ?? 0) + (shares[1] ?? 0)).toBeCloseTo(1, 1);
  });

  test('quantiles and chances of one input are those of the triangular distribution', () => {
    const length: Figure = { figure: 'formula', formula: 'SUMIFS(Plantings[Length]; Plantings[Planting]; "P1")' };
    const { figures } = drawn(workbook, [length]);
    const values = figures[0]?.values ?? new Float64Array();
    // P(X <= x) = (x - 20)² / (40 × 10) up to 30 ft: a quarter lies below 30 ft.
    const below = chanceOf(values, 30 * FOOT, 'at most');
    expect(Math.abs((below?.chance ?? 0) - 0.25)).toBeLessThan(SURE * Math.sqrt((0.25 * 0.75) / COUNT));
    expect(below?.error).toBeCloseTo(Math.sqrt((0.25 * 0.75) / COUNT), 3);
    // The median: 60 - sqrt(0.5 × 40 × 30) = 35.5 ft, where the density is 2 (60 - x) / (40 × 30).
    const median = 60 - Math.sqrt(600);
    const density = (2 * (60 - median)) / 1200;
    const found = (intervalOf(values)?.p50 ?? 0) / FOOT;
    expect(Math.abs(found - median)).toBeLessThan((SURE * 0.5) / Math.sqrt(COUNT) / density);
  });

  test('the same seed gives the same to the bit, and another range leaves the other inputs as they were', () => {
    const first = drawn(workbook, [LENGTHS], 7, 200);
    expect(drawn(workbook, [LENGTHS], 7, 200)).toEqual(first);
    expect(drawn(workbook, [LENGTHS], 8, 200).inputs[0]).not.toEqual(first.inputs[0]);
    const more = workbook.branch();
    set(more, 2, 'length', '5..15 ft');
    const second = drawn(more, [LENGTHS], 7, 200);
    expect(second.inputs.slice(0, 2)).toEqual(first.inputs);
    expect(second.inputs.length).toBe(3);
    // Bits kept from the first run, so that a change of the generator or of its seeding shows on any machine.
    expect(Array.from({ length: 3 }, streams(1)('a/b/c'))).toEqual(STREAM);
  });

  test('figures of sheets whose rows follow from others are drawn too, and agree with those read directly', () => {
    const order: Figure = { figure: 'formula', formula: 'SUM(Order[Needed])' };
    const seeds: Figure = { figure: 'formula', formula: 'SUM(Varieties[Seeds])' };
    const [whole, direct] = [drawn(workbook, [order], 3, 50), drawn(workbook, [seeds], 3, 50)];
    expect(whole.figures[0]?.values).toEqual(direct.figures[0]?.values);
    expect(new Set(whole.figures[0]?.values).size).toBeGreaterThan(20);
  });
});

/** Of xoroshiro128+ seeded by the FNV-1a of seed 1 and 'a/b/c'. */
const STREAM = [0.8163606209298335, 0.878282051287889, 0.7113435317965007];

describe('drawing', () => {
  test('a value lies between its ends, and the middle of chance at the median', () => {
    const input = { sheet: '', row: '', column: '', name: '', whole: false, low: 0, likely: 2, high: 4 };
    expect(drawnFrom(input, 0)).toBe(0);
    expect(drawnFrom(input, 0.5)).toBe(2);
    expect(drawnFrom(input, 1 - 2 ** -53)).toBeCloseTo(4, 6);
    expect(drawnFrom({ ...input, likely: 0 }, 0.75)).toBe(2);
    expect(drawnFrom({ ...input, whole: true }, 0.4)).toBe(2);
  });

  test('a sum of twelve is near normal: its 10 and 90% values lie 1.28 deviations from the mean', () => {
    const next = Array.from({ length: 12 }, (_, i) => streams(5)(`input ${i}`));
    const input = { sheet: '', row: '', column: '', name: '', whole: false, low: 0, likely: 1, high: 2 };
    const sums = Float64Array.from({ length: 20_000 }, () =>
      next.reduce((sum, one) => sum + drawnFrom(input, one()), 0),
    );
    const found = intervalOf(sums);
    // Mean 12, variance 12/6; normal quantile 1.2816, density there 0.1755: error sqrt(0.1 × 0.9 / n) / density.
    const deviation = Math.sqrt(2);
    const error = (Math.sqrt(0.09 / 20_000) / 0.1755) * deviation;
    expect(Math.abs((found?.p90 ?? 0) - 12 - 1.2816 * deviation)).toBeLessThan(SURE * error);
    expect(Math.abs((found?.p10 ?? 0) - 12 + 1.2816 * deviation)).toBeLessThan(SURE * error);
  });

  test('shares of inputs that have no part are nothing, and a figure without spread hangs on nothing', () => {
    const next = streams(9);
    const [a, b] = ['a', 'b'].map((id) => Float64Array.from({ length: 2000 }, next(id)));
    expect(shareOfSpread(a ?? new Float64Array(), b ?? new Float64Array())).toBeLessThan(0.03);
    expect(shareOfSpread(a ?? new Float64Array(), a ?? new Float64Array())).toBeGreaterThan(0.99);
    expect(shareOfSpread(a ?? new Float64Array(), new Float64Array(2000))).toBe(0);
  });

  test('noise is not named among what a figure hangs on, and what is left out is known', () => {
    const next = streams(3);
    const inputs = Array.from({ length: 300 }, (_, at) => {
      return { id: '', name: `input ${at}`, values: Float64Array.from({ length: 2000 }, next(`input ${at}`)) };
    });
    // Of independent inputs of one spread, 3 and 4 times as much: 9/26 and 16/26 of the variance, and a twenty-sixth.
    const figure = Float64Array.from({ length: 2000 }, (_, at) => {
      const of = (input: number): number => inputs[input]?.values[at] ?? 0;
      return 3 * of(7) + 4 * of(8) + of(9);
    });
    const found = hangsOn(inputs, figure, 2);
    expect(found?.named.map(({ name }) => name)).toEqual(['input 8', 'input 7']);
    expect(found?.named[0]?.share).toBeCloseTo(16 / 26, 1);
    expect(found?.more).toBe(1);
    expect(inputs.filter(({ values }) => shareOfSpread(values, figure) > 0.005).length).toBeGreaterThan(3);
    expect(hangsOn(inputs, new Float64Array(2000).fill(4), 2)).toBeUndefined();
  });

  test('the least share told from noise is that of F at one in twenty drawings', () => {
    // F of 1 and 98 degrees of freedom exceeds 3.94 in 5 % (any table of F), 3.94 / (3.94 + 98) of the variance, less 1 of 99 by chance.
    expect(leastShare(100, 1)).toBeCloseTo(3.938 / (3.938 + 98) - (1 / 99) * (98 / 101.938) * (99 / 98), 4);
    expect(leastShare(2000, 300)).toBeLessThan(leastShare(500, 300));
    expect(leastShare(2000, 3)).toBeLessThan(leastShare(2000, 300));
    expect(leastShare(10, 3)).toBe(1);
    // Drawn at random with no part, any of 20 inputs is named in one of twenty drawings at most, but for chance.
    const next = Array.from({ length: 21 }, (_, at) => streams(11)(`input ${at}`));
    const named = Array.from({ length: 200 }, () => {
      const [figure = new Float64Array(), ...others] = next.map((one) => Float64Array.from({ length: 200 }, one));
      return hangsOn(
        others.map((values) => ({ id: '', name: '', values })),
        figure,
        5,
      )?.named.length;
    }).filter((count) => count !== 0).length;
    expect(named / 200).toBeLessThan(0.05 + SURE * Math.sqrt((0.05 * 0.95) / 200));
  });

  test('a season without a week runs short in none', () => {
    const short = Float64Array.from([0, 2, Number.NaN, Number.NaN]);
    expect(chanceOf(short, 0, 'at most')?.chance).toBe(0.5);
    expect(chanceInWeek(short, 0, 'at most')?.chance).toBe(0.75);
    expect(chanceInWeek(Float64Array.of(Number.NaN), 0, 'at most')).toBeUndefined();
  });

  test('quantiles are in order and stand between the values', () => {
    const sorted = Float64Array.of(1, 2, 3, 4, 5);
    expect([0, 0.1, 0.5, 0.9, 1].map((share) => quantile(sorted, share))).toEqual([1, 1.4, 3, 4.6, 5]);
    expect(intervalOf(Float64Array.of(Number.NaN))).toBeUndefined();
    expect(chanceOf(Float64Array.of(Number.NaN), 1, 'at least')).toBeUndefined();
  });
});

test('seasons are shared out whole, however few there are', () => {
  const whole = (count: number, among: number): readonly number[] =>
    sharesOf(count, among).flatMap(([from, until]) => Array.from({ length: until - from }, (_, at) => from + at));
  for (const count of [1, 2, 3, 7, 2000]) {
    for (const among of [1, 2, 3, 4]) expect(whole(count, among)).toEqual(Array.from({ length: count }, (_, at) => at));
  }
});
