// The README quotes the checks as they are.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { comparisonTable } from './comparison.ts';
import { accuracyExcerpt } from './excerpt.ts';

test('the accuracy section of the README is what the checks say', () => {
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  expect(readme).toContain(accuracyExcerpt());
});

test('the README says what the workbook says beside what was measured, where it is off too', () => {
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  expect(readme).toContain(comparisonTable());
});
