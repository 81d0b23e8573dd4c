// The acts on branches: made, worked in, taken over, thrown away. Everything done to the plan is a step that undo takes back. The
// dialog of what if calls it.

import { lostChanges, message } from '../../../engine/index.ts';
import { branchId } from '../../branch-ids.ts';
import { withoutLost } from '../../branch-words.ts';
import { keepVersionNow } from '../keeping/keep-version.ts';
import { change, UNDO } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { keptWorkbook, otherTab, showBranch } from '../store/workbook.ts';
import { toThePlan, whatIf } from './what-if-state.ts';

/** Makes a branch and puts it on screen; gives the sentence of a refusal. */
export function makeBranch(name: string): string | undefined {
  const base = keptWorkbook();
  if (base === undefined) return 'No workbook is open.';
  const why = refusedHere();
  if (why !== undefined) return why;
  toThePlan();
  const branch = branchId(base);
  const done = change([{ command: 'add branch', branch, name }], message('add branch', { branch: name.trim() }), {
    quietly: true,
  });
  if (done.refused) return done.why;
  workIn(branch);
  return undefined;
}

/** Another tab keeps the order of changes: branches are worked in there. */
function refusedHere(): string | undefined {
  return otherTab.peek() === undefined
    ? undefined
    : 'This workbook is open in another tab too: work in branches there, or close that tab first.';
}

export function workIn(branch: string): void {
  const why = refusedHere();
  if (why !== undefined) {
    tell(why, 'refusal');
    return;
  }
  showBranch(branch);
  whatIf.value = undefined;
}

/** Does changes of a branch to the plan; all of them where none are named, and the branch goes. */
export function takeOver(branch: string, name: string, changes?: readonly string[]): void {
  toThePlan();
  void keepVersionNow('branch');
  const base = keptWorkbook();
  const all = base?.document.branches.get(branch)?.changes ?? [];
  const lost = base === undefined ? 0 : lostChanges(base, all).size;
  const said = message(changes === undefined ? 'keep branch' : 'take over', { branch: name });
  const done = change([{ command: 'take over', branch, changes }], said);
  if (done.refused) return;
  tell(
    changes === undefined ? `The plan is as in ${name} now.${withoutLost(lost)}` : `Taken over from ${name}.`,
    'done',
    UNDO,
  );
}

export function throwAway(branch: string, name: string): void {
  toThePlan();
  const done = change([{ command: 'remove branch', branch }], message('remove branch', { branch: name }));
  if (!done.refused) tell(`${name} is thrown away.`, 'done', UNDO);
}
