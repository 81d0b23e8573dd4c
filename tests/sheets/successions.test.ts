// Successions as a grower lays them: heads every week, stopped by frost, heat and short days, laid again after a change.

import { describe, expect, it } from 'vitest';
import { civilDay, isoDate, rowId, rows, rowWithId } from '../../engine/index.ts';
import { laySuccession } from '../../sheets-templates/acts/lay-succession.ts';
import { laySuccessions } from '../../sheets-templates/acts/lay-successions.ts';
import { latitudeOf, monthsOf } from '../reference/calendars.ts';
import { errorsOf, type Season, seasonOf } from './season.ts';

type Row = Readonly<Record<string, string>>;

const LETTUCE = {
  Succession: 'Lettuce',
  Variety: 'Lettuce, head',
  From: '2027-06-01',
  To: '2027-10-25',
  'A week': '60 heads',
};

function seasonAt(place: string, successions: readonly Row[], today = civilDay(2026, 12, 1)): Season {
  const crops = [...new Set(successions.map(({ Variety = '' }) => Variety))];
  return seasonOf(
    {
      'Monthly climate': monthsOf(place),
      Varieties: crops.map((crop) => ({ Variety: crop, Crop: crop })),
      Successions: successions,
    },
    { Latitude: String(latitudeOf(place)) },
    { today },
  );
}

function lay(season: Season, name: string) {
  const { workbook } = season.book;
  const slot = season.book.rowOf('Successions', name) ?? -1;
  const act = laySuccession(workbook, rowId(workbook, 'successions', slot));
  if (!act.ok) return act.why;
  const done = workbook.do(act.commands, act.message);
  if (done.refused) throw new Error(done.why);
  return act.said;
}

const names = (season: Season): readonly string[] =>
  Array.from(season.book.rows('Plantings'), (row) => season.book.rowName('Plantings', row));
const dates = (season: Season, column: string): readonly number[] =>
  names(season).map((name) => Number(season.value('Plantings', name, column)));
const gaps = (days: readonly number[]): readonly number[] => days.slice(1).map((day, k) => day - (days[k] ?? 0));

describe('60 heads of lettuce a week at 43 north', () => {
  const season = seasonAt('Madison WI', [LETTUCE]);
  const said = lay(season, 'Lettuce');

  it('lays plantings whose harvests begin a week apart, to the day or two, but for the heat of summer', () => {
    expect(names(season).length).toBeGreaterThan(10);
    const apart = gaps(dates(season, 'Harvest'));
    const uneven = apart.filter((gap) => Math.abs(gap - 7) > 2);
    expect(uneven.length).toBe(1);
    expect(said).toMatch(/20 Jul 2027 to 10 Aug 2027, it is too hot then/);
    expect(errorsOf(season.book)).toEqual([]);
  });

  it('sows wider apart in spring and closer together in late summer', () => {
    const apart = gaps(dates(season, 'Planted out'));
    const third = Math.floor(apart.length / 3);
    const mean = (list: readonly number[]): number => list.reduce((sum, gap) => sum + gap, 0) / list.length;
    expect(mean(apart.slice(0, third))).toBeGreaterThan(8.5);
    expect(mean(apart.slice(-third))).toBeLessThan(6);
  });

  it('gives sixty heads every week of it, and not many more', () => {
    const weeks = new Map<number, number>();
    for (const row of season.book.rows('Weekly harvest')) {
      const week = Number(season.book.value('Weekly harvest', row, 'Week starts'));
      weeks.set(week, (weeks.get(week) ?? 0) + (season.book.cell('Weekly harvest', row, 'Pieces').number ?? 0));
    }
    // Weeks in which one planting begins and the one before it is still cut.
    const begun = dates(season, 'Harvest');
    const within = (from: number): boolean => begun.some((day) => day >= from && day < from + 7);
    const full = [...weeks].filter(([week]) => within(week) && within(week - 7));
    expect(full.length).toBeGreaterThan(7);
    for (const [, pieces] of full) {
      expect(pieces).toBeGreaterThan(45);
      expect(pieces).toBeLessThan(95);
    }
  });

  it('leaves out what is too early and too cold, and says so', () => {
    expect(said).toMatch(
      /^Lettuce: \d+ plantings laid\. \d+ harvests left out: 1 Jun 2027.*, it would have to be in the bed before \d+ Apr/,
    );
    expect(season.says('Successions', 'Lettuce')).toEqual([season.value('Successions', 'Lettuce', 'Not laid')]);
    expect(season.number('Successions', 'Lettuce', 'Plantings')).toBe(names(season).length);
  });

  it('is one step of undo', () => {
    season.book.undo();
    expect(names(season)).toEqual([]);
    season.book.redo();
    expect(names(season).length).toBeGreaterThan(10);
  });
});

