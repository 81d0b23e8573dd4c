// What a season hands to the next one: what still stands in the ground as what it is, planted once and on its bed, and the seed that
// its plantings left, by the rule by which Seed order counted it.

import { beforeAll, describe, expect, it } from 'vitest';
import { BedSearch, civilDay, isoDate, seededNumbers, Workbook } from '../../engine/index.ts';
import { bedWish, proposeBeds } from '../../sheets-templates/acts/propose-beds.ts';
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
