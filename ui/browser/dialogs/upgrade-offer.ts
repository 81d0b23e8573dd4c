// The way to today's sheets, which opening a file and the menu of the workbook show: what they would change is worked out, and
// taken, by a part that is fetched with it (upgrade-acts.ts).

import { newerTemplate } from '../files/read.ts';
import { tell } from '../store/notices.ts';
import { workbookNow } from '../store/workbook.ts';

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
