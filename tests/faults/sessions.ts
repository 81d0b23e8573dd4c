// Sessions of random work on a workbook, with steps taken back and done again, then saved and opened: the same values to the last
// bit, the same bytes when it is saved again, and what was done before can still be taken back.

import { readWorkbookFile, type Workbook } from '../../engine/index.ts';
import { type Random, randomFrom, seedOfRun } from '../differential/random.ts';
import { type Chances, commandFor } from '../document/any-command.ts';
import { everything, openFarm, shelf, VERSION_2 } from '../document/farm.ts';
import { Tally, type Trial } from './trial.ts';

const MOST_STEPS = 40;

function chancesOf(random: Random): Chances {
  const any = (): number => random.whole(0, 10_000);
  return { what: any(), sheet: any(), row: any(), column: any(), value: any() };
}

/** A session of random work, with steps taken back and done again. */
export function work(workbook: Workbook, random: Random): void {
  for (let step = random.whole(1, MOST_STEPS); step > 0; step--) {
    if (random.chance(0.1)) workbook.undo();
    else if (random.chance(0.05)) workbook.redo();
    else {
      const command = commandFor(workbook, chancesOf(random));
      if (command !== undefined) workbook.do([command], { code: 'work', parts: {} });
    }
  }
}

function fault(random: Random): string | undefined {
  const workbook = openFarm();
  work(workbook, random);
  const before = everything(workbook);
  const read = readWorkbookFile(before.file, shelf(VERSION_2));
  if (!read.ok) return `what it saves does not open: ${read.why}`;
  if (read.notes.length > 0) return `what it saves is not as it should be: ${read.notes[0]}`;
  const again = openFarm(read.data, undefined, workbook.history);
  const after = everything(again);
  if (after.file !== before.file) return 'saved again it is another file';
  if (JSON.stringify(after.shown) !== JSON.stringify(before.shown)) return 'opened again it shows other values';
  const last = workbook.history.done.at(-1)?.done.operations.some(({ op }) => op === 'template') === true;
  workbook.undo();
  again.undo();
  const [living, opened] = [everything(workbook), everything(again)];
  // Of rows that a template ships and a person took out, only the living workbook knows what other templates put in them.
  const same = JSON.stringify(living.shown) === JSON.stringify(opened.shown) && (last || living.file === opened.file);
  return same ? undefined : 'the last step is taken back otherwise after opening';
}

export const sessions: Trial = {
  name: 'sessions',
  about: 'sessions saved and opened again',
  full: 2000,
  run: async (count, tell) => {
    const tally = new Tally(tell);
    const seed = seedOfRun();
    for (let i = 0; i < count; i++) await tally.try(`session ${seed + i}`, () => fault(randomFrom(seed + i)), 3000);
    return tally.outcome();
  },
};
