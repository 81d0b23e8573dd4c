// What a general function's answer counts in when it is asked of whole columns of the workbook: in the sheets it carries their units,
// on a paper it is a plain number in the units of their names. Called by translate.ts.

import type { Parameter, Signature } from '../../engine/index.ts';
import type { NamedColumn } from './names.ts';
import { counted, oneOf, open, type Part } from './parts.ts';

/** The columns among the arguments of a call, each at its place. */
type ColumnsGiven = readonly (NamedColumn | undefined)[];

/** Of functions with a rule for their answer: the power to which the unit of each column goes into it; 1 of any more. */
const POWERS: Readonly<Record<string, readonly number[]>> = {
  VAR: [2],
  'VAR.S': [2],
  VARP: [2],
  'VAR.P': [2],
  DEVSQ: [2],
  SLOPE: [1, -1],
  STEYX: [1, 0],
  AVEDEV: [],
  COVAR: [],
  'COVARIANCE.P': [],
  'COVARIANCE.S': [],
  SUMPRODUCT: [],
};

/** The column whose unit a letter of the signature stands for, by the letter. */
export function columnsOfLetters(
  parameters: readonly (Parameter | undefined)[],
  columns: ColumnsGiven,
): ReadonlyMap<string, NamedColumn> {
  const letters = new Map<string, NamedColumn>();
  for (const [i, column] of columns.entries()) {
    const letter = letterOf(parameters[i]);
    if (column !== undefined && letter !== undefined && !letters.has(letter)) letters.set(letter, column);
  }
  return letters;
}

/** The letter of a signature that an argument's type answers to. */
export function letterOf(parameter: Parameter | undefined): string | undefined {
  const pattern = parameter?.pattern;
  if (pattern === undefined) return undefined;
  const of = 'of' in pattern ? pattern.of : pattern;
  return of.is === 'letter' ? of.letter : undefined;
}

/** The answer as the plain figure that it is on a paper; undefined where no column's unit goes into it. */
export function answerOf(
  text: string,
  { name, result }: Signature,
  letters: ReadonlyMap<string, NamedColumn>,
  columns: ColumnsGiven,
): Part | undefined {
  if (result.is === 'letter') {
    const column = letters.get(result.letter);
    return column === undefined ? undefined : counted(text, column);
  }
  const powers =
    result.is === 'power'
      ? [powered(letters.get(result.letter), result.exponent)]
      : result.is === 'product'
        ? result.powers.map(({ letter, exponent }) => powered(letters.get(letter), exponent))
        : columns.map((column, i) => powered(column, POWERS[name]?.[i] ?? (name in POWERS ? 1 : 0)));
  const units = powers.filter((power) => power !== '');
  return units.length === 0 ? undefined : open(`${text} / (${units.join(' * ')})`, 'number');
}

/** '' for a plain number. */
function powered(column: NamedColumn | undefined, exponent: number): string {
  const symbol = column?.unit?.symbol ?? '';
  if (symbol === '' || exponent === 0) return '';
  return exponent === 1 ? oneOf(symbol) : `${oneOf(symbol)} ^ ${exponent < 0 ? `(${exponent})` : exponent}`;
}
