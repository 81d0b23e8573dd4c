// Carries a command out, where it can be: keys, menus and buttons end here.

import { announce } from '../store/notices.ts';
import type { PageCommand } from './command.ts';
import type { Situation } from './situation.ts';

/** Why a command can't be done just now; undefined where it can. */
export function refusalOf(command: PageCommand, now: Situation): string | undefined {
  return command.refusal?.(now);
}

/** Does it, or says why not. */
export function carryOut(command: PageCommand, now: Situation, clipboard?: DataTransfer): void {
  const why = refusalOf(command, now);
  if (why === undefined) command.run(now, clipboard);
  else announce(why);
}
