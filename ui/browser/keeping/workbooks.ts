// The workbooks kept in this browser, side by side: begun, listed, and what is noted of them. What else is done with one that is
// not on screen stands in laying.ts.

import { START, sumOf } from './entries.ts';
import type { JournalRecord, OwnFile, SnapshotRecord, WorkbookRecord } from './records.ts';
import { transact } from './storage.ts';

export interface Begun {
  readonly id: string;
  readonly title: string;
  /** The workbook file's text. */
  readonly text: string;
  /** The changes that are in the text, for the history. */
  readonly entries?: readonly JournalRecord[];
  readonly file?: OwnFile;
}

/** Keeps a workbook from now on. */
export function beginWorkbook({ id, title, text, entries = [], file }: Begun): Promise<void> {
  const at = Date.now();
  const record: WorkbookRecord = {
    id,
    title,
    begun: at,
    worked: at,
    lying: 'at hand',
    since: at,
    ...(file === undefined ? {} : { file }),
  };
  const place = entries.at(-1) ?? START;
  const snapshot = snapshotOf(id, text, { seq: place.seq, sum: place.sum });
  return transact(['workbooks', 'snapshots', 'journal', 'marks'], 'readwrite', async (transaction) => {
    await Promise.all([
      transaction.objectStore('workbooks').add(record),
      transaction.objectStore('snapshots').add(snapshot),
      transaction.objectStore('marks').put({ name: 'last opened', value: id }),
      ...entries.map((entry) => transaction.objectStore('journal').add(entry)),
    ]);
  });
}

export function snapshotOf(workbook: string, text: string, place: { seq: number; sum: number }): SnapshotRecord {
  return { workbook, through: place.seq, sum: place.sum, text, check: sumOf(text), at: Date.now() };
}

/** All of them, the one worked in last first. */
export async function workbooksHere(): Promise<readonly WorkbookRecord[]> {
  const all = await transact(['workbooks'], 'readonly', (transaction) => transaction.objectStore('workbooks').getAll());
  return all.sort((a, b) => b.worked - a.worked);
}

export function workbookRecord(id: string): Promise<WorkbookRecord | undefined> {
  return transact(['workbooks'], 'readonly', (transaction) => transaction.objectStore('workbooks').get(id));
}

/** Whether a workbook is kept as a whole. */
export async function isHere(id: string): Promise<boolean> {
  const key = await transact(['snapshots'], 'readonly', (transaction) =>
    transaction.objectStore('snapshots').getKey(id),
  );
  return key !== undefined;
}

/** The mark that holds what drawn seasons and a seek answered of a workbook. */
export function answersOf(id: string): string {
  return `answers ${id}`;
}

/** The mark that says that the copies of the first Dibble were taken over. */
export const TAKEN_OVER = 'first copies';

export async function wereTakenOver(): Promise<boolean> {
  const mark = await transact(['marks'], 'readonly', (transaction) => transaction.objectStore('marks').get(TAKEN_OVER));
  return mark !== undefined;
}

/** The one that was opened last and is still at hand; else the one worked in last. */
export function lastOpened(): Promise<string | undefined> {
  return transact(['workbooks', 'marks'], 'readonly', async (transaction) => {
    const mark = await transaction.objectStore('marks').get('last opened');
    const all = await transaction.objectStore('workbooks').getAll();
    const at = all.filter(({ lying }) => lying === 'at hand').sort((a, b) => b.worked - a.worked);
    return (at.find(({ id }) => id === mark?.value) ?? at[0])?.id;
  });
}

/** The one at hand that came from, or was saved to, a file of this name with just this content. */
export async function workbookWithFile(name: string, sum: number): Promise<WorkbookRecord | undefined> {
  const all = await workbooksHere();
  return all.find(({ lying, file }) => lying !== 'taken out' && file?.name === name && file.sum === sum);
}

/** Notes something about a workbook. */
export function noteWorkbook(id: string, changed: Partial<WorkbookRecord>): Promise<void> {
  return transact(['workbooks'], 'readwrite', async (transaction) => {
    const store = transaction.objectStore('workbooks');
    const found = await store.get(id);
    if (found !== undefined) await store.put({ ...found, ...changed, id });
  });
}

/** Notes that a workbook was opened here; gives what was noted of it before. */
export function noteOpened(id: string): Promise<WorkbookRecord | undefined> {
  return transact(['workbooks', 'marks'], 'readwrite', async (transaction) => {
    const workbooks = transaction.objectStore('workbooks');
    const found = await workbooks.get(id);
    await transaction.objectStore('marks').put({ name: 'last opened', value: id });
    if (found !== undefined) await workbooks.put({ ...found, worked: Date.now() });
    return found;
  });
}
