// Answers are old once the plan has changed since they were asked for, and no longer where what was done since is taken back.

import { whenIdle } from '../store/idle.ts';
import { followChanges } from '../store/workbook.ts';
import { planNow } from './kept-answers.ts';

/**
 * Follows the plan from now on and tells whether an answer is old; `asked` gives the plan that it was asked of, undefined where there
 * is no answer. To compare plans takes as long as writing one, so that is done in an idle moment, and only after steps back and forth.
 */
export function followAge(asked: () => number | undefined, tell: (old: boolean) => void): void {
  let waits = false;
  followChanges(({ transaction: { undoes, redoes } }) => {
    tell(true);
    if (waits || (undoes ?? redoes) === undefined || asked() === undefined) return;
    waits = true;
    whenIdle(() => {
      waits = false;
      const plan = asked();
      if (plan !== undefined) tell(plan !== planNow());
    });
  });
}
