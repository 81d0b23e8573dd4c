// What sheets and columns of one's own may be called: names stand in formulas, on one line, and are told apart by what they look like.

import { expect, test } from 'vitest';
import { sheetNamed } from '../../engine/index.ts';
import { openFarm } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };
/** é as one letter, and as e with its accent. */
const [COMPOSED, DECOMPOSED] = ['\u00e9t\u00e9', 'e\u0301te\u0301'];

test('two that look alike are one name', () => {
  const workbook = openFarm();
  const sheet = (name: string) => ({ command: 'add sheet', name, about: '', rows: { from: 'entry' } }) as const;
  expect(workbook.do([sheet(COMPOSED)], MESSAGE).refused).toBe(false);
  expect(workbook.do([sheet(DECOMPOSED)], MESSAGE).refused).toBe(true);
  const id = sheetNamed(workbook, COMPOSED)?.id ?? '';
  const column = (name: string) => ({ command: 'add column', sheet: id, name, type: { type: 'text' } }) as const;
  expect(workbook.do([column(DECOMPOSED)], MESSAGE).refused).toBe(false);
  expect(workbook.do([column(COMPOSED)], MESSAGE).refused).toBe(true);
  expect(workbook.do([column('ete')], MESSAGE).refused).toBe(false);
});

test('a name has one line', () => {
  const workbook = openFarm();
  const rows = { from: 'entry' } as const;
  expect(workbook.do([{ command: 'add sheet', name: 'Two\nlines', about: '', rows }], MESSAGE).refused).toBe(true);
  const done = workbook.do(
    [{ command: 'add column', sheet: 'beds', name: 'Two\nlines', type: { type: 'text' } }],
    MESSAGE,
  );
  expect(done).toMatchObject({ refused: true, why: expect.stringContaining('one line') });
});
