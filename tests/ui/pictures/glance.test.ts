// The season at a glance: this week's jobs, findings of one reason together, totals with their ranges, and what a workbook opens on.

import { describe, expect, test } from 'vitest';
import { civilDay, type Finding, Findings, rowWithId } from '../../../engine/index.ts';
import { glanceOf } from '../../../ui/browser/glance/glance.ts';
import { shownView } from '../../../ui/browser/glance/opening.ts';
import { layStrip } from '../../../ui/browser/glance/strip-layout.ts';
import { seasonTotals } from '../../../ui/browser/glance/totals.ts';
import { weekJobs } from '../../../ui/browser/glance/week-jobs.ts';
import { yearStrip } from '../../../ui/browser/glance/year-strip.ts';
import { intervalWords } from '../../../ui/browser/pictures/kit/interval-words.ts';
import { groupFindings, rowsInWords } from '../../../ui/browser/store/finding-groups.ts';
import { writingOf } from '../../../ui/browser/store/writing.ts';
import { opened } from '../../book.ts';
import { demoBook } from '../../browser/workbook-page.ts';
import { seasonOf } from '../../sheets/season.ts';

const demo = demoBook();

describe('this week', () => {
  const monday = civilDay(2027, 4, 19);
  const week = weekJobs(demo.workbook, monday + 3);

  test('holds what is due from Monday to Sunday and what is late, by day', () => {
    expect(week?.monday).toBe(monday);
    expect(week?.week).toBe('2027-W16');
    const days = week?.jobs.map(({ on }) => on) ?? [];
    expect(days.length).toBeGreaterThan(3);
    expect(days).toEqual(days.toSorted((a, b) => a - b));
    expect(Math.max(...days)).toBeLessThan(monday + 7);
    expect(week?.jobs.filter(({ on }) => on < monday).every(({ late }) => late)).toBe(true);
  });

  test('a job that is done stays in its week and is late no more', () => {
    const book = demoBook();
    // Nothing was noted so far: what is past is late.
    expect(book.edit([{ edit: 'cell', table: 'Farm', row: 0, column: 'Jobs noted from', entry: '' }]).refused).toBe(
      false,
    );
    const late = weekJobs(book.workbook, monday)?.jobs[0];
    const row = rowWithId(book.workbook, 'tasks', late?.row ?? '') ?? -1;
    expect(book.edit([{ edit: 'cell', table: 'Tasks', row, column: 'Done', entry: 'yes' }]).refused).toBe(false);
    expect(weekJobs(book.workbook, monday)?.jobs.map(({ row: id }) => id)).not.toContain(late?.row);
    expect(weekJobs(book.workbook, late?.on ?? 0)?.jobs.find(({ row: id }) => id === late?.row)?.done).toBe(true);
  });

  test('an amount says what its pieces are, one of them as one, and weighs to a tenth', () => {
    const farm = seasonOf(
      {
        Varieties: [
          { Variety: 'Leaf', Crop: 'Basil' },
          { Variety: 'Root', Crop: 'Beet' },
        ],
        Beds: [{ Bed: 'A', Length: '2 m' }],
        Plantings: [
          { Planting: 'P1', Variety: 'Leaf', Bed: 'A', 'Planted out': '2027-06-01' },
          { Planting: 'P2', Variety: 'Root', Bed: 'A', 'Planted out': '2027-05-01' },
        ],
      },
      { Latitude: '48' },
      { units: 'si' },
    );
    const amounts = Array.from({ length: 40 }, (_, at) => weekJobs(farm.book.workbook, civilDay(2027, 4, 1) + 7 * at))
      .flatMap((one) => one?.jobs ?? [])
      .filter(({ kind, what }) => /pick|harvest|lift/i.test(`${kind} ${what}`))
      .map(({ amount }) => amount);
    expect(amounts.length).toBeGreaterThan(2);
    expect(amounts.join()).toMatch(/\d bunches, \d+\.\d kg/);
    expect(amounts.join()).not.toMatch(/bunche\b|\b1 bunches|\b0(\.0)? kg/);
  });

  test('a workbook without a sheet of jobs has no such list', () => {
    const other = opened({ title: 'Other', units: 'si', currency: 'EUR', today: 0, rows: {}, sheets: [] });
    expect(weekJobs(other.workbook, 0)).toBeUndefined();
  });
});

