// How the rows of a table stand in order: by their own labels, as the rows they were made from, by pairs of rows, by date.
// Totals add up and lists stand in this order, whatever slots the rows have, so that their bits are those of a fresh workbook.

import type { Frame } from './frame.ts';
import type { LinkDef, TableDef } from './layout.ts';

type Compare = (a: number, b: number) => number;

const bySlot: Compare = (a, b) => a - b;

/** Below zero where row a stands before row b; undefined where slots stand in order themselves. */
export function compareRows(frame: Frame, table: TableDef): Compare | undefined {
  const { order } = table;
  switch (order.by) {
    case 'slot':
      return undefined;
    case 'own': {
      const { labels } = frame.table(table);
      return labels === undefined ? undefined : (a, b) => (labels[a] as number) - (labels[b] as number) || a - b;
    }
    case 'table':
      return compareRows(frame, order.table);
    case 'links': {
      const [first, second] = order.links;
      const [one, other] = [compareLinked(frame, first), compareLinked(frame, second)];
      return (a, b) => one(a, b) || other(a, b);
    }
    case 'events': {
      const [days, kinds] = [frame.column(order.date).values, frame.column(order.kind).values];
      const abouts = order.about.map((link) => compareLinked(frame, link));
      return (a, b) => {
        const earlier = (days[a] as number) - (days[b] as number) || (kinds[a] as number) - (kinds[b] as number);
        return earlier || (abouts[kinds[a] as number]?.(a, b) ?? 0);
      };
    }
  }
}

/** By the rows that a link column names. */
function compareLinked(frame: Frame, { column, to }: LinkDef): Compare {
  const { values } = frame.column(column);
  const compare = compareRows(frame, to) ?? bySlot;
  return (a, b) => compare(values[a] as number, values[b] as number);
}

/** Slots of the rows that exist, in order. */
export function rowsInOrder(frame: Frame, table: TableDef): Int32Array {
  const { length, live, liveCount } = frame.table(table);
  const shown = table.shown === undefined ? undefined : frame.column(table.shown);
  const rows = new Int32Array(liveCount);
  let count = 0;
  for (let row = 0; row < length; row++) {
    if (live[row] !== 1) continue;
    if (shown === undefined || (shown.states[row] === 0 && shown.values[row] === 1)) rows[count++] = row;
  }
  const found = rows.subarray(0, count);
  const compare = compareRows(frame, table);
  return compare === undefined ? found : sorted(found, compare);
}

/** Most tables stand in order already: looking is cheaper than sorting. */
function sorted(rows: Int32Array, compare: Compare): Int32Array {
  for (let i = 1; i < rows.length; i++) {
    if (compare(rows[i - 1] as number, rows[i] as number) > 0) return rows.sort(compare);
  }
  return rows;
}
