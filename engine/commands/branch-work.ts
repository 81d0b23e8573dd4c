// Branches of a workbook opened: to be worked in, or to be looked at. Faces and comparing call it.

import { compose } from '../document/transaction.ts';
import { message } from './messages.ts';
import type { Workbook } from './workbook.ts';

/**
 * A workbook as it is in a branch, worked out; undefined where there is no such branch. Its steps can be taken back one by
 * one. What is done in it stays there: `keepWork` puts it into the branch.
 */
export function openBranch(workbook: Workbook, branch: string): Workbook | undefined {
  const known = workbook.document.branches.get(branch);
  if (known === undefined) return undefined;
  const opened = workbook.branch();
  for (const change of known.changes) opened.receive(change);
  return opened;
}

/** The same to be looked at only: worked out once, however many changes there are. */
export function lookIntoBranch(workbook: Workbook, branch: string): Workbook | undefined {
  const known = workbook.document.branches.get(branch);
  if (known === undefined) return undefined;
  const opened = workbook.branch();
  const [first, ...rest] = known.changes;
  if (first !== undefined) opened.receive(rest.reduce(compose, first));
  return opened;
}

/** Keeps in a branch what was done in the workbook that was opened of it. */
export function keepWork(workbook: Workbook, branch: string, opened: Workbook): void {
  const known = workbook.document.branches.get(branch);
  if (known === undefined) return;
  const changes = opened.history.done.map(({ done }) => done);
  workbook.do([{ command: 'change branch', branch, changes }], message('change branch', { branch: known.name }), {
    joined: true,
  });
}
