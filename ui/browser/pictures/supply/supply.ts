// Supply against demand: what a product has from the field and from store each week, beside what is wanted. Pure: from the engine's
// queries to a picture model.

import { type Book, rowName, rows, settings, sheetView } from '../../../../engine/index.ts';
import { dayWords } from '../../store/day-words.ts';
import { columnOf } from '../../store/sheets.ts';
import { askRows, bareFigure, type Needs } from '../kit/ask.ts';
import { type Column, type ColumnsModel, type Part, totalOf, withSaidUnit } from '../kit/model.ts';
import { weekWords } from '../kit/weeks.ts';

const SHEET = 'supply-against-demand';
const PRODUCTS = 'products';

export const SUPPLY_NEEDS: Needs = { [SHEET]: ['product', 'week-starts', 'from-the-field', 'from-store', 'wanted'] };

const PARTS: readonly Part[] = [
  { name: 'from the field', mark: 'mark-second' },
  { name: 'from store', mark: 'mark-third' },
];

export interface Product {
  readonly slot: number;
  readonly name: string;
}

/** Products that have a week of supply or demand, in their own order. */
export function productsOf(book: Book): readonly Product[] {
  const seen = new Set(askRows(book, SHEET).map((row) => row.figure('product')));
  return Array.from(rows(book, PRODUCTS))
    .filter((slot) => seen.has(slot))
    .map((slot) => ({ slot, name: rowName(book, PRODUCTS, slot) }));
}

/** Undefined where the product has no week. */
export function supplyAgainstDemand(book: Book, product: Product): ColumnsModel | undefined {
  const view = columnOf(sheetView(book, SHEET), 'supply') ?? columnOf(sheetView(book, SHEET), 'from-the-field');
  const unit = view?.unit ?? '';
  const { today, writing } = settings(book);
  const say = (figure: number, after = unit): string => withSaidUnit(figure, after, view?.decimals, writing);
  const columns = askRows(book, SHEET).flatMap((row): readonly Column[] => {
    const from = row.figure('week-starts');
    if (row.figure('product') !== product.slot || from === undefined) return [];
    const figure = (column: string): number => bareFigure(view, row.figure(column) ?? 0);
    const wanted = figure('wanted');
    return [
      {
        from,
        until: from + 7,
        parts: [figure('from-the-field'), figure('from-store')],
        limit: wanted,
      },
    ];
  });
  const [first, last] = [columns[0], columns.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  return {
    kind: 'columns',
    title: `${product.name}: supply against demand by week`,
    unit,
    says: sentence(book, product.name, columns, say),
    from: first.from,
    to: last.until,
    today,
    parts: PARTS,
    limitName: 'wanted',
    limitIs: 'wish',
    columns,
    writing,
    readings: columns.map((column) => ({
      x: column.from + 3.5,
      words: `${weekWords(book, column)}: ${say(column.parts[0] ?? 0)} from the field, ${say(column.parts[1] ?? 0)} from store, ${say(column.limit ?? 0)} wanted.`,
    })),
    table: {
      head: ['Week of', `From the field, ${unit}`, `From store, ${unit}`, `Wanted, ${unit}`],
      rows: columns.map((column) => [
        dayWords(book, column.from),
        ...[...column.parts, column.limit ?? 0].map((figure) => say(figure, '')),
      ]),
    },
  };
}

function sentence(book: Book, name: string, columns: readonly Column[], say: (figure: number) => string): string {
  const wanted = columns.filter(({ limit = 0 }) => limit > 0);
  if (wanted.length === 0) {
    const most = columns.reduce((best, column) => (totalOf(column) > totalOf(best) ? column : best));
    return `Nothing is wanted of ${name} yet: name what outlets take on the sheet Demand. Most there is: ${say(totalOf(most))} in the week of ${dayWords(book, most.from)}.`;
  }
  const short = wanted.filter((column) => totalOf(column) < (column.limit ?? 0) * (1 - 1e-9));
  const [first] = short;
  if (first === undefined) return `There is enough in all ${wanted.length} weeks in which it is wanted.`;
  const missing = (first.limit ?? 0) - totalOf(first);
  return `Too little in ${short.length} of the ${wanted.length} weeks in which it is wanted, first in that of ${dayWords(book, first.from)}: ${say(missing)} are missing.`;
}