describe('what stops a succession', () => {
  it('heat, where summers are hot: a gap, and an autumn crop', () => {
    const season = seasonAt('Raleigh NC', [{ ...LETTUCE, From: '2027-05-01', To: '2027-11-20' }]);
    const said = lay(season, 'Lettuce');
    expect(said).toMatch(/it is too hot then/);
    const months = dates(season, 'Harvest').map((day) => isoDate(day).slice(5, 7));
    expect(months).toContain('05');
    expect(months).not.toContain('07');
    expect(months).toContain('10');
    for (const name of names(season))
      expect(season.says('Plantings', name).join(' '), name).not.toMatch(/ripens while the mean/);
  });

  it('frost, for tender crops: none is laid that the cold cuts off', () => {
    const season = seasonAt('Madison WI', [
      { Succession: 'Beans', Variety: 'Bean, snap bush', From: '2027-07-01', To: '2027-10-30', 'A week': '20 lb' },
    ]);
    expect(lay(season, 'Beans')).toMatch(/before \d+ May.*cold/);
    const ends = season.value('Plantings', 'Beans 1', 'Cold ends it');
    for (const day of dates(season, 'Harvest')) expect(day).toBeLessThan(Number(ends));
    const [every = 0, window = 0] = [
      season.number('Successions', 'Beans', 'Every'),
      season.number('Crops', 'Bean, snap bush', 'Harvest window'),
    ];
    expect(every % 7).toBe(0);
    expect(Math.abs(every - window / 2)).toBeLessThan(7);
  });

  it('nothing to be had at all is refused in a sentence, and nothing is laid', () => {
    const season = seasonAt('Madison WI', [{ ...LETTUCE, From: '2027-03-01', To: '2027-04-15' }]);
    expect(lay(season, 'Lettuce')).toMatch(/^Lettuce: no harvest wanted can be had\. 7 harvests left out/);
    expect(names(season)).toEqual([]);
  });
});

