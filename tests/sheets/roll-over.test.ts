// What a season hands to the next one: what still stands in the ground as what it is, planted once and on its bed, and the seed that
// its plantings left, by the rule by which Seed order counted it.

import { beforeAll, describe, expect, it } from 'vitest';
import { BedSearch, civilDay, isoDate, message, seededNumbers, Workbook } from '../../engine/index.ts';
import { bedWish, proposeBeds } from '../../sheets-templates/acts/propose-beds.ts';
import { nameAnew } from '../../sheets-templates/acts/still-standing.ts';
import { type RollOverOptions, rollOver } from '../../sheets-templates/index.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { Book, testWorld } from '../book.ts';
import { latitudeOf, monthsOf } from '../reference/calendars.ts';
import { errorsOf, type Rows, reading, type Season, seasonOf } from './season.ts';

const PLACE = 'Raleigh NC';
const FARM = { Latitude: String(latitudeOf(PLACE)) };
const TODAY = { today: civilDay(2027, 12, 1), units: 'si' } as const;

function next(season: Season, options: Partial<RollOverOptions> = {}): Season & { readonly said: string } {
  const year = season.number('Farm', '', 'Season') ?? Number.NaN;
  const rolled = rollOver(season.book.workbook, { season: year + 1, plan: 'all', ...options });
  if (!rolled.ok) throw new Error(rolled.why);
  const opened = Workbook.open(rolled.data, testWorld(SEASON));
  if (opened === undefined) throw new Error('It does not open.');
  return { ...reading(new Book(opened, SEASON)), said: rolled.said };
}

const names = (season: Season, sheet: string): readonly string[] =>
  Array.from(season.book.rows(sheet), (row) => season.book.rowName(sheet, row));

function errors(season: Season): readonly string[] {
  return season.book
    .attention()
    .flatMap(({ level, rowName, says }) => (level === 'error' ? [`${rowName}: ${says}`] : []));
}

const date = (season: Season, planting: string, column: string): string =>
  isoDate(Number(season.value('Plantings', planting, column)));

const STANDING: Rows = {
  'Monthly climate': monthsOf(PLACE),
  Varieties: [
    { Variety: 'Stone', Crop: 'Garlic' },
    { Variety: 'Spear', Crop: 'Asparagus' },
    { Variety: 'Ball', Crop: 'Beet' },
  ],
  Packs: [
    { Variety: 'Stone', Supplier: 'A', Form: 'sets', Seeds: '50', Price: '16' },
    { Variety: 'Spear', Supplier: 'A', Form: 'plants', Seeds: '10', Price: '15' },
    { Variety: 'Ball', Supplier: 'A', Seeds: '1000', Price: '5' },
  ],
  Beds: ['B1', 'B2', 'B3', 'B4'].map((Bed) => ({ Bed, Length: '20 m', 'Family last year': 'Poaceae' })),
  Plantings: [
    { Planting: 'Garlic', Variety: 'Stone', Bed: 'B1', 'Bed length used': '20 m' },
    { Planting: 'Asparagus', Variety: 'Spear', Bed: 'B2', 'Bed length used': '20 m' },
    { Planting: 'Beets', Variety: 'Ball', Bed: 'B3', 'Bed length used': '20 m' },
  ],
  Records: [
    { Planting: 'Garlic', On: '2027-11-12', What: 'set out' },
    { Planting: 'Garlic', On: '2027-11-30', What: 'stood', Count: '58', Of: '60' },
  ],
};

