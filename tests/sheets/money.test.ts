// The farm's money as the sheets have it: own costs in the months they are paid, cash by month, the budget, margins; by sums worked
// out by hand.

import { describe, expect, it } from 'vitest';
import { errorsOf, type Rows, type Season, seasonOf } from './season.ts';

const ROWS: Rows = {
  Beds: [{ Bed: 'One', Length: '20 m', Width: '75 cm' }],
  Varieties: [
    { Variety: 'Leaf', Crop: 'Lettuce, head' },
    { Variety: 'Root', Crop: 'Carrot' },
  ],
  Packs: [{ Variety: 'Leaf', Supplier: 'A', Seeds: '1000', Price: '6' }],
  Plantings: [
    {
      Planting: 'Leaf',
      Variety: 'Leaf',
      Start: 'blocks',
      Bed: 'One',
      'Bed length used': '10 m',
      Sown: '2027-04-01',
      'Planted out': '2027-05-03',
    },
    { Planting: 'Root', Variety: 'Root', Bed: 'One', 'Bed length used': '10 m', Sown: '2027-05-10' },
  ],
  Products: [
    { Product: 'Heads', Crop: 'Lettuce, head', 'Sold by': 'head', 'Price each': '2.50' },
    { Product: 'Carrots', Crop: 'Carrot', Price: '3 money/kg' },
  ],
  Outlets: [
    { Outlet: 'Market', Kind: 'market', 'Cost each time': '20', 'Kept by the outlet': '10%', 'Hours each time': '4 h' },
  ],
  Demand: [
    { Outlet: 'Market', Product: 'Heads', Pieces: '40' },
    { Outlet: 'Market', Product: 'Carrots', Weight: '5 kg' },
  ],
  Inputs: [{ Input: 'Feather meal', Bed: 'One', 'Given on': '2027-04-30', Amount: '5 kg', Cost: '15' }],
  'Own costs': [
    { Cost: 'Rent', Amount: '100', 'First on': '2027-01-15', Every: 'month' },
    { Cost: 'Insurance', Amount: '300', 'First on': '2027-03-31', Every: 'quarter' },
    { Cost: 'Net', Amount: '80', 'First on': '2027-05-05' },
    { Cost: 'Water', Amount: '7', 'First on': '2027-06-02', Every: 'week', Until: '2027-07-14' },
  ],
};
const FARM = { Wage: '18', 'Last frost': '2027-05-10', 'First frost': '2027-10-01', 'Mix price': '500 money/m3' };
const season = seasonOf(ROWS, FARM, { units: 'si' });

const rowsOf = (sheet: string, of: Season = season): readonly number[] => [...of.book.rows(sheet)];
const at = (sheet: string, row: number, column: string, of: Season = season): number =>
  of.book.cell(sheet, row, column).number ?? 0;
const sum = (sheet: string, column: string, of: Season = season): number =>
  rowsOf(sheet, of).reduce((all, row) => all + at(sheet, row, column, of), 0);
const month = (name: string): number =>
  rowsOf('Months').find((row) => season.book.cell('Months', row, 'Name').text === name) ?? -1;
const budget = (column: string): number => season.number('Budget', '', column) ?? Number.NaN;

describe('own costs', () => {
  it('opens without a cell in error', () => expect(errorsOf(season.book)).toEqual([]));

  it('are paid in their months, as often as they come', () => {
    const paid = (name: string): readonly number[] =>
      ['Jan 2027', 'Mar 2027', 'May 2027', 'Jun 2027', 'Jul 2027', 'Sep 2027', 'Dec 2027'].map((of) =>
        rowsOf('Own costs by month')
          .filter((row) => season.book.cell('Own costs by month', row, 'Name').text === name)
          .filter((row) => season.book.cell('Own costs by month', row, 'Month starts').text === `1 ${of}`)
          .reduce((all, row) => all + at('Own costs by month', row, 'Paid'), 0),
      );
    expect(paid('Rent')).toEqual([100, 100, 100, 100, 100, 100, 100]);
    expect(paid('Insurance')).toEqual([0, 300, 0, 300, 0, 300, 300]);
    expect(paid('Net')).toEqual([0, 0, 80, 0, 0, 0, 0]);
    // Wednesdays: 2, 9, 16, 23, 30 June; 7, 14 July.
    expect(paid('Water')).toEqual([0, 0, 0, 35, 14, 0, 0]);
    expect(season.number('Own costs', 'Rent', 'In all')).toBe(1200);
  });

  it('say what is wrong with their dates', () => {
    const wrong = seasonOf({
      'Own costs': [
        { Cost: 'A', Amount: '5', 'First on': '2027-05-05', Every: 'week', Until: '2027-05-01' },
        { Cost: 'B', Amount: '5', 'First on': '2031-01-01' },
      ],
    });
    expect(wrong.says('Own costs', 'A').join(' ')).toMatch(/Ends before it begins/);
    expect(wrong.says('Own costs', 'B').join(' ')).toMatch(/none of the months of the season/);
  });
});

