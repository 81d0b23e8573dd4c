// The order of each supplier as plain data: what the terminal prints and writes as CSV, and the page prints. Reads Order lines and
// Suppliers by their ids.

import { type Book, cellValue, cellView, isError, rows, sheetViews, writeCsv } from '../engine/index.ts';

const LINES = 'order-lines';
const SUPPLIERS = 'suppliers';

export interface OrderLine {
  readonly variety: string;
  readonly crop: string;
  /** seed, sets or plants. */
  readonly form: string;
  readonly pack: string;
  readonly treated: boolean;
  /** Seeds, sets or plants in one pack. */
  readonly inPack: number;
  readonly count: number;
  readonly price: number;
  readonly cost: number;
}

export interface SupplierOrder {
  readonly supplier: string;
  readonly lines: readonly OrderLine[];
  readonly goods: number;
  readonly postage: number;
}

/** An order for each supplier that anything is ordered from; undefined for a workbook without orders. */
export function ordersOf(book: Book): readonly SupplierOrder[] | undefined {
  if (!sheetViews(book).some(({ id }) => id === LINES)) return undefined;
  const bySupplier = new Map<string, { readonly name: string; readonly lines: OrderLine[] }>();
  for (const row of rows(book, LINES)) {
    const name = textOf(book, LINES, row, 'supplier');
    const order = bySupplier.get(name.toLowerCase()) ?? { name, lines: [] };
    order.lines.push(lineAt(book, row));
    bySupplier.set(name.toLowerCase(), order);
  }
  const postage = new Map(
    Array.from(rows(book, SUPPLIERS), (row) => [
      textOf(book, SUPPLIERS, row, 'supplier').toLowerCase(),
      numberOf(book, SUPPLIERS, row, 'postage-to-pay'),
    ]),
  );
  return [...bySupplier].map(([key, { name, lines }]) => ({
    supplier: name,
    lines,
    goods: lines.reduce((sum, { cost }) => sum + cost, 0),
    postage: postage.get(key) ?? 0,
  }));
}

function textOf(book: Book, sheet: string, row: number, column: string): string {
  const value = cellValue(book, sheet, row, column);
  return value === null || isError(value) ? '' : cellView(book, sheet, row, column).text;
}

function numberOf(book: Book, sheet: string, row: number, column: string): number {
  return cellView(book, sheet, row, column).number ?? 0;
}

function lineAt(book: Book, row: number): OrderLine {
  const text = (column: string): string => textOf(book, LINES, row, column);
  const number = (column: string): number => numberOf(book, LINES, row, column);
  return {
    variety: text('variety'),
    crop: text('crop'),
    form: text('form'),
    pack: text('called'),
    treated: text('treated') !== '',
    inPack: number('in-a-pack'),
    count: number('count'),
    price: number('price'),
    cost: number('cost'),
  };
}

const HEADERS = ['Supplier', 'Variety', 'Crop', 'Form', 'Pack', 'In a pack', 'Count', 'Price', 'Cost', 'Treated'];

/** One supplier's order as CSV, a line a pack; postage is left to the supplier to add. */
export function orderCsv({ supplier, lines }: SupplierOrder): string {
  return writeCsv([
    HEADERS,
    ...lines.map(({ variety, crop, form, pack, inPack, count, price, cost, treated }) => [
      ...[supplier, variety, crop, form, pack, String(inPack), String(count), price.toFixed(2), cost.toFixed(2)],
      treated ? 'treated' : '',
    ]),
  ]);
}
