// What a visit begins with: the working copy of the last one, else the demo farm. A copy that can't be opened is said, set
// aside, and can be downloaded as it is.

import type { Workbook } from '../../../engine/index.ts';
import { upgradeNotice } from '../dialogs/upgrade-state.ts';
import { download } from '../files/download.ts';
import { freshDemo } from '../files/fresh.ts';
import { newerTemplate, readWorkbook } from '../files/read.ts';
import { tell } from '../store/notices.ts';
import { showWorkbook } from '../store/show.ts';
import { readOnly } from '../store/workbook.ts';
import { type KeptCopy, keepCopy, readCopy } from './copies.ts';
import { keeping } from './keeper.ts';

/** Opens the working copy of the last visit, or the demo farm on the first. */
export async function openAtStart(): Promise<void> {
  const copy = await readCopy('latest').catch(() => {
    tell(
      "The browser's storage can't be read, so an earlier working copy may be missing here. Open your last saved file.",
      'refusal',
    );
    return undefined;
  });
  if (copy === undefined) {
    showWorkbook(await freshDemo());
    return;
  }
  const opened = await readWorkbook(copy.text, copy.history);
  if (opened.ok) await resume(opened.workbook, copy, opened.notes);
  else await setAside(copy, opened.why);
}

async function resume(workbook: Workbook, copy: KeptCopy, notes: readonly string[]): Promise<void> {
  showWorkbook(workbook);
  keeping.value = { state: 'kept', at: copy.at };
  if (notes.length > 0) tell(notes.join(' '), 'refusal');
  else if (newerTemplate(workbook) !== undefined && readOnly.peek() === undefined) upgradeNotice();
  if (readOnly.peek() === undefined) await keepCopy('at start of visit', copy).catch(() => undefined);
}

async function setAside(copy: KeptCopy, why: string): Promise<void> {
  await keepCopy('unreadable', copy).catch(() => undefined);
  showWorkbook(await freshDemo());
  tell(
    `The working copy of your last visit can't be opened: ${why} It is set aside, and the demo farm is shown.`,
    'refusal',
    {
      label: 'Download it as it is',
      run: () => download(copy.text, 'dibble working copy.json', 'application/json'),
    },
  );
}
