// From what the browser keeps of a workbook to the workbook: the snapshot, the history that the journal's entries make, and the
// entries since done again. Where something is damaged, everything up to it is given, and the rest as it was found. Reads
// only; showing.ts sets aside what is handed over.

import { HistoryReach, historyOf, type Step, templateWanted, type Workbook } from '../../../engine/index.ts';
import { readWorkbook } from '../files/read.ts';
import { fetchTemplate } from '../files/world.ts';
import { fetchWanted } from '../store/wanted.ts';
import { type Place, type Placed, readEntries, stepsUpTo, sumOf } from './entries.ts';
import type { JournalRecord, SnapshotRecord, VersionRecord } from './records.ts';
import { journalRange, transact } from './storage.ts';

export interface OpenedKept {
  readonly ok: true;
  readonly workbook: Workbook;
  /** The last entry that is in it. */
  readonly place: Place;
  readonly reach: HistoryReach;
  /** Numbers of the entries with which tabs took their turns. */
  readonly turns: readonly number[];
  /** Ids of the transactions that are in the journal. */
  readonly ids: ReadonlySet<string>;
  /** Entries since the snapshot. */
  readonly since: number;
  readonly notes: readonly string[];
  /** What could not be read, as it was found; undefined where all could. */
  readonly rest: Rest | undefined;
}

export interface Rest {
  /** In a sentence: what is missing. */
  readonly says: string;
  readonly text: string;
}

export type KeptOpening = OpenedKept | { readonly ok: false; readonly why: string; readonly rest: Rest | undefined };

/** What the browser keeps of one workbook, as read. */
export interface Found {
  readonly snapshot: SnapshotRecord | undefined;
  readonly entries: readonly JournalRecord[];
  readonly versions: readonly VersionRecord[];
}

/** A whole text to begin with, and the entry through which it goes. */
interface Base {
  readonly text: string;
  readonly place: Place;
}

/** The workbook as it was kept last, or everything up to what is damaged. */
export async function openFound(found: Found): Promise<KeptOpening> {
  const { snapshot } = found;
  if (snapshot === undefined) return { ok: false, why: 'It is not kept here any more.', rest: undefined };
  const own = { text: snapshot.text, place: { seq: snapshot.through, sum: snapshot.sum } };
  const isWhole = sumOf(snapshot.text) === snapshot.check;
  const opened = isWhole ? await openFrom(own, found) : undefined;
  if (opened?.ok === true) return opened;
  const before = await openFromVersion(found);
  const rest = restOf(found, 'The whole as it was kept last is damaged', [], snapshot.text);
  if (before !== undefined) return { ...before, rest };
  // Of a damaged text whatever can be read is better than nothing.
  const partly = isWhole ? opened : await openFrom(own, found);
  if (partly?.ok === true) return { ...partly, rest };
  return { ok: false, why: partly?.why ?? '', rest };
}

/** Reads what is kept of a workbook. Rejects with a StorageFault where the database can't be asked. */
export function findKept(id: string): Promise<Found> {
  return transact(['snapshots', 'journal', 'versions'], 'readonly', async (transaction) => {
    const [snapshot, entries, versions] = await Promise.all([
      transaction.objectStore('snapshots').get(id),
      transaction.objectStore('journal').getAll(journalRange(id)),
      transaction.objectStore('versions').index('workbook').getAll(id),
    ]);
    return { snapshot, entries, versions };
  });
}

/** From the latest version that can be read, with the entries since where they are all still there. */
async function openFromVersion(found: Found): Promise<OpenedKept | undefined> {
  const versions = found.versions.filter(({ kind }) => kind !== 'set aside');
  for (const { id, through, sum } of versions.sort((a, b) => b.through - a.through)) {
    const kept = await transact(['texts'], 'readonly', (transaction) => transaction.objectStore('texts').get(id));
    const opened =
      kept === undefined ? undefined : await openFrom({ text: kept.text, place: { seq: through, sum } }, found);
    if (opened?.ok === true) return opened;
  }
  return undefined;
}

async function openFrom(base: Base, found: Found): Promise<KeptOpening> {
  const { whole, damaged } = readEntries(
    found.entries.filter(({ seq }) => seq > base.place.seq),
    base.place,
  );
  const before = stepsUpTo(found.entries, base.place);
  await fetchTemplates(templateWanted(base.text)?.name, [...before, ...whole]);
  const attempt = (): ReturnType<typeof replay> => replay(base, before, whole);
  let opened = await attempt();
  // What was set aside for the want of something that is fetched when it is met has its place once that is here.
  while (opened.ok && (await fetchWanted())) opened = await attempt();
  if (!opened.ok) return { ok: false, why: opened.why, rest: undefined };
  const { workbook, done, notes } = opened;
  const reach = new HistoryReach();
  for (const { step, place } of [...before, ...done]) if (step !== undefined) reach.note(step.done, place.seq);
  const place = done.at(-1)?.place ?? base.place;
  const steps = [...before, ...done];
  const left = found.entries.filter(({ seq }) => seq > place.seq);
  const missing = done.length < whole.length || damaged.length > 0;
  return {
    ok: true,
    workbook,
    place,
    reach,
    turns: found.entries.flatMap(({ seq, text }) => (text === '' && seq <= place.seq ? [seq] : [])),
    ids: new Set(steps.flatMap(({ step }) => (step === undefined ? [] : [step.done.id]))),
    since: done.length,
    notes,
    rest: missing ? restOf(found, `The changes from number ${place.seq + 1} on can't be read`, left) : undefined,
  };
}

/** A step back over a change of templates needs the one from before. */
async function fetchTemplates(name: string | undefined, steps: readonly Placed[]): Promise<void> {
  if (name === undefined) return;
  const versions = new Set<number>();
  for (const { step } of steps) {
    for (const operation of [...(step?.done.operations ?? []), ...(step?.inverse ?? [])]) {
      if (operation.op === 'template') versions.add(operation.version);
    }
  }
  for (const version of versions) await fetchTemplate({ name, version }).catch(() => undefined);
}

type Replayed =
  | {
      readonly ok: true;
      readonly workbook: Workbook;
      readonly done: readonly Placed[];
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly why: string };

async function replay(base: Base, before: readonly Placed[], since: readonly Placed[]): Promise<Replayed> {
  const history = historyOf(before.flatMap(({ step }): Step[] => (step === undefined ? [] : [step])));
  const read = await readWorkbook(base.text, history);
  if (!read.ok) return read;
  const { workbook, notes } = read;
  const done: Placed[] = [];
  for (const placed of since) {
    try {
      if (placed.step !== undefined) workbook.receive(placed.step.done);
    } catch {
      // What this program can't do is left with all that follows it, and the workbook is made again without.
      return replay(base, before, done);
    }
    done.push(placed);
  }
  return { ok: true, workbook, done, notes };
}

function restOf(found: Found, says: string, entries: readonly JournalRecord[], snapshot?: string): Rest {
  const text = JSON.stringify(
    { snapshot, entries: (snapshot === undefined ? entries : found.entries).map(({ seq, text: each }) => [seq, each]) },
    undefined,
    1,
  );
  return { says, text };
}
