// Every function that formulas may call, against the checker: whatever is passed, in whatever number, the answer is a type
// or a sentence, and its own signature is sound.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { SIGNATURES } from '../../engine/functions/index.ts';
import { checkFormula } from '../../engine/language/checker.ts';
import { parseFormula } from '../../engine/language/parser.ts';
import type { Pattern, Signature } from '../../engine/language/signature.ts';
import { sameDimension } from '../../engine/units/dimension.ts';
import { TEXT } from '../../engine/values/type.ts';
import { CATALOG, column, contextOf, isUnitHere, sheet } from './plan.ts';

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
};
const WANTED = sheet('Wanted', [column('Length', TEXT)]);
const CONTEXT = contextOf({ functions: SIGNATURES, catalog: { tables: [...CATALOG.tables, WANTED] } });
const ANY = Object.values(FITTING).flat();

/** A call of the function, most of its arguments of the fitting kind. */
function callOf(signature: Signature): fc.Arbitrary<string> {
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

test('calls of every function check or are refused in a sentence', () => {
  const calls = fc.constantFrom(...SIGNATURES.values()).chain(callOf);
  const checkedNames = new Set<string>();
  fc.assert(
    fc.property(calls, (text) => {
      const parsed = parseFormula(text, isUnitHere);
      if (!parsed.ok) throw new Error(`${text}: ${parsed.complaint.why}`);
      const checked = checkFormula(parsed.tree, CONTEXT);
      if (checked.ok) {
        const { type } = checked.typed;
        if (type.kind === 'number') expect(sameDimension(type.dimension, type.unit.dimension), text).toBe(true);
        checkedNames.add(text.slice(0, text.indexOf('(')));
        return;
      }
      expect(checked.complaint.why, text).toMatch(/^[^a-z].*[.]$/s);
      expect(checked.complaint.why, text).not.toMatch(/undefined|NaN|null|\[object/);
    }),
    { numRuns: 20_000 },
  );
  // Most functions were really called as they should be, so the property is not empty.
  expect(checkedNames.size).toBeGreaterThan(SIGNATURES.size * 0.6);
});

test('a signature repeats no more parameters than it has, and its units are units', () => {
  for (const { name, parameters, repeating } of SIGNATURES.values()) {
    expect(repeating, name).toBeLessThanOrEqual(parameters.length);
    for (const { unit } of parameters) expect(unit === undefined || isUnitHere(unit), `${name}: ${unit}`).toBe(true);
  }
});
