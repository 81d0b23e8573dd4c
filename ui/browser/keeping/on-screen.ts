// The session that keeps the workbook on screen, and what becomes of what it tells: signals, notices, another workbook in the
// place of the one on screen. showing.ts and beginning.ts make sessions and put them here; the files beside them ask for it.

import { sayMessage } from '../../../engine/index.ts';
import { announce, tell } from '../store/notices.ts';
import { showAgain } from '../store/show.ts';
import { otherTab, redrawSteps } from '../store/workbook.ts';
import { faultWords } from './faults.ts';
import { Session, type SessionEvents } from './session.ts';
import { fail, keeping } from './state.ts';
import { StorageFault } from './storage.ts';

let session: Session | undefined;

/** What keeps the workbook on screen; undefined for a fresh one that is not kept yet. */
export function sessionOnScreen(): Session | undefined {
  return session;
}

/** Takes a session for the workbook on screen from now on. Whoever calls it ends the one before. */
export function putOnScreen(next: Session | undefined): void {
  session = next;
}

/** A session for a kept workbook; `writes` hears that this tab has the turn to write it. */
export function newSession(id: string, writes: () => void): Session {
  const next: Session = new Session(
    id,
    eventsOf(() => next, writes),
  );
  return next;
}

function eventsOf(whose: () => Session, writes: () => void): SessionEvents {
  const isNow = (): boolean => session === undefined || session === whose();
  return {
    keeping: () => {
      if (isNow() && keeping.peek().state !== 'failed') keeping.value = { state: 'keeping' };
    },
    // One that is being begun says so itself, once it takes changes.
    kept: (at) => {
      if (session === whose()) keeping.value = { state: 'kept', at };
    },
    failed: (fault) => fail(faultWords(fault)),
    failedElsewhere: (why) => fail(why),
    failedWords: faultWords,
    silent: () => {
      const why = 'Another tab keeps this workbook, and it does not answer: what you change here is not kept.';
      fail(why, { label: 'Keep it from this tab', run: () => session?.takeOver() });
    },
    role: (now) => {
      if (now === 'writer') writes();
      otherTab.value = now === 'follower' ? { back: () => whose().back(), again: () => whose().again() } : undefined;
      if (now === 'apart') tellApart();
    },
    replaced: ({ workbook }) => showAgain(workbook),
    lost: (why) => fail(why instanceof StorageFault ? faultWords(why) : `${why} Save the workbook to a file.`),
    historyChanged: redrawSteps,
    stepped: (transaction) => {
      if (transaction === false) announce('Nothing was taken back: something else was changed in another tab.');
      else {
        const words = transaction.undoes === undefined ? 'Done again' : 'Undone';
        announce(`${words}: ${sayMessage(transaction.message)}`);
      }
    },
  };
}

let apartTold = false;

function tellApart(): void {
  if (apartTold) return;
  apartTold = true;
  tell('This browser keeps tabs from talking to each other: work in one tab at a time.');
}
