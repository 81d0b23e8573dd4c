// The browser's database: opened once, opened again where the browser closed it, and never waited for without end. Whatever
// goes wrong comes out as a StorageFault of one of a few kinds, which say what a person can do about it.

import { type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import { DATABASE, DATABASE_VERSION, type StoreName, type Stores } from './records.ts';

export type FaultKind =
  /** The browser lets this page keep nothing. */
  | 'blocked'
  /** It doesn't answer. */
  | 'hung'
  /** There is no room left. */
  | 'full'
  /** A newer Dibble has taken the database over. */
  | 'newer'
  /** Somebody else wrote where this page was about to. */
  | 'taken'
  /** Anything else; the browser's own words are kept. */
  | 'refused';

export class StorageFault extends Error {
  readonly kind: FaultKind;

  constructor(kind: FaultKind, says = '') {
    super(says === '' ? kind : says);
    this.kind = kind;
  }
}

type Database = IDBPDatabase<Stores>;
type Mode = 'readonly' | 'readwrite';
export type Work<N extends StoreName, M extends Mode> = IDBPTransaction<Stores, N[], M>;

/** So long the opening of the database may take before the page opens without it. */
const OPENING = 2_000;
/** So long a question to it may take. */
const ANSWERING = 5_000;

let opening: Promise<Database> | undefined;
let superseded = false;
let openedBefore = false;
const again = new Set<() => void>();

/** Is told when the database was closed behind our back and is open again: it may be another one, and empty. */
export function whenOpenAgain(listener: () => void): void {
  again.add(listener);
}

function database(): Promise<Database> {
  opening ??= open().catch((problem: unknown) => {
    opening = undefined;
    // Browsers have many words for a page that may keep nothing.
    const fault = faultOf(problem);
    throw fault.kind === 'refused' ? new StorageFault('blocked', fault.message) : fault;
  });
  return opening;
}

async function open(): Promise<Database> {
  if (superseded) throw new StorageFault('newer');
  // Where site data is blocked, merely naming it throws.
  if (typeof indexedDB === 'undefined') throw new StorageFault('blocked');
  const opened = await openDB<Stores>(DATABASE, DATABASE_VERSION, {
    upgrade: (fresh) => {
      fresh.createObjectStore('workbooks', { keyPath: 'id' });
      fresh.createObjectStore('snapshots', { keyPath: 'workbook' });
      fresh.createObjectStore('journal', { keyPath: ['workbook', 'seq'] });
      fresh.createObjectStore('versions', { keyPath: 'id' }).createIndex('workbook', 'workbook');
      fresh.createObjectStore('texts', { keyPath: 'id' });
      fresh.createObjectStore('hands', { keyPath: 'workbook' });
      fresh.createObjectStore('marks', { keyPath: 'name' });
    },
    // Another page wants a newer one, or to delete it.
    blocking: (_, wanted) => {
      superseded = wanted !== null;
      opened.close();
      opening = undefined;
    },
    // What was kept may be gone: it is opened again at once, so that those who keep something there find out.
    terminated: () => {
      opening = undefined;
      database().catch(() => undefined);
    },
  });
  if (openedBefore) for (const listener of again) listener();
  openedBefore = true;
  return opened;
}

/**
 * Does something in one transaction and waits until it is through; a writing one until it is on the disk. All its requests are
 * to be made at once, without waiting for anything else. Rejects with a StorageFault.
 */
export async function transact<T, N extends StoreName, M extends Mode>(
  stores: N[],
  mode: M,
  work: (transaction: Work<N, M>) => Promise<T> | T,
  durability: 'strict' | 'relaxed' = 'strict',
): Promise<T> {
  const transaction = await begin(stores, mode, durability);
  try {
    const [answer] = await within(ANSWERING, Promise.all([work(transaction), transaction.done]));
    return answer;
  } catch (problem) {
    // The other of the two promises fails with it; this one is told.
    transaction.done.catch(() => undefined);
    throw faultOf(problem);
  }
}

async function begin<N extends StoreName, M extends Mode>(
  stores: N[],
  mode: M,
  durability: 'strict' | 'relaxed',
): Promise<Work<N, M>> {
  const first = await within(OPENING, database());
  try {
    return first.transaction(stores, mode, { durability });
  } catch {
    // The browser closed it without a word: once more on a connection of today.
    opening = undefined;
    const again = await within(OPENING, database());
    try {
      return again.transaction(stores, mode, { durability });
    } catch (problem) {
      throw faultOf(problem);
    }
  }
}

/** Resolves once the database answers, however late; for a page that opened without it. */
export function whenAnswering(): Promise<void> {
  return database().then(() => undefined);
}

/** Rejects where something takes longer than so many milliseconds; it may still come to an end by itself. */
export function within<T>(limit: number, work: Promise<T>): Promise<T> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new StorageFault('hung')), limit);
  });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}

export function faultOf(problem: unknown): StorageFault {
  if (problem instanceof StorageFault) return problem;
  if (!(problem instanceof Error)) return new StorageFault('refused', String(problem));
  switch (problem.name) {
    case 'SecurityError':
      return new StorageFault('blocked');
    case 'QuotaExceededError':
      return new StorageFault('full');
    case 'VersionError':
      return new StorageFault('newer');
    case 'ConstraintError':
      return new StorageFault('taken');
    default:
      return new StorageFault('refused', problem.message);
  }
}

/** Every key of a workbook in the journal, or those from one number to another. */
export function journalRange(workbook: string, from = 0, to = Number.MAX_SAFE_INTEGER): IDBKeyRange {
  return IDBKeyRange.bound([workbook, from], [workbook, to]);
}
