// What the page fetches before it can be used stays small, and what is large and seldom wanted is not in it.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, inject, test } from 'vitest';
import { measureFirstLoad } from './first-load.ts';

const MOST = 380 * 1024;

test('the first load is at most 380 KiB of JavaScript, gzipped', () => {
  const { files, bytes } = measureFirstLoad(inject('workbookFolder'));
  // The page, the engine and the sheets at least: the walk along the imports found them.
  expect(files.length).toBeGreaterThan(2);
  expect(bytes).toBeGreaterThan(100 * 1024);
  expect(bytes).toBeLessThanOrEqual(MOST);
});

test('neither the list of general units nor the peer engine is in it', () => {
  const folder = inject('workbookFolder');
  const text = measureFirstLoad(folder)
    .files.map((file) => readFileSync(join(folder, file), 'utf8'))
    .join('\n');
  expect(text).not.toContain('isValuelessUnit');
  expect(text).not.toContain('HyperFormula');
});
