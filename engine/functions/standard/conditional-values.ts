// Values of the rows that meet conditions, one by one rather than in a total: the first of them, or their names in a list. Read by
// standard/index.ts.

import { isError, type Scalar } from '../../values/error.ts';
import { LONGEST_TEXT, tooLongText } from '../../values/plain-text.ts';
import { anything, column, condition, every, makers, needed, takes, text, thenRepeating } from '../build.ts';
import type { Body, FunctionDefinition } from '../definition.ts';

const make = makers('conditional totals');

const ANY_COLUMN = needed('column', column(anything));
const CONDITION = needed('condition', condition);
const TOO_LONG = tooLongText('list fewer');

function overValues(compute: (values: readonly Scalar[]) => Scalar): Body {
  return { lane: 'matching rows', valueColumns: 1, compute: (_, [values = []]) => compute(values) };
}

/** Each text once, in the order of the rows, whatever its capitals; the first error among them. */
function listed(values: readonly Scalar[]): Scalar {
  const names = new Map<string, string>();
  let length = 0;
  for (const value of values) {
    if (isError(value)) return value;
    if (typeof value !== 'string' || value === '') continue;
    const key = value.toLowerCase();
    if (names.has(key)) continue;
    names.set(key, value);
    length += value.length + 2;
    if (length > LONGEST_TEXT) return TOO_LONG;
  }
  return names.size === 0 ? null : [...names.values()].join(', ');
}

export const CONDITIONAL_VALUES: readonly FunctionDefinition[] = [
  make.other(
    'FIRSTIFS',
    'The first value of a column, in the order of rows, that is not blank and where every condition holds; blank where there is none.',
    'common spreadsheet practice',
    thenRepeating(takes(needed('values', column(every('T')))), ANY_COLUMN, CONDITION),
    every('T'),
    overValues((values) => values.find((value) => value !== null) ?? null),
  ),
  make.other(
    'NAMESIFS',
    'The texts of a column over the rows in which every condition holds, each once, with commas between: NAMESIFS(Plantings[Crop]; Plantings[Bed]; [Bed]).',
    'common spreadsheet practice',
    thenRepeating(takes(needed('values', column(text))), ANY_COLUMN, CONDITION),
    text,
    overValues(listed),
  ),
];
