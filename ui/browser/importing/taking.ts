// Takes the rows of a file a part at a time, so that the page stays in hand however many there are: between two parts a frame is
// drawn that says how far it is, and a person can leave it. The parts are one step of undo; what is left or refused on the way is
// taken back whole. import-state.ts fetches it when a file is taken.

import type { Command, Message } from '../../../engine/index.ts';
import { change } from '../store/change.ts';
import { holdFrames, otherTab, workbookNow } from '../store/workbook.ts';

/** So long a part is to take, about: milliseconds. */
const AIM = 100;
const FIRST = 50;
/** Every part costs something by itself: beyond so many they would take longer than they spare. */
const MOST_PARTS = 60;
/** Where a part takes longer than this, milliseconds, most of it comes again with each: the rest is done as one. */
const TOO_LONG = 300;

export interface Taking {
  /** Told how many rows and cells are done, of how many; false where a person left it meanwhile. */
  goesOn(done: number, of: number): boolean;
}

export type Taken = 'taken' | 'left' | { readonly why: string };

/** Does commands as one step. Where they are left or refused nothing has changed. */
export async function takeInParts(commands: readonly Command[], said: Message, { goesOn }: Taking): Promise<Taken> {
  // Where another tab keeps the order of changes each part would have to come back from it first.
  if (otherTab.peek() !== undefined) return takeWhole(commands, said);
  const book = workbookNow();
  const of = commands.reduce((sum, command) => sum + sizeOf(command), 0);
  const least = Math.max(FIRST, Math.ceil(of / MOST_PARTS));
  const show = holdFrames();
  try {
    let rest: readonly Command[] = commands;
    let size = least;
    let done = 0;
    while (rest.length > 0) {
      const stays = goesOn(done, of);
      await nextFrame();
      // Another workbook may have come on screen while the frame was drawn.
      if (!stays || workbookNow() !== book) {
        if (done > 0) book?.drop();
        return 'left';
      }
      const start = performance.now();
      const cut = cutAfter(rest, size);
      const outcome = change(cut.part, said, { quietly: true, source: 'import', joined: done > 0 });
      if (outcome.refused) {
        if (done > 0) book?.drop();
        // Rows that lead to later ones stand only together with them.
        return takeWhole(commands, said);
      }
      rest = cut.rest;
      done += cut.part.reduce((sum, command) => sum + sizeOf(command), 0);
      const took = Math.max(1, performance.now() - start);
      size = took > TOO_LONG ? of : Math.max(least, Math.min(size * 2, Math.round((size * AIM) / took)));
    }
    return 'taken';
  } finally {
    show();
  }
}

function takeWhole(commands: readonly Command[], said: Message): Taken {
  const outcome = change(commands, said, { quietly: true, source: 'import' });
  return outcome.refused ? { why: outcome.why } : 'taken';
}

function sizeOf(command: Command): number {
  return command.command === 'put rows' ? command.rows.length : 1;
}

/** So many rows and cells of the commands, and what is left of them. */
function cutAfter(commands: readonly Command[], size: number): { part: Command[]; rest: readonly Command[] } {
  const part: Command[] = [];
  let room = size;
  for (const [at, command] of commands.entries()) {
    if (room <= 0) return { part, rest: commands.slice(at) };
    if (command.command === 'put rows' && command.rows.length > room) {
      part.push({ ...command, rows: command.rows.slice(0, room) });
      return { part, rest: [{ ...command, rows: command.rows.slice(room) }, ...commands.slice(at + 1)] };
    }
    part.push(command);
    room -= sizeOf(command);
  }
  return { part, rest: [] };
}

/** After the next frame; a page that nobody sees draws none, and goes on without. */
function nextFrame(): Promise<void> {
  return new Promise((resolve) => {
    if (document.hidden) setTimeout(resolve);
    else requestAnimationFrame(() => setTimeout(resolve));
  });
}
