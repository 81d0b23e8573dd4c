// What the page does beside showing a workbook, fetched once it stands: it takes up what was answered before, takes dropped files, keeps its parts for when there is no
// network, and prints a sheet as pages, which must be there before the browser prints, since that waits for nothing.

import { startDrop } from '../files/drop.ts';
import { startOffline } from '../offline/builds.ts';
import { startPrinting } from '../paper/print-sheet.tsx';
import { followAnswers } from '../what-if/take-answers.ts';

export function startTheRest(): void {
  startDrop();
  startOffline();
  startPrinting();
  followAnswers();
}
