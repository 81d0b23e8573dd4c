// Random calls of every function there is over the invented plan, most of their arguments of the fitting kind.

import fc from 'fast-check';
import { SIGNATURES } from '../../engine/functions/index.ts';
import type { CheckContext } from '../../engine/language/checker.ts';
import type { Pattern, Signature } from '../../engine/language/signature.ts';
import { TEXT } from '../../engine/values/type.ts';
import { CATALOG, column, contextOf, sheet } from './plan.ts';

/** What a parameter's pattern takes, and what it doesn't. */
const FITTING: Readonly<Record<Pattern['is'], readonly string[]>> = {
  quantity: ['[Rows]', '3', '50%', '[Length]', '[Mass]', '[Days]', '2 h', '0', '[Price]'],
  letter: ['[Length]', '3 in', '[Rows]', '0', '[Low]', '[Sown]', '[Note]', '[Variety]', ''],
  temperature: ['[Low]', '20 degC', '20'],
  date: ['[Sown]', 'DATE(2027; 3; 15)'],
  text: ['"x"', '[Note]', '[Variety]', '[Start]', '"0.0"'],
  yesno: ['[Treated]', 'TRUE', '[Rows] > 2'],
  anything: ['[Length]', '[Note]', '[Bed]', '[Treated]', '3'],
  column: [
    'Plantings[Mass]',
    'Plantings[Length]',
    'Plantings[Sown]',
    'Plantings[Note]',
    'Plantings[Variety]',
    'Plantings[Rows]',
  ],
  values: ['Plantings[Mass]', '[Mass]', '3 lb', 'Plantings[Sown]', 'Plantings[Treated]', 'Farm[Bed width]', '0'],
  condition: ['">=5"', '">1 ft"', '"x"', '[Variety]', '">" & [Mass]', '"<>"'],
  table: ['Beds', "'Seed lots'"],
  'first column': ['Beds', 'Crops', "'Seed lots'"],
  field: ['"Length"', '2', 'Beds[Area]', '"Lot"'],
  criteria: ['Wanted', 'Beds'],
  record: ['[Length]', '[Fit]', '3'],
};
const WANTED = sheet('Wanted', [column('Length', TEXT)]);
/** The plan with a sheet of criteria, and every function. */
export const CONTEXT: CheckContext = contextOf({
  functions: SIGNATURES,
  catalog: { tables: [...CATALOG.tables, WANTED] },
});
const ANY = Object.values(FITTING).flat();

/** A call of the function, most of its arguments of the fitting kind. */
export function callOf(signature: Signature): fc.Arbitrary<string> {
  const { parameters, repeating } = signature;
  const fixed = parameters.length - repeating;
  return fc.integer({ min: 0, max: parameters.length + 2 * repeating + 1 }).chain((count) => {
    const args = Array.from({ length: count }, (_, index) => {
      const place = index < fixed || repeating === 0 ? index : fixed + ((index - fixed) % repeating);
      const fitting = FITTING[parameters[place]?.pattern.is ?? 'anything'];
      return fc.oneof(
        { weight: 12, arbitrary: fc.constantFrom(...fitting) },
        { weight: 1, arbitrary: fc.constantFrom(...ANY) },
      );
    });
    return fc.tuple(...args).map((given) => `${signature.name}(${given.join('; ')})`);
  });
}

/** A call of any function. */
export const anyCall: fc.Arbitrary<string> = fc.constantFrom(...SIGNATURES.values()).chain(callOf);
