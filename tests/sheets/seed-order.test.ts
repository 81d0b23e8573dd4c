// The seed order against a reckoning of its own: need less what is on hand, then every combination of packs tried.

import { describe, expect, it } from 'vitest';
import { errorsOf, type Rows, seasonOf } from './season.ts';

interface Offer {
  readonly seeds: number;
  readonly price: number;
}

function cheapest(needed: number, offers: readonly Offer[]): number {
  const [first, ...others] = offers;
  if (needed <= 0) return 0;
  if (first === undefined) return Number.POSITIVE_INFINITY;
  let best = Number.POSITIVE_INFINITY;
  for (let count = 0; count * first.seeds < needed + first.seeds; count += 1) {
    best = Math.min(best, count * first.price + cheapest(needed - count * first.seeds, others));
  }
  return best;
}

const BED = { Bed: 'Long', Length: '200 ft', Width: '30 in' };

function singles(name: string, variety: string, length: string, more: Readonly<Record<string, string>> = {}) {
  return {
    Planting: name,
    Variety: variety,
    Bed: 'Long',
    Start: 'direct seed',
    'Bed length used': length,
    Rows: '3',
    'In-row spacing': '6 in',
    'Seeds per station': '2',
    Sown: '2027-04-20',
    ...more,
  };
}

const ROWS: Rows = {
  Varieties: [
    { Variety: 'Beet', Crop: 'Beet', Germination: '85%' },
    { Variety: 'Onion', Crop: 'Onion, bulb', Germination: '85%', 'Day-length type': 'long' },
    { Variety: 'Idle', Crop: 'Kale' },
    { Variety: 'Unlisted', Crop: 'Carrot' },
  ],
  Packs: [
    { Variety: 'Beet', Supplier: 'One', Seeds: '350', Price: '3.10' },
    { Variety: 'Beet', Supplier: 'Two', Seeds: '700', Price: '5.95' },
    { Variety: 'Beet', Supplier: 'Two', Weight: '1 oz', Price: '11.00' },
    { Variety: 'Onion', Supplier: 'One', Seeds: '1000', Price: '9.00' },
    { Variety: 'Onion', Supplier: 'One', Seeds: '1000', Price: '2.00', 'Sold out': 'yes' },
    { Variety: 'Onion', Supplier: 'Two', Price: '1.00' },
  ],
  'Seed lots': [
    { Lot: 'Good beet', Variety: 'Beet', Quantity: '500', 'Germination when tested': '88%', 'Tested on': '2026-11-01' },
    {
      Lot: 'Old onion',
      Variety: 'Onion',
      Quantity: '4000',
      'Germination when tested': '85%',
      'Tested on': '2023-11-01',
    },
  ],
  Beds: [BED],
  Plantings: [
    singles('Beet 1', 'Beet', '60 ft', { 'Seed lot': 'Good beet' }),
    singles('Beet 2', 'Beet', '55 ft'),
    singles('Onion 1', 'Onion', '50 ft'),
    singles('Carrot 1', 'Unlisted', '10 ft'),
    singles('Bought in', 'Onion', '10 ft', { Start: 'sets' }),
  ],
};

