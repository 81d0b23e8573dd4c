// The season calendar's model: bars and beds out of a workbook, where the keys lead, and what a move changes, tried without a page.

import { describe, expect, test } from 'vitest';
import { civilDay, Findings, message, rowId, rowNamed, sayMessage } from '../../../engine/index.ts';
import { namedMonths } from '../../../ui/browser/drawing/text-width.ts';
import { glanceOf } from '../../../ui/browser/glance/glance.ts';
import { bedMap } from '../../../ui/browser/pictures/bed-map/bed-map.ts';
import { barPlace, layCalendar, lineAt, stepTo } from '../../../ui/browser/pictures/season-calendar/calendar-layout.ts';
import {
  moveCommands,
  moveWords,
  sameWords,
  whatFollows,
  withinSeason,
} from '../../../ui/browser/pictures/season-calendar/moving.ts';
import {
  barWords,
  calendarTable,
  seasonCalendar,
} from '../../../ui/browser/pictures/season-calendar/season-calendar.ts';
import { opened } from '../../book.ts';
import { seasonOf, TODAY } from '../../sheets/season.ts';

/** Means of a cool temperate place, made up: lows and highs in degrees Celsius. */
const LOWS = [-8, -7, -2, 3, 8, 13, 16, 15, 10, 5, 0, -5];
const MONTHS = 'January February March April May June July August September October November December'.split(' ');

const season = () =>
  seasonOf({
    'Monthly climate': LOWS.map((low, index) => ({
      Month: MONTHS[index] ?? '',
      Number: String(index + 1),
      Low: `${low} degC`,
      High: `${low + 11} degC`,
    })),
    Beds: [
      { Bed: 'One', Field: 'Top', Length: '50 ft' },
      { Bed: 'Two', Field: 'Top', Length: '50 ft' },
    ],
    Varieties: [{ Variety: 'Green', Crop: 'Lettuce, head' }],
    Plantings: [
      {
        Planting: 'A',
        Variety: 'Green',
        Bed: 'One',
        'Bed length used': '30 ft',
        Sown: '2027-04-01',
        'Planted out': '2027-05-03',
      },
      { Planting: 'B', Variety: 'Green', Bed: 'One', 'Bed length used': '30 ft', 'Planted out': '2027-05-17' },
      { Planting: 'C', Variety: 'Green', 'Bed length used': '10 ft' },
    ],
  });

const { book } = season();
const { workbook } = book;
const id = (sheet: string, name: string): string => rowId(workbook, sheet, rowNamed(workbook, sheet, name) ?? -1);
const calendar = seasonCalendar(workbook, TODAY);
if (calendar === undefined) throw new Error('There is no calendar.');

