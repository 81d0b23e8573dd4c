// Seeking a value and tables of one input against another, on figures whose answers are worked out by hand.

import { describe, expect, test } from 'vitest';
import {
  type Command,
  type Figure,
  type Input,
  isoDate,
  numberOf,
  oneWay,
  readInput,
  readInputs,
  rows,
  seek,
  twoWay,
  uncertainInputs,
  type Workbook,
} from '../../engine/index.ts';
import { drawnFrom } from '../../engine/queries/draws.ts';
import { onions } from '../../sheets-templates/onions.ts';
import { startOf } from '../../sheets-templates/season.ts';
import { started } from '../book.ts';
import { everything, openFarm } from '../document/farm.ts';

const MESSAGE = { code: 'work', parts: {} };
const FOOT = 0.3048;

function inputOf(workbook: Workbook, column: string): Input {
  const row = workbook.document.rowIdOf('plantings', rows(workbook, 'plantings')[0] ?? 0) ?? '';
  return { sheet: 'plantings', row, column };
}

function ask(workbook: Workbook, formula: string, goal: number, from: string, to: string, column = 'length') {
  const input = inputOf(workbook, column);
  const end = (text: string) => {
    const read = readInput(workbook, input, text);
    if (!read.ok) throw new Error(read.why);
    return read.values[0] ?? { value: 0, unit: undefined };
  };
  const [low, high] = [end(from), end(to)];
  const figure: Figure = { figure: 'formula', formula };
  return seek(workbook, { input, from: low.value, to: high.value, unit: high.unit, figure, goal, figureName: 'It' });
}

const LENGTH = 'SUMIFS(Plantings[Length]; Plantings[Planting]; "P1")';

