// `journal` and `undo`: what the journal beside a workbook file says was done, and taking the last of it back.

import { isoDate, sayMessage } from '../../engine/index.ts';
import type { Given } from './arguments.ts';
import { readPlain } from './disk.ts';
import { changesLeadingTo, historyOf, journalOf } from './journal.ts';
import { changeWorkbook } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

/** The changes that led to the file as it is, the latest last. */
export function listJournal({ words: [file = ''] }: Given, world: World): number {
  const { place, hash } = readPlain(file);
  const entries = changesLeadingTo(place, hash);
  if (entries.length === 0) {
    return refuse(
      `${file} has no journal of how it came to be as it is: changes with --journal are noted in ${journalOf(file)}.`,
    );
  }
  const open = new Set(historyOf(entries).done.map(({ done }) => done.id));
  for (const { done } of entries) {
    const what = done.undoes === undefined ? sayMessage(done.message) : `Taken back: ${sayMessage(done.message)}`;
    const mark = done.undoes === undefined && !open.has(done.id) ? ' (taken back)' : '';
    world.out(`${momentOf(done.time)}  ${onOneLine(what)}${mark}\n`);
  }
  return 0;
}

/** '2027-03-15 08:04', in UTC: the same wherever it is read. */
function momentOf(time: number): string {
  const minutes = Math.floor(time / 60_000);
  const [hour, minute] = [Math.floor(minutes / 60) % 24, minutes % 60];
  return `${isoDate(Math.floor(minutes / 1440))} ${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
}

/**
 * Takes back the last change in the journal, which notes that too; with --out the file as it was goes elsewhere, then as many
 * changes back as are wanted.
 */
export function undoLast(given: Given, world: World): Promise<number> {
  const [file = ''] = given.words;
  const elsewhere = given.values.has('out');
  const wanted = stepsOf(given.values.get('steps') ?? '1');
  if (wanted > 1 && !elsewhere) {
    return refuse('--steps goes with --out: the file as it was so many changes ago is written elsewhere.');
  }
  const noted: Given = elsewhere ? given : { ...given, flags: new Set([...given.flags, 'journal']) };
  return changeWorkbook(
    file,
    noted,
    world,
    (workbook) => {
      const says = Array.from({ length: wanted }, (_, before) => {
        const undone = workbook.undo();
        if (undone !== undefined) return `Taken back: ${onOneLine(sayMessage(undone.transaction.message))}\n`;
        const nothing = `${file}: its journal holds nothing that can be taken back`;
        return refuse(before === 0 ? `${nothing}.` : `${nothing} behind the last ${before}.`);
      });
      return { says: says.join('') };
    },
    { withJournal: true },
  );
}

function stepsOf(given: string): number {
  const steps = Number(given);
  if (/^\d{1,6}$/.test(given) && steps > 0) return steps;
  return refuse(`--steps takes a whole number such as 3, not “${given}”.`);
}
