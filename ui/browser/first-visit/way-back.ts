// The first questions and the browser's own way back: from the glance it leads to them again, and from them it says that the next step
// leaves the program, rather than leave it unasked. Each step is an entry of the browser's history, beside what the phone keeps there.

import { hasGlance } from '../glance/opening.ts';
import { writeAddress } from '../keeping/address.ts';
import { keptAs } from '../keeping/state.ts';
import { member } from '../store/member.ts';
import { tell } from '../store/notices.ts';
import { view } from '../store/view.ts';
import { workbookNow } from '../store/workbook.ts';
import { hasOnlyFirstAnswers } from './half-way.ts';

/** Before the questions, on them, past them. */
type Step = 'before' | 'questions' | 'glance';

const KEPT_AS = 'firstVisit';

function stateAt(step: Step): object {
  const state: unknown = history.state;
  return { ...(typeof state === 'object' ? state : {}), [KEPT_AS]: step };
}

/** The questions are on screen, or are answered again after a step back: the next step back stays within the page. */
export function enterQuestions(): void {
  const step = member(history.state, KEPT_AS);
  if (step === 'questions') return;
  if (step !== 'glance') history.replaceState(stateAt('before'), '');
  history.pushState(stateAt('questions'), '');
}

/** From the questions to the glance. */
export function goOnToGlance(): void {
  view.value = { at: 'glance' };
  history.pushState(stateAt('glance'), '');
}

/** Shows the questions again. */
export function backToQuestions(): void {
  view.value = { at: 'first visit' };
}

/** Follows the browser's way back and forward through these steps from now on. */
export function followQuestions(): void {
  window.addEventListener('popstate', ({ state }) => {
    const step = member(state, KEPT_AS);
    const book = workbookNow();
    if (step === undefined || book === undefined || !hasGlance(book) || !hasOnlyFirstAnswers(book)) return;
    // An entry of before may name another workbook, or none yet.
    writeAddress(keptAs.peek());
    if (step === 'glance') view.value = { at: 'glance' };
    else if (step === 'before' && view.peek().at === 'first visit') {
      tell('Your answers stand in the workbook. One more step back leaves the program.');
    } else backToQuestions();
  });
}
