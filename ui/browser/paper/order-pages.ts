// The order to each supplier on paper: what to order, how many packs, what they cost, and the sum. Pure.

import { type Book, sheetView } from '../../../engine/index.ts';
import { type AskedRow, askRows, hasColumns, inUnit, type Needs, sumOf } from '../pictures/kit/ask.ts';
import { grouped } from '../store/grouped.ts';
import { columnOf } from '../store/sheets.ts';
import { farmName, figures, type Paper, type PaperTable, words } from './paper.ts';

const LINES = 'order-lines';

export const ORDER_NEEDS: Needs = { [LINES]: ['supplier', 'variety', 'crop', 'count', 'price', 'cost'] };

/** What the workbook would order of seed, where no packs have been chosen yet. */
const PROPOSED = 'seed-order';
const PROPOSED_NEEDS: Needs = {
  [PROPOSED]: ['variety', 'crop', 'seeds-to-buy', 'packs', 'supplier', 'seeds-bought', 'cost'],
};

/** One paper a supplier, so that each begins on a page of its own; none where nothing is to be ordered. */
export function ordersOnPaper(book: Book): readonly Paper[] {
  const rows = hasColumns(book, ORDER_NEEDS) ? askRows(book, LINES) : [];
  if (rows.length === 0) return proposedOrders(book);
  return [...grouped(rows, (row) => row.text('supplier'))].map(([supplier, lines]): Paper => {
    const total = sumOf(lines, 'cost');
    const money = columnOf(sheetView(book, LINES), 'cost')?.unit ?? '';
    return {
      title: `Order to ${supplier === '' ? 'a supplier not named' : supplier}`,
      farm: farmName(book),
      says: `${lines.length} ${lines.length === 1 ? 'line' : 'lines'}${total === undefined ? '' : `, ${inUnit(book, LINES, 'cost', total)} before postage`}.`,
      tables: [orderTable(lines, money)],
    };
  });
}

function proposedOrders(book: Book): readonly Paper[] {
  if (!hasColumns(book, PROPOSED_NEEDS)) return [];
  const all = askRows(book, PROPOSED);
  const rows = all.filter((row) => row.text('packs') !== '');
  const bySupplier = [...grouped(rows, (row) => row.text('supplier'))].map(([supplier, lines]): Paper => {
    const total = sumOf(lines, 'cost');
    const money = columnOf(sheetView(book, PROPOSED), 'cost')?.unit ?? '';
    return {
      title: `Seed from ${supplier === '' ? 'suppliers not named' : supplier}`,
      farm: farmName(book),
      says: total === undefined ? '' : `${inUnit(book, PROPOSED, 'cost', total)} before postage.`,
      tables: [
        {
          heading: 'What to order',
          boxes: true,
          columns: [...words('Variety', 'Crop', 'Packs'), ...figures('Seeds', `Cost, ${money}`)],
          rows: lines.map((row) =>
            ['variety', 'crop', 'packs', 'seeds-bought', 'cost'].map((column) => row.text(column)),
          ),
        },
      ],
    };
  });
  const without = all.filter((row) => row.text('packs') === '' && (row.figure('seeds-to-buy') ?? 0) > 0);
  return without.length === 0 ? bySupplier : [...bySupplier, packless(book, without)];
}

/** What is needed but no pack is listed of: to be asked for, or looked up in catalogues. */
function packless(book: Book, lines: readonly AskedRow[]): Paper {
  return {
    title: 'Seed of which no pack is listed yet',
    farm: farmName(book),
    says: 'Packs and prices are entered on Packs.',
    tables: [
      {
        heading: 'What is needed',
        boxes: true,
        columns: [...words('Variety', 'Crop'), ...figures('Seeds')],
        rows: lines.map((row) => ['variety', 'crop', 'seeds-to-buy'].map((column) => row.text(column))),
      },
    ],
  };
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
