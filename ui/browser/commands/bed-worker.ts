// Searches for beds beside the page, so that the page stays in hand. Asked once, it gives the bed of each planting.

import { type BedQuestion, BedSearch, seededNumbers } from '../../../engine/index.ts';

addEventListener('message', ({ data }: MessageEvent<{ readonly question: BedQuestion; readonly seed: number }>) => {
  const search = new BedSearch(data.question, seededNumbers(data.seed));
  search.step(Number.POSITIVE_INFINITY);
  postMessage(search.beds);
});
