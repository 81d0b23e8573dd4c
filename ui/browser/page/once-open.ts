// What the page does beside showing a workbook, fetched once it stands: it takes up what was answered before, fetches what finds
// places and what is said of functions that are not here, follows the way back to the first questions, notes what is in hand, takes dropped files, keeps its parts for when there
// is no network, forgets what was taken out long ago, and prints a sheet as pages, which must be there before the browser prints,
// since that waits for nothing.

import { loadLeftOut } from '../../../engine/index.ts';
import { startDrop } from '../files/drop.ts';
import { followQuestions } from '../first-visit/way-back.ts';
import { followHand } from '../keeping/hand-following.ts';
import { forgetPassed } from '../keeping/laying.ts';
import { keptAs } from '../keeping/state.ts';
import { startOffline } from '../offline/builds.ts';
import { startPrinting } from '../paper/print-sheet.tsx';
import { followAnswers } from '../what-if/take-answers.ts';
import { fetchFinder } from './go-to.tsx';

export function startTheRest(): void {
  startDrop();
  followQuestions();
  startOffline();
  startPrinting();
  followAnswers();
  void fetchFinder();
  void loadLeftOut().catch(() => undefined);
  followHand(() => keptAs.peek());
  void forgetPassed().catch(() => undefined);
}
