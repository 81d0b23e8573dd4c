// Totals over the rows of another sheet that meet conditions, against the same totals reckoned in plain JavaScript from the
// rows themselves; then again after edits.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Book, type Edit, opened, type WorkbookDeclaration } from '../book.ts';
import { besideFarm, computed, entered, plain, sheet } from '../workbook/small.ts';

/** One sale as it is entered; '' is a blank, boxes of 'none' a division by zero. */
interface Sale {
  readonly crop: string;
  readonly outlet: string;
  readonly boxes: number | '' | 'none';
  readonly day: number;
}

interface Crop {
  readonly crop: string;
  readonly outlet: string;
  readonly least: number;
}

const CROPS: readonly Crop[] = [
  { crop: 'Leek', outlet: 'Market', least: 2 },
  { crop: 'Beet', outlet: 'shop', least: 0 },
  { crop: 'Kale', outlet: '', least: 3 },
];

type Told = number | 'blank' | 'error';
type Reckon = (sales: readonly Sale[], crop: Crop) => Told;

const filled = (sales: readonly Sale[]): readonly number[] =>
  sales.flatMap(({ boxes }) => (typeof boxes === 'number' ? [boxes] : []));

/** Folds the boxes of some sales: any faulty one makes the total faulty. */
const of = (sales: readonly Sale[], fold: (boxes: readonly number[]) => Told): Told =>
  sales.some(({ boxes }) => boxes === 'none') ? 'error' : fold(filled(sales));

const least = (boxes: readonly number[]): Told => (boxes.length === 0 ? 'blank' : Math.min(...boxes));
const most = (boxes: readonly number[]): Told => (boxes.length === 0 ? 'blank' : Math.max(...boxes));
const total = (boxes: readonly number[]): number => boxes.reduce((sum, one) => sum + one, 0);
const same = (a: string, b: string): boolean => a !== '' && a.toLowerCase() === b.toLowerCase();
const own = (sales: readonly Sale[], { crop }: Crop): readonly Sale[] => sales.filter((sale) => sale.crop === crop);

