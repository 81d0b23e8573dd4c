// Another workbook in place of the one on screen: a file that a person picks, a fresh season, the demo farm. What can't be
// opened is said in a sentence and leaves everything as it is; the way back is offered.

import { settings, type Workbook } from '../../../engine/index.ts';
import { offerUpgrade } from '../dialogs/upgrade-state.ts';
import { announce, tell } from '../store/notices.ts';
import { showWorkbook } from '../store/show.ts';
import { readOnly, workbookNow } from '../store/workbook.ts';
import { freshDemo, freshSeason } from './fresh.ts';
import { readWorkbook } from './read.ts';

/** Opens a file that a person picked. A file that can't be read changes nothing. */
export async function openFile(file: File): Promise<void> {
  const text = await file.text().catch(() => undefined);
  const opened =
    text === undefined
      ? ({ ok: false, why: 'It could not be read from the disk.' } as const)
      : await readWorkbook(text);
  if (!opened.ok) {
    tell(`${file.name} was not opened. ${opened.why} The workbook on screen is as it was.`, 'refusal');
    return;
  }
  replaceWith(opened.workbook, file.name, opened.notes);
  offerUpgrade();
}

/** The demo farm as it comes. */
export async function openDemo(): Promise<void> {
  const workbook = await freshDemo();
  replaceWith(workbook, settings(workbook).title);
}

/** A fresh season, empty of the farm's own rows. */
export async function openFreshSeason(season: number): Promise<void> {
  const workbook = await freshSeason(season);
  replaceWith(workbook, settings(workbook).title);
}

/** Another workbook in place of this one, with the way back. */
function replaceWith(workbook: Workbook, name: string, notes: readonly string[] = []): void {
  const why = readOnly.peek();
  if (why !== undefined) {
    tell(why, 'refusal');
    return;
  }
  const before = workbookNow();
  showWorkbook(workbook);
  const back = before === undefined ? [] : [{ label: 'Go back to the one before', run: () => showWorkbook(before) }];
  announce(`Opened ${name}.`);
  tell([`Opened ${name}.`, ...notes].join(' '), notes.length === 0 ? 'done' : 'refusal', ...back);
}
