// Values of the rows that meet conditions, one by one rather than in a total: the first of them, or their names in a list. Read by
// standard/index.ts.

import { isError, type Scalar } from '../../values/error.ts';
import { LONGEST_TEXT, tooLongText } from '../../values/plain-text.ts';
import { anything, column, condition, every, makers, needed, takes, text, thenRepeating } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';

const make = makers('conditional totals');

const ANY_COLUMN = needed('column', column(anything));
const CONDITION = needed('condition', condition);
const TOO_LONG = tooLongText('list fewer');

/** So few names are looked through one by one: what stands on a bed in a week, say. */
const FEW = 8;

/** Each text once, in the order of the rows, whatever its capitals; the first error among them. */
function listed(values: readonly Scalar[]): Scalar {
  const names: string[] = [];
  const keys: string[] = [];
  let known: Set<string> | undefined;
  let length = 0;
  for (const value of values) {
    if (isError(value)) return value;
    if (typeof value !== 'string' || value === '' || value === names[0]) continue;
    const key = value.toLowerCase();
    if (known?.has(key) ?? keys.includes(key)) continue;
    names.push(value);
    keys.push(key);
    if (keys.length === FEW) known = new Set(keys);
    else known?.add(key);
    length += value.length + 2;
    if (length > LONGEST_TEXT) return TOO_LONG;
  }
  return names.length > 1 ? names.join(', ') : (names[0] ?? null);
}

export const CONDITIONAL_VALUES: readonly FunctionDefinition[] = [
  make.other(
    'FIRSTIFS',
    'The first value of a column, in the order of rows, that is not blank and where every condition holds; blank where there is none.',
    'common spreadsheet practice',
    thenRepeating(takes(needed('values', column(every('T')))), ANY_COLUMN, CONDITION),
    every('T'),
    {
      lane: 'matching rows',
      valueColumns: 1,
      compute: (_, [values = []]) => values.find((value) => value !== null) ?? null,
      takesFirst: true,
    },
  ),
  make.other(
    'NAMESIFS',
    'The texts of a column over the rows in which every condition holds, each once, with commas between: NAMESIFS(Plantings[Crop]; Plantings[Bed]; [Bed]).',
    'common spreadsheet practice',
    thenRepeating(takes(needed('values', column(text))), ANY_COLUMN, CONDITION),
    text,
    { lane: 'matching rows', valueColumns: 1, compute: (_, [values = []]) => listed(values) },
  ),
];
