// The README quotes the checks as they are.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { accuracyExcerpt } from './excerpt.ts';

test('the accuracy section of the README is what the checks say', () => {
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  expect(readme).toContain(accuracyExcerpt());
});