/** Formula and reckoning, column by column. A condition on a blank of this row's gives a blank. */
const COLUMNS: readonly (readonly [formula: string, reckon: Reckon])[] = [
  ['SUMIFS(Sales[Boxes]; Sales[Crop]; [Crop])', (sales, crop) => of(own(sales, crop), total)],
  ['COUNTIFS(Sales[Crop]; [Crop])', (sales, crop) => own(sales, crop).length],
  ['MAXIFS(Sales[Boxes]; Sales[Crop]; [Crop])', (sales, crop) => of(own(sales, crop), most)],
  ['MINIFS(Sales[Boxes]; Sales[Crop]; [Crop])', (sales, crop) => of(own(sales, crop), least)],
  [
    'AVERAGEIFS(Sales[Boxes]; Sales[Crop]; [Crop])',
    (sales, crop) => of(own(sales, crop), (boxes) => (boxes.length === 0 ? 'error' : total(boxes) / boxes.length)),
  ],
  [
    'COUNTIFS(Sales[Crop]; [Crop]; Sales[Day]; ">3")',
    (sales, crop) => own(sales, crop).filter((s) => s.day > 3).length,
  ],
  [
    'COUNTIFS(Sales[Crop]; [Crop]; Sales[Entered]; "=")',
    (sales, crop) => own(sales, crop).filter((s) => s.boxes === '').length,
  ],
  [
    'COUNTIFS(Sales[Crop]; [Crop]; Sales[Entered]; "<>")',
    (sales, crop) => own(sales, crop).filter((s) => s.boxes !== '').length,
  ],
  [
    'SUMIFS(Sales[Boxes]; Sales[Day]; ">=2"; Sales[Day]; "<5")',
    (sales) =>
      of(
        sales.filter(({ day }) => day >= 2 && day < 5),
        total,
      ),
  ],
  [
    'SUMIFS(Sales[Boxes]; Sales[Outlet]; "MARKET")',
    (sales) =>
      of(
        sales.filter(({ outlet }) => same(outlet, 'market')),
        total,
      ),
  ],
  [
    'COUNTIFS(Sales[Outlet]; "<>Shop")',
    (sales) => sales.filter(({ outlet }) => outlet !== '' && !same(outlet, 'shop')).length,
  ],
  ['COUNTIFS(Sales[Crop]; "Leek")', (sales) => sales.filter(({ crop }) => crop === 'Leek').length],
  [
    'SUMIFS(Sales[Boxes]; Sales[Outlet]; [Outlet])',
    (sales, crop) =>
      crop.outlet === ''
        ? 'blank'
        : of(
            sales.filter(({ outlet }) => same(outlet, crop.outlet)),
            total,
          ),
  ],
  [
    'SUMIFS(Sales[Boxes]; Sales[Crop]; [Crop]; Sales[Outlet]; [Outlet])',
    (sales, crop) =>
      crop.outlet === ''
        ? 'blank'
        : of(
            own(sales, crop).filter(({ outlet }) => same(outlet, crop.outlet)),
            total,
          ),
  ],
  [
    'COUNTIFS(Sales[Crop]; [Crop]; Sales[Day]; ">" & [Least])',
    (sales, crop) => own(sales, crop).filter(({ day }) => day > crop.least).length,
  ],
  [
    'SUMIFS(Sales[Boxes]; Sales[Day]; "<=" & [Least]; Sales[Outlet]; "shop")',
    (sales, crop) =>
      of(
        sales.filter(({ day, outlet }) => day <= crop.least && same(outlet, 'shop')),
        total,
      ),
  ],
  [
    'COUNTIFS(Sales[Outlet]; "<>" & [Outlet])',
    (sales, crop) =>
      crop.outlet === '' ? 'blank' : sales.filter(({ outlet }) => outlet !== '' && !same(outlet, crop.outlet)).length,
  ],
  [
    'COUNTIFS(Sales[Outlet]; ">" & [Outlet])',
    (sales, crop) =>
      crop.outlet === ''
        ? 'blank'
        : sales.filter(({ outlet }) => outlet !== '' && outlet.toLowerCase() > crop.outlet.toLowerCase()).length,
  ],
  [
    'MINIFS(Sales[Boxes]; Sales[Crop]; [Crop]; Sales[Day]; ">2")',
    (sales, crop) =>
      of(
        own(sales, crop).filter(({ day }) => day > 2),
        least,
      ),
  ],
  [
    'MAXIFS(Sales[Boxes]; Sales[Outlet]; "shop")',
    (sales) =>
      of(
        sales.filter(({ outlet }) => same(outlet, 'shop')),
        most,
      ),
  ],
  ['MIN(Sales[Boxes])', (sales) => of(sales, least)],
  ['MAX(Sales[Boxes])', (sales) => of(sales, most)],
  ['SUM(Sales[Boxes])', (sales) => of(sales, total)],
  ['COUNT(Sales[Boxes])', (sales) => filled(sales).length],
  ['COUNTA(Sales[Boxes])', (sales) => sales.filter(({ boxes }) => boxes !== '').length],
  ['COUNTBLANK(Sales[Boxes])', (sales) => sales.filter(({ boxes }) => boxes === '').length],
  ['SUM([Least]; Sales[Boxes]; 1)', (sales, { least }) => of(sales, (boxes) => least + total(boxes) + 1)],
  ['ROWS(Sales)', (sales) => sales.length],
];

const names = COLUMNS.map((_, at) => `c${at}`);

function entriesOf({ crop, outlet, boxes, day }: Sale): Record<string, string> {
  const entry = boxes === 'none' ? { Entered: '4', Shared: '0' } : { Entered: String(boxes), Shared: '1' };
  return { Crop: crop, Outlet: outlet, Day: String(day), ...entry };
}