describe('the seed order', () => {
  const season = seasonOf(ROWS);
  const number = (row: string, column: string): number => season.number('Seed order', row, column) ?? Number.NaN;

  it('has a row for each variety that needs seed, and no other', () => {
    const names = [...season.book.rows('Seed order')].map((row) => season.book.rowName('Seed order', row));
    expect(names).toEqual(['Beet', 'Onion', 'Unlisted']);
  });

  it('adds up the plantings from seed: 3 rows x 2 a foot x 2 seeds, a tenth to spare', () => {
    expect(number('Beet', 'Seeds needed')).toBe(792 + 726);
    expect(number('Onion', 'Seeds needed')).toBe(660);
  });

  it('takes off what is on hand, but no lot that is to be replaced', () => {
    expect(season.value('Seed lots', 'Good beet', 'Advice')).not.toBe('replace');
    expect(season.value('Seed lots', 'Old onion', 'Advice')).toBe('replace');
    expect(number('Beet', 'Seeds to buy')).toBe(number('Beet', 'Seeds needed') - 500);
    expect(number('Onion', 'Seeds to buy')).toBe(660);
  });

  it('buys the cheapest packs that cover it', () => {
    const perOunce = Math.floor((season.number('Packs', 'row 3', 'Seeds in pack') ?? Number.NaN) + 1e-9);
    const offers = [
      { seeds: 350, price: 3.1 },
      { seeds: 700, price: 5.95 },
      { seeds: perOunce, price: 11 },
    ];
    const bought = number('Beet', 'Seeds to buy') + number('Beet', 'Left over');
    expect(number('Beet', 'Cost')).toBeCloseTo(cheapest(number('Beet', 'Seeds to buy'), offers), 9);
    expect(bought).toBeGreaterThanOrEqual(number('Beet', 'Seeds to buy'));
    expect(season.value('Seed order', 'Beet', 'Supplier')).toBe('One, Two');
    expect(season.value('Seed order', 'Beet', 'Packs')).toBe('1 x One 350 seeds + 1 x Two 700 seeds');
  });

  it('passes over packs that are sold out or have no size', () => {
    expect(number('Onion', 'Cost')).toBe(9);
    expect(season.value('Seed order', 'Onion', 'Packs')).toBe('1 x One 1000 seeds');
  });

  it('counts onion seed left over as worth nothing next year, and other seed for what will still come up', () => {
    expect(number('Onion', 'Worth next year')).toBe(0);
    const worth = number('Beet', 'Worth next year');
    const atPrice = (number('Beet', 'Left over') * number('Beet', 'Cost')) / number('Beet', 'Seeds bought');
    expect(worth).toBeGreaterThan(0.8 * atPrice);
    expect(worth).toBeLessThan(atPrice);
  });

  it('says where nothing is on offer', () => {
    expect(season.value('Seed order', 'Unlisted', 'Cost')).toBeNull();
    expect(season.says('Seed order', 'Unlisted')).toContain(
      'No pack with seeds and a price is listed for this variety: add one in Packs.',
    );
  });

  it('orders seed for crops that have no standard of germination, and says where seed cannot be reckoned', () => {
    const own = seasonOf({
      Varieties: [
        { Variety: 'Leaf', Crop: 'Mizuna' },
        { Variety: 'Root', Crop: 'Carrot' },
      ],
      Plantings: [
        singles('Mizuna 1', 'Leaf', '20 ft', { Bed: '', Start: 'blocks', Sown: '' }),
        singles('Carrot 2', 'Root', '20 ft', { Bed: '', 'In-row spacing': '0 in' }),
      ],
    });
    expect(own.number('Varieties', 'Leaf', 'Germination')).toBe(70);
    expect(own.number('Plantings', 'Mizuna 1', 'Blocks to start')).toBeGreaterThan(120);
    expect(own.number('Seed order', 'Leaf', 'Seeds needed')).toBeGreaterThan(240);
    expect(own.says('Plantings', 'Carrot 2').some((sentence) => sentence.startsWith('No seed is ordered'))).toBe(true);
  });

  it('leaves no cell in error', () => {
    expect(errorsOf(season.book)).toEqual([]);
  });

  it('follows an edit: a row comes when a variety is planted and goes with its planting', () => {
    const own = seasonOf(ROWS);
    const rows = (): readonly string[] =>
      [...own.book.rows('Seed order')].map((row) => own.book.rowName('Seed order', row));
    own.book.edit([{ edit: 'insert row', table: 'Plantings', entries: singles('Kale 1', 'Idle', '5 ft') }], 'Add');
    expect(rows()).toEqual(['Beet', 'Onion', 'Idle', 'Unlisted']);
    const carrots = own.book.rowOf('Plantings', 'Carrot 1') ?? -1;
    own.book.edit([{ edit: 'remove row', table: 'Plantings', row: carrots }], 'Remove');
    expect(rows()).toEqual(['Beet', 'Onion', 'Idle']);
    own.book.undo();
    own.book.undo();
    expect(rows()).toEqual(['Beet', 'Onion', 'Unlisted']);
  });
});

describe('too much', () => {
  const season = seasonOf({
    Varieties: [
      { Variety: 'Few', Crop: 'Tomato' },
      { Variety: 'Many', Crop: 'Beet' },
    ],
    Packs: [
      { Variety: 'Few', Supplier: 'One', Seeds: '5000', Price: '9.00' },
      { Variety: 'Many', Supplier: 'One', Seeds: '350', Price: '3.10', 'Packs to order': '9' },
    ],
    Plantings: [
      { Planting: 'Few', Variety: 'Few', 'Bed length used': '8 ft' },
      { Planting: 'Many', Variety: 'Many', 'Bed length used': '10 ft' },
    ],
  });

  it('is told: a pack far above the need, and an order of more than twice what is needed', () => {
    expect(season.says('Seed order', 'Few').join()).toMatch(
      /The cheapest pack holds \d{2,} times what is needed: look for a smaller one, or share it\./,
    );
    expect(season.says('Seed order', 'Many')).toContain(
      'The order holds more than twice what is needed now, and smaller packs cover it: work it out again.',
    );
    season.type('Packs', 'row 2', 'Packs to order', '1');
    expect(season.says('Seed order', 'Many').join()).not.toMatch(/more than twice/);
  });
});

it('calls a pack of one by one', () => {
  const season = seasonOf({
    Varieties: [{ Variety: 'Stalk', Crop: 'Rhubarb' }],
    Packs: [
      { Variety: 'Stalk', Supplier: 'One', Form: 'plants', Seeds: '1', Price: '9' },
      { Variety: 'Stalk', Supplier: 'One', Form: 'plants', Seeds: '2', Price: '16' },
      { Variety: 'Stalk', Supplier: 'One', Form: 'sets', Seeds: '1', Price: '8' },
      { Variety: 'Stalk', Supplier: 'One', Form: 'seed', Seeds: '1', Price: '1' },
      { Variety: 'Stalk', Supplier: 'One', Form: 'seed', Seeds: '50', Price: '2' },
    ],
  });
  const called = Array.from(season.book.rows('Packs'), (row) => season.book.cell('Packs', row, 'Pack').text);
  expect(called).toEqual(['One 1 plant', 'One 2 plants', 'One 1 set', 'One 1 seed', 'One 50 seeds']);
});
