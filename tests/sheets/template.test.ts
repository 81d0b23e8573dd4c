// The season template as a whole: every formula checks in both systems of units, the agreed names are there, and a fresh
// workbook is empty but ready.

import { describe, expect, it } from 'vitest';
import { SEASON_SHEETS } from '../../sheets-templates/season.ts';
import { errorsOf, seasonOf } from './season.ts';

/** The columns that imports, exports and other programs rely on, by sheet. */
const AGREED: Readonly<Record<string, readonly string[]>> = {
  Farm: [
    'Farm name',
    'Season',
    'Latitude',
    'Longitude',
    'Elevation',
    'Currency',
    'Bed width',
    'Bed length',
    'Path width',
    'Confidence',
    'Spare seed',
    'Wage',
    'Seed store temperature',
    'Seed store humidity',
    'Cold store temperature',
    'Cold store humidity',
    'Cold store capacity',
    'Curing area',
    'Bench area',
    'Last frost',
    'First frost',
    'Frost risk accepted',
  ],
  Climate: ['Day', 'Low', 'High', 'Day length'],
  Crops: [
    'Crop',
    'Family',
    'Seeds per gram',
    'Germination standard',
    'Seed life',
    'Weeks in propagation',
    'Usual seeds per block',
    'In-row spacing',
    'Row spacing',
    'Harvest window',
    'Harvest unit',
    'Yield',
    'Rotation years',
  ],
  Varieties: [
    'Variety',
    'Crop',
    'Day-length type',
    'Critical day length',
    'Germination',
    'Adapted from latitude',
    'Adapted to latitude',
    'Days to maturity',
    'Storage life',
    'Isolated plant mass',
    'Ceiling yield',
    'Longest day here',
    'Day length reached',
    'Leaf growth before bulbing',
    'Suits this farm',
  ],
  Packs: ['Variety', 'Supplier', 'Seeds', 'Weight', 'Price', 'Treated', 'Price per 1,000 seeds'],
  'Seed lots': [
    'Lot',
    'Variety',
    'Quantity',
    'Germination when tested',
    'Tested on',
    'Store temperature',
    'Store humidity',
    'Moisture content',
    'Germination at sowing',
    'Usable seeds',
    'Advice',
  ],
  Beds: ['Bed', 'Field', 'Length', 'Width', 'Area', 'Free length', 'Next free date', 'Rotation warning'],
  Plantings: [
    'Planting',
    'Variety',
    'Seed lot',
    'Start',
    'Bed',
    'Bed length used',
    'Rows',
    'In-row spacing',
    'Pattern',
    'Seeds per station',
    'Sown',
    'Planted out',
    'Nursery survival',
    'Field survival',
    'Row spacing',
    'Stations',
    'Germination',
    'Plants per station',
    'Empty stations',
    'Blocks to start',
    'Seeds needed',
    'Trays',
    'Mix volume',
    'Plant density',
    'Mean plant mass',
    'Total yield',
    'Marketable yield',
    'Yield per bed area',
    'Harvest',
    'Fresh thinnings',
    'Cured yield',
  ],
  'Seed order': [
    'Variety',
    'Crop',
    'Seeds needed',
    'Seeds on hand',
    'Seeds to buy',
    'Packs',
    'Supplier',
    'Cost',
    'Left over',
  ],
};

describe('the season template', () => {
  for (const units of ['us', 'si'] as const) {
    it(`checks every formula in ${units} units and leaves no cell in error`, () => {
      const { book } = seasonOf({}, {}, { units });
      const diagnostics = book.tables().flatMap((table) =>
        table.columns.flatMap(({ name, diagnostic, type }) => {
          if (diagnostic !== undefined) return [`${table.name}, ${name}: ${diagnostic.why}`];
          // A unit that nobody knows leaves a column without a type.
          return type === undefined ? [`${table.name}, ${name} has no type`] : [];
        }),
      );
      expect(diagnostics).toEqual([]);
      expect(errorsOf(book)).toEqual([]);
    });
  }

  it('has the columns that imports and exports rely on', () => {
    const { book } = seasonOf({});
    const missing = Object.entries(AGREED).flatMap(([sheet, columns]) => {
      const there = new Set(book.table(sheet)?.columns.map((column) => column.name));
      return columns.filter((column) => !there.has(column)).map((column) => `${sheet}: ${column}`);
    });
    expect(missing).toEqual([]);
  });

  it('says every check at a column that exists, and names no column twice', () => {
    for (const sheet of SEASON_SHEETS) {
      const names = sheet.columns.map((column) => column.name);
      expect(new Set(names).size, sheet.name).toBe(names.length);
      const ids = sheet.columns.map((column) => column.id);
      for (const check of sheet.checks) expect(ids, `${sheet.name}, ${check.name}`).toContain(check.column);
    }
  });

  it('opens empty but ready: crops, trays and size bands are there, a farm has no rows of its own yet', () => {
    const { book, says } = seasonOf({}, { Latitude: '' });
    expect(book.rows('Crops').length).toBeGreaterThanOrEqual(45);
    expect(book.rows('Trays').length).toBeGreaterThan(5);
    expect(book.rows('Size grades').length).toBe(4);
    expect(book.rows('Climate').length).toBe(365);
    for (const sheet of ['Varieties', 'Packs', 'Seed lots', 'Beds', 'Plantings', 'Seed order']) {
      expect(book.rows(sheet).length, sheet).toBe(0);
    }
    expect(says('Farm', 'Farm').some((sentence) => sentence.startsWith('Enter the latitude'))).toBe(true);
    expect(book.attention().filter((one) => one.level === 'error')).toEqual([]);
  });

  it('runs a season south of the equator from July to June', () => {
    const { book, shown } = seasonOf({}, { Latitude: '-42' });
    expect(shown('Farm', '', 'Season starts')).toBe('1 Jul 2027');
    expect(shown('Farm', '', 'Season ends')).toBe('30 Jun 2028');
    expect(book.rows('Climate').length).toBe(366);
  });
});
