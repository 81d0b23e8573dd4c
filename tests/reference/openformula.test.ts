// Every case of the OpenFormula collection that can apply, worked out by the whole engine as a formula in a sheet; and
// the count: applied and not applied together are the collection's 681.

import { describe, expect, it } from 'vitest';
import { type Answer, workedOut } from '../functions/formulas.ts';
import { type Case, ERROR } from './openformula.case.ts';
import { SECTIONS } from './openformula.cases.ts';
import { NOT_APPLIED } from './openformula.not-applied.ts';
import { SHEETS } from './openformula.sheets.ts';

const COLLECTION = 681;

function expectCase({ gives, within }: Case, answer: Answer): void {
  if (gives === ERROR) {
    expect(['error', 'refused'], JSON.stringify(answer)).toContain(answer.is);
    return;
  }
  if (answer.is !== 'value') throw new Error(JSON.stringify(answer));
  if (typeof gives !== 'number') {
    expect(answer.value).toBe(gives);
    return;
  }
  const tolerance = within ?? 1e-12 * Math.max(1, Math.abs(gives));
  expect(typeof answer.value).toBe('number');
  expect(Math.abs(Number(answer.value) - gives)).toBeLessThanOrEqual(tolerance);
}

const all = SECTIONS.flatMap(({ section, cases }) => cases.map((one) => ({ section, ...one })));
const answer = workedOut(
  all.map((one) => one.formula),
  SHEETS,
);

describe('OpenFormula, the OASIS collection of 2006', () => {
  it.each(all.map((one) => [one.section, one.row, one.formula, one] as const))(
    '%s, row %i: %s',
    (_section, _row, formula, one) => {
      expectCase(one, answer(formula));
    },
  );

  it('leaves no case of the collection unnamed', () => {
    const rows = [...all.map((one) => one.row), ...NOT_APPLIED.flatMap(({ cases }) => cases.map(([row]) => row))];
    expect(new Set(rows).size).toBe(COLLECTION);
    expect(rows.length).toBe(COLLECTION);
  });
});
