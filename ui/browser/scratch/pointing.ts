// Pressing a cell while a formula is typed writes that cell's place into it, where the formula waits for one.

import { isFormula } from '../../scratch/formula-words.ts';
import { typing } from './paper-hand.ts';

/** After these a formula waits for a place. */
const WAITS = /[=(,;:+\-*/^&<>]\s*$/;

/** Writes a place at the entry's end; false where the entry is no formula that waits for one. */
export function pointAt(cell: string): boolean {
  const now = typing.peek();
  if (now === undefined || !(now.text === '=' || isFormula(now.text)) || !WAITS.test(now.text)) return false;
  typing.value = { ...now, text: `${now.text}${cell}` };
  return true;
}
