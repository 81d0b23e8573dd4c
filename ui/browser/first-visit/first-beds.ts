// Beds by count and size, as a newcomer gives them: the farm's usual length, and so many beds called by number. Pure: questions and
// commands.

import { type Book, type Command, rowNamed, rows } from '../../../engine/index.ts';
import { BEDS } from '../panels/columns.ts';

/** The most at one time: a slip such as 1000 for 100 is seen before it fills the sheet. */
export const MOST_BEDS = 200;

/** What is pressed for further beds, where there are some. */
export const LAY_OUT_MORE = 'Lay out so many more';

/** So many more beds, called 'Bed 1' and on, past those whose names are taken. Lengths and widths are the farm's usual ones. */
export function bedCommands(book: Book, count: number): readonly Command[] {
  const commands: Command[] = [];
  for (let number = 1; commands.length < Math.min(count, MOST_BEDS); number += 1) {
    const bed = `Bed ${number}`;
    if (rowNamed(book, BEDS, bed) !== undefined) continue;
    commands.push({ command: 'insert row', sheet: BEDS, entries: { bed } });
  }
  return commands;
}

/** What is said once so many were asked for: where that is more than are made at one time, how many are still to come. */
export function laidOutWords(wanted: number): string {
  if (wanted <= MOST_BEDS) return wanted === 1 ? 'One bed is laid out.' : `${wanted} beds are laid out.`;
  const rest = wanted - MOST_BEDS;
  return `${MOST_BEDS} of the ${wanted} beds are laid out, the most at one time: press “${LAY_OUT_MORE}” for the other ${rest}.`;
}

export function bedCount(book: Book): number {
  return rows(book, BEDS).length;
}