describe('seek', () => {
  test('a smooth figure is met to a hundred-millionth of the span', () => {
    // 1/length of 40 ft.
    const found = ask(openFarm(), `1 ft / ${LENGTH}`, 1 / 40, '10 ft', '100 ft');
    expect(found).toMatchObject({ answer: 'one', says: 'It is 0.025 at 40 ft.' });
    if (found.answer !== 'one') throw new Error(found.says);
    expect(Math.abs((found.places[0]?.from ?? 0) / FOOT - 40)).toBeLessThan(1e-5);
  });

  test('a figure of whole steps stays at its goal for a while', () => {
    // 8 in of spacing: 45 places from 30 ft to 30 ft 8 in.
    const found = ask(openFarm(), 'SUMIFS(Plantings[Stations]; Plantings[Planting]; "P1")', 45, '10 ft', '50 ft');
    if (found.answer !== 'one') throw new Error(found.says);
    expect((found.places[0]?.from ?? 0) / FOOT).toBeCloseTo(30, 5);
    expect((found.places[0]?.to ?? 0) / FOOT).toBeCloseTo(30 + 8 / 12, 5);
    expect(found.says).toBe('It is 45 stations from 30 ft to 30.667 ft.');
  });

  test('a figure that jumps over its goal is told as a step', () => {
    const found = ask(openFarm(), `IF(${LENGTH} < 20 ft; 1; 5)`, 3, '10 ft', '50 ft');
    expect(found).toMatchObject({ answer: 'one', says: 'It steps over 3 at 20 ft, from 1 to 5.' });
  });

  test('several answers are all given', () => {
    // (length - 30 ft)² = 100 ft² at 20 ft and at 40 ft.
    const found = ask(openFarm(), `(${LENGTH} - 30 ft) * (${LENGTH} - 30 ft) / 1 ft^2`, 100, '11 ft', '50 ft');
    expect(found).toMatchObject({
      answer: 'several',
      says: 'It gets there in 2 places: it is 100 at 20 ft; it is 100 at 40 ft.',
    });
  });

  test('a goal that is touched between even steps is met, and one passed twice between them is met twice', () => {
    // A corner at 33.3 ft, and a top of 400 at 33.3 ft: 20² less the square of how far it is from there.
    const off = `(${LENGTH} / 1 ft - 33.3)`;
    const corner = ask(openFarm(), `ABS(${off}) * 10`, 0, '5 ft', '100 ft');
    expect(corner).toMatchObject({ answer: 'one', says: 'It is 0 at 33.3 ft.' });
    expect(ask(openFarm(), `400 - ${off} * ${off}`, 400, '5 ft', '100 ft')).toMatchObject({ answer: 'one' });
    const twice = ask(openFarm(), `400 - ${off} * ${off}`, 399.99, '5 ft', '100 ft');
    if (twice.answer !== 'several') throw new Error(twice.says);
    expect(twice.places.map(({ from }) => from / FOOT)).toEqual([expect.closeTo(33.2, 5), expect.closeTo(33.4, 5)]);
    // A top whose figure reads as the goal does, but lies beyond it.
    const close = ask(openFarm(), `400 - ${off} * ${off}`, 399.9999, '5 ft', '100 ft');
    if (close.answer !== 'several') throw new Error(close.says);
    expect(close.places.map(({ from }) => from / FOOT)).toEqual([expect.closeTo(33.29, 4), expect.closeTo(33.31, 4)]);
    const never = ask(openFarm(), `400 - ${off} * ${off}`, 400.1, '5 ft', '100 ft');
    expect(never).toMatchObject({ answer: 'none', says: expect.stringContaining('with 400.') });
  });

  test('where there is none, the nearest is named', () => {
    const found = ask(openFarm(), `${LENGTH} / 1 ft`, 90, '10 ft', '50 ft');
    expect(found).toEqual({
      answer: 'none',
      places: [],
      says: 'From 10 ft to 50 ft, It stays between 10 and 50 and never reaches 90. It comes nearest at 50 ft, with 50.',
    });
    expect(ask(openFarm(), '7', 90, '10 ft', '50 ft')).toMatchObject({
      says: 'From 10 ft to 50 ft, It stays at 7 and never reaches 90.',
    });
  });

  test('a goal of nothing is met as any other', () => {
    const found = ask(openFarm(), `${LENGTH} / 1 ft - 40 + 1 / 3 - 1 / 3`, 0, '10 ft', '99 ft');
    expect(found).toMatchObject({ answer: 'one', says: expect.stringMatching(/^It is -?0 at 40 ft\.$/) });
  });

  test('a goal typed as the figure is shown is met at the end where the figure reads so', () => {
    // A third of 10 ft is shown as 3.333.
    const found = ask(openFarm(), `${LENGTH} / 3 ft`, 3.333, '10 ft', '50 ft');
    expect(found).toMatchObject({ answer: 'one', says: 'It is 3.333 at 10 ft.' });
  });

  test('the answer has the decimals with which, typed again, it gives the goal', () => {
    // The square root of 1,234.567 is 35.13640562...
    const found = ask(openFarm(), `${LENGTH} * ${LENGTH} * 1000 / 1 ft^2`, 1_234_567, '10 ft', '50 ft');
    const [, feet = ''] = /at ([\d.]+) ft\.$/.exec(found.says) ?? [];
    expect(Math.round(Number(feet) ** 2 * 1000)).toBe(1_234_567);
  });

  test('a plain count without decimals is sought, and drawn, in whole numbers', () => {
    const opened = started(
      onions(),
      startOf(onions().sheets, { title: 'Yard', season: 2027, today: 20_774, rows: {} }),
    );
    if (!opened.ok) throw new Error(opened.problems.join('\n'));
    const { workbook } = opened.workbook;
    const row = workbook.document.rowIdOf('farm', 0) ?? '';
    const input = { sheet: 'farm', row, column: 'season' };
    const figure: Figure = { figure: 'formula', formula: 'Farm[Season] - 2000' };
    const found = seek(workbook, { input, from: 2020, to: 2030, figure, goal: 24.5, figureName: 'It' });
    expect(found).toMatchObject({ answer: 'one', says: expect.stringContaining('from 24 to 25') });
    workbook.do([{ command: 'set cell', sheet: 'farm', row, column: 'season', entry: '2026..2029' }], MESSAGE);
    const [drawn] = uncertainInputs(workbook, []).filter(({ column }) => column === 'season');
    if (drawn === undefined) throw new Error('The season is no range.');
    const years = [0.05, 0.3, 0.6, 0.95].map((even) => drawnFrom(drawn, even));
    expect(years.filter((year) => !Number.isInteger(year))).toEqual([]);
    expect(years).toEqual(years.toSorted((a, b) => a - b));
  });

  test('dates are sought by whole days', () => {
    const formula = 'MAXIFS(Plantings[Ready]; Plantings[Planting]; "P1") - DATE(2027; 5; 1)';
    // Ready ten weeks after sowing: 1 May on sowing at 20 February.
    const found = ask(openFarm(), formula, 0, '2027-01-01', '2027-04-30', 'sown');
    expect(found).toMatchObject({ answer: 'one', says: 'It is 0 days at 20 Feb 2027.' });
  });

  test('a stretch of days at the goal holds no day that is not', () => {
    const formula = 'IF(DAY(MAXIFS(Plantings[Sown]; Plantings[Planting]; "P1")) = 25; 1; 0)';
    const found = ask(openFarm(), formula, 0, '2027-04-01', '2027-08-30', 'sown');
    expect('places' in found && found.places.map(({ from, to }) => [isoDate(from), isoDate(to)])).toEqual([
      ['2027-04-01', '2027-04-24'],
      ['2027-04-26', '2027-05-24'],
      ['2027-05-26', '2027-06-24'],
      ['2027-06-26', '2027-07-24'],
      ['2027-07-26', '2027-08-24'],
      ['2027-08-26', '2027-08-30'],
    ]);
  });

  test('what can’t be sought is refused in a sentence, and nothing is changed', () => {
    const workbook = openFarm();
    const before = everything(workbook);
    expect(ask(workbook, LENGTH, 1, '50 ft', '10 ft')).toEqual({
      answer: 'refused',
      says: 'The lower end must be below the upper one: swap them.',
    });
    expect(ask(workbook, '"a"', 1, '10 ft', '50 ft').answer).toBe('refused');
    const figure: Figure = { figure: 'formula', formula: '1' };
    const bed = { input: inputOf(workbook, 'bed'), from: 0, to: 1, figure, goal: 1, figureName: 'It' };
    expect(seek(workbook, bed)).toEqual({
      answer: 'refused',
      says: 'Bed holds no number or date: choose a cell that does.',
    });
    expect(everything(workbook)).toEqual(before);
  });
});

