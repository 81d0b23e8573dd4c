// Versions of the workbooks kept here: whole texts with when, why and what changed since the one before. Any tab may keep one.

import type { Message } from '../../../engine/index.ts';
import { newId } from '../files/world.ts';
import { type Place, stepsUpTo } from './entries.ts';
import type { VersionKind, VersionRecord } from './records.ts';
import { journalRange, transact } from './storage.ts';
import { spared, thinned } from './thinning.ts';

export interface NewVersion {
  readonly workbook: string;
  readonly kind: VersionKind;
  readonly name?: string;
  /** The workbook file's text; of what was set aside, whatever was found. */
  readonly text: string;
  readonly place: Place;
}

/** So many sentences say what changed. */
const SAID = 5;

/**
 * Keeps a version, but none by itself where nothing changed since the last: tabs that only took their turns change nothing. Gives
 * whether it was kept.
 */
export function keepVersion(wanted: NewVersion): Promise<boolean> {
  const { workbook, kind, name, text, place } = wanted;
  return transact(['versions', 'texts', 'journal'], 'readwrite', async (transaction) => {
    const versions = transaction.objectStore('versions');
    const before = await versions.index('workbook').getAll(workbook);
    const last = lastOf(before);
    const byHand = kind === 'named' || kind === 'set aside';
    const from = last?.through ?? 0;
    const records = await transaction.objectStore('journal').getAll(journalRange(workbook, from + 1));
    const entries = stepsUpTo(records, place);
    const steps = entries.flatMap(({ step }) => step ?? []);
    // Where entries are gone, because a snapshot holds what they did, something may have changed.
    const isSame = last !== undefined && steps.length === 0 && entries.length === place.seq - from;
    if (!byHand && isSame) return false;
    const version: VersionRecord = {
      id: newId(),
      workbook,
      kind,
      at: Date.now(),
      through: place.seq,
      sum: place.sum,
      ...(name === undefined ? {} : { name }),
      changes: steps.length,
      said: latest(steps.map(({ done }) => done.message)),
      size: text.length,
    };
    await Promise.all([versions.put(version), transaction.objectStore('texts').put({ id: version.id, text })]);
    const going = thinned([...before, version], version.at).map(({ id }) => id);
    await Promise.all(going.flatMap((id) => [versions.delete(id), transaction.objectStore('texts').delete(id)]));
    return true;
  });
}

function lastOf(versions: readonly VersionRecord[]): VersionRecord | undefined {
  return versions
    .filter(({ kind }) => kind !== 'set aside')
    .reduce<VersionRecord | undefined>(
      (last, each) => (last !== undefined && last.through >= each.through ? last : each),
      undefined,
    );
}

/** The latest of them, the latest first, none twice. */
function latest(messages: readonly Message[]): readonly Message[] {
  const said = new Map<string, Message>();
  for (const message of messages.toReversed()) {
    if (said.size < SAID) said.set(JSON.stringify(message), message);
  }
  return [...said.values()];
}

/** The versions of a workbook, the latest first. */
export async function versionsOf(workbook: string): Promise<readonly VersionRecord[]> {
  const found = await transact(['versions'], 'readonly', (transaction) => {
    return transaction.objectStore('versions').index('workbook').getAll(workbook);
  });
  return found.sort((a, b) => b.through - a.through || b.at - a.at);
}

/** The text of a version; undefined where it is gone. */
export async function versionText(id: string): Promise<string | undefined> {
  const found = await transact(['texts'], 'readonly', (transaction) => transaction.objectStore('texts').get(id));
  return found?.text;
}

/** Gives a version a name, with which it stays; '' takes it away. */
export function nameVersion(id: string, name: string): Promise<void> {
  return transact(['versions'], 'readwrite', async (transaction) => {
    const store = transaction.objectStore('versions');
    const found = await store.get(id);
    if (found === undefined || found.kind === 'set aside') return;
    const { name: _, ...rest } = found;
    await store.put(name === '' ? { ...rest, kind: 'other' } : { ...rest, kind: 'named', name });
  });
}

export function forgetVersion(id: string): Promise<void> {
  return transact(['versions', 'texts'], 'readwrite', async (transaction) => {
    await Promise.all([transaction.objectStore('versions').delete(id), transaction.objectStore('texts').delete(id)]);
  });
}

/** Makes room where there is none left: of every workbook the oldest versions without a name go. Gives whether any did. */
export function makeRoom(): Promise<boolean> {
  return transact(['versions', 'texts'], 'readwrite', async (transaction) => {
    const all = await transaction.objectStore('versions').getAll();
    const owners = new Set(all.map(({ workbook }) => workbook));
    const going = [...owners].flatMap((owner) =>
      spared(
        all.filter(({ workbook }) => workbook === owner),
        3,
      ),
    );
    await Promise.all(
      going.flatMap(({ id }) => [
        transaction.objectStore('versions').delete(id),
        transaction.objectStore('texts').delete(id),
      ]),
    );
    return going.length > 0;
  });
}
