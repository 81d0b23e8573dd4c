// Which workbook the page shows and how it gets there: the working copy at the start of a visit, else the demo farm; a file
// that a person opens; a fresh season. What can't be opened is said in a sentence and leaves everything as it is.

import { demoFarm } from '../../../demo/farm.ts';
import {
  civilDay,
  createWorkbook,
  readWorkbookFile,
  type WorkbookDeclaration,
  writeWorkbookFile,
} from '../../../engine/index.ts';
import { seasonTemplate } from '../../../sheets-templates/index.ts';
import { announce, tell } from '../messages.ts';
import { readOnly, showWorkbook, workbook, workbookNow } from '../state.ts';
import { keeping } from './keeper.ts';
import { keepCopy, readCopy } from './store.ts';

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
    show(demoFarm);
    return;
  }
  const why = tryToShow(copy.text);
  if (why === undefined) {
    keeping.value = { state: 'kept', at: copy.at };
    if (readOnly.peek() === undefined) await keepCopy('at start of visit', copy).catch(() => undefined);
    return;
  }
  await keepCopy('unreadable', copy).catch(() => undefined);
  show(demoFarm);
  tell(
    `The working copy of your last visit can't be opened: ${why} It is set aside, and the demo farm is shown.`,
    'refusal',
    {
      label: 'Download it as it is',
      run: () => download(copy.text, 'dibble working copy.json', 'application/json'),
    },
  );
}

/** Opens a file that a person picked. A file that can't be read changes nothing. */
export async function openFile(file: File): Promise<void> {
  const text = await file.text().catch(() => undefined);
  const why = text === undefined ? 'It could not be read from the disk.' : tryToShow(text);
  if (why !== undefined) tell(`${file.name} was not opened. ${why} The workbook on screen is as it was.`, 'refusal');
  else tellOpened(file.name);
}

/** The demo farm as it comes. */
export function openDemo(): void {
  replaceWith(demoFarm);
}

/** A fresh season, empty of the farm's own rows. */
export function openFreshSeason(season: number): void {
  replaceWith(seasonTemplate({ title: `Season ${season}`, season, today: today() }));
}

/** Writes the workbook to a file the browser downloads. */
export function saveFile(): void {
  const book = workbook();
  const name = `${fileName(book.title)}.json`;
  download(writeWorkbookFile(book.declaration()), name, 'application/json');
  tell(`Saved as ${name}.`);
}

/** Hands a text to the browser to be downloaded under this name. */
export function download(text: string, name: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** A title as a file's name: without what file systems don't take. */
export function fileName(title: string): string {
  const plain = title
    .normalize('NFC')
    .replace(/[\\/:*?"<>|]+/g, ' ')
    .trim();
  return plain === '' ? 'workbook' : plain;
}

/** Today as the civil day of the computer's own calendar. */
export function today(): number {
  const now = new Date();
  return civilDay(now.getFullYear(), now.getMonth() + 1, now.getDate());
}

/** Shows the workbook of a file's text; the sentence that says why not. */
function tryToShow(text: string): string | undefined {
  const read = readWorkbookFile(text);
  return read.ok ? show(read.declaration) : read.why;
}

function show(declaration: WorkbookDeclaration): string | undefined {
  // A workbook's day never goes back: the demo farm plans from its own January until that is past.
  const made = createWorkbook({ ...declaration, today: Math.max(declaration.today, today()) });
  if (!made.ok) return made.problems[0] ?? 'It holds no workbook.';
  showWorkbook(made.workbook);
  return undefined;
}

/** Another workbook in place of this one, with the way back. */
function replaceWith(declaration: WorkbookDeclaration): void {
  if (readOnly.peek() !== undefined) {
    tell(readOnly.peek() ?? '', 'refusal');
    return;
  }
  const before = workbookNow();
  const why = show(declaration);
  if (why !== undefined) {
    tell(why, 'refusal');
    return;
  }
  tellOpened(declaration.title, before);
}

function tellOpened(name: string, before?: ReturnType<typeof workbookNow>): void {
  announce(`Opened ${name}.`);
  const back =
    before === undefined ? undefined : { label: 'Go back to the one before', run: () => showWorkbook(before) };
  tell(`Opened ${name}.`, 'done', back);
}