describe('what still stands', () => {
  let first: Season;
  let second: ReturnType<typeof next>;
  beforeAll(() => {
    first = seasonOf(STANDING, FARM, TODAY);
    second = next(first);
  });

  it('is carried along at its true date, to be harvested in the season that comes; nothing is lost of it', () => {
    expect(second.said).toMatch(
      /^Season 2028: 2 plantings carried along that still stand \(Garlic, Asparagus\), 2 plantings/,
    );
    expect(date(second, 'Garlic', 'Planted out')).toBe('2027-11-12');
    expect(date(second, 'Garlic', 'Harvest')).toBe(date(first, 'Garlic', 'Harvest'));
    expect(date(second, 'Garlic', 'Harvest')).toMatch(/^2028-0[5-7]/);
    expect(second.number('Plantings', 'Garlic', 'Marketable yield')).toBeCloseTo(
      first.number('Plantings', 'Garlic', 'Marketable yield') ?? Number.NaN,
      6,
    );
    const weeks = [...second.book.rows('Weekly harvest')].filter(
      (row) => second.book.cell('Weekly harvest', row, 'Planting').text === 'Garlic',
    );
    expect(weeks.length).toBeGreaterThan(0);
  });

  it('is neither bought, sown nor set out again, and no job of the season before is late', () => {
    expect(second.number('Varieties', 'Spear', 'Plants needed')).toBe(0);
    expect(second.number('Plantings', 'Garlic', 'Sets or plants to buy') ?? 0).toBe(0);
    expect(second.number('Plantings', 'Garlic', 'Costs')).toBeLessThan(
      first.number('Plantings', 'Garlic', 'Costs') ?? Number.NaN,
    );
    const jobs = [...second.book.rows('Tasks')].filter((row) =>
      ['Garlic', 'Asparagus'].includes(second.book.cell('Tasks', row, 'Planting').text),
    );
    expect(jobs.length).toBeGreaterThan(0);
    for (const row of jobs) {
      expect(['Prepare bed', 'Set out']).not.toContain(second.book.cell('Tasks', row, 'Job').text);
      expect(second.book.cell('Tasks', row, 'Status').text).not.toBe('late');
    }
  });

  it('is planted anew beside it next autumn where it overwinters, and not where it stands for years', () => {
    expect(names(second, 'Plantings')).toEqual(['Garlic', 'Asparagus', 'Beets', 'Garlic 2028']);
    expect(date(second, 'Garlic 2028', 'Planted out')).toMatch(/^2028-1[01]/);
    expect(second.number('Plantings', 'Garlic 2028', 'Sets or plants to buy')).toBeGreaterThan(0);
    expect(names(next(first, { plan: 'none' }), 'Plantings')).toEqual(['Garlic', 'Asparagus']);
  });

  it('keeps its bed, which nothing else is given while it stands, and breaks no rotation itself', () => {
    expect(second.shown('Plantings', 'Garlic', 'Bed')).toBe('B1');
    expect(second.shown('Plantings', 'Asparagus', 'Bed')).toBe('B2');
    expect(second.value('Plantings', 'Asparagus', 'Back too soon')).not.toBe(true);
    const wish = bedWish(second.book.workbook);
    if (typeof wish === 'string') throw new Error(wish);
    const search = new BedSearch(wish.question, seededNumbers(1), 5000);
    search.step(5000);
    const act = proposeBeds(second.book.workbook, wish, search.beds);
    if (!act.ok) throw new Error(act.why);
    second.book.workbook.do(act.commands, act.message);
    // Beets stood on B3.
    expect(second.shown('Plantings', 'Beets', 'Bed')).toBe('B4');
    // Its own family may not follow the garlic.
    expect(second.shown('Plantings', 'Garlic 2028', 'Bed')).not.toBe('B1');
  });

  it('takes along what was noted of it, and its results come when it is over', () => {
    expect(second.book.rows('Past results').length).toBe(0);
    expect(second.number('Learned of crops', 'Garlic', 'Field survival observations')).toBe(1);
    const third = next(second);
    expect(third.number('Past results', '', 'Season')).toBe(2028);
    expect(third.number('Learned of crops', 'Garlic', 'Field survival observations')).toBe(1);
  });

  it('opens clean, and in the years that follow each is there once: asparagus is cut from its third spring on', () => {
    expect(errors(second)).toEqual([]);
    expect(errorsOf(second.book)).toEqual([]);
    expect(date(second, 'Asparagus', 'Harvest')).toMatch(/^2029/);
    const third = next(second);
    expect([...names(third, 'Plantings')].sort()).toEqual(['Asparagus', 'Beets', 'Garlic 2028', 'Garlic 2029']);
    expect(date(third, 'Asparagus', 'Harvest')).toMatch(/^2029-0[3-5]/);
    const fourth = next(third);
    expect(date(fourth, 'Asparagus', 'Harvest')).toMatch(/^2030-0[3-5]/);
    expect(date(fourth, 'Asparagus', 'Planted out')).toBe(date(first, 'Asparagus', 'Planted out'));
    // Cut until June, and its bed is not free for that.
    expect(date(fourth, 'Asparagus', 'Bed free') > '2030-12-31').toBe(true);
    expect(errors(fourth)).toEqual([]);
  });

  it('is not carried along once Records say that it was cleared, or its bed is typed as free', () => {
    const typed = seasonOf(STANDING, FARM, TODAY);
    typed.type('Plantings', 'Asparagus', 'Bed free', '2027-11-20');
    expect(next(typed).said).toMatch(/1 planting carried along that still stands \(Garlic\)/);
    const cleared = seasonOf(
      { ...STANDING, Records: [{ Planting: 'Asparagus', On: '2027-11-20', What: 'cleared' }] },
      FARM,
      TODAY,
    );
    expect(next(cleared).said).toMatch(/1 planting carried along that still stands \(Garlic\)/);
  });
});

