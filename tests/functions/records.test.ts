// Learned figures as formulas: in whatever unit they come, blank where there is nothing to learn from.

import { describe, expect, it } from 'vitest';
import { type Evaluated, isError } from '../../engine/index.ts';
import { opened } from '../book.ts';
import { SMALL } from '../workbook/small.ts';

const book = opened(SMALL);

function answer(formula: string): Evaluated {
  return book.evaluate(formula);
}

function number(formula: string): number {
  const told = answer(formula);
  if (!told.ok) throw new Error(told.diagnostic.why);
  return typeof told.value === 'number' ? told.value : Number.NaN;
}

describe('learned figures', () => {
  it('weigh the library’s figure and the farm’s own', () => {
    expect(number('LEARNED(100 lb; ; ; 1; 140 lb; ) / 1 lb')).toBeCloseTo(120, 9);
    expect(number('LEARNED(20%; 10%; 30%; 4; 28%; 2%)')).toBeGreaterThan(0.25);
    expect(number('LEARNEDWEIGHT(20%; ; ; 1; 30%)')).toBeCloseTo(0.5, 9);
    expect(number('LEARNEDLOW(20%; ; ; 3; 30%; 1%)')).toBeLessThan(number('LEARNEDHIGH(20%; ; ; 3; 30%; 1%)'));
  });

  it('are blank without an observation, and refuse figures of unlike kinds', () => {
    const none = answer('LEARNED(100 lb; ; ; 0; 140 lb)');
    expect(none.ok && none.value === null && !isError(none.value)).toBe(true);
    expect(answer('LEARNED(100 lb; ; ; 2; 140 ft)').ok).toBe(false);
  });
});
