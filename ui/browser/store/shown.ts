// How values stand in running text: with their units. Pure; the panels, the cards and the lines around the sheet call it.

import { type CellView, decimalText, type Writing } from '../../../engine/index.ts';

/** '6 in', '85%', '15 Mar 2027', '20 cm' where it was typed so, '170 lb (120 to 210)' of a range; '' for a blank. */
export function inWords({ figure, fullUnit, ends }: CellView): string {
  return withUnit(figure, fullUnit) + endsAfter(ends);
}

/** ' (120 to 210)'; '' where there are no ends. */
export function endsAfter(ends: string): string {
  return ends === '' ? '' : ` (${ends})`;
}

export function withUnit(figure: string, unit: string): string {
  if (figure === '' || unit === '') return figure;
  return figure + unitBehind(unit);
}

/** A unit as it stands behind a figure: ' in', '%'; the same in cells, panels and sentences, whatever language writes the figure. */
export function unitBehind(unit: string): string {
  return unit === '%' ? unit : ` ${unit}`;
}

/** A figure that isn't a cell's, to so many decimals at most, without idle zeros. */
export function plainFigure(figure: number, decimals: number, writing?: Writing): string {
  return decimalText(figure, 0, decimals, writing);
}
