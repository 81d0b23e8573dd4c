// Values as they stand in joined texts: full and plain, so that keys and lot numbers stay what they are. A number has all its
// figures, no thousands marks and a point; a quantity its unit, money its currency; dates, yes and no read as on screen. The
// text of a number is the evaluator's own in OpenFormula (ODF 1.3 part 4, 6.3.14); here it reads back as the number that it
// came from. Called for & by the workbook and for CONCAT and TEXTJOIN by the functions.

import { currencyOf } from '../units/currency.ts';
import { isMixed } from '../units/table.ts';
import { shownNumber } from '../units/unit.ts';
import type { CellError, Scalar } from './error.ts';
import { followedBy, mixedText, showValue } from './show.ts';
import type { ValueType } from './type.ts';

/** The most letters that a text may have which a formula makes. */
export const LONGEST_TEXT = 32_767;

/** What a formula gives whose text would be longer; `remedy` ends the sentence: 'join less'. */
export function tooLongText(remedy: string): CellError {
  return { error: 'value', why: `The text would be longer than ${LONGEST_TEXT} letters: ${remedy}.` };
}

/** Figures of a double that are never dust. */
const SURE_FIGURES = 15;

/**
 * A number in full: whole numbers with every digit, others to 15 figures, so that 0.1 + 0.2 reads 0.3 as it equals 0.3; the
 * very large and very small as 1E+21 and 1.5E-9.
 */
export function numeral(n: number): string {
  const sure = Number.isSafeInteger(n) ? n : Number(n.toPrecision(SURE_FIGURES));
  // Next to the largest number of all there is none to round up to.
  return String((Number.isFinite(sure) ? sure : n) + 0).replace('e', 'E');
}

/** A value as a joined text holds it; blank is no text. Errors pass on before they come here. Links must come as their text. */
export function plainText(value: Scalar, type: ValueType, currency: string): string {
  if (typeof value !== 'number' || (type.kind !== 'number' && type.kind !== 'temperature')) {
    return showValue(value, type, { currency });
  }
  const { unit } = type;
  if (isMixed(unit)) return mixedText(value, unit, numeral);
  const figures = numeral(shownNumber(unit, value));
  const text = unit.dimension.money === 1 ? withDecimals(figures, currencyOf(currency).decimals) : figures;
  return followedBy(text, unit, currency);
}

/** 2.5 as 2.50: at least so many decimals. */
function withDecimals(figures: string, least: number): string {
  if (figures.includes('E') || least === 0) return figures;
  const [whole = '', decimals = ''] = figures.split('.');
  return `${whole}.${decimals.padEnd(least, '0')}`;
}
