// Logic: deciding between values. Those that must not work out every argument are made by the planner. Read by
// standard/index.ts.

import { every, makers, many, needed, optional, orElse, plain, takes, thenRepeating, yesno } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';

const make = makers('logic');

function countYes(args: readonly unknown[]): number {
  let count = 0;
  for (const arg of args) if (arg === true) count += 1;
  return count;
}

export const LOGIC: readonly FunctionDefinition[] = [
  make.form(
    'IF',
    'if',
    'The second where the condition holds, else the third (blank where left out); a blank condition gives blank.',
    '6.15.4',
    takes(needed('condition', yesno), needed('then', every('T')), optional('otherwise', every('T'))),
    every('T'),
  ),
  make.form(
    'IFS',
    'ifs',
    'The value after the first condition that holds; blank where none does. End with TRUE; value to catch the rest.',
    'common spreadsheet practice',
    thenRepeating(takes(), needed('condition', yesno), needed('value', every('T'))),
    every('T'),
  ),
  make.form(
    'SWITCH',
    'switch',
    'The result beside the first match that equals the value; a last one without a match stands for all others: SWITCH([Rows]; 1; "single"; 2; "double"; "bed").',
    'common spreadsheet practice',
    orElse(
      thenRepeating(takes(needed('value', every('K'))), needed('match', every('K')), needed('result', every('R'))),
    ),
    every('R'),
  ),
  make.form(
    'CHOOSE',
    'choose',
    'The value at a place in a list written out: CHOOSE(2; "bed"; "field"; "house") is field.',
    '6.14.3',
    thenRepeating(takes(needed('place', plain)), needed('value', every('T'))),
    every('T'),
  ),
  make.form(
    'IFERROR',
    'iferror',
    'The first, or the second where the first is an error.',
    '6.15.5',
    takes(needed('value', every('T')), needed('otherwise', every('T'))),
    every('T'),
  ),
  make.form(
    'IFNA',
    'ifna',
    'The first, or the second where a look-up found nothing.',
    '6.15.6',
    takes(needed('value', every('T')), needed('otherwise', every('T'))),
    every('T'),
  ),
  make.form(
    'AND',
    'and',
    'Yes where all hold. One no decides even where another is blank.',
    '6.15.2',
    many('condition', yesno),
    yesno,
  ),
  make.form(
    'OR',
    'or',
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
  make.form('NOT', 'not', 'Yes where the condition does not hold.', '6.15.7', takes(needed('condition', yesno)), yesno),
  make.numeric('TRUE', 'Yes.', '6.15.9', takes(), yesno, () => 1),
  make.numeric('FALSE', 'No.', '6.15.3', takes(), yesno, () => 0),
];
