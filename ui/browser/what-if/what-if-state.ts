// What if: whether its dialog is open and at which part, and which branch is on screen in place of the plan. The acts on branches
// stand in branch-acts.ts, fetched with the dialog.

import { computed, signal } from '@preact/signals';
import type { Workbook } from '../../../engine/index.ts';
import { branchOnScreen, keptWorkbook, revision, showBranch } from '../store/workbook.ts';

export type Part = 'Branches' | 'Seek' | 'Table' | 'Curves' | 'Choose' | 'How likely';

/** The part on screen; undefined while the dialog is shut. */
export const whatIf = signal<Part | undefined>(undefined);

export function openWhatIf(): void {
  whatIf.value = 'Branches';
}

/** The plan itself, drawn again after each of its changes. */
export function plan(): Workbook | undefined {
  revision.value;
  return keptWorkbook();
}

/** The name of the branch on screen. */
export const branchName = computed(() => {
  const id = branchOnScreen.value;
  return id === undefined ? undefined : plan()?.document.branches.get(id)?.name;
});

/** Leaves the branch on screen as it is. */
export function toThePlan(): void {
  if (branchOnScreen.peek() !== undefined) showBranch(undefined);
}
