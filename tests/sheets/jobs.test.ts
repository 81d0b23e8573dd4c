// Jobs as a grower has them: every dated job of a planting, own ones, what is typed on them, hours by week against hands, the
// week's sheet and the calendar.

import { describe, expect, it } from 'vitest';
import { civilDay, isoDate, yearMonthDay } from '../../engine/index.ts';
import { calendarOf, jobsOf } from '../../sheets-templates/jobs.ts';
import { errorsOf, type Rows, type Season, seasonOf } from './season.ts';

const FARM = { Latitude: '44', 'Last frost': '2027-05-10', 'First frost': '2027-09-30' };

const ROWS: Rows = {
  Varieties: [
    { Variety: 'Keeper', Crop: 'Onion, bulb', 'Day-length type': 'long', 'Storage life': '200 days' },
    { Variety: 'Head', Crop: 'Lettuce, head' },
    { Variety: 'Root', Crop: 'Carrot' },
    { Variety: 'Red', Crop: 'Tomato' },
  ],
  Beds: [
    { Bed: 'A', Length: '20 m' },
    { Bed: 'B', Length: '20 m' },
  ],
  Plantings: [
    {
      Planting: 'Onions',
      Variety: 'Keeper',
      Start: 'blocks',
      Bed: 'A',
      Sown: '2027-02-15',
      'Planted out': '2027-04-20',
    },
    {
      Planting: 'Lettuce',
      Variety: 'Head',
      Start: 'blocks',
      Bed: 'B',
      'Bed length used': '5 m',
      Sown: '2027-03-20',
      'Planted out': '2027-04-25',
      Cover: 'row cover',
    },
    {
      Planting: 'Carrots',
      Variety: 'Root',
      Start: 'direct seed',
      Bed: 'B',
      'Bed length used': '10 m',
      Sown: '2027-06-10',
    },
    {
      Planting: 'Tomatoes',
      Variety: 'Red',
      Start: 'cells',
      Bed: 'B',
      'Bed length used': '5 m',
      Sown: '2027-04-05',
      'Planted out': '2027-05-25',
    },
  ],
  Hands: [
    { Name: 'Ada', 'Hours a week': '30' },
    { Name: 'Ben', 'Hours a week': '20', From: '2027-06-01', Until: '2027-08-31' },
  ],
  'Own jobs': [
    { Job: 'Mow paths', 'First on': '2027-05-04', Every: '2', Hours: '3', Kind: 'ground', Who: 'Ben' },
    { Job: 'Mend the fence', 'First on': '2027-03-03', Hours: '5' },
  ],
};

const season = seasonOf(ROWS, FARM, { units: 'si' });

function jobs(of: Season, planting: string, job?: string): readonly number[] {
  return [...of.book.rows('Tasks')].filter((row) => {
    const text = (column: string): string => of.book.cell('Tasks', row, column).text;
    return text('Planting') === planting && (job === undefined || text('Job') === job);
  });
}

const dates = (of: Season, planting: string, job: string): readonly string[] =>
  jobs(of, planting, job).map((row) => isoDate(Number(of.book.value('Tasks', row, 'On'))));

const sum = (rows: Iterable<number>, column: string, of: Season = season, sheet = 'Tasks'): number =>
  [...rows].reduce((all, row) => all + (of.book.cell(sheet, row, column).number ?? 0), 0);

