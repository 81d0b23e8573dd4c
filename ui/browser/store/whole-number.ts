// How many, where a box of the page asks for it: read as any cell reads a number, in the figures and with the marks of the place. Pure.

import { type Book, readGoal } from '../../../engine/index.ts';

/** The whole number that is typed; undefined where it is none. */
export function wholeNumber(book: Book, typed: string): number | undefined {
  const read = readGoal(book, typed);
  return read.ok && Number.isInteger(read.value) ? read.value : undefined;
}