describe('the model', () => {
  test('a line a bed, and one for what has no bed', () => {
    expect(calendar.lines.map(({ name }) => name)).toEqual(['One', 'Two', 'No bed yet']);
    expect(calendar.lines.map(({ bars }) => bars.map(({ name }) => name))).toEqual([['A', 'B'], [], ['C']]);
  });

  test('a bar stands from planting out until the bed is free', () => {
    const [a, b] = calendar.lines[0]?.bars ?? [];
    expect(a?.from).toBe(civilDay(2027, 5, 3));
    expect(a?.until).toBe(book.value('Plantings', 0, 'Bed free'));
    expect(a?.proposed).toBe(false);
    expect(b?.proposed).toBe(false);
    expect(calendar.lines[2]?.bars[0]?.proposed).toBe(true);
    expect(a?.untilEarly).toBeLessThan(a?.until ?? 0);
    expect(a?.untilLate).toBeGreaterThan(a?.until ?? 0);
    expect(a?.harvest?.from).toBe(book.value('Plantings', 0, 'Harvest'));
  });

  test('30 ft and 30 ft on 50 ft are 10 ft too many while both stand', () => {
    const [a, b] = calendar.lines[0]?.bars ?? [];
    const [over, ...more] = calendar.lines[0]?.overfull ?? [];
    expect(more).toEqual([]);
    expect(over?.by).toBeCloseTo(10 * 0.3048, 9);
    expect([over?.from, over?.until]).toEqual([b?.from, a?.until]);
  });

  test('what it says and its table name the same plantings', () => {
    expect(calendar.says).toMatch(/^2 plantings on 2 beds \(100 ft\)/);
    expect(calendar.says).toContain('Too full at some time: One.');
    expect(calendar.says).toContain('1 planting has no bed yet.');
    expect(calendarTable(workbook, calendar).rows.map(([bed, name]) => `${bed} ${name}`)).toEqual([
      'One A',
      'One B',
      'No bed yet C',
    ]);
  });

  test('half a foot is said in bar, table and map, as the sheet says it', () => {
    const halves = seasonOf({
      Beds: [{ Bed: 'One', Length: '50 ft' }],
      Varieties: [{ Variety: 'Green', Crop: 'Lettuce, head' }],
      Plantings: ['A', 'B'].map((Planting) => ({
        Planting,
        Variety: 'Green',
        Bed: 'One',
        'Bed length used': '24.5 ft',
        'Planted out': '2027-05-03',
        'Bed free': '2027-07-01',
      })),
    }).book.workbook;
    const there = seasonCalendar(halves, TODAY);
    if (there === undefined) throw new Error('There is no calendar.');
    expect(calendarTable(halves, there).rows.map((row) => row.at(-1))).toEqual(['24.5 ft', '24.5 ft']);
    const [line] = there.lines;
    expect(line?.bars.map((bar) => barWords(halves, bar, line))).toEqual([
      'A, Lettuce, head, on One, 3 May 2027 to 30 Jun 2027, 24.5 ft',
      'B, Lettuce, head, on One, 3 May 2027 to 30 Jun 2027, 24.5 ft',
    ]);
    const map = bedMap(halves, there, civilDay(2027, 5, 20));
    expect(map.table.rows).toEqual([['One', 'A (24.5 ft), B (24.5 ft)', '1 ft']]);
    expect(map.says).toBe('20 May 2027: 1 of 1 bed carries something; 1 ft of bed are free.');
    expect(bedMap(halves, there, civilDay(2027, 2, 1)).says).toMatch(/: 0 of 1 bed carries something;/);
  });

  test('plantings that have no bar are counted, by what they lack', () => {
    const { book: without } = seasonOf({
      Beds: [{ Bed: 'One', Length: '50 ft' }],
      Varieties: [{ Variety: 'Green', Crop: 'Lettuce, head' }],
      Plantings: [
        { Planting: 'A', Variety: 'Green', Bed: 'One', 'Bed length used': '10 ft', 'Planted out': '2027-05-03' },
        // No climate and no frosts: no date is proposed.
        { Planting: 'B', Variety: 'Green', Bed: 'One', 'Bed length used': '10 ft' },
        { Planting: 'C', Variety: 'Green', Bed: 'One', 'Bed length used': '10 ft' },
        { Planting: 'D', Variety: 'Green', Bed: 'One', 'Bed length used': '10 ft', 'Planted out': '2028-02-01' },
      ],
    });
    const there = seasonCalendar(without.workbook, TODAY);
    expect(there?.says).toMatch(/^1 planting on 1 bed /);
    expect(there?.says).toMatch(/Not drawn: 2 plantings without a date, 1 planting outside the season\.$/);
    expect(calendar.says).not.toContain('Not drawn');
    const { attention, totals } = glanceOf(without.workbook, TODAY, new Findings(without.workbook).all());
    const dates = attention.find(({ first }) => first.check === 'no-date');
    expect(dates?.rows).toEqual(['B', 'C']);
    expect(dates?.says).toContain('Monthly climate is empty');
    // D is not picked this season.
    expect(totals.find(({ name }) => name === 'Harvest that can be sold')?.dateless).toBe(
      '2 of 3 plantings without a date',
    );
  });

  test('a workbook of other sheets has none', () => {
    const other = opened({ title: 'Other', units: 'si', currency: 'EUR', today: 0, rows: {}, sheets: [] });
    expect(seasonCalendar(other.workbook, 0)).toBeUndefined();
  });
});