describe('what is typed and noted of what still stands', () => {
  const onions = (more: Rows = {}, planting: Readonly<Record<string, string>> = {}): Season =>
    seasonOf(
      {
        'Monthly climate': monthsOf(PLACE),
        Varieties: [
          { Variety: 'Winterer', Crop: 'Onion, bulb' },
          { Variety: 'Stone', Crop: 'Garlic' },
        ],
        Beds: ['B1', 'B2', 'B3'].map((Bed) => ({ Bed, Length: '20 m' })),
        Plantings: [
          { Planting: 'Onions', Variety: 'Winterer', Bed: 'B1', 'Planted out': '2027-10-20', ...planting },
          { Planting: 'Garlic', Variety: 'Stone', Bed: 'B2' },
        ],
        ...more,
      },
      FARM,
      TODAY,
    );

  it('keeps the typed date against a line of Records in which an error is found, and takes that of one that counts', () => {
    const slip = onions({ Records: [{ Planting: 'Onions', On: '2027-02-20', What: 'set out' }] });
    expect(errors(slip).join(' ')).toContain('before it is sown');
    const rolled = next(slip);
    expect(date(rolled, 'Onions', 'Planted out')).toBe('2027-10-20');
    expect(date(rolled, 'Onions', 'Harvest')).toMatch(/^2028-0[5-7]/);
    const noted = next(onions({ Records: [{ Planting: 'Onions', On: '2027-10-24', What: 'set out' }] }));
    expect(date(noted, 'Onions', 'Planted out')).toBe('2027-10-24');
  });

  it('keeps an own job that is still to come on what stands, and has it a year on for what is planted anew', () => {
    const season = onions({
      'Own jobs': [
        { Job: 'Rake mulch off', 'First on': '2028-03-01', Planting: 'Garlic' },
        { Job: 'Mulch', 'First on': '2027-11-20', Planting: 'Garlic' },
        { Job: 'Mend the fence', 'First on': '2027-02-01' },
      ],
    });
    const jobs = (of: Season): readonly string[] =>
      [...of.book.rows('Own jobs')]
        .map((row) =>
          [
            of.book.cell('Own jobs', row, 'Planting').text,
            isoDate(Number(of.book.value('Own jobs', row, 'First on'))),
          ].join(' '),
        )
        .sort();
    expect(jobs(next(season))).toEqual(
      [' 2028-02-01', 'Garlic 2028 2028-11-20', 'Garlic 2028 2029-03-01', 'Garlic 2028-03-01'].sort(),
    );
    expect(jobs(next(season, { plan: 'none' }))).toEqual([' 2028-02-01', 'Garlic 2028-03-01']);
    expect(errors(next(season))).toEqual([]);
  });

  it('leaves branches behind with the season of which they are plans, and says so', () => {
    const season = onions();
    const { workbook } = season.book;
    workbook.do([{ command: 'add branch', branch: 'later', name: 'Later' }], message('trial'));
    const rolled = rollOver(workbook, { season: 2028, plan: 'all' });
    if (!rolled.ok) throw new Error(rolled.why);
    expect(rolled.data.branches ?? {}).toEqual({});
    expect(rolled.said).toContain('1 branch left behind');
  });

  it('is counted by no line of Records that has more places than were planted', () => {
    const season = onions({
      Records: [
        { Planting: 'Onions', On: '2027-11-20', What: 'stood', Count: '9000' },
        { Planting: 'Onions', On: '2027-11-12', What: 'stood', Count: '50' },
      ],
    });
    const counts = [...season.book.rows('Records')].map((row) => season.book.cell('Records', row, 'Counts for').text);
    expect(errors(season).join(' ')).toContain('More than there were');
    expect(counts).toEqual(['', 'Onions']);
    expect(season.number('Planting results', 'Onions', 'Places standing')).toBe(50);
  });

  it('is named by one year only, however often it is planted again', () => {
    const taken = new Set(['onions', 'onions 2028']);
    expect(nameAnew('Onions', 2027, 2028, taken)).toBe('Onions 2028 b');
    expect(nameAnew('Onions 2028', 2027, 2028, taken)).toBe('Onions 2028 b');
    expect(nameAnew('Onions 2028 b', 2028, 2029, new Set(['onions 2029']))).toBe('Onions 2029 b');
    expect(nameAnew('2027 onions', 2027, 2028, taken)).toBe('2028 onions');
  });
});

