// Texts on pictures are cut by what the page measures, not by how many letters they have.

import { afterEach, beforeEach, expect, test, vi } from 'vitest';

const WIDE = 12;
const NARROW = 4;

const measured = (text: string): number =>
  Array.from(text, (letter): number => ('mwW\u2026'.includes(letter) ? WIDE : NARROW)).reduce(
    (sum, one) => sum + one,
    0,
  );

beforeEach(() => {
  vi.resetModules();
  const pen = { font: '', measureText: (text: string) => ({ width: measured(text) }) };
  vi.stubGlobal('document', { documentElement: {}, createElement: () => ({ getContext: () => pen }) });
  vi.stubGlobal('getComputedStyle', () => ({ getPropertyValue: () => '' }));
});

afterEach(() => {
  vi.unstubAllGlobals();
});

test('a text of wide letters is cut shorter than one of narrow ones', async () => {
  const { fitted } = await import('../../ui/browser/drawing/text-width.ts');
  expect(fitted('illicit', 28)).toBe('illicit');
  expect(fitted('illicit', 27)).toBe('ill\u2026');
  expect(fitted('wwwwwww', 60)).toBe('wwww\u2026');
  expect(measured(fitted('Sweet swwm mild', 70))).toBeLessThanOrEqual(70);
});

test('where not even three letters fit nothing is written', async () => {
  const { fitted } = await import('../../ui/browser/drawing/text-width.ts');
  expect(fitted('wwwwwww', 47)).toBe('');
});
