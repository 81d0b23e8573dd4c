// Logic: deciding between values. Those that must not work out every argument are made by the planner. Read by
// standard/index.ts.

import type { ArgumentType } from '../../language/signature.ts';
import { fits, nameOfType, type ValueType } from '../../values/type.ts';
import { anything, every, makers, many, needed, optional, plain, rule, takes, thenRepeating, yesno } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';

const make = makers('logic');

/**
 * SWITCH(value; match; result; match; result ...; otherwise): matches are like the value, results like each other; an odd
 * one at the end is what stands in where nothing matches.
 */
function switchType(args: readonly ArgumentType[]): ValueType | string {
  const value = args[0]?.type;
  let result: ValueType | undefined;
  for (const [index, { type }] of args.entries()) {
    if (index === 0 || type === undefined) continue;
    const isMatch = index % 2 === 1 && index < args.length - 1;
    if (isMatch) {
      if (value !== undefined && !fits(value, type)) {
        return `SWITCH compares ${nameOfType(value)} with ${nameOfType(type)}: give matches of the same kind.`;
      }
      continue;
    }
    if (result === undefined) result = type;
    else if (!fits(result, type)) {
      return `SWITCH gives ${nameOfType(result)} in one case and ${nameOfType(type)} in another: make all results alike.`;
    }
  }
  if (args.length < 3)
    return 'SWITCH needs a value, then a match and its result: SWITCH([Rows]; 1; "single"; "several").';
  return result ?? 'SWITCH needs a result that is not blank.';
}

function countYes(args: readonly unknown[]): number {
  let count = 0;
  for (const arg of args) if (arg === true) count += 1;
  return count;
}

export const LOGIC: readonly FunctionDefinition[] = [
  make.form(
    'IF',
    'The second where the condition holds, else the third (blank where left out); a blank condition gives blank.',
    '6.15.4',
    takes(needed('condition', yesno), needed('then', every('T')), optional('otherwise', every('T'))),
    every('T'),
  ),
  make.form(
    'IFS',
    'The value after the first condition that holds; blank where none does. End with TRUE; value to catch the rest.',
    'common spreadsheet practice',
    thenRepeating(takes(), needed('condition', yesno), needed('value', every('T'))),
    every('T'),
  ),
  make.form(
    'SWITCH',
    'The result beside the first match that equals the value; the odd one at the end where none does.',
    'common spreadsheet practice',
    thenRepeating(takes(needed('value', anything)), needed('match_result', anything)),
    rule(switchType),
  ),
  make.form(
    'CHOOSE',
    'The value at a place in a list written out: CHOOSE(2; "bed"; "field"; "house") is field.',
    '6.14.3',
    thenRepeating(takes(needed('place', plain)), needed('value', every('T'))),
    every('T'),
  ),
  make.form(
    'IFERROR',
    'The first, or the second where the first is an error.',
    '6.15.5',
    takes(needed('value', every('T')), needed('otherwise', every('T'))),
    every('T'),
  ),
  make.form(
    'IFNA',
    'The first, or the second where a look-up found nothing.',
    '6.15.6',
    takes(needed('value', every('T')), needed('otherwise', every('T'))),
    every('T'),
  ),
  make.form(
    'AND',
    'Yes where all hold. One no decides even where another is blank.',
    '6.15.2',
    many('condition', yesno),
    yesno,
  ),
  make.form(
    'OR',
    'Yes where at least one holds. One yes decides even where another is blank.',
    '6.15.8',
    many('condition', yesno),
    yesno,
  ),
  make.scalar(
    'XOR',
    'Yes where an odd number of the conditions hold; of two, where one holds and the other does not.',
    '6.15.10',
    many('condition', yesno),
    yesno,
    (args) => countYes(args) % 2 === 1,
  ),
  make.numeric(
    'NOT',
    'Yes where the condition does not hold.',
    '6.15.7',
    takes(needed('condition', yesno)),
    yesno,
    (x) => (x === 0 ? 1 : 0),
  ),
  make.numeric('TRUE', 'Yes.', '6.15.9', takes(), yesno, () => 1),
  make.numeric('FALSE', 'No.', '6.15.3', takes(), yesno, () => 0),
];
