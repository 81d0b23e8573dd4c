// The pure parts of keeping: entries sealed to each other, and which versions go with age.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { message, type Step } from '../../engine/index.ts';
import { entryAfter, type Place, readEntries, START, stepsUpTo } from '../../ui/browser/keeping/entries.ts';
import type { JournalRecord, VersionKind, VersionRecord } from '../../ui/browser/keeping/records.ts';
import { spared, thinned } from '../../ui/browser/keeping/thinning.ts';
import { when, whenSeenFrom } from '../../ui/browser/keeping/times.ts';

function step(id: string): Step {
  const done = {
    id,
    actor: 'a',
    time: 0,
    source: 'user',
    message: message('set title', { title: id }),
    operations: [{ op: 'title', title: id }],
  } as const;
  return { done, inverse: [{ op: 'title', title: '' }] };
}

function journal(count: number): readonly JournalRecord[] {
  const entries: JournalRecord[] = [];
  let place: Place = START;
  for (let i = 0; i < count; i += 1) {
    // A tab takes its turn every fifth time.
    const entry = entryAfter(place, 'w', i % 5 === 0 ? undefined : step(`s${i}`));
    entries.push(entry);
    place = entry;
  }
  return entries;
}

describe('a journal', () => {
  test('is read whole, from any place on', () => {
    const entries = journal(12);
    expect(readEntries(entries, START)).toMatchObject({ damaged: [] });
    expect(readEntries(entries, START).whole).toHaveLength(12);
    const fifth = entries[4];
    if (fifth === undefined) throw new Error('There is no fifth entry.');
    expect(readEntries(entries.slice(5), fifth).whole.map(({ place }) => place.seq)).toEqual([6, 7, 8, 9, 10, 11, 12]);
    expect(stepsUpTo(entries, fifth).map(({ place }) => place.seq)).toEqual([1, 2, 3, 4, 5]);
  });

  test('ends before an entry that was changed, is missing or came from elsewhere', () => {
    fc.assert(
      fc.property(fc.nat(11), fc.constantFrom('text', 'missing', 'twice', 'order', 'foreign'), (at, how) => {
        const entries = [...journal(12)];
        const entry = entries[at];
        const next = entries[at + 1];
        if (entry === undefined) return;
        if (how === 'text') entries[at] = { ...entry, text: `${entry.text} ` };
        else if (how === 'missing') entries.splice(at, 1);
        else if (how === 'twice') entries.splice(at, 0, entry);
        else if (how === 'foreign') entries[at] = entryAfter({ seq: entry.seq - 1, sum: 7 }, 'w', step('x'));
        else if (next !== undefined) [entries[at], entries[at + 1]] = [next, entry];
        const { whole, damaged } = readEntries(entries, START);
        const last = at === 11 && (how === 'missing' || how === 'order');
        // Of one that stands twice the first is taken.
        const good = how === 'twice' ? at + 1 : at;
        expect(whole).toHaveLength(last ? (how === 'order' ? 12 : 11) : good);
        expect(whole.length + damaged.length).toBe(entries.length);
      }),
    );
  });
});

const DAY = 86_400_000;
const NOW = Date.UTC(2027, 5, 1);

function version(age: number, kind: VersionKind = 'day'): VersionRecord {
  const at = NOW - age * DAY;
  return { id: `${kind} ${age}`, workbook: 'w', kind, at, through: 0, sum: 0, changes: 0, said: [], size: 1 };
}

describe('versions', () => {
  test('become one a day, one a week, one a month, and those with a name stay', () => {
    const kept = (ages: readonly number[]): number =>
      ages.length -
      thinned(
        ages.map((age) => version(age)),
        NOW,
      ).length;
    expect(kept([0, 0.1, 0.2, 1.9])).toBe(4);
    expect(kept([10.1, 10.2, 10.3, 11.1])).toBe(2);
    // Days 96 to 102 before are within two weeks of the calendar.
    expect(kept([96, 97, 98, 99, 100, 101, 102])).toBe(2);
    expect(kept([500, 501, 502, 503])).toBe(1);
    const named = [version(500, 'named'), version(500.5, 'named'), version(501, 'set aside'), version(502)];
    expect(thinned(named, NOW)).toEqual([]);
  });

  test('of a clock that was set back stay', () => {
    expect(thinned([version(-100), version(-100.1)], NOW)).toEqual([]);
  });

  test('go but for the latest few where room is wanted', () => {
    const all = [version(1), version(2), version(3), version(4, 'named')];
    expect(spared(all, 2).map(({ id }) => id)).toEqual(['day 3']);
  });
});

test('the time at which something was kept is told by this computer’s clock, with its day where that is another', () => {
  const [late, early] = [new Date(2027, 2, 4, 23, 58).getTime(), new Date(2027, 2, 5, 0, 3).getTime()];
  expect(when(late)).toBe('2027-03-04 23:58');
  expect(whenSeenFrom(late + 60_000, late)).toBe('23:58');
  expect(whenSeenFrom(early, late)).toBe('2027-03-04 23:58');
  // A clock that was set back since.
  expect(whenSeenFrom(late - 86_400_000, late)).toBe('2027-03-04 23:58');
});

test('one file alone asks the browser for single words, since that throws where site data is blocked', () => {
  const folder = join(import.meta.dirname, '../../ui/browser');
  const asking = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) => {
    return /\.tsx?$/.test(path) && /\b(?:local|session)Storage\b/.test(readFileSync(join(folder, path), 'utf8'));
  });
  expect(asking).toEqual([join('store', 'single-words.ts')]);
});
