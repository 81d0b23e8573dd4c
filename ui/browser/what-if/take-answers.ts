// Takes up what was answered on an earlier visit, marked old where the plan has changed since. Fetched once a workbook stands
// (page/once-open.ts).

import { effect, untracked } from '@preact/signals';
import { keptAs } from '../keeping/state.ts';
import { openings } from '../store/workbook.ts';
import { type KeptAnswers, planNow, readAnswers } from './kept-answers.ts';
import { likelyKept } from './likely-kept.ts';
import { sought } from './sought.ts';

/** Follows which workbook is open from now on. */
export function followAnswers(): void {
  effect(() => {
    const [id, opening] = [keptAs.value, openings.value];
    untracked(() => {
      if (id === undefined) return;
      void readAnswers(id).then(
        (answers) => {
          // Another may have come on screen meanwhile, or something been asked.
          void take(answers, () => keptAs.peek() === id && openings.peek() === opening);
        },
        () => undefined,
      );
    });
  });
}

async function take({ drawn, sought: found }: KeptAnswers, isStill: () => boolean): Promise<void> {
  if ((drawn === undefined && found === undefined) || !isStill()) return;
  const now = planNow();
  if (found !== undefined) sought.value ??= { ...found, old: found.plan !== now };
  if (drawn === undefined) return;
  const { drawing } = await import('./draws-state.ts');
  if (!isStill() || drawing.peek().state !== 'none') return;
  const { plan } = drawn;
  const old = plan !== planNow();
  drawing.value = { state: 'drawn', answer: { ...drawn.answer, old }, plan };
  if (drawn.says !== undefined) likelyKept.value = { says: drawn.says, old, plan };
}
