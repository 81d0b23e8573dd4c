// What a seek answered last, in a sentence, marked old once the plan changes; the part that seeks shows it when it is opened again.

import { effect, signal } from '@preact/signals';
import { followChanges, openings } from '../store/workbook.ts';

export const sought = signal<{ readonly says: string; readonly old: boolean } | undefined>(undefined);

followChanges(() => {
  const now = sought.peek();
  if (now?.old === false) sought.value = { ...now, old: true };
});

// What was asked of one workbook says nothing of another.
effect(() => {
  openings.value;
  sought.value = undefined;
});
