// What bringing the sheets up to date would change, while it waits for a yes. Opening a file and the menu of the workbook bring it
// up; working it out, and taking it, is fetched with it (upgrade-acts.ts). The dialog draws it.

import { signal } from '@preact/signals';
import type { Upgrade } from '../../../engine/index.ts';
import { newerTemplate } from '../files/read.ts';
import { tell } from '../store/notices.ts';
import { workbookNow } from '../store/workbook.ts';

/** The upgrade that waits for a yes; undefined where none does. */
export const pendingUpgrade = signal<Upgrade | undefined>(undefined);

/** Shows what today's sheets would change, where the workbook's are earlier ones. */
export async function offerUpgrade(): Promise<void> {
  const book = workbookNow();
  if (book === undefined || newerTemplate(book) === undefined) return;
  try {
    const { showUpgrade } = await import('./upgrade-acts.ts');
    showUpgrade();
  } catch {
    tell('What today’s sheets would change could not be fetched: try again.', 'refusal');
  }
}

/** Says that there are newer sheets, with the way to see what they would change. */
export function upgradeNotice(): void {
  tell('The sheets of this workbook are those of an earlier Dibble, and they work on as they are.', 'done', {
    label: 'See what today’s would change',
    run: () => void offerUpgrade(),
  });
}
