// The working copies that the first Dibble kept, in a database of its own: taken over once, as a workbook with its versions. The
// old database is left as it is, since a tab of the first Dibble may still be open.

import { openDB } from 'idb';
import type { HistoryData } from '../../../engine/index.ts';
import { newId } from '../files/world.ts';
import { entryAfter, type Place, START } from './entries.ts';
import { setAside } from './mending.ts';
import type { JournalRecord } from './records.ts';
import { transact, within } from './storage.ts';
import { keepVersion } from './versions.ts';
import { beginWorkbook, TAKEN_OVER } from './workbooks.ts';

const FIRST_DATABASE = 'dibble';
const PATIENCE = 1_000;

interface FirstCopy {
  readonly text: string;
  readonly history?: HistoryData;
}

/** Takes them over, which was not done yet. */
export async function takeOverFirstCopies(): Promise<void> {
  // What doesn't answer today is asked again at the next visit.
  const copies = await within(PATIENCE, firstCopies()).catch(() => undefined);
  if (copies === undefined) return;
  await takeOver(copies);
  await transact(['marks'], 'readwrite', (transaction) => {
    return transaction.objectStore('marks').put({ name: TAKEN_OVER, value: 'taken over' });
  });
}

interface FirstCopies {
  readonly latest: FirstCopy | undefined;
  readonly before: FirstCopy | undefined;
  readonly unreadable: FirstCopy | undefined;
}

async function firstCopies(): Promise<FirstCopies> {
  const none = { latest: undefined, before: undefined, unreadable: undefined };
  const found = await openDB(FIRST_DATABASE, 1, {
    // There is none: none is made.
    upgrade: (_, __, ___, transaction) => {
      transaction.done.catch(() => undefined);
      transaction.abort();
    },
  }).catch(() => undefined);
  if (found === undefined) return none;
  if (!found.objectStoreNames.contains('copies')) {
    found.close();
    return none;
  }
  const [latest, before, unreadable] = await Promise.all(
    ['latest', 'at start of visit', 'unreadable'].map((shelf) => found.get('copies', shelf)),
  );
  found.close();
  return { latest: copyIn(latest), before: copyIn(before), unreadable: copyIn(unreadable) };
}

function copyIn(value: unknown): FirstCopy | undefined {
  if (typeof value !== 'object' || value === null || !('text' in value) || typeof value.text !== 'string')
    return undefined;
  const { text } = value;
  return 'history' in value && isHistory(value.history) ? { text, history: value.history } : { text };
}

function isHistory(value: unknown): value is HistoryData {
  return typeof value === 'object' && value !== null && 'done' in value && Array.isArray(value.done);
}

async function takeOver({ latest, before, unreadable }: FirstCopies): Promise<void> {
  const id = newId();
  if (latest !== undefined) {
    const entries: JournalRecord[] = [];
    let place: Place = START;
    for (const step of latest.history?.done ?? []) {
      const entry = entryAfter(place, id, step);
      entries.push(entry);
      place = { seq: entry.seq, sum: entry.sum };
    }
    await beginWorkbook({ id, title: titleIn(latest.text), text: latest.text, entries });
    if (before !== undefined && before.text !== latest.text) {
      await keepVersion({
        workbook: id,
        kind: 'named',
        name: 'As it was at the last visit',
        text: before.text,
        place: START,
      });
    }
  }
  if (unreadable !== undefined) {
    await setAside(id, { says: 'A working copy that could not be opened', text: unreadable.text });
  }
}

/** The title that a workbook's text gives itself. */
function titleIn(text: string): string {
  const [, title] = /"title": ("(?:[^"\\]|\\.)*")/.exec(text) ?? [];
  return title === undefined ? 'Workbook' : String(JSON.parse(title));
}
