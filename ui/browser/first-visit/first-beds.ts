// Beds by count and size, as a newcomer gives them: the farm's usual length, and so many beds called by number. Pure: questions and
// commands.

import { type Book, type Command, ONLY_ROW, rowNamed, rows } from '../../../engine/index.ts';
import { BEDS, FARM } from '../panels/columns.ts';

/** More than that are imported from a list, not made here. */
export const MOST_BEDS = 200;

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

/** The usual length or width of the farm's beds, as typed. */
export function usualBed(column: 'bed-length' | 'bed-width', entry: string): Command {
  return { command: 'set cell', sheet: FARM, row: ONLY_ROW, column, entry };
}

export function bedCount(book: Book): number {
  return rows(book, BEDS).length;
}
