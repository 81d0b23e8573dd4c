// A diagnostic that a test expects: shared by the tests of what the checker says of names and operations, and of calls.

import { expect } from 'vitest';
import type { CheckContext } from '../../engine/language/checker.ts';
import { diagnosticOf } from './plan.ts';

/** Formula, marked part, sentence, and the whole formula once the fix is taken. */
export type Case = [formula: string, marked: string, why: string, fixed?: string];

export function expectDiagnostic([formula, marked, why, fixed]: Case, more: Partial<CheckContext> = {}): void {
  const { from, to, why: said, fix } = diagnosticOf(formula, more);
  const taken = fix === undefined ? undefined : formula.slice(0, fix.span.from) + fix.text + formula.slice(fix.span.to);
  expect({ marked: formula.slice(from, to), why: said, fixed: taken }).toEqual({ marked, why, fixed });
}