describe('the list of jobs', () => {
  it('holds every job of an onion planting, in the order of the season', () => {
    expect(errorsOf(season.book)).toEqual([]);
    const told = jobs(season, 'Onions').map((row) => season.book.cell('Tasks', row, 'Job').text);
    expect(told.filter((job, at) => told.indexOf(job) === at)).toEqual([
      'Sow',
      'Prepare bed',
      'Harden off',
      'Set out',
      'Weed',
      'Stop watering',
      'Watch for tops down',
      'Lift and cure',
      'Clear bed',
      'Check necks',
      'Clean and store',
    ]);
    for (const job of [
      'Sow',
      'Prepare bed',
      'Harden off',
      'Set out',
      'Stop watering',
      'Watch for tops down',
      'Lift and cure',
      'Check necks',
      'Clean and store',
      'Clear bed',
    ]) {
      expect(
        told.filter((one) => one === job),
        job,
      ).toHaveLength(1);
    }
    expect(dates(season, 'Onions', 'Sow')).toEqual(['2027-02-15']);
    expect(dates(season, 'Onions', 'Set out')).toEqual(['2027-04-20']);
  });

  it('weeds onions early and often, every two weeks to the twelfth (Wicks et al. 1973), other crops twice', () => {
    expect(dates(season, 'Onions', 'Weed')).toEqual([
      '2027-05-04',
      '2027-05-18',
      '2027-06-01',
      '2027-06-15',
      '2027-06-29',
    ]);
    // The sixth would fall into the week before it is lifted.
    expect(Number(season.value('Plantings', 'Onions', 'Harvest'))).toBeLessThanOrEqual(civilDay(2027, 7, 20));
    expect(dates(season, 'Tomatoes', 'Weed')).toEqual(['2027-06-15', '2027-07-06']);
  });

  it('covers, uncovers, trellises and prunes what is', () => {
    expect(dates(season, 'Lettuce', 'Cover')).toEqual(['2027-04-25']);
    expect(dates(season, 'Lettuce', 'Uncover').length).toBe(1);
    expect(jobs(season, 'Tomatoes', 'Cover')).toEqual([]);
    expect(dates(season, 'Tomatoes', 'Trellis')).toEqual(['2027-06-15']);
    expect(dates(season, 'Tomatoes', 'Prune')).toEqual(['2027-07-06']);
    expect(jobs(season, 'Lettuce', 'Trellis')).toEqual([]);
  });

  it('adds up to the hours of each planting, tending apart', () => {
    for (const planting of ['Onions', 'Lettuce', 'Carrots', 'Tomatoes']) {
      const [hours = Number.NaN, tending = Number.NaN] = ['Hours', 'Tending hours'].map((one) =>
        season.number('Plantings', planting, one),
      );
      expect(sum(jobs(season, planting), 'Hours'), planting).toBeCloseTo(hours - tending, 6);
    }
  });

  it('has one job of tending a week, with the hours of all that stands', () => {
    const tending = [...season.book.rows('Tasks')].filter(
      (row) => season.book.cell('Tasks', row, 'Job').text === 'Tend the beds',
    );
    const total = [...season.book.rows('Plantings')]
      .map((row) => season.book.cell('Plantings', row, 'Tending hours').number ?? 0)
      .reduce((one, other) => one + other, 0);
    expect(tending.length).toBeGreaterThan(10);
    expect(sum(tending, 'Hours')).toBeCloseTo(total, 6);
  });

  it('brings own jobs, once and again', () => {
    const own = (name: string): readonly string[] =>
      [...season.book.rows('Tasks')]
        .filter((row) => season.book.cell('Tasks', row, 'What').text === name)
        .map((row) => isoDate(Number(season.book.value('Tasks', row, 'On'))));
    expect(own('Mend the fence')).toEqual(['2027-03-03']);
    expect(own('Mow paths').slice(0, 3)).toEqual(['2027-05-04', '2027-05-18', '2027-06-01']);
    expect(own('Mow paths').length).toBe(18);
  });

  it('keeps what is typed on a job when its planting moves', () => {
    const moved = seasonOf(ROWS, FARM, { units: 'si' });
    const [sow = -1] = jobs(moved, 'Onions', 'Set out');
    for (const [column, entry] of [
      ['Done', 'yes'],
      ['Done on', '2027-04-21'],
      ['Hours taken', '2.5'],
      ['Who', 'Ada'],
      ['Note', 'wet'],
    ] as const) {
      const done = moved.book.edit([{ edit: 'cell', table: 'Tasks', row: sow, column, entry }], 'Note');
      expect(done.refused).toBe(false);
    }
    moved.type('Plantings', 'Onions', 'Planted out', '2027-04-27');
    const [after = -1] = jobs(moved, 'Onions', 'Set out');
    expect(moved.book.cell('Tasks', after, 'Due').text).toBe('27 Apr 2027');
    expect(moved.book.cell('Tasks', after, 'Note').text).toBe('wet');
    expect(moved.book.cell('Tasks', after, 'Status').text).toBe('done');
    expect(moved.book.cell('Tasks', after, 'Hours counted').number).toBeCloseTo(2.5, 9);
    expect(moved.number('Hands', 'Ada', 'Hours taken')).toBeCloseTo(2.5, 9);
    const again = moved.book.reopened();
    const row = [...again.rows('Tasks')].find((one) => again.cell('Tasks', one, 'Note').text === 'wet');
    expect(row === undefined ? '' : again.cell('Tasks', row, 'Job').text).toBe('Set out');
  });

  it('leaves late jobs on the list, from the week after their own', () => {
    const later = seasonOf(ROWS, FARM, { units: 'si', today: civilDay(2027, 4, 30) });
    const status = (planting: string, job: string): string =>
      later.book.cell('Tasks', jobs(later, planting, job)[0] ?? -1, 'Status').text;
    expect(status('Onions', 'Set out')).toBe('late');
    expect(status('Lettuce', 'Set out')).toBe('late');
    expect(status('Onions', 'Weed')).toBe('to come');
    const week = [...later.book.rows('Labour')].find(
      (row) => later.book.cell('Labour', row, 'Name').text === '2027-W16',
    );
    expect(week === undefined ? 0 : later.book.cell('Labour', week, 'Late').number).toBeGreaterThan(0);
  });

  it('gives a job another day, and says when that lies before its planting', () => {
    const moved = seasonOf(ROWS, FARM, { units: 'si' });
    const [weed = -1] = jobs(moved, 'Onions', 'Weed');
    const put = (entry: string): void => {
      moved.book.edit([{ edit: 'cell', table: 'Tasks', row: weed, column: 'Moved to', entry }], 'Move');
    };
    const said = (): string =>
      moved.book
        .attention()
        .filter((one) => one.table === 'Tasks')
        .map((one) => one.says)
        .join();
    put('2027-05-07');
    expect(moved.book.cell('Tasks', weed, 'On').text).toBe('7 May 2027');
    expect(said()).toBe('');
    put('2027-01-02');
    expect(said()).toMatch(/before the planting is in the ground or the tray \(15 Feb\)/);
    expect(moved.book.attention().find((one) => one.table === 'Tasks')?.level).toBe('error');
  });
});

