// Branches kept in a workbook: made, named, changed, taken over, thrown away. A branch is a list of transactions on the
// workbook, so it follows the workbook wherever it did not change it itself. branch-work.ts opens them.

import { withWhatTheyRestOn } from '../document/branch-changes.ts';
import { lossesOf } from '../document/branch-losses.ts';
import type { Transaction } from '../document/transaction.ts';
import { ID } from '../schema/id.ts';
import type { CommandOf } from './command.ts';
import type { Draft } from './draft.ts';
import type { Refused } from './refusal.ts';

/** More would be hard to tell apart, and each is opened to be compared. */
export const MOST_BRANCHES = 20;

export function addBranch({ branch, name }: CommandOf<'add branch'>, draft: Draft): Refused {
  const { branches } = draft.document;
  if (!ID.test(branch) || branches.has(branch)) return { why: 'A branch needs an id that no other has.' };
  if (branches.size >= MOST_BRANCHES)
    return { why: `A workbook keeps ${MOST_BRANCHES} branches at most: throw one away first.` };
  return named(branch, name, [], draft);
}

export function renameBranch({ branch, name }: CommandOf<'rename branch'>, draft: Draft): Refused {
  const known = draft.document.branches.get(branch);
  return known === undefined ? NO_BRANCH : named(branch, name, known.changes, draft);
}

function named(branch: string, given: string, changes: readonly Transaction[], draft: Draft): Refused {
  const name = given.trim();
  if (name === '') return { why: 'A branch needs a name: write one.' };
  const taken = [...draft.document.branches].some(
    ([id, other]) => id !== branch && other.name.toLowerCase() === name.toLowerCase(),
  );
  if (taken) return { why: `There is a branch called “${name}” already: choose another name.` };
  draft.perform({ op: 'branch', branch, holds: { name, changes } });
  return undefined;
}

export function removeBranch({ branch }: CommandOf<'remove branch'>, draft: Draft): Refused {
  if (!draft.document.branches.has(branch)) return NO_BRANCH;
  draft.perform({ op: 'branch', branch, holds: null });
  return undefined;
}

export function changeBranch({ branch, changes }: CommandOf<'change branch'>, draft: Draft): Refused {
  const known = draft.document.branches.get(branch);
  if (known === undefined) return NO_BRANCH;
  draft.perform({ op: 'branch', branch, holds: { ...known, changes } });
  return undefined;
}

export function takeOver({ branch, changes: wanted }: CommandOf<'take over'>, draft: Draft): Refused {
  const known = draft.document.branches.get(branch);
  if (known === undefined) return NO_BRANCH;
  const there = new Set(known.changes.map(({ id }) => id));
  if (wanted?.some((id) => !there.has(id)) === true)
    return { why: `${known.name} has no such change any more: look at its list again.` };
  const taken = withWhatTheyRestOn(known.changes, wanted === undefined ? there : new Set(wanted));
  const lost = lossesOf(draft.document, taken);
  if (wanted !== undefined && taken.length > 0 && taken.every(({ id }) => lost.get(id) === 'all'))
    return {
      why: 'The plan has taken out since what this change is of: take that removal back first, or leave the change.',
    };
  for (const { operations } of taken) for (const operation of operations) draft.perform(operation);
  const left = known.changes.filter((change) => !taken.includes(change));
  draft.perform({ op: 'branch', branch, holds: wanted === undefined ? null : { ...known, changes: left } });
  return undefined;
}

const NO_BRANCH: Refused = { why: 'There is no such branch any more.' };
