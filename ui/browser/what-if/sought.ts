// What a seek answered last, in a sentence, marked old once the plan changes; the part that seeks shows it when it is opened again.

import { effect, signal } from '@preact/signals';
import { openings } from '../store/workbook.ts';
import { followAge } from './old-answers.ts';

/** `plan` is the one that it was asked of. */
export const sought = signal<{ readonly says: string; readonly old: boolean; readonly plan: number } | undefined>(
  undefined,
);

followAge(
  () => sought.peek()?.plan,
  (old) => {
    const now = sought.peek();
    if (now !== undefined && now.old !== old) sought.value = { ...now, old };
  },
);

// What was asked of one workbook says nothing of another.
effect(() => {
  openings.value;
  sought.value = undefined;
});
