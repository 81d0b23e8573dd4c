// What the pages for people point to is there.

import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '..');
const PAGES = ['README.md', 'DEVELOPERS.md', 'SECURITY.md', 'tests/faults/README.md'];

/** Where the links and pictures of a page lead to, but for addresses of the web and places within the page. */
function targetsOf(page: string): readonly string[] {
  const text = readFileSync(join(ROOT, page), 'utf8');
  const linked = [...text.matchAll(/\]\(([^)\s]+)\)/g), ...text.matchAll(/ src="([^"]+)"/g)];
  return linked.flatMap(([, to = '']) => (/^(?:[a-z]+:|#)/.test(to) ? [] : [to.replace(/#.*$/, '')]));
}

test.each(PAGES)('every link of %s leads to a file', (page) => {
  const missing = targetsOf(page).filter((to) => !existsSync(join(ROOT, dirname(page), to)));
  expect(missing).toEqual([]);
});

test('the README has links at all', () => {
  expect(targetsOf('README.md').length).toBeGreaterThan(10);
});
