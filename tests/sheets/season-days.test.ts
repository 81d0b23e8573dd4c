// Days typed without their year: they are the ones inside the season as Farm has it, on whichever way they come in. South of the
// equator it runs from July to June, and elsewhere from the day that is typed.

import { describe, expect, test } from 'vitest';
import {
  type Command,
  cellView,
  isoDate,
  ONLY_ROW,
  readGoal,
  readInputs,
  tryEntry,
  Workbook,
} from '../../engine/index.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { keptDay } from '../../ui/scratch/typed-days.ts';
import { testWorld } from '../book.ts';
import { Folder } from '../terminal/terminal.ts';
import { type Season, seasonOf } from './season.ts';

const MESSAGE = { code: 'work', parts: {} };

const ROWS = {
  Varieties: [
    { Variety: 'Reds', Crop: 'Tomato' },
    { Variety: 'Cloves', Crop: 'Garlic' },
  ],
  Plantings: [
    { Planting: 'Tomatoes', Variety: 'Reds', 'Bed length used': '50 ft' },
    { Planting: 'Garlic', Variety: 'Cloves', 'Bed length used': '50 ft' },
  ],
};

const south = (farm: Readonly<Record<string, string>> = {}): Season => seasonOf(ROWS, { Latitude: '-34', ...farm });
const north = (farm: Readonly<Record<string, string>> = {}): Season => seasonOf(ROWS, { Latitude: '44', ...farm });

function out(season: Season, entry: string, planting = 'Tomatoes'): string {
  season.type('Plantings', planting, 'Planted out', entry);
  return season.shown('Plantings', planting, 'Planted out');
}

