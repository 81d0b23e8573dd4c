// The demo farm: opens without a cell in error, is as large as its story, and the faults left in it are found.

import { describe, expect, it } from 'vitest';
import { demoFarm } from '../../demo/farm.ts';
import { civilDay } from '../../engine/index.ts';
import { learnedOffers } from '../../sheets-templates/index.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { started } from '../book.ts';
import { errorsOf, reading } from './season.ts';

const opened = started(SEASON, demoFarm);
if (!opened.ok) throw new Error(opened.problems.join('\n'));
const season = reading(opened.workbook);
const { book } = season;
const texts = (sheet: string, column: string): readonly unknown[] =>
  [...book.rows(sheet)].map((row) => book.value(sheet, row, column));

describe('the demo farm', () => {
  it('opens without a cell in error or a formula that does not check', () => {
    expect(errorsOf(book)).toEqual([]);
    expect(book.attention().filter((one) => one.level === 'error')).toEqual([]);
  });

  it('grows a whole year: crops, successions, outlets, and a diary to the middle of July', () => {
    expect(new Set(texts('Plantings', 'Crop')).size).toBeGreaterThanOrEqual(24);
    const laid = texts('Plantings', 'Succession').filter((one) => one !== null);
    expect(book.rows('Plantings').length).toBeGreaterThanOrEqual(100);
    expect(laid.length * 2).toBeGreaterThanOrEqual(book.rows('Plantings').length);
    expect(texts('Outlets', 'Kind').length).toBe(3);
    const noted = texts('Records', 'On').map(Number);
    expect(Math.max(...noted)).toBeGreaterThan(civilDay(2027, 7, 8));
    expect(Math.max(...noted)).toBeLessThanOrEqual(civilDay(2027, 7, 16));
    const onions = [...book.rows('Plantings')].filter((row) => book.value('Plantings', row, 'Crop') === 'Onion, bulb');
    const starts = new Set(onions.map((row) => book.value('Plantings', row, 'Start')));
    expect([...starts].sort()).toEqual(['blocks', 'cells', 'sets']);
  });

  it('has a bed for every succession, everything promised to outlets, and no job forgotten', () => {
    expect(texts('Plantings', 'Bed')).not.toContain(null);
    expect(Math.max(...texts('Products', 'Weeks short').map(Number))).toBe(0);
    expect(texts('Tasks', 'Status')).not.toContain('late');
    expect(
      texts('Months', 'Sales')
        .map(Number)
        .filter((sales) => sales > 0).length,
    ).toBeGreaterThanOrEqual(7);
    expect(learnedOffers(book.workbook).length).toBeGreaterThan(20);
  });

  it('counts the same money by outlet and month as by month', () => {
    const sum = (sheet: string, column: string): number =>
      [...book.rows(sheet)].reduce((all, row) => all + (book.cell(sheet, row, column).number ?? 0), 0);
    expect(book.rows('Outlets by month').length).toBeGreaterThan(10);
    expect(sum('Outlets by month', 'Sales')).toBeCloseTo(sum('Months', 'Sales'), 6);
    expect(sum('Outlets by month', 'Costs')).toBeCloseTo(sum('Months', 'Outlets'), 6);
    expect(sum('Outlets by month', 'Hours')).toBeCloseTo(sum('Deliveries', 'Hours'), 6);
  });

  it('warns of what is wrong on purpose and of nothing else', () => {
    const warned = book
      .attention()
      .filter(({ level }) => level === 'warning')
      .map(({ table, rowName }) => `${table}: ${rowName}`);
    expect([...new Set(warned)].sort()).toEqual([
      'Beds: Barn 5',
      'Beds: Orchard 4',
      'Budget: Budget',
      'Plantings: Back on the barn bed',
      'Plantings: Basil',
      'Plantings: Cucumbers',
      'Plantings: Shallots',
      'Plantings: Sweet clumps',
      'Plantings: Sweet singles',
      'Seed lots: Copper Kettle 2024',
      'Seed lots: Field Red 2024',
      'Seed lots: Green Cushion 2025',
      'Seed lots: Smooth Green 2023',
      'Varieties: Early Pebble',
      'Varieties: Fox Shallot',
      'Varieties: Porch Sweet',
    ]);
  });

  it('plans every planting to a harvest, and every sowing to seed', () => {
    expect(texts('Plantings', 'Harvest')).not.toContain(null);
    expect(texts('Plantings', 'Total yield')).not.toContain(null);
    expect(texts('Seed order', 'Cost')).not.toContain(null);
  });

  it('harvests what the library holds for usual: between half and twice its range of yields', () => {
    for (const row of book.rows('Plantings')) {
      const name = book.rowName('Plantings', row);
      const crop = String(book.value('Plantings', row, 'Crop'));
      const yieldPerArea = season.number('Plantings', name, 'Yield per bed area') ?? Number.NaN;
      expect(yieldPerArea, name).toBeGreaterThan(0.4 * (season.number('Crops', crop, 'Yield low') ?? Number.NaN));
      expect(yieldPerArea, name).toBeLessThan(2 * (season.number('Crops', crop, 'Yield high') ?? Number.NaN));
    }
  });

  it('finds what is wrong on purpose', () => {
    const said = (planting: string): string => season.says('Plantings', planting).join(' ');
    expect(said('Back on the barn bed')).toMatch(/stood on this bed last year/);
    expect(said('Basil')).toMatch(/More stands on this bed/);
    expect(said('Cucumbers')).toMatch(/Earlier than this crop stands/);
    expect(said('Peppers')).toMatch(/Cold ends the harvest about/);
    expect(said('Lettuce 1')).toMatch(/fewer than square rows/);
    expect(said('Sweet clumps')).toMatch(/smallish bulbs/);
    expect(season.value('Varieties', 'Early Pebble', 'Suits this farm')).toBe('no');
    expect(season.value('Seed lots', 'Copper Kettle 2024', 'Advice')).toBe('replace');
    expect(season.number('Seed order', 'Copper Kettle', 'Seeds on hand')).toBe(0);
  });
});
