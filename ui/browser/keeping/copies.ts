// The place in the browser (IndexedDB) where the working copy is kept: the text of a workbook file, and the steps that can be
// taken back. The latest copy and the one the visit began with stand side by side; a copy that can't be read is never written
// over, but set aside.

import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { HistoryData } from '../../../engine/index.ts';

export interface KeptCopy {
  /** The workbook file's text. */
  readonly text: string;
  /** What can be taken back and done again; absent in copies that the first Dibble kept. */
  readonly history?: HistoryData;
  /** When it was kept, in milliseconds since 1970. */
  readonly at: number;
}

export type Shelf = 'latest' | 'at start of visit' | 'unreadable';

interface Schema extends DBSchema {
  copies: { key: Shelf; value: KeptCopy };
}

let opening: Promise<IDBPDatabase<Schema>> | undefined;

function database(): Promise<IDBPDatabase<Schema>> {
  opening ??= openDB<Schema>('dibble', 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore('copies');
    },
    terminated: () => {
      opening = undefined;
    },
  });
  return opening;
}

/** The copy on a shelf; undefined where there is none. Rejects where the browser's storage can't be opened. */
export async function readCopy(shelf: Shelf): Promise<KeptCopy | undefined> {
  return (await database()).get('copies', shelf);
}

/** Puts a copy on a shelf and waits until it is on the disk. */
export async function keepCopy(shelf: Shelf, copy: KeptCopy): Promise<void> {
  const transaction = (await database()).transaction('copies', 'readwrite', { durability: 'strict' });
  await Promise.all([transaction.store.put(copy, shelf), transaction.done]);
}