test('what is written over the year stands above its weeks, a line each', () => {
  const strip = yearStrip(demo.workbook, demo.today);
  if (strip === undefined) throw new Error('There is no strip.');
  const { frostLine = 0, todayLine = 0, head, foot, y } = layStrip(strip, 1200);
  // Letters of 13 px reach some 10 px over their line and 3 px under it.
  expect(frostLine).toBeGreaterThanOrEqual(10);
  expect(todayLine - frostLine).toBeGreaterThanOrEqual(13);
  expect(head - todayLine).toBeGreaterThanOrEqual(3);
  expect(Math.min(...strip.weeks.map(({ hours }) => y.at(hours)))).toBeGreaterThanOrEqual(head);
  expect(foot - head).toBeGreaterThan(30);
  // Outside the season nothing is written of today, and a narrow window has no room for the words of the frosts.
  expect(layStrip({ ...strip, today: strip.season.first - 1 }, 400)).toMatchObject({
    frostLine: undefined,
    todayLine: undefined,
  });
});

test('no name of a month on the strip reaches into the next or past the year, however long they are', () => {
  const strip = yearStrip(demo.workbook, demo.today);
  if (strip === undefined) throw new Error('There is no strip.');
  for (const locale of ['en-US', 'de-DE', 'fi-FI']) {
    for (const width of [1180, 500, 366, 288]) {
      const { x, months } = layStrip({ ...strip, writing: writingOf(locale) }, width);
      const ends = months.map(({ day, name }) => x.at(day) + 3 + name.length * 7);
      const begins = [...months.slice(1).map(({ day }) => x.at(day) + 3), width + 1];
      expect(months.length).toBeGreaterThan(1);
      expect(ends.filter((end, at) => end >= (begins[at] ?? 0))).toEqual([]);
    }
  }
});

describe('what needs attention', () => {
  const finding = (rowName: string, says: string, check = 'late'): Finding => ({
    level: 'warning',
    sheet: 'plantings',
    sheetName: 'Plantings',
    row: 1,
    rowId: rowName,
    rowName,
    column: 'sown',
    columnName: 'Sown',
    says,
    check,
  });

  test('ten lettuces with one reason are one line', () => {
    const lettuces = Array.from({ length: 10 }, (_, index) => finding(`Lettuce ${index + 1}`, `${index} days late.`));
    const groups = groupFindings([...lettuces, finding('Leeks', 'Too cold.', 'cold')]);
    expect(groups.map(({ count }) => count)).toEqual([10, 1]);
    const [first] = groups;
    expect(first === undefined ? '' : rowsInWords(first)).toBe('Lettuce 1, Lettuce 2 and 8 more');
    expect(first?.alike).toBe(false);
  });

  test('a line says what holds for all of its rows, and no figure of one alone', () => {
    const cold = (on: string, share: string): string =>
      `No harvest: cold ends it about ${on}, with ${share} of the warmth it needs.`;
    const [both] = groupFindings([
      finding('Tomato', cold('12 Oct', '93%')),
      finding('Sweet corn', cold('28 Sep', '73%')),
    ]);
    expect(both?.says).toBe('No harvest: cold ends it about …, with … of the warmth it needs.');
    expect(both?.all.map(({ says }) => says)).toEqual([cold('12 Oct', '93%'), cold('28 Sep', '73%')]);
    const [same] = groupFindings([finding('Tomato', cold('12 Oct', '93%')), finding('Okra', cold('12 Oct', '93%'))]);
    expect(same?.says).toBe(cold('12 Oct', '93%'));
    // Of more words than the other: how both begin and how both end.
    const [longer] = groupFindings([
      finding('Lettuce', 'There is no room on any bed from 3 May on: none is free.'),
      finding('Bean', 'There is no room on any bed from 21 May until 7 Sep on: none is free.'),
    ]);
    expect(longer?.says).toBe('There is no room on any bed from … on: none is free.');
  });

  test('sentences of one reason that have little in common: the line says whose the one is', () => {
    const [mixed] = groupFindings([
      finding('Tomato', 'No harvest: it is never warm enough here.'),
      finding('Onion', 'No harvest: days stay shorter than this variety needs to bulb.'),
    ]);
    expect(mixed?.says).toBe('Tomato: No harvest: it is never warm enough here.');
  });

  test('two sentences of one check that differ in words are not joined to one that nobody can read', () => {
    const look = 'look at the day, the planting, or its dates.';
    const goesIn = (on: string): string => `This is before the planting goes into the bed (${on}): ${look}`;
    const isSown = (on: string): string => `This is before it is sown (${on}): ${look}`;
    const [mixed] = groupFindings([finding('row 85', goesIn('3 Mar 2027')), finding('row 163', isSown('12 Feb 2027'))]);
    expect(mixed?.says).toBe(`row 85: ${goesIn('3 Mar 2027')}`);
    const [turned] = groupFindings([
      finding('row 163', isSown('12 Feb 2027')),
      finding('row 85', goesIn('3 Mar 2027')),
    ]);
    expect(turned?.says).toBe(`row 163: ${isSown('12 Feb 2027')}`);
    const [alike] = groupFindings([finding('row 85', goesIn('3 Mar 2027')), finding('row 90', goesIn('9 Apr 2027'))]);
    expect(alike?.says).toBe(goesIn('… 2027'));
    const [named] = groupFindings([
      finding('A', 'Round stands on 3 ft of bed that Kelp has.'),
      finding('B', 'Kelp stands on 12 ft of bed that Round has.'),
    ]);
    expect(named?.says).toBe('… stands on … ft of bed that … has.');
  });

  test('without a check, sentences that differ in their figures alone are of one reason', () => {
    const groups = groupFindings([
      finding('A', '3 of 4 fail.', ''),
      finding('B', '5.5 of 6 fail.', ''),
      finding('C', 'Other.', ''),
    ]);
    expect(groups.map(({ rows }) => rows)).toEqual([['A', 'B'], ['C']]);
  });

  test('every warning and error of the demo is in one group', () => {
    const found = new Findings(demo.workbook).all();
    const { attention } = glanceOf(demo.workbook, demo.today, found);
    const counted = attention.reduce((sum, { count }) => sum + count, 0);
    expect(counted).toBe(found.filter(({ level }) => level !== 'note').length);
    expect(attention.length).toBeLessThan(counted);
    // What concerns the whole season comes before what concerns a row.
    expect(attention[0]?.says).toMatch(/^The season costs more than it brings/);
  });
});