describe('on the screen', () => {
  const laid = layCalendar(calendar, 800);

  test('lines lie one under the other and are found by height', () => {
    const [one, two] = laid.lines;
    expect(two?.top).toBe((one?.top ?? 0) + (one?.height ?? 0));
    expect(lineAt(laid, (two?.top ?? 0) + 1)?.name).toBe('Two');
    expect(lineAt(laid, -5)).toBeUndefined();
  });

  test('months are named at every width of the page, each name with room for it', () => {
    const { season, writing } = calendar;
    expect(namedMonths(season.first, season.last, layCalendar(calendar, 1200).x, writing)).toHaveLength(12);
    for (const width of [366, 296]) {
      const laidThere = layCalendar(calendar, width);
      const named = namedMonths(season.first, season.last, laidThere.x, writing);
      expect(named.length).toBeGreaterThanOrEqual(4);
      const places = named.map(({ day }) => laidThere.x.at(day));
      // Three letters are some 24 px wide, on a phone 28.
      expect(places.every((place, at) => at === 0 || place - (places[at - 1] ?? 0) >= 32)).toBe(true);
    }
  });

  test('of a dozen plantings without a bed, side by side, each bar is tall enough for its name', () => {
    const [line] = calendar.lines.slice(-1);
    const [bar] = line?.bars ?? [];
    if (line === undefined || bar === undefined) throw new Error('Nothing is without a bed.');
    const bars = Array.from({ length: 12 }, (_, at) => ({
      ...bar,
      planting: `p${at}`,
      at: at * 3,
      length: at === 0 ? 0.2 : 3,
    }));
    const after = { ...bar, planting: 'after', from: bar.until, until: bar.until + 30 };
    const full = layCalendar({ ...calendar, lines: [{ ...line, bars: [...bars, after] }] }, 800);
    const [place] = full.lines;
    if (place === undefined) throw new Error('There is no line.');
    const tops = bars.map((each) => barPlace(full, place, each));
    expect(Math.min(...tops.map(({ height }) => height))).toBeGreaterThanOrEqual(13);
    expect(tops.every(({ y, height }, at) => at === 0 || y >= (tops[at - 1]?.y ?? 0) + height)).toBe(true);
    expect(Math.max(...tops.map(({ y, height }) => y + height))).toBeLessThanOrEqual(place.top + place.height);
    // What comes once another is gone stands where that stood.
    expect(barPlace(full, place, after).y).toBe(tops[0]?.y);
  });

  test('arrows lead along a bed and to the nearest in time on the next bed that has one', () => {
    const [a, b] = calendar.lines[0]?.bars ?? [];
    expect(stepTo(calendar.lines, a, 'after')).toBe(b);
    expect(stepTo(calendar.lines, a, 'before')).toBe(a);
    expect(stepTo(calendar.lines, b, 'below')?.name).toBe('C');
    expect(stepTo(calendar.lines, undefined, 'below')).toBe(a);
    expect(stepTo(calendar.lines, b, 'last')?.name).toBe('C');
  });
});