describe('in a season from July to June', () => {
  test('a cell takes the day inside it, and keeps the year that is typed', () => {
    const season = south();
    expect(out(season, '15 Feb')).toBe('15 Feb 2028');
    expect(out(season, '10 Jan')).toBe('10 Jan 2028');
    expect(out(season, '30 Jun')).toBe('30 Jun 2028');
    expect(out(season, '1 Jul')).toBe('1 Jul 2027');
    expect(out(season, '3/15')).toBe('15 Mar 2028');
    expect(out(season, 'week 11')).toBe('13 Mar 2028');
    expect(out(season, '15 Feb 2027')).toBe('15 Feb 2027');
  });

  test('frosts of the farm lie in it: the first comes after the last', () => {
    const season = south();
    season.type('Farm', '', 'Average last frost', '20 Aug');
    season.type('Farm', '', 'Average first frost', '10 June');
    expect(season.shown('Farm', '', 'Average last frost')).toBe('20 Aug 2027');
    expect(season.shown('Farm', '', 'Average first frost')).toBe('10 Jun 2028');
    expect(season.says('Farm', 'Farm').filter((says) => says.includes('comes before the last'))).toEqual([]);
  });

  test('the other dates of a row, before the season or after it, change nothing of that', () => {
    const season = south();
    season.type('Plantings', 'Garlic', 'Planted out', '10 May 2027');
    season.type('Plantings', 'Garlic', 'Harvest', '20 Nov');
    expect(season.shown('Plantings', 'Garlic', 'Harvest')).toBe('20 Nov 2027');
    season.type('Plantings', 'Garlic', 'Harvest', '20 Feb');
    expect(season.shown('Plantings', 'Garlic', 'Harvest')).toBe('20 Feb 2028');
    expect(season.shown('Plantings', 'Garlic', 'Planted out')).toBe('10 May 2027');
  });

  test('what is said beside a cell is what will be taken; a day is far from the season, not from its calendar year', () => {
    const season = south();
    const said = (entry: string) => tryEntry(season.book.workbook, 'plantings', 'planted-out', entry);
    expect(said('15 Feb')).toMatchObject({ ok: true, text: '15 Feb 2028' });
    expect(said('3/4')).toMatchObject({ ok: true, text: '4 Mar 2028', other: { text: '3 Apr 2028' } });
    expect(said('15 Feb')).not.toHaveProperty('far');
    expect(said('1 Jul 2029')).not.toHaveProperty('far');
    expect(said('15 Mar 2072')).toMatchObject({ far: '44 years after the season 2027' });
    expect(said('15 Mar 2026')).toMatchObject({ far: '2 years before the season 2027' });
  });

  test('a range of days, a goal, values to try and a scratch paper read it so too', () => {
    const season = south();
    const { workbook } = season.book;
    expect(out(season, '12 May..28 May')).toBe('20 May 2028');
    expect(() => out(season, '20 Jun..10 Jul')).toThrow(
      '20 Jun 2028 to 10 Jul 2027 is not in order: write the earliest first and the latest last, or their years.',
    );
    const goal = readGoal(workbook, '15 Feb', { kind: 'date' });
    expect(goal.ok && isoDate(goal.value)).toBe('2028-02-15');
    const row = workbook.document.rowIdOf('plantings', season.book.rows('Plantings')[0] ?? -1) ?? '';
    const tried = readInputs(workbook, { sheet: 'plantings', row, column: 'planted-out' }, '1 Feb..15 Feb by 1 week');
    expect(tried.ok && tried.values.map(({ value }) => isoDate(value))).toEqual([
      '2028-02-01',
      '2028-02-08',
      '2028-02-15',
    ]);
    expect(keptDay('15 Feb', workbook.document.entry)).toBe('2028-02-15');
  });

  test('so does a file of rows, and a column of one’s own', () => {
    const season = south();
    const { book } = season;
    const read = book.importCsv('Plantings', 'Planting,Variety,Planted out\nLate,Reds,10 Jan\nSpring,Reds,9/20\n');
    expect(read).toMatchObject({ ok: true, added: 2 });
    expect(season.shown('Plantings', 'Late', 'Planted out')).toBe('10 Jan 2028');
    expect(season.shown('Plantings', 'Spring', 'Planted out')).toBe('20 Sep 2027');
    const { workbook } = book;
    workbook.do([{ command: 'add column', sheet: 'plantings', name: 'Looked at', type: { type: 'date' } }], MESSAGE);
    season.type('Plantings', 'Late', 'Looked at', '2 Mar');
    expect(season.shown('Plantings', 'Late', 'Looked at')).toBe('2 Mar 2028');
  });

  test('so does the terminal', async () => {
    const folder = new Folder();
    const file = folder.file('season.json');
    await folder.run(['new', 'season', '--season', '2027', '--out', file]);
    await folder.run(['set', file, 'Farm', 'x', 'Latitude', '-34']);
    await folder.run(['set', file, 'Farm', 'x', 'Average first frost', '10 June']);
    const { out: said } = await folder.run(['export', file, 'Farm', '--format', 'csv']);
    expect(said).toContain('2028-06-10');
    folder.remove();
  });

  test('what stands in a saved workbook stays as it was read then', () => {
    const season = north();
    expect(out(season, '15 Feb')).toBe('15 Feb 2027');
    season.type('Farm', '', 'Latitude', '-34');
    expect(season.shown('Plantings', 'Tomatoes', 'Planted out')).toBe('15 Feb 2027');
    const again = Workbook.open(season.book.workbook.data(), testWorld(SEASON));
    expect(again?.data().rows.plantings).toEqual(season.book.workbook.data().rows.plantings);
    expect(JSON.stringify(again?.data().rows.plantings)).toContain('{"date":"2027-02-15"}');
  });

  test('one change that moves the farm south and types a day reads the day in the season as it is then', () => {
    const { workbook } = north().book;
    const farm = (column: string, entry: string): Command => ({
      command: 'set cell',
      sheet: 'farm',
      row: ONLY_ROW,
      column,
      entry,
    });
    const first = (): string => cellView(workbook, 'farm', 0, 'average-first-frost').text;
    workbook.do([farm('latitude', '-34'), farm('average-first-frost', '10 June')], MESSAGE);
    expect(first()).toBe('10 Jun 2028');
    workbook.do([farm('latitude', '44'), farm('average-first-frost', '10 June')], MESSAGE);
    expect(first()).toBe('10 Jun 2027');
    // What is refused as a whole leaves the season as it was.
    const refused = workbook.do([farm('latitude', '-34'), farm('average-first-frost', 'soon')], MESSAGE);
    expect(refused.refused).toBe(true);
    workbook.do([farm('average-first-frost', '11 June')], MESSAGE);
    expect(first()).toBe('11 Jun 2027');
    workbook.undo();
    expect(first()).toBe('10 Jun 2027');
  });

  test('its first day is typed in the year of the season, and days follow it', () => {
    const season = south();
    season.type('Farm', '', 'Season starts', '1 May');
    expect(season.shown('Farm', '', 'Season starts')).toBe('1 May 2027');
    expect(out(season, '15 May', 'Garlic')).toBe('15 May 2027');
    expect(out(season, '30 Apr', 'Garlic')).toBe('30 Apr 2028');
    expect(tryEntry(season.book.workbook, 'farm', 'season-starts', '1 Jun')).toMatchObject({ text: '1 Jun 2027' });
    season.type('Farm', '', 'Season starts', '');
    expect(out(season, '15 May', 'Garlic')).toBe('15 May 2028');
  });
});

describe('in a season of the calendar year', () => {
  test('garlic planted in October is planted in that of its year, and the autumn before is typed with its year', () => {
    const season = north();
    expect(out(season, '15 Oct', 'Garlic')).toBe('15 Oct 2027');
    expect(out(season, '15 Oct 2026', 'Garlic')).toBe('15 Oct 2026');
    // With a date of its own in the autumn before, a day of the row is still one of the season.
    season.type('Plantings', 'Garlic', 'Harvest', '10 Jul');
    expect(season.shown('Plantings', 'Garlic', 'Harvest')).toBe('10 Jul 2027');
    expect(out(season, '20 Nov', 'Garlic')).toBe('20 Nov 2027');
  });

  test('weeks and days are read as ever', () => {
    const season = north();
    expect(out(season, '1 Jan')).toBe('1 Jan 2027');
    expect(out(season, '31 Dec')).toBe('31 Dec 2027');
    expect(out(season, 'week 1')).toBe('4 Jan 2027');
    expect(() => out(season, 'week 53')).toThrow('There is no week 53 in 2027');
  });

  test('one that begins in the autumn before takes autumn days there', () => {
    const season = north({ 'Season starts': '2026-10-01' });
    expect(out(season, '15 Oct', 'Garlic')).toBe('15 Oct 2026');
    expect(out(season, '15 May')).toBe('15 May 2027');
    season.type('Farm', '', 'Season starts', '1 Mar');
    expect(season.shown('Farm', '', 'Season starts')).toBe('1 Mar 2027');
  });
});
