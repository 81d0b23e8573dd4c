// The order to each supplier on paper, seed, sets and plants: what to order, how many packs, what they cost, and the sum. Pure.

import { type Book, sheetView } from '../../../engine/index.ts';
import { type AskedRow, askRows, hasColumns, inUnit, type Needs, sumOf } from '../pictures/kit/ask.ts';
import { grouped } from '../store/grouped.ts';
import { columnOf } from '../store/sheets.ts';
import { counted, farmName, figures, type Paper, type PaperTable, words } from './paper.ts';

const LINES = 'order-lines';

export const ORDER_NEEDS: Needs = { [LINES]: ['supplier', 'variety', 'crop', 'count', 'price', 'cost'] };

/** What the workbook would order where no packs have been chosen yet, and what it finds no pack of: seed on its sheet, what is planted on its own. */
const SEED = 'seed-order';
const SEED_NEEDS: Needs = { [SEED]: ['variety', 'crop', 'seeds-to-buy', 'packs', 'supplier', 'cost'] };

const PLANTED = 'plant-order';
const PLANTED_NEEDS: Needs = {
  [PLANTED]: ['variety', 'crop', ...['sets', 'plants'].flatMap((form) => [`${form}-to-buy`, `packs-of-${form}`])],
};

/** One paper a supplier, so that each begins on a page of its own, and one of what no pack is listed of; none where nothing is to be ordered. */
export function ordersOnPaper(book: Book): readonly Paper[] {
  const rows = hasColumns(book, ORDER_NEEDS) ? askRows(book, LINES) : [];
  const needs = needsOf(book);
  return [...(rows.length === 0 ? proposedOrders(book, needs) : chosenOrders(book, rows)), ...packless(book, needs)];
}

function chosenOrders(book: Book, rows: readonly AskedRow[]): readonly Paper[] {
  return [...grouped(rows, (row) => row.text('supplier'))].map(([supplier, lines]): Paper => {
    const total = sumOf(lines, 'cost');
    const money = columnOf(sheetView(book, LINES), 'cost')?.unit ?? '';
    return {
      title: `Order to ${supplier === '' ? 'a supplier not named' : supplier}`,
      farm: farmName(book),
      says: `${counted(lines.length, 'line')}${total === undefined ? '' : `, ${inUnit(book, LINES, 'cost', total)} before postage`}.`,
      tables: [orderTable(lines, money)],
    };
  });
}

/** What is to be bought of a variety in one form. */
interface Need {
  readonly variety: string;
  readonly crop: string;
  /** With what is counted: '2374 seeds', '330 cloves, 3.6 lb'. */
  readonly amount: string;
  /** The cheapest that cover it; '' where none is listed. */
  readonly packs: string;
  readonly supplier: string;
  readonly cost: number | undefined;
  readonly costText: string;
}

function needsOf(book: Book): readonly Need[] {
  const seed = hasColumns(book, SEED_NEEDS) ? askRows(book, SEED) : [];
  const planted = hasColumns(book, PLANTED_NEEDS) ? askRows(book, PLANTED) : [];
  return [
    ...seed.flatMap((row) => needOf(row, 'seeds-to-buy', ['packs', 'supplier', 'cost'], seedsOf(row))),
    ...planted.flatMap((row) =>
      (['sets', 'plants'] as const).flatMap((form) =>
        needOf(
          row,
          `${form}-to-buy`,
          [`packs-of-${form}`, `supplier-of-${form}`, `cost-of-${form}`],
          form === 'sets' ? setsOf(book, row) : plantsOf(row),
        ),
      ),
    ),
  ];
}

/** Nothing where nothing is to be bought. */
function needOf(
  row: AskedRow,
  toBuy: string,
  [packs, supplier, cost]: readonly [string, string, string],
  amount: string,
): readonly Need[] {
  if ((row.figure(toBuy) ?? 0) <= 0) return [];
  return [
    {
      variety: row.text('variety'),
      crop: row.text('crop'),
      amount,
      packs: row.text(packs),
      supplier: row.text(supplier),
      cost: row.figure(cost),
      costText: row.text(cost),
    },
  ];
}

function seedsOf(row: AskedRow): string {
  return amountOf(row, 'seeds-to-buy', 'seed');
}

function plantsOf(row: AskedRow): string {
  return amountOf(row, 'plants-to-buy', 'plant');
}

/** Cloves and tubers are sold by weight as well: '330 cloves, 3.6 lb'. */
function setsOf(book: Book, row: AskedRow): string {
  const piece = row.text('piece');
  const count = amountOf(row, 'sets-to-buy', piece === '' ? 'set' : piece);
  const [needed = 0, toBuy = 0] = [row.figure('sets-needed'), row.figure('sets-to-buy')];
  const weight = row.figure('weight-needed');
  if (weight === undefined || needed <= 0) return count;
  return `${count}, ${inUnit(book, PLANTED, 'weight-needed', (weight * toBuy) / needed, 1)}`;
}

function amountOf(row: AskedRow, column: string, one: string): string {
  return `${row.text(column)} ${row.figure(column) === 1 ? one : `${one}s`}`;
}

function proposedOrders(book: Book, needs: readonly Need[]): readonly Paper[] {
  const money = columnOf(sheetView(book, SEED), 'cost')?.unit ?? '';
  const sold = needs.filter(({ packs }) => packs !== '');
  return [...grouped(sold, ({ supplier }) => supplier)].map(([supplier, lines]): Paper => {
    const costs = lines.flatMap(({ cost }) => cost ?? []);
    const total = costs.reduce((sum, cost) => sum + cost, 0);
    return {
      title: `To order from ${supplier === '' ? 'suppliers not named' : supplier}`,
      farm: farmName(book),
      says: costs.length === 0 ? '' : `${inUnit(book, SEED, 'cost', total)} before postage.`,
      tables: [
        {
          heading: 'What to order',
          boxes: true,
          columns: [...words('Variety', 'Crop', 'Needed', 'Packs'), ...figures(`Cost, ${money}`)],
          rows: lines.map(({ variety, crop, amount, packs, costText }) => [variety, crop, amount, packs, costText]),
        },
      ],
    };
  });
}

/** What is needed but no pack is listed of: to be asked for, or looked up in catalogues. */
function packless(book: Book, needs: readonly Need[]): readonly Paper[] {
  const lines = needs.filter(({ packs }) => packs === '');
  if (lines.length === 0) return [];
  return [
    {
      title: 'No supplier yet',
      farm: farmName(book),
      says: 'No pack of these is listed: packs and prices are entered on Packs.',
      tables: [
        {
          heading: 'What is needed',
          boxes: true,
          columns: words('Variety', 'Crop', 'Needed'),
          rows: lines.map(({ variety, crop, amount }) => [variety, crop, amount]),
        },
      ],
    },
  ];
}

function orderTable(lines: readonly AskedRow[], money: string): PaperTable {
  return {
    heading: 'What to order',
    boxes: true,
    columns: [
      ...words('Variety', 'Crop', 'Form', 'A pack holds'),
      ...figures('Packs', `Price, ${money}`, `Cost, ${money}`),
    ],
    rows: lines.map((row) => [
      row.text('called') === '' ? row.text('variety') : row.text('called'),
      row.text('crop'),
      row.text('form'),
      row.full('in-a-pack'),
      row.text('count'),
      row.text('price'),
      row.text('cost'),
    ]),
  };
}
