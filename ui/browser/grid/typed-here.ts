// What was typed in a cell, taken to another: an entry means the same there, whatever unit that column has.

import type { ColumnView } from '../../../engine/index.ts';

export interface TypedHere {
  /** As its editor opens with it; a range with its ends: '40..50'. */
  readonly entry: string;
  /** The unit of its column, which bare figures are in; '' for none. */
  readonly unit: string;
}

/** A figure that names no unit. */
const BARE = /^[-+\u2212]?\d[\d.,]*(?:e[-+]?\d+)?$/i;

/** The entry as it is typed in a column: its figures name their unit where that isn't the column's own. */
export function inColumn({ entry, unit }: TypedHere, column: Pick<ColumnView, 'unit'>): string {
  if (unit === '' || unit === column.unit) return entry;
  const parts = entry.split('..').map((part) => (BARE.test(part) ? withUnit(part, unit) : part));
  return parts.join('..');
}

function withUnit(figure: string, unit: string): string {
  if (unit !== '%') return `${figure} ${unit}`;
  // Below 1 a bare figure of a column of per cent is the share itself.
  const share = Number(figure.replace(',', '.'));
  const hundredths = String(Number((share * 100).toPrecision(15)));
  return share > 0 && share < 1 ? `${figure.includes(',') ? hundredths.replace('.', ',') : hundredths}%` : `${figure}%`;
}