describe('values as they are written', () => {
  test.each([
    ['4..8 in by 2 in', [4, 6, 8]],
    ['4 in..8 in by 2', [4, 6, 8]],
    ['4 in; 1 ft', [4, 12]],
    ['6', [6]],
  ])('%s', (text, inches) => {
    const workbook = openFarm();
    const read = readInputs(workbook, inputOf(workbook, 'spacing'), text);
    if (!read.ok) throw new Error(read.why);
    expect(read.values.map(({ value }) => Number((value / 0.0254).toFixed(9)))).toEqual(inches);
  });

  test.each([
    ['8 in..4 in by 1 in', '8 in to 4 in runs backwards: write the smaller one first.'],
    ['4 in..8 in by 0', 'The step “0” must be above 0.'],
    ['4 in..8 in by 0.01 in', 'That makes 401 values: try 60 at most.'],
    ['4 in;', 'Write a value for Spacing.'],
  ])('%s is refused', (text, why) => {
    const workbook = openFarm();
    expect(readInputs(workbook, inputOf(workbook, 'spacing'), text)).toEqual({ ok: false, why });
  });

  test('dates step by days and weeks', () => {
    const workbook = openFarm();
    const read = readInputs(workbook, inputOf(workbook, 'sown'), '1 Feb..22 Feb by 1 week');
    if (!read.ok) throw new Error(read.why);
    expect(read.values.length).toBe(4);
  });
});

test('a table of one input against another gives what typing each pair would', () => {
  const workbook = openFarm();
  const before = everything(workbook);
  const figure: Figure = { figure: 'formula', formula: 'SUM(Varieties[Seeds])' };
  const down = { input: inputOf(workbook, 'length'), texts: ['10 ft', '20 ft', '45 ft'] };
  const across = { input: inputOf(workbook, 'spacing'), texts: ['4 in', '9 in'] };
  const at = ({ input, texts }: typeof down) => {
    const read = readInputs(workbook, input, texts.join(';'));
    if (!read.ok) throw new Error(read.why);
    return { input, values: read.values };
  };
  const table = twoWay(workbook, at(down), at(across), figure);
  if (!table.ok) throw new Error(table.why);
  const typed = down.texts.map((one) =>
    across.texts.map((other) => {
      const copy = openFarm();
      const set = (input: Input, entry: string): Command => ({ command: 'set cell', ...input, entry });
      copy.do([set(inputOf(copy, 'length'), one), set(inputOf(copy, 'spacing'), other)], MESSAGE);
      return copy;
    }),
  );
  expect(table.cells.map((line) => line.map(numberOf))).toEqual(
    typed.map((line) =>
      line.map((copy) => {
        const seeds = copy.document.program.sheet('varieties')?.column('seeds');
        if (seeds === undefined) throw new Error('no seeds');
        const { values } = copy.document.frame.column(seeds.def);
        return [...rows(copy, 'varieties')].reduce((sum, row) => sum + (values[row] ?? 0), 0);
      }),
    ),
  );
  const alone = oneWay(workbook, at(down), [figure, { figure: 'findings', level: 'error' }]);
  expect(alone.ok && alone.cells.map((line) => line.length)).toEqual([2, 2, 2]);
  expect(twoWay(workbook, at(down), at(down), figure)).toEqual({
    ok: false,
    why: 'Both inputs are the same cell: choose another for one.',
  });
  expect(everything(workbook)).toEqual(before);
});