describe('what stands for years', () => {
  // Invented: a mild oceanic place.
  const names = 'January February March April May June July August September October November December'.split(' ');
  const lows = [2, 2, 3, 5, 8, 11, 13, 13, 11, 8, 4, 2];
  const rows: Rows = {
    'Monthly climate': names.map((Month, at) => ({
      Month,
      Low: `${lows[at]} degC`,
      High: `${(lows[at] ?? 0) + 8} degC`,
    })),
    Varieties: [
      { Variety: 'Spears', Crop: 'Asparagus' },
      { Variety: 'Head', Crop: 'Lettuce, head' },
    ],
    Beds: [{ Bed: 'A', Length: '20 m' }],
    Plantings: [
      { Planting: 'Asparagus', Variety: 'Spears', Bed: 'A', 'Bed length used': '10 m' },
      { Planting: 'Lettuce', Variety: 'Head', Bed: 'A', 'Bed length used': '5 m', 'Planted out': '2027-05-10' },
    ],
  };
  const far = (season: Season): readonly string[] =>
    season.book
      .attention()
      .filter(({ table, says }) => table === 'Tasks' && says.includes('more than a year from the season'))
      .map(({ rowName, says }) => `${rowName}: ${says}`);

  it('has jobs in years to come without a word; a day that is a slip is told', () => {
    const season = seasonOf(rows, { Latitude: '51.8' }, { units: 'si' });
    const weedings = jobs(season, 'Asparagus', 'Weed').map((row) => Number(season.book.value('Tasks', row, 'On')));
    // The first spears come in the third spring, and the weeding before them is a job of that year.
    expect(Math.max(...weedings)).toBeGreaterThan(civilDay(2029, 1, 1));
    expect(far(season)).toEqual([]);
    for (const [planting, day] of [
      ['Lettuce', '2029-05-10'],
      ['Asparagus', '2079-05-10'],
      ['Asparagus', '2007-05-10'],
    ] as const) {
      const moved = seasonOf(rows, { Latitude: '51.8' }, { units: 'si' });
      const [weed = -1] = jobs(moved, planting, 'Weed');
      moved.book.edit([{ edit: 'cell', table: 'Tasks', row: weed, column: 'Moved to', entry: day }], 'Move');
      expect(far(moved), `${planting} ${day}`).toHaveLength(1);
    }
    season.type('Plantings', 'Asparagus', 'Planted out', '2072-04-10');
    expect(far(season).length).toBeGreaterThan(0);
  });
});

