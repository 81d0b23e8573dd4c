// How the rows of a table stand in order: by their own labels, as the rows they were made from, by pairs of rows, by date.
// Totals add up and lists stand in this order, whatever slots the rows have, so that their bits are those of a fresh workbook.

import type { Column } from '../values/column.ts';
import type { ColumnDef, LinkDef, TableDef } from './layout.ts';
import type { TableRows } from './table-rows.ts';

/** Where rows and columns are read: a data. */
interface Data {
  column(def: ColumnDef): Column;
  table(def: TableDef): TableRows;
}

type Compare = (a: number, b: number) => number;

const bySlot: Compare = (a, b) => a - b;

/** Below zero where row a stands before row b; undefined where slots stand in order themselves. */
export function compareRows(data: Data, table: TableDef): Compare | undefined {
  const { order } = table;
  if (data.table(table).inOrder) return undefined;
  switch (order.by) {
    case 'slot':
      return undefined;
    case 'own': {
      const { labels } = data.table(table);
      return labels === undefined ? undefined : (a, b) => (labels[a] as number) - (labels[b] as number) || a - b;
    }
    case 'table':
      return compareRows(data, order.table);
    case 'links': {
      const [first, second] = order.links;
      const [one, other] = [compareLinked(data, first), compareLinked(data, second)];
      return (a, b) => one(a, b) || other(a, b);
    }
    case 'events': {
      const [days, kinds] = [data.column(order.date).values, data.column(order.kind).values];
      const abouts = order.about.map((link) => compareLinked(data, link));
      return (a, b) => {
        const earlier = (days[a] as number) - (days[b] as number) || (kinds[a] as number) - (kinds[b] as number);
        return earlier || (abouts[kinds[a] as number]?.(a, b) ?? 0);
      };
    }
  }
}

/** By the rows that a link column names. */
function compareLinked(data: Data, { column, to }: LinkDef): Compare {
  const { values } = data.column(column);
  const compare = compareRows(data, to) ?? bySlot;
  return (a, b) => compare(values[a] as number, values[b] as number);
}

/** Slots of the rows that exist, in order. */
export function rowsInOrder(data: Data, table: TableDef): Int32Array {
  const { length, live, liveCount } = data.table(table);
  const shown = table.shown === undefined ? undefined : data.column(table.shown);
  const rows = new Int32Array(liveCount);
  let count = 0;
  for (let row = 0; row < length; row++) {
    if (live[row] !== 1) continue;
    if (shown === undefined || (shown.states[row] === 0 && shown.values[row] === 1)) rows[count++] = row;
  }
  const found = rows.subarray(0, count);
  const compare = compareRows(data, table);
  return compare === undefined ? found : sorted(found, compare);
}

/** Most tables stand in order already: looking is cheaper than sorting. */
function sorted(rows: Int32Array, compare: Compare): Int32Array {
  for (let i = 1; i < rows.length; i++) {
    if (compare(rows[i - 1] as number, rows[i] as number) > 0) return rows.sort(compare);
  }
  return rows;
}
