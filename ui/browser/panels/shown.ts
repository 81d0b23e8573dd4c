// How a cell's value stands in running text: with its unit. Pure; every part of the panel and the cards calls it.

import type { CellView, ColumnView, Unit } from '../../../engine/index.ts';

/** '6 in', '85%', '15 Mar 2027', '20 cm' where it was typed so; '' for a blank. */
export function inWords(cell: CellView, column: ColumnView): string {
  return withUnit(cell.text, column.unit);
}

export function withUnit(text: string, unit: string): string {
  // A text that doesn't end in a figure already bears a unit of its own.
  if (text === '' || unit === '' || !/\d$/.test(text)) return text;
  return unit === '%' ? `${text}%` : `${text} ${unit}`;
}

/** A figure that isn't a cell's, to so many decimals at most, without idle zeros. */
export function plainFigure(figure: number, decimals: number): string {
  return String(Number(figure.toFixed(decimals)));
}

/** '6 in': a figure in a unit, as a person would type it. */
export function entryOf(figure: number, unit: Unit): string {
  return `${plainFigure(figure, 4)} ${unit.symbol}`;
}