describe('what falls into a season', () => {
  const PRICED: Rows = {
    'Monthly climate': monthsOf(PLACE),
    Varieties: [
      { Variety: 'Stone', Crop: 'Garlic' },
      { Variety: 'Spear', Crop: 'Asparagus' },
      { Variety: 'Frill', Crop: 'Kale' },
      { Variety: 'Ball', Crop: 'Beet' },
    ],
    Beds: ['B1', 'B2', 'B3', 'B4', 'B5', 'B6'].map((Bed) => ({ Bed, Length: '20 m' })),
    Plantings: [
      { Planting: 'Garlic', Variety: 'Stone', Bed: 'B1', Price: '10 USD/kg' },
      { Planting: 'Kale', Variety: 'Frill', Bed: 'B2', 'Planted out': '2027-08-25', Price: '5 USD/kg' },
      { Planting: 'Beets', Variety: 'Ball', Bed: 'B3', Price: '2 USD/kg' },
      { Planting: 'Asparagus', Variety: 'Spear', Bed: 'B4', Price: '12 USD/kg' },
    ],
  };
  const FIGURES = ['Marketable yield', 'Pieces', 'Revenue', 'Hours', 'Costs', 'Margin'] as const;
  const part = (of: string): string => (of === 'Marketable yield' ? 'Yield this season' : `${of} this season`);
  const sum = (season: Season, sheet: string, column: string, only: (row: number) => boolean = () => true): number =>
    [...season.book.rows(sheet)]
      .filter(only)
      .reduce((total, row) => total + (season.book.cell(sheet, row, column).number ?? 0), 0);
  /** In Weekly harvest, in the weeks from the one of the first day of the season to the one of the last. */
  const picked = (season: Season, planting: string, year: number): number =>
    sum(season, 'Weekly harvest', 'Mass', (row) => {
      const week = isoDate(Number(season.book.value('Weekly harvest', row, 'Week starts')));
      const isOf = season.book.cell('Weekly harvest', row, 'Planting').text === planting;
      return isOf && week > `${year - 1}-12-24` && week <= `${year}-12-31`;
    });
  let first: Season;
  let second: Season;
  let third: Season;
  beforeAll(() => {
    first = seasonOf(PRICED, { ...FARM, Wage: '10 USD/h' }, TODAY);
    second = next(first);
    third = next(second);
  });

  it('is the whole of what is picked in the season in which it is planted', () => {
    for (const figure of FIGURES) {
      expect(first.number('Plantings', 'Beets', part(figure))).toBe(first.number('Plantings', 'Beets', figure));
    }
  });

  it('is of an overwintered crop what is picked in it: nothing of the garlic of next year, all of that of the year before', () => {
    expect(first.number('Plantings', 'Garlic', 'Yield this season')).toBe(0);
    expect(first.number('Plantings', 'Garlic', 'Revenue this season')).toBe(0);
    expect(second.number('Plantings', 'Garlic', 'Yield this season')).toBe(
      second.number('Plantings', 'Garlic', 'Marketable yield'),
    );
    expect(second.number('Plantings', 'Garlic 2028', 'Yield this season')).toBe(0);
    // Cut from its third spring on.
    expect(second.number('Plantings', 'Asparagus', 'Yield this season')).toBe(0);
    expect(third.number('Plantings', 'Asparagus', 'Yield this season')).toBeGreaterThan(0);
  });

  it('divides a harvest over the turn of the year as its weeks do, and nothing is lost or doubled', () => {
    const whole = first.number('Plantings', 'Kale', 'Marketable yield') ?? Number.NaN;
    const before = first.number('Plantings', 'Kale', 'Yield this season') ?? Number.NaN;
    const after = second.number('Plantings', 'Kale', 'Yield this season') ?? Number.NaN;
    expect(after).toBeGreaterThan(0);
    expect(before + after).toBeCloseTo(whole, 6);
    // The week in which the year ends counts in both sheets of weeks.
    expect(Math.abs(before - picked(first, 'Kale', 2027))).toBeLessThan(whole / 20);
    expect(Math.abs(after - picked(second, 'Kale', 2028))).toBeLessThan(whole / 20);
    const price = 5;
    expect(second.number('Plantings', 'Kale', 'Revenue this season')).toBeCloseTo(after * price, 6);
  });

  it('leaves each hour in one season: of garlic the planting in the first, care, lifting and clearing in the second', () => {
    const planted = first.number('Plantings', 'Garlic', 'Hours this season') ?? Number.NaN;
    const lifted = second.number('Plantings', 'Garlic', 'Hours this season') ?? Number.NaN;
    expect(planted).toBeGreaterThan(0);
    expect(lifted).toBeGreaterThan(0);
    const whole = first.number('Plantings', 'Garlic', 'Hours') ?? Number.NaN;
    expect(Math.abs(planted + lifted - whole) / whole).toBeLessThan(0.01);
  });

  it('is what the totals of the plan, a bed and the labour by week count, the same in a year like the one before', () => {
    const totals = (season: Season) => sum(season, 'Plantings', 'Yield this season');
    expect(sum(second, 'Beds', 'Margin')).toBeCloseTo(
      sum(second, 'Plantings', 'Margin this season', (row) => second.book.cell('Plantings', row, 'Bed').text !== ''),
      6,
    );
    const asparagus = third.number('Plantings', 'Asparagus', 'Yield this season') ?? Number.NaN;
    expect(Math.abs(totals(third) - asparagus - totals(second)) / totals(second)).toBeLessThan(0.02);
    const jobs = (season: Season): number => sum(season, 'Labour', 'Hours') * 24;
    expect(jobs(third) / jobs(second)).toBeLessThan(1.3);
    for (const row of second.book.rows('Tasks')) {
      if (second.book.cell('Tasks', row, 'Planting').text !== 'Garlic 2028') continue;
      const on = isoDate(Number(second.book.value('Tasks', row, 'On')));
      if (on > '2028-12-31') expect(second.book.cell('Tasks', row, 'Hours counted').number).toBe(0);
    }
    const months = [...second.book.rows('Months')].map((row) => Number(second.book.value('Months', row, 'Month')));
    expect(isoDate(Math.min(...months)) >= '2027-11-01').toBe(true);
  });
});