function declarationOf(sales: readonly Sale[]): WorkbookDeclaration {
  return besideFarm(
    [
      sheet('Crops', {
        key: 'Crop',
        columns: [
          entered('Crop', { type: 'text' }),
          entered('Outlet', { type: 'text' }),
          entered('Least', plain),
          ...COLUMNS.map(([formula], at) => computed(`c${at}`, plain, formula)),
        ],
      }),
      sheet('Sales', {
        columns: [
          entered('Crop', { type: 'link', table: 'Crops' }),
          entered('Outlet', { type: 'text' }),
          entered('Entered', plain),
          entered('Shared', plain),
          entered('Day', plain),
          computed('Boxes', plain, '[Entered] / [Shared]'),
        ],
      }),
    ],
    {
      Crops: CROPS.map(({ crop, outlet, least }) => ({ Crop: crop, Outlet: outlet, Least: least })),
      Sales: sales.map(entriesOf),
    },
  );
}

function told(workbook: Book, row: number, column: string): Told {
  const value = workbook.value('Crops', row, column);
  if (value === null) return 'blank';
  return typeof value === 'number' ? value : 'error';
}

function expectTotals(workbook: Book, sales: readonly Sale[]): void {
  CROPS.forEach((crop, at) => {
    const row = workbook.rows('Crops')[at] ?? -1;
    const given = names.map((name) => told(workbook, row, name));
    const wanted = COLUMNS.map(([, reckon]) => reckon(sales, crop));
    COLUMNS.forEach(([formula], k) => {
      expect([crop.crop, formula, given[k]]).toEqual([crop.crop, formula, wanted[k]]);
    });
  });
}

const sale: fc.Arbitrary<Sale> = fc.record({
  crop: fc.constantFrom('Leek', 'Beet', 'Kale', ''),
  outlet: fc.constantFrom('market', 'Shop', 'Box scheme', ''),
  boxes: fc.oneof({ weight: 8, arbitrary: fc.nat({ max: 9 }) }, fc.constantFrom('' as const, 'none' as const)),
  day: fc.nat({ max: 6 }),
});

/** Puts another sale into a row, adds one, or takes one out. */
type Change = readonly [what: 'other' | 'new' | 'gone', at: number, sale: Sale];

function changed(workbook: Book, sales: readonly Sale[], [what, which, sale]: Change): readonly Sale[] {
  const at = sales.length === 0 ? -1 : which % sales.length;
  const edit = (edits: readonly Edit[]): void => {
    expect(workbook.edit(edits, 'Test').refused).toBe(false);
  };
  const row = workbook.rows('Sales')[at];
  if (what === 'new' || row === undefined) {
    edit([{ edit: 'insert row', table: 'Sales', entries: entriesOf(sale) }]);
    return [...sales, sale];
  }
  if (what === 'gone') {
    edit([{ edit: 'remove row', table: 'Sales', row }]);
    return sales.filter((_, k) => k !== at);
  }
  edit(
    Object.entries(entriesOf(sale)).map(
      ([column, entry]): Edit => ({ edit: 'cell', table: 'Sales', row, column, entry }),
    ),
  );
  return sales.map((one, k) => (k === at ? sale : one));
}

test('totals are what a person adds up from the rows, before and after edits', () => {
  const change: fc.Arbitrary<Change> = fc.tuple(fc.constantFrom('other', 'other', 'new', 'gone'), fc.nat(), sale);
  fc.assert(
    fc.property(fc.array(sale, { maxLength: 12 }), fc.array(change, { maxLength: 5 }), (start, changes) => {
      const workbook = opened(declarationOf(start));
      let sales: readonly Sale[] = start;
      expectTotals(workbook, sales);
      for (const one of changes) {
        sales = changed(workbook, sales, one);
        expectTotals(workbook, sales);
      }
    }),
    { numRuns: 5 },
  );
});

test('a group larger than the room kept for gathering is added up whole', () => {
  const sales = Array.from(
    { length: 1100 },
    (_, k): Sale => ({ crop: 'Leek', outlet: 'Shop', boxes: k % 7, day: k % 5 }),
  );
  expectTotals(opened(declarationOf(sales)), sales);
});
