// What drawn seasons and a seek answered, as it is written beside the workbook and read again.

import { expect, test } from 'vitest';
import { readText, written } from '../../ui/browser/what-if/kept-answers.ts';

test('answers are read as they were written; a text that is not as it was written is no answer', () => {
  const answers = { sought: { plan: 7, says: 'Bed length used: 40 ft.' } };
  const text = written(answers);
  expect(readText(text)).toEqual(answers);
  expect(readText(text.replace('40 ft', '90 ft'))).toEqual({});
  expect(readText(text.replace('answers 2', 'answers 3'))).toEqual({});
  expect(readText(text.slice(0, -4))).toEqual({});
});
