// npm run bench -- beds: proposed beds beside the optimum that an integer solver (HiGHS) proves on the same question, and what the
// search takes. A solver that runs out of time tells only the best plan it found.

import { BedSearch, seededNumbers } from '../../../engine/index.ts';
import { farm } from '../../planning/bed-farms.ts';
import { bedProgram, solve } from '../../planning/programs.ts';
import { timed } from '../cpu.ts';

const FARMS = [
  { beds: 6, plantings: 14 },
  { beds: 12, plantings: 30 },
  { beds: 18, plantings: 45 },
] as const;
const SEEDS = [1, 2, 3];

/** Each farm with the cost of the search's plan, the solver's, and CPU time of the search. */
export async function benchBeds(seconds: number): Promise<void> {
  console.log('beds  plantings  seed  search  solver  says             CPU of the search');
  for (const { beds, plantings } of FARMS) {
    for (const seed of SEEDS) {
      const question = farm(beds, plantings, seed);
      const [milliseconds, cost] = timed(() => {
        const search = new BedSearch(question, seededNumbers(1));
        search.step(Number.POSITIVE_INFINITY);
        return search.cost;
      });
      const { status, value } = await solve(bedProgram(question), seconds);
      const cells = [beds, plantings, seed, cost, Math.round(value), status, `${Math.round(milliseconds)} ms`];
      const widths = [4, 11, 6, 8, 8, 19, 10];
      console.log(cells.map((cell, k) => String(cell).padStart(widths[k] ?? 0)).join(''));
    }
  }
}