describe('moving', () => {
  test('typed dates go along; where none is typed, the one it begins with is', () => {
    const typed = moveCommands(workbook, { planting: id('plantings', 'A'), days: 7, bed: undefined });
    expect(typed.map((each) => (each.command === 'put cell' ? [each.column, each.content] : []))).toEqual([
      ['sown', { date: '2027-04-08' }],
      ['planted-out', { date: '2027-05-10' }],
    ]);
    const one = moveCommands(workbook, { planting: id('plantings', 'B'), days: -7, bed: id('beds', 'Two') });
    expect(one.map((each) => (each.command === 'put cell' ? each.column : ''))).toEqual(['planted-out', 'bed']);
    const none = moveCommands(workbook, { planting: id('plantings', 'C'), days: 1, bed: undefined });
    expect(none.map((each) => (each.command === 'put cell' ? each.column : ''))).toEqual(['planted-out']);
    expect(moveCommands(workbook, { planting: id('plantings', 'A'), days: 0, bed: undefined })).toEqual([]);
  });

  test('what follows is what the workbook holds once it is done, and trying changes nothing', () => {
    const tried = season().book.workbook;
    const at = (sheet: string, name: string): string => rowId(tried, sheet, rowNamed(tried, sheet, name) ?? -1);
    const move = { planting: at('plantings', 'B'), days: 14, bed: at('beds', 'Two') };
    const before = seasonCalendar(tried, TODAY);
    const follows = whatFollows(tried, move);
    expect(seasonCalendar(tried, TODAY)).toEqual(before);
    const trial = seasonCalendar(follows.after, TODAY);
    expect(trial?.lines.map(({ bars }) => bars.map(({ name }) => name))).toEqual([['A'], ['B'], ['C']]);
    expect(tried.do(moveCommands(tried, move), message('move planting', { planting: 'B' })).refused).toBe(false);
    expect(seasonCalendar(tried, TODAY)).toEqual(trial);
    const line = follows.lines.find(({ name }) => name === 'Planted out');
    expect(line).toEqual({ name: 'Planted out', before: '17 May 2027', after: '31 May 2027', changed: true });
    expect(tried.history.done.map(({ done }) => sayMessage(done.message))).toEqual(['Move B']);
  });

  test('a move that makes a bed too full says so, and one that mends it does not', () => {
    const tried = season().book.workbook;
    const at = (sheet: string, name: string): string => rowId(tried, sheet, rowNamed(tried, sheet, name) ?? -1);
    const there = { planting: at('plantings', 'B'), days: 0, bed: at('beds', 'Two') };
    const overfull = (says: string): boolean => says.includes('More stands on this bed');
    expect(whatFollows(tried, there).warnings.filter(overfull)).toEqual([]);
    expect(tried.do(moveCommands(tried, there), message('move planting', { planting: 'B' })).refused).toBe(false);
    const back = whatFollows(tried, { ...there, bed: at('beds', 'One') }, new Findings(tried));
    expect(back.warnings.filter(overfull)).toEqual([expect.stringMatching(/^B: /)]);
  });

  test('a bar is carried to the edge of the season, where a day of it still stands, and no further', () => {
    const [a] = calendar.lines[0]?.bars ?? [];
    if (a === undefined) throw new Error('There is no bar.');
    expect(withinSeason(a, 7, calendar.season)).toBe(7);
    const late = withinSeason(a, 1000, calendar.season);
    expect(a.from + late).toBe(civilDay(2027, 12, 31));
    const early = withinSeason(a, -1000, calendar.season);
    expect(a.until - 1 + early).toBe(civilDay(2027, 1, 1));
  });

  test('a move out of the season is warned of before it is done', () => {
    const out = (days: number): readonly string[] =>
      whatFollows(workbook, { planting: id('plantings', 'B'), days, bed: undefined }).warnings;
    expect(out(300)).toContain('It would stand outside the season, and no longer on the calendar.');
    expect(out(7).filter((says) => says.includes('outside the season'))).toEqual([]);
  });

  test('what stays the same is said as far as it is known', () => {
    const line = (name: string, before: string, after: string) => ({ name, before, after, changed: before !== after });
    const lines = [line('Bed', 'One', 'Two'), line('Sown', '', ''), line('Harvest from', '3 Jul 2027', '3 Jul 2027')];
    expect(sameWords([...lines, line('Margin', '', '')])).toBe('The same: harvest from 3 Jul 2027.');
    expect(sameWords(lines.slice(0, 2))).toBe('');
    expect(sameWords(lines.slice(1))).toBe('Nothing has moved yet.');
  });

  test('it is read out', () => {
    const planting = id('plantings', 'A');
    expect(moveWords(workbook, { planting, days: 1, bed: undefined })).toBe('A: 1 day later.');
    expect(moveWords(workbook, { planting, days: -7, bed: id('beds', 'Two') })).toBe('A: 7 days earlier, to Two.');
    expect(moveWords(workbook, { planting, days: 0, bed: undefined })).toBe('A stays where it is.');
  });
});
