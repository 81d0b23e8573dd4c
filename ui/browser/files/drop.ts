// A file that is dropped on the page: a workbook is opened beside the one on screen, anything else is read as rows for the sheet
// on screen.

import { sheetView } from '../../../engine/index.ts';
import { readImport } from '../importing/begin-import.ts';
import { tell } from '../store/notices.ts';
import { sheetOnScreen } from '../store/selection.ts';
import { isTyped } from '../store/sheets.ts';
import { workbookNow } from '../store/workbook.ts';
import { openFile } from './open.ts';

declare global {
  interface DataTransferItem {
    // Not in every browser, nor in the type library of the language.
    getAsFileSystemHandle?: () => Promise<FileSystemHandle | null>;
  }
}

/** Takes dropped files from now on. */
export function startDrop(): void {
  window.addEventListener('dragover', (event) => {
    const { dataTransfer } = event;
    if (dataTransfer?.types.includes('Files') !== true) return;
    event.preventDefault();
    dataTransfer.dropEffect = 'copy';
  });
  window.addEventListener('drop', (event) => {
    const items = [...(event.dataTransfer?.items ?? [])].filter(({ kind }) => kind === 'file');
    const [item] = items;
    if (item === undefined) return;
    event.preventDefault();
    if (items.length > 1) tell('Drop one file at a time.', 'refusal');
    else void take(item);
  });
}

async function take(item: DataTransferItem): Promise<void> {
  const file = item.getAsFile();
  const handle = item.getAsFileSystemHandle?.().catch(() => null);
  if (file === null) {
    tell('A folder can’t be opened: drop a file.', 'refusal');
    return;
  }
  if (/\.json$/i.test(file.name) || file.type === 'application/json') {
    const found = await handle;
    await openFile(file, found instanceof FileSystemFileHandle ? found : undefined);
    return;
  }
  const book = workbookNow();
  const sheet = book === undefined ? undefined : sheetView(book, sheetOnScreen.peek());
  if (sheet?.columns.some(isTyped) === true) await readImport(sheet.id, file);
  else {
    const name = sheet?.name ?? 'this sheet';
    tell(`${file.name} was not read: nothing is typed in ${name}. Go to the sheet its rows belong in.`, 'refusal');
  }
}
