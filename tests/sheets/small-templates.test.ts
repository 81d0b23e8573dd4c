// The smaller templates: the onions beside the whole season, figure by figure; a batch of seedlings worked out by hand.

import { describe, expect, it } from 'vitest';
import { OFFERS, type SeasonOptions, startOf } from '../../sheets-templates/index.ts';
import { type Book, started } from '../book.ts';
import { latitudeOf, monthsOf } from '../reference/calendars.ts';
import { errorsOf, reading, TODAY } from './season.ts';

const PLACE = 'Madison WI';

async function opened(name: string, options: Partial<SeasonOptions>): Promise<Book> {
  const offer = OFFERS.find((one) => one.name === name);
  if (offer === undefined) throw new Error(`${name} is not offered`);
  const farm = { Latitude: String(latitudeOf(PLACE)), Wage: '19', ...options.farm };
  const months = { 'Monthly climate': monthsOf(PLACE), ...options.rows };
  const template = await offer.template();
  const start = startOf(template.sheets, { season: 2027, today: TODAY, ...options, farm, rows: months });
  const made = started(template, start);
  if (!made.ok) throw new Error(made.problems.join('\n'));
  return made.workbook;
}

it('each template is offered under its own name', async () => {
  for (const offer of OFFERS) expect((await offer.template()).name).toBe(offer.name);
});

describe('the onions template', async () => {
  const rows = {
    Varieties: [{ Variety: 'Bulb', Crop: 'Onion, bulb', Germination: '88%', 'Day-length type': 'long' }],
    Packs: [
      { Variety: 'Bulb', Supplier: 'East', Seeds: '1000', Price: '9.00' },
      { Variety: 'Bulb', Supplier: 'West', Form: 'sets', Seeds: '500', Price: '14.00' },
    ],
    Beds: [{ Bed: 'B1', Length: '50 ft', Width: '30 in' }],
    Plantings: [
      { Planting: 'Clumps', Variety: 'Bulb', Bed: 'B1', 'Bed length used': '30 ft', Start: 'blocks', Price: '2.00' },
      { Planting: 'Sets', Variety: 'Bulb', Bed: 'B1', 'Bed length used': '20 ft', Start: 'sets', Price: '2.00' },
    ],
    'Beds to try': [{ 'Bed to try': 'Which way', Planting: 'Clumps' }],
  };
  const small = await opened('onions', { rows });
  const whole = await opened('season', { rows });

  it('has only the sheets an onion grower needs, and one crop', () => {
    const names = small.tables().map(({ name }) => name);
    expect(names).toContain('Plantings');
    expect(names).toContain('Harvest and curing');
    expect(names).toContain('Ways to plant');
    expect(names).not.toContain('Outlets');
    expect(names.length).toBeLessThan(whole.tables().length * 0.6);
    expect([...small.rows('Crops')].map((row) => small.rowName('Crops', row))).toEqual(['Onion, bulb']);
  });

  it('has no cell in error', () => {
    expect(errorsOf(small)).toEqual([]);
  });

  it('comes to the same figures as the whole season, cell by cell', () => {
    let compared = 0;
    for (const sheet of [
      'Plantings',
      'Raising',
      'Seed order',
      'Sets and plants',
      'Ways to plant',
      'Harvest and curing',
    ]) {
      const columns = small.tables().find(({ name }) => name === sheet)?.columns ?? [];
      expect([...small.rows(sheet)].length, sheet).toBe([...whole.rows(sheet)].length);
      for (const row of small.rows(sheet)) {
        for (const { name, type } of columns) {
          if (type?.kind === 'link' || type?.kind === 'record') continue;
          expect(small.value(sheet, row, name), `${sheet}, ${name}`).toEqual(whole.value(sheet, row, name));
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(2000);
  });
});

describe('the seedlings template', async () => {
  const book = await opened('seedlings', {
    farm: { 'Bench area': '100 ft2', 'Mix price': '0.50 money/L' },
    rows: {
      Varieties: [{ Variety: 'Red', Crop: 'Tomato', Germination: '90%' }],
      Packs: [{ Variety: 'Red', Supplier: 'East', Seeds: '250', Price: '20.00' }],
      Batches: [
        {
          Batch: 'Tomatoes for May',
          Variety: 'Red',
          'Plants to sell': '300',
          'Sold from': '2027-05-15',
          'Price each': '1.50',
        },
        { Batch: 'Early ones', Variety: 'Red', 'Plants to sell': '50' },
      ],
    },
  });
  const season = reading(book);
  const of = (column: string): number => season.number('Batches', 'Tomatoes for May', column) ?? Number.NaN;

  it('has no cell in error, and no beds', () => {
    expect(errorsOf(book)).toEqual([]);
    expect(book.tables().map(({ name }) => name)).not.toContain('Beds');
  });

  it('starts as many cells as give the plants to sell, and sells them', () => {
    // 300 / (0.9 x 0.95) = 351 on average; at 90 % confidence some more.
    expect(of('Blocks to start')).toBeGreaterThan(351);
    expect(of('Blocks to start')).toBeLessThan(375);
    expect(of('Trays')).toBe(Math.ceil(of('Blocks to start') / 128));
    expect(of('Sales')).toBeCloseTo(450, 6);
    expect(of('Seed cost')).toBeCloseTo((of('Seeds needed') * 20) / 250, 6);
    expect(of('Margin')).toBeCloseTo(450 - of('Seed cost') - of('Mix cost') - of('Labour cost'), 6);
    expect(season.value('Batches', 'Early ones', 'Sown')).not.toBeNull();
  });

  it('fills the bench from sowing to sale, and orders the seed', () => {
    const used = [...book.rows('Propagation')].map((row) => book.cell('Propagation', row, 'Bench used').number ?? 0);
    expect(Math.max(...used)).toBeGreaterThan((of('Trays') * 231) / 144 - 1e-6);
    expect([...book.rows('Sowing list')].length).toBe(2);
    const row = [...book.rows('Seed order')][0] ?? -1;
    expect(book.cell('Seed order', row, 'Seeds needed').number).toBe(
      of('Seeds needed') + (season.number('Batches', 'Early ones', 'Seeds needed') ?? 0),
    );
  });
});
