// Between stored values (numbers with a state) and scalars, one cell at a time, for functions that work on texts or take
// blanks and errors as they are. Used by kernels made by the planner and by the workbook's readers.

import type { Answer } from '../../functions/definition.ts';
import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import { type CellError, isError, type Scalar } from '../../values/error.ts';
import { Figures } from '../../values/figures.ts';
import type { ValueType } from '../../values/type.ts';
import type { Dictionaries } from '../frame.ts';

/** A stored value as a scalar: texts as text, yes/no as true and false, dates and links as their numbers. */
export function toScalar(words: Dictionaries, type: ValueType, value: number, state: number): Scalar {
  if (state === BLANK) return null;
  if (state === FAULT) return words.faults.error(value);
  if (type.kind === 'text' || type.kind === 'choice') return words.texts.text(value);
  if (type.kind === 'yesno') return value === 1;
  return value;
}

/** What a scalar is stored as: a value and a state. A number that is none counts as blank. */
export interface Stored {
  value: number;
  state: number;
}

/** What stands where a result is beyond the doubles. */
export const TOO_LARGE: CellError = {
  error: 'number',
  why: 'The result is too large to be a number: look at the values it is made of.',
};

/** Puts a scalar into `into`, which is reused from call to call; several figures wait under a number for the column that keeps them. */
export function toStored(words: Dictionaries, scalar: Answer, into: Stored): void {
  if (scalar instanceof Figures) {
    into.value = words.figures.push(scalar) - 1;
    into.state = FILLED;
  } else if (scalar === Number.POSITIVE_INFINITY || scalar === Number.NEGATIVE_INFINITY) {
    into.value = words.faults.number(TOO_LARGE);
    into.state = FAULT;
  } else if (scalar === null || (typeof scalar === 'number' && Number.isNaN(scalar))) {
    into.value = 0;
    into.state = BLANK;
  } else if (isError(scalar)) {
    into.value = words.faults.number(scalar);
    into.state = FAULT;
  } else {
    into.state = FILLED;
    into.value = typeof scalar === 'string' ? words.texts.code(scalar) : Number(scalar);
  }
}