describe('what is harvested in another season than it is planted', () => {
  const crops = ['Asparagus', 'Strawberry', 'Rhubarb', 'Garlic'];
  // A cool place at 56 north, invented: garlic is lifted late in July.
  const lows = [-2, -2, 0, 3, 7, 11, 13, 12, 9, 6, 2, -1];
  const highs = [4, 4, 7, 12, 17, 20, 22, 21, 17, 12, 8, 5];
  const months = 'January February March April May June July August September October November December'.split(' ');
  const season = seasonOf(
    {
      'Monthly climate': months.map((Month, at) => ({ Month, Low: `${lows[at]} degC`, High: `${highs[at]} degC` })),
      Varieties: crops.map((crop) => ({ Variety: crop, Crop: crop })),
      Plantings: crops.map((crop) => ({ Planting: crop, Variety: crop, 'Bed length used': '10 m', Price: '5' })),
    },
    { Latitude: '56', Wage: '16' },
    { units: 'si' },
  );
  const number = (crop: string, column: string): number => season.number('Plantings', crop, column) ?? Number.NaN;
  const inWeeks = (crop: string): number =>
    sum(
      [...season.book.rows('Weekly harvest')].filter(
        (row) => season.book.cell('Weekly harvest', row, 'Planting').text === crop,
      ),
      'Mass',
      season,
      'Weekly harvest',
    );

  it('is in the weeks to the end of its harvest where that comes within a year of the season', () => {
    for (const crop of ['Strawberry', 'Rhubarb', 'Garlic']) {
      expect(number(crop, 'Marketable yield'), crop).toBeGreaterThan(0);
      expect(inWeeks(crop), crop).toBeCloseTo(number(crop, 'Marketable yield'), 6);
      expect(number(crop, 'Revenue'), crop).toBeGreaterThan(0);
    }
  });

  it('is said where it comes later, and brings no money and no hours of picking until then', () => {
    expect(number('Asparagus', 'Marketable yield')).toBeGreaterThan(0);
    expect(inWeeks('Asparagus')).toBe(0);
    for (const column of ['Revenue', 'Picking hours', 'Packing hours']) expect(number('Asparagus', column)).toBe(0);
    expect(season.says('Plantings', 'Asparagus').join()).toMatch(
      /^.*Harvested from \d+ \w+ 2029 to \d+ \w+ 2029, which ends more than a year after the season/,
    );
  });

  it('has the hours of its jobs, tending of all beds aside', () => {
    for (const crop of crops) {
      const hours = sum(
        [...season.book.rows('Tasks')].filter((row) => season.book.cell('Tasks', row, 'Planting').text === crop),
        'Hours',
        season,
      );
      expect(hours, crop).toBeCloseTo(number(crop, 'Hours') - number(crop, 'Tending hours'), 6);
    }
  });

  it('is weeded in every year that it stands, and what stands for years is not cleared after its first harvest', () => {
    const years = (crop: string) =>
      new Set(
        jobs(season, crop, 'Weed').map((row) => yearMonthDay(Number(season.book.value('Tasks', row, 'On'))).year),
      );
    expect([...years('Asparagus')].sort()).toEqual([2027, 2028, 2029]);
    expect(years('Strawberry').has(2027)).toBe(true);
    for (const crop of ['Asparagus', 'Strawberry', 'Rhubarb'])
      expect(jobs(season, crop, 'Clear bed'), crop).toEqual([]);
    expect(jobs(season, 'Garlic', 'Clear bed')).toHaveLength(1);
  });
});

describe('a planting set out before it is sown', () => {
  it('has no harvest and no money, and says why', () => {
    const season = seasonOf({
      Varieties: [{ Variety: 'Rough', Crop: 'Kale' }],
      Plantings: [
        {
          Planting: 'Slip',
          Variety: 'Rough',
          Start: 'blocks',
          Sown: '2027-06-01',
          'Planted out': '2027-05-01',
          Price: '5',
        },
      ],
    });
    for (const column of ['Harvest', 'Marketable yield', 'Revenue'])
      expect(season.value('Plantings', 'Slip', column), column).toBeNull();
    expect(season.says('Plantings', 'Slip').join(' ')).toContain('Planted out before it was sown');
    expect(season.says('Raising', 'Slip').join(' ')).not.toMatch(/younger than usual/);
    season.type('Plantings', 'Slip', 'Sown', '2027-04-01');
    expect(season.number('Plantings', 'Slip', 'Revenue')).toBeGreaterThan(0);
  });
});

