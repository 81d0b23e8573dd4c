// Amounts wanted: blocks, seeds and bed length follow at the farm's confidence, for weights and for pieces, every crop.

import { describe, expect, it } from 'vitest';
import { libraryRows } from '../../sheets-templates/library/library.ts';
import { monthsOf } from '../reference/calendars.ts';
import { errorsOf, type Season, seasonOf } from './season.ts';

type Row = Readonly<Record<string, string>>;
const CROPS = libraryRows().map((row) => row.Crop ?? '');

function madison(plantings: readonly Row[], more: Readonly<Record<string, readonly Row[]>> = {}): Season {
  return seasonOf(
    {
      'Monthly climate': monthsOf('Madison WI'),
      Varieties: CROPS.map((crop) => ({
        Variety: crop,
        Crop: crop,
        ...(crop === 'Onion, bulb' ? { 'Day-length type': 'long' } : {}),
      })),
      Plantings: plantings,
      ...more,
    },
    { Latitude: '43.1' },
  );
}

describe('400 lb of cured onions by October', () => {
  const season = madison([
    { Planting: 'Onions', Variety: 'Onion, bulb', 'Wanted from': '2027-10-01', Wanted: '400 lb' },
    {
      Planting: 'Clumps',
      Variety: 'Onion, bulb',
      'Wanted from': '2027-10-01',
      Wanted: '400 lb',
      'Seeds per station': '3.5',
    },
    {
      Planting: 'Singles',
      Variety: 'Onion, bulb',
      'Wanted from': '2027-10-01',
      Wanted: '400 lb',
      'Seeds per station': '1',
    },
  ]);

  it.each(['Onions', 'Clumps', 'Singles'])('gives blocks, seeds and bed length (%s)', (name) => {
    const of = (column: string): number => season.number('Plantings', name, column) ?? Number.NaN;
    expect(of('Expected')).toBeGreaterThan(400);
    expect(of('Expected')).toBeLessThan(400 * 1.08);
    expect(of('Cured yield')).toBe(of('Expected'));
    expect(of('Bed length used')).toBe(of('Length wanted'));
    expect(of('Stations')).toBeGreaterThanOrEqual(of('Places wanted'));
    expect(of('Stations')).toBeLessThan(of('Places wanted') + of('Rows'));
    expect(of('Blocks to start')).toBeGreaterThan(of('Stations'));
    expect(of('Seeds needed')).toBeGreaterThan(of('Blocks to start'));
    expect(season.says('Plantings', name).filter((says) => /wanted|for sale/.test(says))).toEqual([]);
  });

  it('asks for more places of a grower who wants to be surer', () => {
    const before = season.number('Plantings', 'Singles', 'Places wanted') ?? Number.NaN;
    season.type('Farm', '', 'Confidence', '99%');
    expect(season.number('Plantings', 'Singles', 'Places wanted')).toBeGreaterThan(before);
    season.book.undo();
  });
});

describe('an amount of every crop', () => {
  const pieces = CROPS.map((crop) => ({ Planting: `${crop}, pieces`, Variety: crop, Wanted: '60 heads' }));
  const weights = CROPS.map((crop) => ({ Planting: `${crop}, weight`, Variety: crop, Wanted: '30 kg' }));
  const season = madison([...pieces, ...weights]);
  const of = (name: string, column: string): number | undefined => season.number('Plantings', name, column);

  it('leaves no cell in error and no amount short', () => {
    expect(errorsOf(season.book)).toEqual([]);
    for (const { Planting } of [...pieces, ...weights]) {
      expect(season.says('Plantings', Planting).join(' '), Planting).not.toMatch(/of what is wanted/);
    }
  });

  it('is met, with little over, by what the bed length gives', () => {
    let met = 0;
    for (const crop of CROPS) {
      const weight = of(`${crop}, weight`, 'Expected');
      if (weight !== undefined && of(`${crop}, weight`, 'Length wanted') !== undefined) {
        met += 1;
        const kg = weight * 0.45359237;
        // One more row of places across the bed is what rounding up may add, and the places lost to confidence.
        const places = of(`${crop}, weight`, 'Stations') ?? 0;
        const across = of(`${crop}, weight`, 'Rows') ?? 1;
        expect(kg, crop).toBeGreaterThanOrEqual(30 * 0.999);
        expect((kg * (places - across - 1)) / places, crop).toBeLessThan(30 * 1.35);
      }
      const count = of(`${crop}, pieces`, 'Expected pieces');
      if (count !== undefined && of(`${crop}, pieces`, 'Length wanted') !== undefined) {
        expect(count, crop).toBeGreaterThanOrEqual(60 * 0.999);
      }
    }
    expect(met).toBeGreaterThan(0.8 * CROPS.length);
  });

  it('takes 60 heads as pieces and says where they would go', () => {
    expect(of('Cabbage, pieces', 'Wanted')).toBeUndefined();
    expect(of('Cabbage, pieces', 'Wanted pieces')).toBe(60);
    expect(of('Cabbage, pieces', 'Expected pieces')).toBeGreaterThanOrEqual(60);
  });
});

describe('what cannot be had is said in a sentence', () => {
  const season = madison(
    [
      { Planting: 'Early lettuce', Variety: 'Lettuce, head', 'Wanted from': '2027-04-01' },
      { Planting: 'Late melons', Variety: 'Melon', 'Wanted from': '2027-12-24' },
      { Planting: 'Late cabbage', Variety: 'Cabbage', 'Wanted from': '2028-01-10' },
      { Planting: 'Melons in March', Variety: 'Melon', 'Wanted from': '2027-03-01' },
      { Planting: 'Late by hand', Variety: 'Tomato', 'Wanted from': '2027-07-01', 'Planted out': '2027-06-20' },
      { Planting: 'Short', Variety: 'Cabbage', Bed: 'One', Wanted: '200 heads', 'Bed length used': '30 ft' },
      { Planting: 'Long', Variety: 'Cabbage', Bed: 'One', Wanted: '2000 lb' },
    ],
    { Beds: [{ Bed: 'One', Length: '50 ft' }] },
  );
  const said = (name: string): string => season.says('Plantings', name).join(' ');

  it('a date before anything could be ripe', () => {
    expect(said('Early lettuce')).toMatch(
      /Not for sale by 1 Apr: ripe on \d+ Jun, planted as early as makes sense. Want it later, cover it, or choose a quicker variety\./,
    );
    expect(season.shown('Plantings', 'Early lettuce', 'Dates from')).toBe('earliest that makes sense');
  });

  it('a date after the cold, and a date that the one typed misses', () => {
    expect(said('Late melons')).toMatch(/Over by \d+ Sep, and it does not keep until 24 Dec: want it earlier/);
    expect(said('Late cabbage')).not.toMatch(/does not keep|for sale by/);
    expect(season.shown('Plantings', 'Late cabbage', 'Dates from')).toBe('the cold');
    expect(said('Melons in March')).toMatch(/Not for sale by 1 Mar/);
    expect(said('Late by hand')).toMatch(/Not for sale by 1 Jul: ripe on .* from the date typed\. Plant earlier/);
  });

  it('a length that is short of it, and one longer than the bed', () => {
    expect(said('Short')).toMatch(/\d+% of what is wanted: lengthen it, or add a planting\./);
    expect(said('Long')).toMatch(/Longer than the bed: shorten it, or split the planting over two beds\./);
  });
});
