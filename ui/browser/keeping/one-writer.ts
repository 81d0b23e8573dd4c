// One tab writes the working copy at a time. A second tab shows it and changes nothing until the first is closed; then it
// takes the latest copy over by itself. Uses the browser's locks; where there are none, the tab counts as the only one.

import { tell } from '../store/notices.ts';
import { readOnly } from '../store/workbook.ts';

const LOCK = 'dibble: working copy';
const ELSEWHERE =
  'This workbook is open in another tab, so nothing can be changed here. Close the other tab, and this one takes over.';

/** Becomes the writer, or says why not and calls `onTurn` once it has become it. Resolves as soon as it is known which. */
export async function becomeWriter(onTurn: () => Promise<void>): Promise<void> {
  if (!('locks' in navigator)) return;
  const free = await new Promise<boolean>((resolve) => {
    void navigator.locks.request(LOCK, { ifAvailable: true }, (lock) => {
      resolve(lock !== null);
      return lock === null ? undefined : untilPageCloses();
    });
  });
  if (free) return;
  readOnly.value = ELSEWHERE;
  void navigator.locks.request(LOCK, async () => {
    await onTurn();
    readOnly.value = undefined;
    tell('The other tab is closed. The workbook can be changed here now.');
    return untilPageCloses();
  });
}

/** The lock is given back by the browser when the page goes. */
function untilPageCloses(): Promise<never> {
  return new Promise(() => undefined);
}