describe('the seed that is left', () => {
  const seedOf = (lots: Rows[string], packs: Rows[string], planting: Readonly<Record<string, string>> = {}): Season =>
    seasonOf({
      Varieties: [{ Variety: 'Leaf', Crop: 'Lettuce, head' }],
      Beds: [{ Bed: 'B1', Length: '15 m' }],
      'Seed lots': lots,
      Packs: packs,
      Plantings: [{ Planting: 'Heads', Variety: 'Leaf', Bed: 'B1', 'Planted out': '2027-05-01', ...planting }],
    });
  const lot = (name: string, more: Readonly<Record<string, string>> = {}) => ({
    Lot: name,
    Variety: 'Leaf',
    Quantity: '300',
    'Germination when tested': '96%',
    'Packed on': '2026-11-10',
    'Tested on': '2026-11-10',
    ...more,
  });
  const left = (season: Season): Readonly<Record<string, number | undefined>> => {
    const rolled = next(season);
    return Object.fromEntries(
      names(rolled, 'Seed lots').map((name) => [name, rolled.number('Seed lots', name, 'Quantity')]),
    );
  };
  const need = (season: Season): number => season.number('Varieties', 'Leaf', 'Seeds needed') ?? Number.NaN;

  it('is what the plan did not take of a lot that was counted, though no planting names it', () => {
    const season = seedOf([lot('Old')], [{ Variety: 'Leaf', Supplier: 'A', Seeds: '250', Price: '4' }]);
    expect(need(season)).toBeLessThan(300);
    expect(season.number('Seed order', 'Leaf', 'Seeds to buy')).toBe(0);
    expect(left(season)).toEqual({ Old: 300 - need(season) });
  });

  it('counts nothing twice: lots and packs together hold what they held, less what was sown', () => {
    const season = seedOf(
      [lot('Old', { Quantity: '100' })],
      [{ Variety: 'Leaf', Supplier: 'A', Seeds: '5000', Price: '9' }],
    );
    expect(left(season)).toEqual({ 'Leaf 2027': 5100 - need(season) });
  });

  it('takes the lot that a planting names, else the oldest that is counted, and none that is not', () => {
    const lots = [lot('New'), lot('Older', { 'Packed on': '2026-01-10' }), lot('Aside', { 'Count it': 'no' })];
    const unnamed = seedOf(lots, []);
    expect(left(unnamed)).toEqual({ New: 300, Older: 300 - need(unnamed), Aside: 300 });
    const named = seedOf(lots, [], { 'Seed lot': 'New' });
    expect(left(named)).toEqual({ New: 300 - need(named), Older: 300, Aside: 300 });
  });
});
