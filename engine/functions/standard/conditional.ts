// Totals over the rows that meet conditions: SUMIFS(Plantings[Seeds]; Plantings[Variety]; [Variety]). The planner finds the
// groups; only the folds stand here. Read by standard/index.ts.

import type { Result } from '../../language/signature.ts';
import { nameOfType, type ValueType } from '../../values/type.ts';
import {
  anything,
  column,
  condition,
  makers,
  needed,
  numbers,
  optional,
  ordered,
  plain,
  rule,
  takes,
  thenRepeating,
} from '../build.ts';
import type { Body, FoldNumbers, FunctionDefinition, Picks, Running } from '../definition.ts';
import { ADDED, COUNT, LEAST, MOST } from '../running.ts';
import { sum } from './mathematics.ts';
import { conditionalMean, largest, smallest } from './statistics.ts';
import { PLAIN } from './types.ts';

const make = makers('conditional totals');

/** The smallest or largest, blank where there is none. */
function extreme(fold: FoldNumbers, picks: Picks, running: Running): Body {
  return { lane: 'conditional fold', fold: { fold, takes: 'numbers', undefinedMeans: 'blank', picks, running } };
}

const SUMMED: Body = {
  lane: 'conditional fold',
  fold: { fold: sum, takes: 'numbers', addsUp: true, undefinedMeans: 'blank', running: ADDED },
};

/** How many rows meet the conditions; there is no column of values. */
const COUNTED: Body = {
  lane: 'conditional fold',
  fold: { fold: (_, count) => count, takes: 'filled', undefinedMeans: 'blank', running: COUNT },
};

/** SUMIF and AVERAGEIF: the type of the values, which are the looked-at column where none is named. */
function valuesType(name: string, among: (type: ValueType) => boolean, what: string): Result {
  return rule((args) => {
    const type = args[2]?.type ?? args[0]?.type ?? PLAIN;
    return among(type)
      ? type
      : `${name} takes ${what}, and this column holds ${nameOfType(type)}: name the column of values last.`;
  });
}

const ANY_COLUMN = needed('column', column(anything));
const CONDITION = needed('condition', condition);

export const CONDITIONAL: readonly FunctionDefinition[] = [
  make.other(
    'SUMIFS',
    'The sum of a column over the rows in which every condition holds: SUMIFS(Plantings[Seeds]; Plantings[Variety]; [Variety]).',
    '6.16.63',
    thenRepeating(takes(needed('values', column(numbers('A')))), ANY_COLUMN, CONDITION),
    numbers('A'),
    SUMMED,
  ),
  make.other(
    'COUNTIFS',
    'How many rows meet every condition: COUNTIFS(Plantings[Bed]; [Bed]; Plantings[Rows]; ">2").',
    '6.13.10',
    thenRepeating(takes(), ANY_COLUMN, CONDITION),
    plain,
    COUNTED,
  ),
  make.other(
    'AVERAGEIFS',
    'The mean of a column over the rows in which every condition holds.',
    '6.18.6',
    thenRepeating(takes(needed('values', column(ordered('A')))), ANY_COLUMN, CONDITION),
    ordered('A'),
    conditionalMean((args) => args[0]?.type),
  ),
  make.other(
    'MINIFS',
    'The smallest of a column over the rows in which every condition holds; blank where none does.',
    'common spreadsheet practice',
    thenRepeating(takes(needed('values', column(ordered('A')))), ANY_COLUMN, CONDITION),
    ordered('A'),
    extreme(smallest, 'least', LEAST),
  ),
  make.other(
    'MAXIFS',
    'The largest of a column over the rows in which every condition holds; blank where none does.',
    'common spreadsheet practice',
    thenRepeating(takes(needed('values', column(ordered('A')))), ANY_COLUMN, CONDITION),
    ordered('A'),
    extreme(largest, 'most', MOST),
  ),
  make.other(
    'SUMIF',
    'The sum over the rows whose column meets a condition; of that column itself, or of the values named last.',
    '6.16.62',
    takes(ANY_COLUMN, CONDITION, optional('values', column(numbers('A')))),
    valuesType('SUMIF', (type) => type.kind === 'number', 'numbers'),
    SUMMED,
  ),
  make.other(
    'COUNTIF',
    'How many rows of a column meet a condition: COUNTIF(Plantings[Bed]; [Bed]).',
    '6.13.9',
    takes(ANY_COLUMN, CONDITION),
    plain,
    COUNTED,
  ),
  make.other(
    'AVERAGEIF',
    'The mean over the rows whose column meets a condition; of that column itself, or of the values named last.',
    '6.18.5',
    takes(ANY_COLUMN, CONDITION, optional('values', column(ordered('A')))),
    valuesType(
      'AVERAGEIF',
      (type) => type.kind === 'number' || type.kind === 'date' || type.kind === 'temperature',
      'numbers, dates or temperatures',
    ),
    conditionalMean((args) => args[2]?.type ?? args[0]?.type),
  ),
];
