// Totals over the rows of a sheet that meet a sheet of criteria: DSUM(Plantings; "Seeds"; Wanted). The criteria are a sheet
// whose columns are named like those they look at; its rows are alternatives, all filled cells of a row must hold. The
// planner finds the rows; only the folds stand here. Read by standard/index.ts.

import type { Pattern, Result } from '../../language/signature.ts';
import {
  anything,
  criteria,
  every,
  failure,
  field,
  makers,
  needed,
  numbers,
  optional,
  ordered,
  plain,
  type Takes,
  table,
  takes,
} from '../build.ts';
import type { Body, Fold, FoldNumbers, FunctionDefinition, Undefined } from '../definition.ts';
import { product, sum } from './mathematics.ts';
import { count, DATABASE_MEAN, largest, sampleVariance, smallest, TOO_FEW, wholeVariance } from './statistics.ts';
import { spread } from './types.ts';

const make = makers('database');

const NO_RECORD = failure('missing', 'No row meets the criteria: DGET wants exactly one.');
const SEVERAL_RECORDS = failure('number', 'More than one row meets the criteria: DGET wants exactly one.');

/** The sheet looked in, one of its columns, the sheet of criteria. */
function fieldOf(of: Pattern): Takes {
  return takes(needed('table', table), needed('field', field(of)), needed('criteria', criteria));
}

/** The same, where without a field the rows themselves are counted. */
function fieldOrRows(of: Pattern): Takes {
  return takes(needed('table', table), optional('field', field(of)), needed('criteria', criteria));
}

function over(fold: FoldNumbers, undefinedMeans: Undefined, what: Fold['takes'] = 'numbers'): Body {
  return { lane: 'database', fold: { fold, takes: what, undefinedMeans } };
}

function fieldSpread(exponent: number): Result {
  return spread(exponent, (args) => args[1]?.type);
}

const MEASURED = fieldOf(ordered('A'));

export const DATABASE: readonly FunctionDefinition[] = [
  make.other(
    'DSUM',
    'The sum of a column over the rows that meet a sheet of criteria: DSUM(Plantings; "Seeds"; Wanted).',
    '6.9.11',
    fieldOf(numbers('A')),
    numbers('A'),
    over(sum, 'blank'),
  ),
  make.other(
    'DCOUNT',
    'How many rows that meet a sheet of criteria have a number or date in a column; without a column all such rows: DCOUNT(Plantings; ; Wanted).',
    '6.9.3',
    fieldOrRows(ordered('A')),
    plain,
    over(count, 'blank', 'numbers only'),
  ),
  make.other(
    'DCOUNTA',
    'How many rows that meet a sheet of criteria have a column filled in, with whatever; without a column all such rows.',
    '6.9.4',
    fieldOrRows(anything),
    plain,
    over(count, 'blank', 'filled'),
  ),
  make.other(
    'DAVERAGE',
    'The mean of a column over the rows that meet a sheet of criteria. Of dates the nearest whole day.',
    '6.9.2',
    MEASURED,
    ordered('A'),
    DATABASE_MEAN,
  ),
  make.other(
    'DMIN',
    'The smallest of a column over the rows that meet a sheet of criteria; blank where there is none.',
    '6.9.7',
    MEASURED,
    ordered('A'),
    over(smallest, 'blank'),
  ),
  make.other(
    'DMAX',
    'The largest of a column over the rows that meet a sheet of criteria; blank where there is none.',
    '6.9.6',
    MEASURED,
    ordered('A'),
    over(largest, 'blank'),
  ),
  make.other(
    'DPRODUCT',
    'The plain numbers of a column multiplied, over the rows that meet a sheet of criteria; 0 where there are none.',
    '6.9.8',
    fieldOf(plain),
    plain,
    over(product, failure('number', 'The product is too large to be a number.')),
  ),
  make.other(
    'DSTDEV',
    'Standard deviation of a column over the rows that meet a sheet of criteria, taken as a sample.',
    '6.9.9',
    MEASURED,
    fieldSpread(1),
    over((list, size) => Math.sqrt(sampleVariance(list, size)), TOO_FEW),
  ),
  make.other(
    'DSTDEVP',
    'Standard deviation of a column over the rows that meet a sheet of criteria, where they are all there are.',
    '6.9.10',
    MEASURED,
    fieldSpread(1),
    over((list, size) => Math.sqrt(wholeVariance(list, size)), TOO_FEW),
  ),
  make.other(
    'DVAR',
    'Variance of a column over the rows that meet a sheet of criteria, taken as a sample.',
    '6.9.12',
    MEASURED,
    fieldSpread(2),
    over(sampleVariance, TOO_FEW),
  ),
  make.other(
    'DVARP',
    'Variance of a column over the rows that meet a sheet of criteria, where they are all there are.',
    '6.9.13',
    MEASURED,
    fieldSpread(2),
    over(wholeVariance, TOO_FEW),
  ),
  make.other(
    'DGET',
    'The value of a column in the one row that meets a sheet of criteria; an error where none or several do.',
    '6.9.5',
    fieldOf(every('T')),
    every('T'),
    { lane: 'database row', none: NO_RECORD, several: SEVERAL_RECORDS },
  ),
];
