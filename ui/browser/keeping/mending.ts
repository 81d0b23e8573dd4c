// After damage: what could not be read is set aside among the versions, as it was found, and the journal ends where it can
// be read, so that what is done from here on stands on whole ground. All of it or nothing.

import { writeWorkbookFile } from '../../../engine/index.ts';
import { newId } from '../files/world.ts';
import type { OpenedKept, Rest } from './opening.ts';
import type { VersionRecord } from './records.ts';
import { journalRange, transact } from './storage.ts';
import { snapshotOf } from './workbooks.ts';

/** Sets the rest aside, and makes what was opened the whole from which this workbook goes on. */
export function mend(workbook: string, { workbook: opened, place }: OpenedKept, rest: Rest): Promise<void> {
  const snapshot = snapshotOf(workbook, writeWorkbookFile(opened.data()), place);
  return transact(['snapshots', 'journal', 'versions', 'texts'], 'readwrite', async (transaction) => {
    const aside = asideRecord(workbook, rest);
    await Promise.all([
      transaction.objectStore('versions').put(aside),
      transaction.objectStore('texts').put({ id: aside.id, text: rest.text }),
      transaction.objectStore('snapshots').put(snapshot),
      transaction.objectStore('journal').delete(journalRange(workbook, place.seq + 1)),
    ]);
  });
}

/** Sets aside what can't be opened at all; it stays where it is, too. */
export function setAside(workbook: string, rest: Rest): Promise<void> {
  return transact(['versions', 'texts'], 'readwrite', async (transaction) => {
    const aside = asideRecord(workbook, rest);
    const there = await transaction.objectStore('versions').index('workbook').getAll(workbook);
    // Once is enough, however often it is tried to be opened.
    if (there.some(({ kind, size }) => kind === 'set aside' && size === aside.size)) return;
    await Promise.all([
      transaction.objectStore('versions').put(aside),
      transaction.objectStore('texts').put({ id: aside.id, text: rest.text }),
    ]);
  });
}

function asideRecord(workbook: string, { says, text }: Rest): VersionRecord {
  return {
    id: newId(),
    workbook,
    kind: 'set aside',
    at: Date.now(),
    through: 0,
    sum: 0,
    name: says,
    changes: 0,
    said: [],
    size: text.length,
  };
}
