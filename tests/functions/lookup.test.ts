// Looking up in columns of links, which are compared with text by the key of the row they name; and conditions that ask for
// blanks. Worked out by hand from the invented plots of formulas.ts (stars Draco, Orion, Draco and a blank; lengths 10, 20,
// 30 ft and a blank; notes early, late, late and a blank).

import { expect, it } from 'vitest';
import { workedOut } from './formulas.ts';

const GIVES: readonly (readonly [formula: string, shown: string])[] = [
  ['MATCH("Orion"; Plots[Star]; 0)', '2'],
  ['MATCH("draco"; Plots[Star]; 0)', '1'],
  ['LOOKUP("Eridanus"; Plots[Star]; Plots[Length])', '10 ft'],
  ['XLOOKUP("Orion"; Plots[Star]; Plots[Length])', '20 ft'],
  ['XLOOKUP("Pavo"; Plots[Star]; Plots[Length]; 1 ft)', '1 ft'],
  ['XLOOKUP("B"; Plots[Plot]; Plots[Star]; "none")', 'Orion'],
  ['XLOOKUP("E"; Plots[Plot]; Plots[Star]; "none")', 'none'],
  ['XLOOKUP("B"; Plots[Plot]; Plots[Star])', 'Orion'],
  ['COUNTIFS(Plots[Note]; "=")', '1'],
  ['COUNTIFS(Plots[Note]; "<>")', '3'],
  ['COUNTIFS(Plots[Length]; "<>"; Plots[Note]; "late")', '2'],
  ['SUMIFS(Plots[Yield]; Plots[Star]; "<>")', '121 lb'],
  ['SUMIFS(Plots[Yield]; Plots[Star]; ">Draco")', '38 lb'],
  ['SUMIFS(Plots[Yield]; Plots[Star]; "<=draco")', '83 lb'],
];

const answer = workedOut(GIVES.map(([formula]) => formula));

it.each(GIVES)('%s gives %s', (formula, shown) => {
  expect(answer(formula)).toMatchObject({ is: 'value', shown });
});
