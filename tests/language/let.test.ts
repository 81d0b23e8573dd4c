// LET: names for parts of a formula, as if their values stood in their place.

import { describe, expect, test } from 'vitest';
import { evaluate, sheetView, tryFormula } from '../../engine/index.ts';
import { openFarm } from '../document/farm.ts';

const farm = openFarm();

function told(formula: string): string {
  const found = evaluate(farm, formula);
  return found.ok ? found.shown : found.diagnostic.why;
}

describe('LET', () => {
  test.each([
    ['LET(x; 3; x * x)', '9'],
    ['LET(width; 30 in; length; 10 ft; width * length)', '3600 in²'],
    ['LET(a; 2; b; a + 1; a * b)', '6'],
    ['LET(a; 2; LET(a; 5; a) + a)', '7'],
    ['let(Wide; 4; wide + 1)', '5'],
    ['LET(total; SUM(Plantings[Length]); IF(total > 50 ft; "long"; "short"))', 'long'],
    ['LET(sown; DATE(2027; 3; 1); sown + 10 days)', '11 Mar 2027'],
    ['LET(spare; 2; spare + ROWS(Beds))', '4'],
  ])('%s', (formula, shown) => expect(told(formula)).toBe(shown));

  test.each([
    ['LET(x; 3)', 'LET wants names with their values, then a formula: LET(name; value; name; value; ...; formula).'],
    ['LET(3; 4; 5)', 'A name is wanted here, such as width: LET(name; value; name; value; ...; formula).'],
    ['LET(kg; 4; 5)', 'kg is a unit, so it can’t name a value: choose another word.'.replace('’', "'")],
    ['LET(x; ; x)', 'x has no value: write one.'],
    ['LET(x; 1 ft; x + 1 kg)', /kg/],
    ['LET(x; 1; y)', /y/],
  ])('%s is refused in one sentence', (formula, why) => {
    if (typeof why === 'string') expect(told(formula)).toBe(why);
    else expect(told(formula)).toMatch(why);
  });

  test('names of names can’t make a formula grow without end', () => {
    const names = Array.from({ length: 30 }, (_, i) => `v${i + 1}; v${i} + v${i}; `).join('');
    expect(told(`LET(v0; 1; ${names}v30)`)).toContain('too long');
  });

  test('stands in a column, is printed so that it reads back, and follows new names', () => {
    const workbook = openFarm();
    const formula = 'LET(places; [Length] / [Spacing]; ROUNDDOWN(places; 0) + 0 * places)';
    expect(tryFormula(workbook, 'plantings', 'stations', formula).ok).toBe(true);
    const message = { code: 'work', parts: {} };
    workbook.do([{ command: 'set formula', sheet: 'plantings', column: 'stations', formula }], message);
    workbook.do([{ command: 'rename column', sheet: 'plantings', column: 'length', name: 'Run' }], message);
    const column = sheetView(workbook, 'plantings')?.columns.find(({ id }) => id === 'stations');
    expect(column?.formula).toBe(formula.replace('[Length]', '[Run]'));
    expect(column?.diagnostic).toBeUndefined();
  });
});
