// Joined texts hold numbers in full: what is read back is what was written.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readNumber } from '../../engine/functions/standard/reading.ts';
import { numeral, plainText, tooLongText } from '../../engine/values/plain-text.ts';
import { equalNumbers } from '../../engine/values/tolerance.ts';
import { DATE, TEXT, YESNO } from '../../engine/values/type.ts';

test('every number reads back, whole ones to the last digit', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (x) => {
      expect(equalNumbers(readNumber(numeral(x)) ?? Number.NaN, x)).toBe(true);
    }),
  );
  fc.assert(
    fc.property(fc.maxSafeInteger(), (x) => {
      expect(numeral(x)).toBe(String(x));
      expect(numeral(x)).toMatch(/^-?\d+$/);
    }),
  );
});

test('equal numbers make equal texts where they differ in dust alone', () => {
  expect(numeral(0.1 + 0.2)).toBe(numeral(0.3));
  expect(numeral(3 * 0.1 * 10)).toBe('3');
  expect(numeral(-0)).toBe('0');
});

test('other values read as on screen, a blank as nothing', () => {
  expect([plainText(null, TEXT, 'EUR'), plainText('a', TEXT, 'EUR'), plainText(true, YESNO, 'EUR')]).toEqual([
    '',
    'a',
    'yes',
  ]);
  expect(plainText(20_700, DATE, 'EUR')).toBe('4 Sep 2026');
  expect(tooLongText('join less').why).toBe('The text would be longer than 32767 letters: join less.');
});
