// Kernels between units and within limits: filled rows, blanks and faults beside them, one value for all rows.

import { describe, expect, test } from 'vitest';
import {
  canonicalKernel,
  inUnitKernel,
  limitKernel,
  negateKernel,
} from '../../engine/calculation/kernels/unit-kernels.ts';
import { listed, ONE } from '../../engine/units/table.ts';
import type { Unit } from '../../engine/units/unit.ts';
import { always, given, givenFor, rows } from './kernel-rows.ts';

const HALVES: Unit = { ...ONE, numerator: 1, denominator: 2 };

describe('between units', () => {
  test('numbers are turned row by row, blanks and faults stay', () => {
    expect(given(inUnitKernel(rows('1 - !4 3'), HALVES), 4)).toBe('2 - !4 6');
    expect(given(canonicalKernel(rows('1 - !4 3'), HALVES), 4)).toBe('0.5 - !4 1.5');
    expect(givenFor(canonicalKernel(rows('1 2 3'), HALVES), [2, 0])).toBe('1.5 0.5');
    expect(given(inUnitKernel(always('8'), HALVES), 2)).toBe('16 16');
    expect(given(canonicalKernel(rows('-273.15'), listed('degC')), 1)).toBe('0');
    expect(given(negateKernel(rows('1 - -3')), 3)).toBe('-1 - 3');
  });

  test('what is too large for a number in the other unit is blank, its neighbours stay', () => {
    expect(given(inUnitKernel(rows('1 1e308 2'), HALVES), 3)).toBe('2 - 4');
    expect(given(inUnitKernel(always('1e308'), HALVES), 2)).toBe('- -');
  });
});

describe('within a limit', () => {
  test('numbers pass as they are, those outside are the fault', () => {
    expect(given(limitKernel(rows('1 2 3'), 1, 3, 9), 3)).toBe('1 2 3');
    expect(given(limitKernel(rows('0 2 4'), 1, 3, 9), 3)).toBe('!9 2 !9');
    expect(given(limitKernel(always('4'), 1, 3, 9), 2)).toBe('!9 !9');
    expect(givenFor(limitKernel(rows('0 2 4'), 1, 3, 9), [2, 1])).toBe('!9 2');
  });

  test('blanks and faults are asked for no limit', () => {
    expect(given(limitKernel(rows('- 2 !4'), 1, 3, 9), 3)).toBe('- 2 !4');
    expect(given(limitKernel(rows('- 5 !4'), 1, 3, 9), 3)).toBe('- !9 !4');
  });
});
