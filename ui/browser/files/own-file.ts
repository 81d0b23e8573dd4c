// The workbook's own file: saved back to where it came from where the browser can, to a file that the person picks, or as a
// download. Never over a file that somebody else has changed since, unless the person says so.

import { settings, writeWorkbookFile } from '../../../engine/index.ts';
import { contentSum } from '../keeping/entries.ts';
import { noteFile } from '../keeping/keeper.ts';
import { ownFile } from '../keeping/state.ts';
import { tell } from '../store/notices.ts';
import { keptWorkbook } from '../store/workbook.ts';
import { download, fileName } from './download.ts';
import { mayWrite, modified, pickToSave, writeTo } from './file-access.ts';

/** Saves the workbook to its file; asks where to where it has none. */
export async function saveWorkbook(): Promise<void> {
  const own = ownFile.peek();
  if (own?.handle === undefined) {
    await saveWorkbookAs();
    return;
  }
  const { handle } = own;
  try {
    if (!(await mayWrite(handle))) {
      tell(`The browser was told not to let Dibble write to ${handle.name}.`, 'refusal', SAVE_AS);
      return;
    }
    if (own.modified !== undefined && (await modified(handle)) !== own.modified) {
      tell(`${handle.name} was changed by somebody else since you saved it last. It is as it was.`, 'refusal', {
        label: 'Save over it',
        run: () => void saveTo(handle),
      });
      return;
    }
  } catch {
    tell(`${handle.name} is not where it was, or can't be reached.`, 'refusal', SAVE_AS);
    return;
  }
  await saveTo(handle);
}

/** Saves the workbook to a file that the person picks, which is its own from then on. */
export async function saveWorkbookAs(): Promise<void> {
  const book = keptWorkbook();
  if (book === undefined) return;
  const name = `${fileName(settings(book).title)}.json`;
  const handle = await pickToSave(name);
  if (handle === undefined) return;
  if (handle !== 'none') {
    await saveTo(handle);
    return;
  }
  download(writeWorkbookFile(book.data()), name, 'application/json');
  noteFile({ name, at: Date.now(), sum: contentSum(book) });
  tell(`Saved as ${name}.`);
}

const SAVE_AS = { label: 'Save it as another file', run: () => void saveWorkbookAs() };

async function saveTo(handle: FileSystemFileHandle): Promise<void> {
  const book = keptWorkbook();
  if (book === undefined) return;
  const sum = contentSum(book);
  try {
    const at = await writeTo(handle, writeWorkbookFile(book.data()));
    if (keptWorkbook() === book) noteFile({ name: handle.name, at: Date.now(), sum, modified: at, handle });
    tell(`Saved to ${handle.name}.`);
  } catch (fault) {
    const why = fault instanceof Error ? fault.message : String(fault);
    tell(`${handle.name} was not written, and is as it was. ${why}`, 'refusal', SAVE_AS);
  }
}
