// The entries of a journal: a step as text, sealed to the one before it, so that a missing, changed or foreign entry is found
// when they are read again. Pure; the writer makes them, the opening reads them.

import { type Step, type Workbook, writeWorkbookFile } from '../../../engine/index.ts';
import type { JournalRecord } from './records.ts';

/** A place in a journal: the number of its last entry and that entry's seal. Nothing has been written at START. */
export interface Place {
  readonly seq: number;
  readonly sum: number;
}

export const START: Place = { seq: 0, sum: 0 };

/** The entry that follows a place; of no step, the mark of a tab that takes its turn. */
export function entryAfter(place: Place, workbook: string, step: Step | undefined): JournalRecord {
  const text = step === undefined ? '' : JSON.stringify(step);
  const seq = place.seq + 1;
  return { workbook, seq, before: place.sum, sum: sealOf(place.sum, seq, text), text };
}

/** Whether an entry is as it was written. */
export function isWhole({ seq, before, sum, text }: JournalRecord): boolean {
  return sealOf(before, seq, text) === sum;
}

/** What tells a text from any other, as a whole number of 32 bits. */
export function sumOf(text: string, from = 0): number {
  // The FNV-1a hash over the letters' codes.
  let hash = (0x811c9dc5 ^ from) >>> 0;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

/** What tells the content of a workbook from any other; the day that it plans from counts for nothing. */
export function contentSum(workbook: Workbook): number {
  return sumOf(writeWorkbookFile({ ...workbook.data(), today: 0 }));
}

function sealOf(before: number, seq: number, text: string): number {
  return sumOf(`${seq} ${text}`, before);
}

/** A step and its place. */
export interface Placed {
  readonly place: Place;
  /** undefined for a turn. */
  readonly step: Step | undefined;
}

export interface EntriesRead {
  readonly whole: readonly Placed[];
  /** From the first that can't be read on; empty where all can. */
  readonly damaged: readonly JournalRecord[];
}

/** Reads the entries that follow a place, up to the first that is not as it was written or doesn't follow. */
export function readEntries(records: readonly JournalRecord[], after: Place): EntriesRead {
  const whole: Placed[] = [];
  let last = after;
  for (const [i, record] of records.entries()) {
    const follows = record.seq === last.seq + 1 && record.before === last.sum && isWhole(record);
    const step = follows ? stepIn(record.text) : 'damaged';
    if (step === 'damaged') return { whole, damaged: records.slice(i) };
    last = { seq: record.seq, sum: record.sum };
    whole.push({ place: last, step });
  }
  return { whole, damaged: [] };
}

/** The steps up to a place, as far back as the entries hang together: what the history is made of. */
export function stepsUpTo(records: readonly JournalRecord[], place: Place): readonly Placed[] {
  const found: Placed[] = [];
  let next = place;
  for (const record of records.toReversed()) {
    if (record.seq > place.seq) continue;
    if (record.seq !== next.seq || record.sum !== next.sum || !isWhole(record)) break;
    const step = stepIn(record.text);
    if (step === 'damaged') break;
    found.push({ place: next, step });
    next = { seq: record.seq - 1, sum: record.before };
  }
  return found.reverse();
}

function stepIn(text: string): Step | undefined | 'damaged' {
  if (text === '') return undefined;
  try {
    const value: unknown = JSON.parse(text);
    return isStep(value) ? value : 'damaged';
  } catch {
    return 'damaged';
  }
}

/** The seal has shown that the text is what this program wrote; what is looked at is that it was a step. */
function isStep(value: unknown): value is Step {
  if (typeof value !== 'object' || value === null || !('done' in value) || !('inverse' in value)) return false;
  const { done, inverse } = value;
  return (
    typeof done === 'object' &&
    done !== null &&
    'operations' in done &&
    Array.isArray(done.operations) &&
    Array.isArray(inverse)
  );
}