describe('entries that make no succession', () => {
  it.each([
    [
      { From: '2027-10-01', To: '2027-06-01' },
      /the last harvest, 1 Jun 2027, is before the first, 1 Oct 2027: look at both dates/,
    ],
    [{ To: '2028-09-01' }, /longer than a season: end it by 30 May 2028, and lay the rest in next season's workbook/],
    [{ From: '' }, /enter the dates of the first and the last harvest first/],
    [{ 'A week': '' }, /enter how much a week, or how long a bed each time, first/],
    [{ Every: '1' }, /more than 120 plantings: plant less often, under Every/],
  ])('%o is answered in a sentence', (more, sentence) => {
    const season = seasonAt('Madison WI', [{ ...LETTUCE, ...more }]);
    expect(lay(season, 'Lettuce')).toMatch(sentence);
    expect(names(season)).toEqual([]);
  });

  it('warns of crops that ripen by their own date', () => {
    const season = seasonAt('Madison WI', [{ ...LETTUCE, Variety: 'Garlic' }]);
    expect(season.says('Successions', 'Lettuce').join(' ')).toMatch(/Garlic is ripe by day length or in its spring/);
  });
});

describe('laying again', () => {
  it('changes nothing where nothing changed', () => {
    const season = seasonAt('Madison WI', [LETTUCE]);
    lay(season, 'Lettuce');
    const before = season.book.workbook.data().rows;
    lay(season, 'Lettuce');
    expect(season.book.workbook.data().rows).toEqual(before);
  });

  it('lets those follow that are as they were laid, and leaves those sown, changed or noted on', () => {
    const season = seasonAt('Madison WI', [LETTUCE], civilDay(2027, 4, 25));
    lay(season, 'Lettuce');
    const all = names(season);
    const sown = all.filter((name) => Number(season.value('Plantings', name, 'Sown')) <= civilDay(2027, 4, 25));
    expect(sown.length).toBeGreaterThan(1);
    season.type('Plantings', 'Lettuce 6', 'In-row spacing', '14 in');
    season.type('Successions', 'Lettuce', 'A week', '40 heads');
    expect(season.says('Successions', 'Lettuce').join(' ')).toMatch(
      /Changed since its plantings were laid: lay it again/,
    );
    expect(lay(season, 'Lettuce')).toMatch(new RegExp(`${sown.length + 1} left as they are`));
    for (const name of all) {
      const stays = sown.includes(name) || name === 'Lettuce 6';
      expect(season.number('Plantings', name, 'Wanted pieces'), name).toBe(stays ? 60 : 40);
    }
    expect(season.says('Successions', 'Lettuce').join(' ')).not.toMatch(/Changed since/);
  });

  it('leaves what was sown before its day, as Records have it, and lays the rest and all others anew', () => {
    const season = seasonAt('Madison WI', [LETTUCE], civilDay(2027, 3, 1));
    lay(season, 'Lettuce');
    const done = season.book.edit([
      { edit: 'insert row', table: 'Records', entries: { Planting: 'Lettuce 1', On: '2027-02-28', What: 'sown' } },
    ]);
    expect(done.refused).toBe(false);
    season.type('Successions', 'Lettuce', 'A week', '40 heads');
    season.type('Successions', 'Lettuce', 'To', '2027-06-20');
    const { workbook } = season.book;
    const act = laySuccessions(workbook);
    if (!act.ok) throw new Error(act.why);
    expect(workbook.do(act.commands, act.message).refused).toBe(false);
    expect(act.said).toMatch(/1 left as they are/);
    expect(season.number('Plantings', 'Lettuce 1', 'Wanted pieces')).toBe(60);
    for (const name of names(season).filter((one) => one !== 'Lettuce 1'))
      expect(season.number('Plantings', name, 'Wanted pieces'), name).toBe(40);
  });

  it('takes out what a shorter succession no longer has, and adds what a longer one wants, keeping the rows', () => {
    const season = seasonAt('Madison WI', [LETTUCE]);
    lay(season, 'Lettuce');
    const { workbook } = season.book;
    const ids = Array.from(rows(workbook, 'plantings'), (slot) => rowId(workbook, 'plantings', slot));
    season.type('Successions', 'Lettuce', 'To', '2027-08-15');
    lay(season, 'Lettuce');
    expect(names(season).length).toBeLessThan(ids.length);
    season.type('Successions', 'Lettuce', 'To', '2027-10-25');
    lay(season, 'Lettuce');
    expect(names(season).length).toBe(ids.length);
    expect(rowWithId(workbook, 'plantings', ids[0] ?? '')).toBeDefined();
    expect(new Set(names(season)).size).toBe(ids.length);
  });

  it('follows another spacing, cover and start, and takes back what is no longer asked', () => {
    const season = seasonAt('Madison WI', [{ ...LETTUCE, 'In-row spacing': '12 in', Cover: 'row cover' }]);
    lay(season, 'Lettuce');
    expect(season.number('Plantings', 'Lettuce 1', 'In-row spacing')).toBe(12);
    season.type('Successions', 'Lettuce', 'In-row spacing', '');
    season.type('Successions', 'Lettuce', 'Start', 'cells');
    lay(season, 'Lettuce');
    expect(season.number('Plantings', 'Lettuce 1', 'In-row spacing')).not.toBe(12);
    expect(season.value('Plantings', 'Lettuce 1', 'Start')).toBe('cells');
    expect(season.value('Plantings', 'Lettuce 1', 'Cover')).toBe('row cover');
  });
});

describe('all successions at once', () => {
  const SHORT = { ...LETTUCE, From: '2027-06-22', To: '2027-07-06' };
  const radish = {
    Succession: 'Radish',
    Variety: 'Radish',
    From: '2027-05-20',
    To: '2027-06-10',
    'A week': '20 bunches',
  };

  it('are one step: undone together, and laid as one by one', () => {
    const season = seasonAt('Madison WI', [SHORT, radish]);
    const { workbook } = season.book;
    const act = laySuccessions(workbook);
    if (!act.ok) throw new Error(act.why);
    expect(workbook.do(act.commands, act.message).refused).toBe(false);
    expect(act.said).toMatch(/^Lettuce: 3 plantings laid\. Radish: \d+ plantings? laid\./);
    const one = seasonAt('Madison WI', [SHORT, radish]);
    lay(one, 'Lettuce');
    lay(one, 'Radish');
    expect(names(season)).toEqual(names(one));
    expect(dates(season, 'Sown')).toEqual(dates(one, 'Sown'));
    workbook.undo();
    expect(names(season)).toEqual([]);
  });

  it('are none where one can’t be laid', () => {
    const long = { ...radish, Succession: 'Long', To: '2029-06-10' };
    const act = laySuccessions(seasonAt('Madison WI', [SHORT, long]).book.workbook);
    expect(act).toMatchObject({ ok: false, why: expect.stringMatching(/^Long is longer than a season: end it by/) });
  });
});
