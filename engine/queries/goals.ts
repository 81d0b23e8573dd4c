// A goal that a figure is to reach, read as a cell of the figure's kind reads what is typed in it. Seeking and drawn seasons ask for
// it, in every face.

import { NONE } from '../units/dimension.ts';
import { ONE } from '../units/table.ts';
import { readEntry } from '../values/entry.ts';
import { nameOfType, type ValueType } from '../values/type.ts';
import type { Book } from './book.ts';

/** The goal in canonical units, a date as its civil day; or a sentence that says what to write instead. */
export type GoalRead = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly why: string };

/** How many findings there are has no type: it is a count. */
const COUNT: ValueType = { kind: 'number', dimension: NONE, unit: ONE };

/**
 * What a person writes as the goal of a figure of `type`, in the writing of the place. A bare number is in the unit in which the
 * figure is shown; an amount of another kind, a blank, and any goal of what is no number, temperature or date are refused.
 */
export function readGoal({ document }: Book, text: string, type: ValueType = COUNT): GoalRead {
  if (type.kind !== 'number' && type.kind !== 'temperature' && type.kind !== 'date') {
    const why = `This figure is ${nameOfType(type)}, which reaches no goal: ask for a number, an amount or a date.`;
    return { ok: false, why };
  }
  const read = readEntry(text, type, document.entry);
  // There is no column here.
  if (!read.ok) return { ok: false, why: read.why.replace('this column wants', 'this figure wants') };
  if (typeof read.value === 'number') return { ok: true, value: read.value };
  return { ok: false, why: 'Write the goal that the figure is to reach.' };
}
