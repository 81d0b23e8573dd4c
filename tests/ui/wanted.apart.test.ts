// What is fetched when it is first asked for, with the functions of former templates left out of the start as the page's build does.

import { beforeEach, expect, test, vi } from 'vitest';

vi.mock('../../engine/functions/former-at-hand.ts', () => import('../../engine/functions/former-later.ts'));

beforeEach(() => {
  vi.resetModules();
});

/** Tries a formula that can't be read without a unit in general use: the function in it is asked for only once that is here. */
async function trial() {
  const { message, tryFormula } = await import('../../engine/index.ts');
  const { smallBook } = await import('../scratch/paper.ts');
  const { workbook } = smallBook();
  const ground = { sheet: 'plantings', name: 'Ground', formula: '[Length] * [In-row spacing]' };
  expect(workbook.do([{ command: 'add formula', ...ground }], message('trial'))).toMatchObject({ refused: false });
  const columns = 'Plantings[Sown]; Plantings[Sown]; Plantings[Ground]';
  const formula = `AREAONDAY(DATE(2027; 4; 2); ${columns}) / (1 rod * 1 rod)`;
  return () => tryFormula(workbook, 'plantings', undefined, formula);
}

test('what a unit that came lets a formula ask for is fetched too', async () => {
  const attempt = await trial();
  const { withWanted } = await import('../../ui/wanted.ts');
  expect(attempt()).toMatchObject({ ok: false, diagnostic: { why: expect.stringContaining('rod') } });
  expect(await withWanted(attempt)).toMatchObject({ ok: true });
});

test('and also where what came of it is handed on', async () => {
  const attempt = await trial();
  const { withFetched } = await import('../../ui/browser/store/wanted.ts');
  const answer = await new Promise((then) => {
    withFetched(attempt, ({ ok }) => !ok, then);
  });
  expect(answer).toMatchObject({ ok: true });
});
