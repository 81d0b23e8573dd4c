// The workbooks kept in this browser, side by side: begun, listed, copied, put by, taken out with a way back, and forgotten
// when that has passed.

import { message, type Step } from '../../../engine/index.ts';
import { newId, world } from '../files/world.ts';
import { entryAfter, START, sumOf } from './entries.ts';
import type { JournalRecord, Lying, OwnFile, SnapshotRecord, WorkbookRecord } from './records.ts';
import { journalRange, transact } from './storage.ts';

/** What was taken out is kept so long. */
export const WAY_BACK = 30 * 86_400_000;

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

export function layWorkbook(id: string, lying: Lying): Promise<void> {
  return noteWorkbook(id, { lying, since: Date.now() });
}

/** A copy beside a workbook, with its history; gives its id. */
export function copyWorkbook(id: string, title: string): Promise<string> {
  const copy = newId();
  return transact(['workbooks', 'snapshots', 'journal'], 'readwrite', async (transaction) => {
    const [workbooks, snapshots, journal] = [
      transaction.objectStore('workbooks'),
      transaction.objectStore('snapshots'),
      transaction.objectStore('journal'),
    ];
    const [record, snapshot, entries] = await Promise.all([
      workbooks.get(id),
      snapshots.get(id),
      journal.getAll(journalRange(id)),
    ]);
    if (record === undefined || snapshot === undefined) return '';
    const last = entries.at(-1) ?? { seq: snapshot.through, sum: snapshot.sum };
    const renamed = entryAfter(last, copy, titleStep(record.title, title));
    const at = Date.now();
    const { file: _, reminded: __, ...rest } = record;
    await Promise.all([
      workbooks.add({ ...rest, id: copy, title, begun: at, worked: at, lying: 'at hand', since: at }),
      snapshots.add({ ...snapshot, workbook: copy }),
      ...entries.map((entry) => journal.add({ ...entry, workbook: copy })),
      journal.add(renamed),
    ]);
    return copy;
  });
}

/** Another title for a workbook that is open nowhere. */
export function retitleWorkbook(id: string, title: string): Promise<void> {
  return transact(['workbooks', 'snapshots', 'journal'], 'readwrite', async (transaction) => {
    const [workbooks, journal] = [transaction.objectStore('workbooks'), transaction.objectStore('journal')];
    const [record, snapshot, keys] = await Promise.all([
      workbooks.get(id),
      transaction.objectStore('snapshots').get(id),
      journal.getAllKeys(journalRange(id)),
    ]);
    if (record === undefined || snapshot === undefined) return;
    const lastKey = keys.at(-1);
    const entry = lastKey === undefined ? undefined : await journal.get(lastKey);
    const last = entry ?? { seq: snapshot.through, sum: snapshot.sum };
    await Promise.all([
      journal.add(entryAfter(last, id, titleStep(record.title, title))),
      workbooks.put({ ...record, title }),
    ]);
  });
}

/** The step that changes a title, for a workbook that is not open. */
export function titleStep(before: string, title: string): Step {
  const { actor, now } = world();
  const done = {
    id: newId(),
    actor,
    time: now(),
    source: 'user',
    message: message('set title', { title }),
    operations: [{ op: 'title', title }],
  } as const;
  return { done, inverse: [{ op: 'title', title: before }] };
}

/** Forgets all of a workbook. */
export function forgetWorkbook(id: string): Promise<void> {
  const stores = ['workbooks', 'snapshots', 'journal', 'versions', 'texts', 'hands', 'marks'] as const;
  return transact([...stores], 'readwrite', async (transaction) => {
    const versions = transaction.objectStore('versions');
    const keys = await versions.index('workbook').getAllKeys(id);
    await Promise.all([
      transaction.objectStore('workbooks').delete(id),
      transaction.objectStore('snapshots').delete(id),
      transaction.objectStore('hands').delete(id),
      transaction.objectStore('marks').delete(answersOf(id)),
      transaction.objectStore('journal').delete(journalRange(id)),
      ...keys.flatMap((key) => [versions.delete(key), transaction.objectStore('texts').delete(key)]),
    ]);
  });
}

/** Forgets what was taken out so long ago that the way back has passed. */
export async function forgetPassed(): Promise<void> {
  const now = Date.now();
  const all = await workbooksHere();
  for (const { id, lying, since } of all) {
    if (lying === 'taken out' && now - since > WAY_BACK) await forgetWorkbook(id);
  }
}