describe('cash by month', () => {
  it('is what comes in less what goes out, and adds up to the budget', () => {
    for (const row of rowsOf('Months')) {
      const out = ['Seed', 'Sets and plants', 'Mix', 'Inputs', 'Outlets', 'Labour', 'Own costs'].reduce(
        (all, column) => all + at('Months', row, column),
        0,
      );
      expect(at('Months', row, 'Costs')).toBeCloseTo(out, 6);
      expect(at('Months', row, 'Cash')).toBeCloseTo(at('Months', row, 'Sales') - out, 6);
    }
    expect(sum('Months', 'Cash')).toBeCloseTo(budget('Margin'), 6);
    expect(sum('Months', 'Sales')).toBeCloseTo(sum('Outlets', 'Sales'), 6);
    expect(sum('Months', 'Sales')).toBeGreaterThan(100);
    expect(sum('Months', 'Hours')).toBeCloseTo(sum('Tasks', 'Hours counted'), 6);
    expect(sum('Months', 'Mix')).toBeCloseTo(sum('Plantings', 'Mix cost'), 6);
  });

  it('puts each cost where it falls', () => {
    expect(at('Months', month('Jan 2027'), 'Seed')).toBe(6);
    expect(at('Months', month('Apr 2027'), 'Inputs')).toBe(15);
    expect(at('Months', month('Apr 2027'), 'Mix')).toBeGreaterThan(0);
    expect(at('Months', month('May 2027'), 'Own costs')).toBe(180);
    expect(at('Months', month('May 2027'), 'Labour')).toBeCloseTo(18 * at('Months', month('May 2027'), 'Hours'), 6);
  });

  it('runs on in the till, and says when it is empty', () => {
    const poor = seasonOf(ROWS, FARM, { units: 'si' });
    poor.type('Budget', '', 'Cash at the start', '150');
    const months = rowsOf('Months', poor);
    let till = 150;
    for (const row of months) {
      till += at('Months', row, 'Cash', poor);
      expect(at('Months', row, 'In the till', poor)).toBeCloseTo(till, 6);
    }
    expect(
      poor.book
        .attention()
        .map((one) => one.says)
        .join(' '),
    ).toMatch(/till is empty by the end of Mar 2027/);
  });
});

describe('margins', () => {
  it('take what outlets pay where no price stands in Plantings', () => {
    const revenue = season.number('Plantings', 'Leaf', 'Revenue') ?? Number.NaN;
    expect(revenue).toBeCloseTo(season.number('Plantings', 'Leaf', 'Sales by outlets') ?? 0, 9);
    expect(sum('Plantings', 'Sales by outlets')).toBeCloseTo(sum('Outlets', 'Sales'), 6);
  });

  it('are told by length and week of bed, by hour, and with their low and high', () => {
    const of = (column: string): number => season.number('Plantings', 'Leaf', column) ?? Number.NaN;
    expect(of('Margin per bed length')).toBeCloseTo(of('Margin') / 10, 9);
    expect(of('An hour brings')).toBeCloseTo((of('Margin') + of('Labour cost')) / of('Hours'), 9);
    expect(of('Margin low')).toBeLessThanOrEqual(of('Margin'));
    expect(of('Margin high')).toBeGreaterThanOrEqual(of('Margin'));
    expect(budget('Margin low')).toBeLessThanOrEqual(budget('Margin'));
    expect(budget('Margin high')).toBeGreaterThanOrEqual(budget('Margin'));
    expect(season.number('Beds', 'One', 'Margin')).toBeCloseTo(sum('Plantings', 'Margin'), 6);
  });

  it('say where a price is missing', () => {
    const free = seasonOf(
      {
        ...ROWS,
        Products: [
          { Product: 'Heads', Crop: 'Lettuce, head' },
          { Product: 'Carrots', Crop: 'Carrot' },
        ],
      },
      FARM,
    );
    expect(
      free.book
        .attention()
        .map((one) => one.says)
        .join(' '),
    ).toMatch(/lines of Demand have no price/);
  });
});
