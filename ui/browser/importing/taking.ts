// Takes the rows of a file a part at a time, so that the page stays in hand however many there are: between two parts a frame is
// drawn that says how far it is, and a person can leave it. The parts are one step of undo; what is left or refused on the way is
// taken back whole. What is on screen is worked out after the last part, in slices too. import-work.ts fetches it when a file is taken.

import type { Command, Message, Workbook } from '../../../engine/index.ts';
import { change } from '../store/change.ts';
import { holdFrames, otherTab, workbookNow } from '../store/workbook.ts';
import { cutAfter, sizeOfAll } from './cutting.ts';

/** So long a part is to take, about: milliseconds. */
const AIM = 40;
const FIRST = 50;
/** Every part costs something by itself: beyond so many they would take longer than they spare. */
const MOST_PARTS = 100;

export interface Taking {
  /** Told how many rows and cells are done, of how many; false where a person left it meanwhile. */
  goesOn(done: number, of: number): boolean;
}

export type Taken = 'taken' | 'left' | { readonly why: string };

/** Does commands as one step. Where they are left or refused nothing has changed. */
export async function takeInParts(commands: readonly Command[], said: Message, taking: Taking): Promise<Taken> {
  const book = workbookNow();
  // Where another tab keeps the order of changes each part would have to come back from it first.
  if (book === undefined || otherTab.peek() !== undefined) return takeWhole(commands, said);
  const show = holdFrames();
  try {
    return await takeEach(commands, said, taking, book);
  } finally {
    show();
  }
}

async function takeEach(
  commands: readonly Command[],
  said: Message,
  { goesOn }: Taking,
  book: Workbook,
): Promise<Taken> {
  const of = sizeOfAll(commands);
  const least = Math.max(FIRST, Math.ceil(of / MOST_PARTS));
  let rest = commands;
  let size = least;
  let done = 0;
  let isWorkedOut = false;
  while (!isWorkedOut) {
    const stays = goesOn(done, of);
    await nextFrame();
    // Another workbook may have come on screen while the frame was drawn.
    if (!stays || workbookNow() !== book) {
      if (done > 0) book.drop();
      return 'left';
    }
    const start = performance.now();
    if (rest.length === 0) {
      isWorkedOut = !book.settleScreen(() => performance.now() < start + AIM);
      continue;
    }
    const cut = cutAfter(rest, size);
    const outcome = change(cut.part, said, { quietly: true, source: 'import', joined: done > 0, isPart: true });
    if (outcome.refused) {
      if (done > 0) book.drop();
      // Rows that lead to later ones stand only together with them.
      return takeWhole(commands, said);
    }
    rest = cut.rest;
    done += sizeOfAll(cut.part);
    const took = Math.max(1, performance.now() - start);
    size = Math.max(least, Math.min(size * 2, Math.round((size * AIM) / took)));
  }
  return 'taken';
}

function takeWhole(commands: readonly Command[], said: Message): Taken {
  const outcome = change(commands, said, { quietly: true, source: 'import' });
  return outcome.refused ? { why: outcome.why } : 'taken';
}

/** After the next frame; a page that nobody sees draws none, and goes on without. */
function nextFrame(): Promise<void> {
  return new Promise((resolve) => {
    if (document.hidden) setTimeout(resolve);
    else requestAnimationFrame(() => setTimeout(resolve));
  });
}
