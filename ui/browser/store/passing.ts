// What was said of a thing goes with it: a refusal, and the way back from a step, have had their time when another step is done
// or another sheet comes on screen.

import { effect } from '@preact/signals';
import { dismissPast } from './notices.ts';
import { sheetOnScreen } from './selection.ts';
import { followChanges } from './workbook.ts';

/** Follows steps and sheets from now on. */
export function startPassing(): void {
  followChanges(dismissPast);
  effect(() => {
    sheetOnScreen.value;
    dismissPast();
  });
}
