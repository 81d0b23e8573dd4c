// What is done with a kept workbook that is not on screen: copied, renamed, put by, taken out with a way back, and forgotten when
// that has passed. The list of workbooks asks for it; fetched when first used.

import { message, type Step } from '../../../engine/index.ts';
import { newId, world } from '../files/world.ts';
import { entryAfter } from './entries.ts';
import type { Lying } from './records.ts';
import { journalRange, transact } from './storage.ts';
import { answersOf, noteWorkbook, workbooksHere } from './workbooks.ts';

/** What was taken out is kept so long. */
export const WAY_BACK = 30 * 86_400_000;

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
function titleStep(before: string, title: string): Step {
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