describe('hours by week', () => {
  it('are the hours by job, by kind and all together', () => {
    const weeks = [...season.book.rows('Labour')];
    expect(sum(weeks, 'Hours', season, 'Labour')).toBeCloseTo(sum(season.book.rows('Tasks'), 'Hours counted'), 6);
    const kinds = [
      'Raising',
      'Ground',
      'Planting',
      'Care',
      'Water',
      'Picking',
      'Packing',
      'Storing',
      'Selling',
      'Other',
    ];
    for (const row of weeks) {
      const of = (column: string): number => season.book.cell('Labour', row, column).number ?? Number.NaN;
      expect(kinds.reduce((all, kind) => all + of(kind), 0)).toBeCloseTo(of('Hours'), 6);
    }
  });

  it('stand against the hands there are that week', () => {
    const available = (name: string): number | undefined => {
      const row = [...season.book.rows('Labour')].find((one) => season.book.cell('Labour', one, 'Name').text === name);
      return row === undefined ? undefined : season.book.cell('Labour', row, 'Available').number;
    };
    expect(available('2027-W10')).toBe(30);
    expect(available('2027-W26')).toBe(50);
    season.type('Own jobs', 'Mend the fence', 'Hours', '90');
    const said = season.book.attention().filter((one) => one.table === 'Labour');
    expect(said.map((one) => one.says).join()).toMatch(/hours more than there are hands for: .* 2027-W09/);
    season.book.undo();
  });

  it('nothing is said of a few minutes more', () => {
    for (const [hours, says] of [
      ['0.4', []],
      ['0.6', [expect.stringMatching(/^0.6 hours more than there are hands for: .* 2027-W02/)]],
    ] as const) {
      const farm = seasonOf(
        {
          // Nobody is there in January.
          Hands: [{ Name: 'Ada', 'Hours a week': '30', From: '2027-02-01' }],
          'Own jobs': [{ Job: 'Look at the stores', 'First on': '2027-01-13', Hours: hours }],
        },
        FARM,
      );
      const said = farm.book.attention().filter((one) => one.table === 'Labour');
      expect(said.map((one) => one.says)).toEqual(says);
    }
  });
});

it('are listed by day and status where only some are wanted', () => {
  const all = jobsOf(season.book.workbook) ?? [];
  const until = all[Math.floor(all.length / 2)]?.on ?? Number.NaN;
  const some = jobsOf(season.book.workbook, (on, status) => on < until && status !== 'done');
  expect(some).toEqual(all.filter(({ on, status }) => on < until && status !== 'done'));
  expect(some?.length).toBeLessThan(all.length);
  expect(some?.length).toBeGreaterThan(0);
});

describe('the calendar of the jobs', () => {
  it('has one event a job, under an identity that outlasts a change of date', () => {
    const list = jobsOf(season.book.workbook) ?? [];
    expect(list.length).toBe(season.book.rows('Tasks').length);
    const ids = (text: string): readonly string[] =>
      text
        .replace(/\r\n /g, '')
        .split('\r\n')
        .filter((line) => line.startsWith('UID:'));
    const before = ids(calendarOf(season.book.workbook, list, civilDay(2027, 1, 1)));
    expect(new Set(before).size).toBe(list.length);
    season.type('Plantings', 'Carrots', 'Sown', '2027-06-14');
    const after = ids(calendarOf(season.book.workbook, jobsOf(season.book.workbook) ?? [], civilDay(2027, 1, 1)));
    const sowing = before.find((uid) => uid.includes('sow-in-the-bed'));
    expect(after).toContain(sowing);
    season.book.undo();
  });
});

it('counts one tray and one plant as one', () => {
  const small = seasonOf(
    {
      ...ROWS,
      Records: [],
      Plantings: [
        {
          Planting: 'Tomatoes',
          Variety: 'Red',
          Start: 'cells',
          Bed: 'B',
          'Bed length used': '0.5 m',
          Rows: '1',
          'In-row spacing': '50 cm',
          Sown: '2027-04-05',
          'Planted out': '2027-05-25',
        },
      ],
    },
    FARM,
    { units: 'si' },
  );
  const told = (jobsOf(small.book.workbook) ?? []).flatMap(({ amounts }) => amounts);
  expect(small.number('Plantings', 'Tomatoes', 'Trays')).toBe(1);
  expect(told).toContain('1 tray');
  expect(told).toContain('1 plant');
  expect(told.filter((amount) => /^1 (?:trays|plants|cells)$/.test(amount))).toEqual([]);
});
