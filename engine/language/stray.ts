// What is said where the reader of formulas can't go on: a part is missing, or something follows that can't. Looks at the
// tokens around the place, for the slip is often there: 2 ft 6 in, 2,5, 3 bananas. Called by parser.ts alone.

import type { Token } from './lexer.ts';
import { refuse } from './refuse.ts';

/** What to say of a word after a number that is no unit, and what to write in its place. */
export type UnitHelp = (symbol: string) => { readonly why: string; readonly fix?: string };

const CLOSES_NOTHING = 'This ) closes nothing; take it out, or put ( where it should begin.';

/** A value was wanted where `token` stands, after `before`. */
export function refuseMissing(before: Token | undefined, token: Token): never {
  if (before?.token === 'sign' && !'(;,'.includes(before.sign)) {
    return refuse(before, `Something is missing after ${before.sign}.`);
  }
  if (token.token !== 'sign') {
    return refuse({ from: before?.from ?? token.from, to: token.to }, 'Something is missing at the end.');
  }
  if (token.sign === ')') return refuse(token, CLOSES_NOTHING);
  if (token.sign === '.') {
    return refuse(token, 'A point stands between a link and a column, as in [Variety].[Crop].');
  }
  return refuse(token, `Something is missing before ${token.sign}.`);
}

/** `token` follows a finished value that ends in `before`, and can't; `after` comes next. */
export function refuseStray(
  text: string,
  before: Token,
  token: Token,
  after: Token,
  unitHelp: UnitHelp | undefined,
): never {
  if (token.token === 'sign') return refuseSign(text, before, token, token.sign, after);
  const afterMeasure = before.token === 'number' || before.token === 'quantity';
  if (token.token === 'word' && afterMeasure && !opensName(after)) {
    const { why, fix } = unitHelp?.(token.word) ?? { why: `${token.word} is not a unit that Dibble knows.` };
    return refuse(token, why, fix);
  }
  if (before.token === 'quantity' && token.token === 'quantity') {
    const fix = `(${text.slice(before.from, before.to)} + ${text.slice(token.from, token.to)})`;
    return refuse({ from: before.from, to: token.to }, `Write the parts of a measure as a sum: ${fix}.`, fix);
  }
  return refuse(token, 'An operator such as + or * is missing before this.');
}

function opensName(token: Token): boolean {
  return token.token === 'bracket' || (token.token === 'sign' && token.sign === '(');
}

function refuseSign(text: string, before: Token, token: Token, sign: string, after: Token): never {
  if (sign === ')') return refuse(token, CLOSES_NOTHING);
  if (sign === '.' && before.token === 'sign' && before.sign === ')' && after.token === 'bracket') {
    return refuse(
      token,
      `A column is read off a link or off figures that stand in a column: put what is before the point in a column of its own, and name ${after.name} there, as in [Column].[${after.name}].`,
    );
  }
  if (sign === ',' && before.token === 'number' && (after.token === 'number' || after.token === 'quantity')) {
    const fix = `${text.slice(before.from, before.to)}.${text.slice(after.from, after.to)}`;
    return refuse({ from: before.from, to: after.to }, `The decimal mark in a formula is a point: ${fix}.`, fix);
  }
  if (sign === ';' || sign === ',') {
    return refuse(
      token,
      `${sign} only separates the parts of a function; take it out or put an operator in its place.`,
    );
  }
  return refuse(token, `${sign} has no place here.`);
}