describe('the totals', () => {
  const saidIn = (likely = ''): number => Number(likely.replace(/[^\d.-]/g, ''));

  test('are the last words of the budget once outlets take something', () => {
    const totals = seasonTotals(demo.workbook);
    const said = (name: string): number => saidIn(totals.find((total) => total.name === name)?.likely);
    const budget = (column: string): number => demo.cell('Budget', 0, column).number ?? Number.NaN;
    for (const [name, column] of [
      ['Sales', 'Sales'],
      ['Hours of work', 'Hours'],
      ['Left over', 'Margin'],
    ] as const)
      expect(Math.abs(said(name) - budget(column)), name).toBeLessThan(0.05 * Math.abs(budget(column)));
  });

  test('say what all of the harvest is worth while nothing is said of who takes it', () => {
    const farm = seasonOf(
      {
        Varieties: [{ Variety: 'Root', Crop: 'Beet' }],
        Beds: [{ Bed: 'A', Length: '50 ft' }],
        Plantings: ['P1', 'P2'].map((Planting) => ({
          Planting,
          Variety: 'Root',
          Bed: 'A',
          'Planted out': '2027-05-01',
          Price: '3',
        })),
      },
      { Latitude: '40', Wage: '15' },
    );
    const totals = seasonTotals(farm.book.workbook);
    const sum = (column: string): number =>
      [...farm.book.rows('Plantings')].reduce(
        (all, row) => all + (farm.book.cell('Plantings', row, column).number ?? 0),
        0,
      );
    expect(totals.map(({ name }) => name)).not.toContain('Sales');
    for (const [name, column] of [
      ['Takings if all of it sells', 'Revenue this season'],
      ['Hours on the plantings', 'Hours this season'],
    ] as const) {
      expect(sum(column), name).toBeGreaterThan(0);
      expect(Math.abs(saidIn(totals.find((total) => total.name === name)?.likely) - sum(column)), name).toBeLessThan(
        0.05 * sum(column),
      );
    }
  });

  test('no digit says more than the range allows', () => {
    expect(intervalWords({ low: 151.3, likely: 186.9, high: 229.4 }, 'lb')).toBe('150 to 230 lb, likely 190');
    expect(intervalWords({ low: 18930, likely: 30110, high: 40920 }, 'lb')).toBe('19,000 to 41,000 lb, likely 30,000');
    expect(intervalWords({ low: 4, likely: 4, high: 4 }, 'h')).toBe('4 h');
    expect(intervalWords({ low: 0, likely: 0, high: 0 }, '%')).toBe('0%');
  });
});

describe('what a workbook opens on', () => {
  test('the demo on the glance, an empty season on the first questions, own sheets on a sheet', () => {
    expect(shownView(demo.workbook, { at: 'glance' })).toEqual({ at: 'glance' });
    expect(shownView(seasonOf({}).book.workbook, { at: 'glance' })).toEqual({ at: 'first visit' });
    const other = opened({ title: 'Other', units: 'si', currency: 'EUR', today: 0, rows: {}, sheets: [] });
    expect(shownView(other.workbook, { at: 'glance' })).toEqual({ at: 'sheet' });
    expect(shownView(demo.workbook, { at: 'sheet' })).toEqual({ at: 'sheet' });
  });
});
