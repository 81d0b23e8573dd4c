// Reads and checks a file on its way into a sheet, in a worker, so that a person sees first what it would do and can say how it is to
// be understood. Only taking it changes the workbook, as one step. Fetched when the first file comes (begin-import.ts).

import { type Command, loadGeneralUnits, message, sheetView } from '../../../engine/index.ts';
import { UNDO } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { workbookNow } from '../store/workbook.ts';
import { type PendingImport, pendingImport } from './import-state.ts';
import { takenInWords } from './import-words.ts';
import type { Asked, Choices, Preview, Told } from './messages.ts';
import { rememberColumns, rememberedColumns } from './remembered.ts';

let worker: Worker | undefined;
/** What the worker has handed over of what is to be done. */
let commands: Command[] = [];
let turn = 0;
/** What the file that is being taken was said to do. */
let promised: Preview | undefined;

/** Reads a picked file for a sheet and asks. */
export async function readImport(sheet: string, file: File): Promise<void> {
  const book = workbookNow();
  const view = book === undefined ? undefined : sheetView(book, sheet);
  if (book === undefined || view === undefined) return;
  const choices: Choices = { byHand: rememberedColumns(sheet) };
  pendingImport.value = {
    sheet,
    sheetName: view.name,
    file: file.name,
    choices,
    byHand: {},
    reading: undefined,
    state: { at: 'reading', done: 0, of: 0 },
  };
  const bytes = await file.arrayBuffer().then(
    (buffer) => new Uint8Array(buffer),
    () => undefined,
  );
  if (pendingImport.peek()?.file !== file.name) return;
  if (bytes === undefined) fail('The file could not be read from the disk.');
  else ask(begun(), { ask: 'read', turn: nextTurn(), bytes, data: book.data(), sheet, choices });
}

function nextTurn(): number {
  turn += 1;
  return turn;
}

function begun(): Worker {
  worker?.terminate();
  const fresh = new Worker(new URL('./import-worker.ts', import.meta.url), { type: 'module' });
  fresh.addEventListener('message', ({ data }: MessageEvent<Told>) => hear(data));
  fresh.addEventListener('error', (event) => {
    event.preventDefault();
    fail('The part that reads files could not be fetched, or it failed: try again.');
  });
  worker = fresh;
  return fresh;
}

function ask(of: Worker, asked: Asked): void {
  of.postMessage(asked, asked.ask === 'read' ? [asked.bytes.buffer] : []);
}

function update(change: Partial<PendingImport>): void {
  const pending = pendingImport.peek();
  if (pending !== undefined) pendingImport.value = { ...pending, ...change };
}

function fail(why: string): void {
  update({ state: { at: 'failed', why } });
}

function hear(told: Told): void {
  if ('turn' in told && told.turn !== turn) return;
  switch (told.told) {
    case 'progress':
      update({ state: { at: 'reading', done: told.done, of: told.of } });
      return;
    case 'preview':
      update({ reading: told.reading, state: { at: 'preview', preview: told.preview } });
      return;
    case 'failed':
      update({ reading: told.reading ?? pendingImport.peek()?.reading, state: { at: 'failed', why: told.why } });
      return;
    case 'commands':
      commands.push(...told.commands);
      return;
    case 'all commands':
      void take(told.generalUnits);
  }
}

/** Understands the file another way. */
export function chooseReading(choices: Choices): void {
  const pending = pendingImport.peek();
  if (pending === undefined || worker === undefined) return;
  const next = { ...pending.choices, ...choices };
  update({ choices: next, state: { at: 'reading', done: 0, of: pending.reading?.rows ?? 0 } });
  ask(worker, { ask: 'again', turn: nextTurn(), choices: next });
}

/** Puts a column of the file in a column of the sheet, or leaves it out. */
export function chooseColumn(header: string, column: string | null): void {
  const pending = pendingImport.peek();
  if (pending === undefined) return;
  const byHand = { ...pending.byHand, [header]: column };
  update({ byHand });
  chooseReading({ byHand: { ...pending.choices.byHand, ...byHand } });
}

/** Does what the waiting file asks for the rows that can be taken. */
export function takeImport(): void {
  const state = pendingImport.peek()?.state;
  if (worker === undefined || state?.at !== 'preview') return;
  promised = state.preview;
  update({ state: { at: 'taking', done: 0, of: 0 } });
  commands = [];
  ask(worker, { ask: 'take' });
}

async function take(generalUnits: boolean): Promise<void> {
  if (generalUnits) await loadGeneralUnits();
  const pending = pendingImport.peek();
  if (pending === undefined || promised === undefined) return;
  const did = takenInWords(promised);
  const { file, sheet, sheetName, byHand } = pending;
  const said = message('import file', { file, sheet: sheetName });
  const { takeInParts } = await import('./taking.ts');
  const taken = await takeInParts(commands, said, {
    goesOn: (done, of) => {
      if (pendingImport.peek()?.state.at !== 'taking') return false;
      update({ state: { at: 'taking', done, of } });
      return true;
    },
  });
  if (taken === 'left') return;
  if (taken !== 'taken') {
    fail(taken.why);
    return;
  }
  rememberColumns(sheet, byHand);
  leaveImport();
  tell(`Imported ${file} into ${sheetName}: ${did}`, 'done', UNDO);
}

/** Leaves the file; a check that is under way ends. */
export function leaveImport(): void {
  worker?.terminate();
  worker = undefined;
  commands = [];
  pendingImport.value = undefined;
}
