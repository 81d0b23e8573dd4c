// Every function that formulas may call, against the checker: whatever is passed, in whatever number, the answer is a type
// or a sentence, and its own signature is sound.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { SIGNATURES } from '../../engine/functions/index.ts';
import { checkFormula } from '../../engine/language/checker.ts';
import { parseFormula } from '../../engine/language/parser.ts';
import { sameDimension } from '../../engine/units/dimension.ts';
import { anyCall, CONTEXT } from './any-call.ts';
import { isUnitHere } from './plan.ts';

test('calls of every function check or are refused in a sentence', () => {
  const checkedNames = new Set<string>();
  fc.assert(
    fc.property(anyCall, (text) => {
      const parsed = parseFormula(text, isUnitHere);
      if (!parsed.ok) throw new Error(`${text}: ${parsed.diagnostic.why}`);
      const checked = checkFormula(parsed.tree, CONTEXT);
      if (checked.ok) {
        const { type } = checked.typed;
        if (type.kind === 'number') expect(sameDimension(type.dimension, type.unit.dimension), text).toBe(true);
        checkedNames.add(text.slice(0, text.indexOf('(')));
        return;
      }
      expect(checked.diagnostic.why, text).toMatch(/^[^a-z].*[.]$/s);
      expect(checked.diagnostic.why, text).not.toMatch(/undefined|NaN|null|\[object/);
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
