// What a season hands to the next one: the seed that its plantings left, by the rule by which Seed order counted it.

import { describe, expect, it } from 'vitest';
import { Workbook } from '../../engine/index.ts';
import { type RollOverOptions, rollOver } from '../../sheets-templates/index.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { Book, testWorld } from '../book.ts';
import { type Rows, reading, type Season, seasonOf } from './season.ts';

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
