// An answer is old while the plan is another than the one it was asked of, and no longer once that is back.

import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { type Command, message, rowId, rows } from '../../engine/index.ts';
import { takeWorkbook } from '../../ui/browser/store/workbook.ts';
import { planNow } from '../../ui/browser/what-if/kept-answers.ts';
import { followAge } from '../../ui/browser/what-if/old-answers.ts';
import { openFarm } from '../document/farm.ts';

beforeAll(() => {
  vi.stubGlobal('requestAnimationFrame', (draw: () => void) => setTimeout(draw));
});
afterAll(() => vi.unstubAllGlobals());

test('an answer is old as soon as the plan changes, and what is undone makes it young again', async () => {
  const workbook = openFarm();
  takeWorkbook(workbook);
  let plan: number | undefined;
  let old = false;
  followAge(
    () => plan,
    (told) => {
      old = told;
    },
  );
  const edit = (entry: string): void => {
    const row = rowId(workbook, 'plantings', rows(workbook, 'plantings')[0] ?? 0);
    const command: Command = { command: 'set cell', sheet: 'plantings', row, column: 'length', entry };
    expect(workbook.do([command], message('type cell')).refused).toBe(false);
  };
  /** Once the page was idle. */
  const isOld = async (): Promise<boolean> => {
    await new Promise((go) => setTimeout(go, 20));
    return old;
  };
  edit('11 ft');
  plan = planNow();
  edit('12 ft');
  expect([old, await isOld()]).toEqual([true, true]);
  workbook.undo();
  expect(await isOld()).toBe(false);
  // Before the plan that was asked about there is another, from which a step forward leads back.
  workbook.undo();
  expect(await isOld()).toBe(true);
  workbook.redo();
  expect(await isOld()).toBe(false);
  workbook.redo();
  expect(await isOld()).toBe(true);
  // Of two changes the second alone is taken back.
  edit('13 ft');
  workbook.undo();
  expect(await isOld()).toBe(true);
  workbook.undo();
  expect(await isOld()).toBe(false);
});
