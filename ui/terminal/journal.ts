// The journal beside a workbook file, for those who ask for one: a line of JSON for every change with what takes it back and the
// file's fingerprint before and after, so that changes are taken back in later runs, and a state that something else has changed
// since is known as such. A line that a killed process left unfinished is passed over.

import { readFileSync } from 'node:fs';
import type { HistoryData, Step } from '../../engine/index.ts';
import { appendPlain, isSystemError, reason } from './disk.ts';
import { refuse } from './world.ts';

export interface JournalEntry extends Step {
  /** Fingerprints of the file. */
  readonly before: string;
  readonly after: string;
}

export function journalOf(file: string): string {
  return `${file}.journal`;
}

/** Adds a change; called before the file itself is written. */
export function addToJournal(file: string, entry: JournalEntry): void {
  const path = journalOf(file);
  const there = textOf(path);
  const unfinished = there === '' || there.endsWith('\n') ? '' : '\n';
  appendPlain(path, `${unfinished}${JSON.stringify(entry)}\n`);
}

function textOf(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (thrown) {
    if (isSystemError(thrown) && thrown.code === 'ENOENT') return '';
    return refuse(`${path} can't be read: ${reason(thrown)}.`);
  }
}

/** The changes that led to the file as it is, the latest last; none where something else has changed it since. */
export function changesLeadingTo(file: string, hash: string): readonly JournalEntry[] {
  const entries = textOf(journalOf(file)).split('\n').flatMap(entryIn);
  const chain: JournalEntry[] = [];
  let wanted = hash;
  for (const entry of entries.toReversed()) {
    if (entry.after !== wanted) continue;
    chain.unshift(entry);
    wanted = entry.before;
  }
  return chain;
}

function entryIn(line: string): readonly JournalEntry[] {
  try {
    const entry = JSON.parse(line) as Partial<JournalEntry>;
    const whole =
      typeof entry.before === 'string' &&
      typeof entry.after === 'string' &&
      Array.isArray(entry.inverse) &&
      Array.isArray(entry.done?.operations);
    return whole ? [entry as JournalEntry] : [];
  } catch {
    return [];
  }
}

/** The steps that can still be taken back. */
export function historyOf(entries: readonly JournalEntry[]): HistoryData {
  const done: Step[] = [];
  for (const { done: transaction, inverse } of entries) {
    if (transaction.undoes === undefined) done.push({ done: transaction, inverse });
    else done.pop();
  }
  return { done, undone: [] };
}
