// Looking things up in columns. XLOOKUP, and VLOOKUP of an equal value, go by an index that the planner keeps; an equal value is
// else found among the first rows of all, made once a column; wildcards are in wildcard-rows.ts; the others walk the column. Read by standard/index.ts.

import type { CellError, Scalar } from '../../values/error.ts';
import { settled } from '../../values/tolerance.ts';
import {
  column,
  columnsBody,
  every,
  failure,
  field,
  firstColumn,
  makers,
  needed,
  optional,
  plain,
  table,
  takes,
  yesno,
} from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { keptFor } from '../kept-for.ts';
import { compareValues, equalPlaces, type Given, listOf, numberOf } from './columns.ts';
import { rowByWildcards } from './wildcard-rows.ts';

const make = makers('look-up');

const NOT_FOUND = failure('missing', 'The value looked for is not in the column.');
const NOTHING_BELOW = failure('missing', 'Every value of the column lies above the one looked for.');
const NOTHING_ABOVE = failure('missing', 'Every value of the column lies below the one looked for.');
const NO_SUCH_ROW = failure('reference', 'The column has no such row: rows are counted from 1.');

/** In which row (from 0) each value of a column stands first. */
interface FirstRows {
  /** By texts in small letters, and by yes and no. */
  readonly others: ReadonlyMap<string | boolean, number>;
  /** The numbers there are, rising, and their rows. */
  readonly numbers: Float64Array;
  readonly rows: readonly number[];
}

const firstRowsOf = keptFor((list: readonly Scalar[]): FirstRows => {
  const others = new Map<string | boolean, number>();
  const byNumber = new Map<number, number>();
  list.forEach((entry, row) => {
    if (typeof entry === 'number') {
      if (!byNumber.has(entry)) byNumber.set(entry, row);
      return;
    }
    const key = typeof entry === 'string' ? entry.toLowerCase() : entry;
    if ((typeof key === 'string' || typeof key === 'boolean') && !others.has(key)) others.set(key, row);
  });
  const numbers = Float64Array.from(byNumber.keys()).sort();
  return { others, numbers, rows: Array.from(numbers, (one) => byNumber.get(one) ?? -1) };
});

/** The row (from 0) of the first equal value; -1 where there is none. */
function firstEqual(list: readonly Scalar[], wanted: Scalar): number {
  const { others, numbers, rows } = firstRowsOf(list);
  if (typeof wanted === 'number') {
    const [from, to] = equalPlaces(numbers, wanted);
    // Numbers that differ by dust alone may stand in several rows.
    return from === to ? -1 : Math.min(...rows.slice(from, to));
  }
  if (typeof wanted === 'string') return others.get(wanted.toLowerCase()) ?? -1;
  return typeof wanted === 'boolean' ? (others.get(wanted) ?? -1) : -1;
}

/**
 * The last row at which a column sorted upwards (`direction` 1) has a value up to the one wanted, or sorted downwards (-1)
 * a value down to it; -1 where none. Blanks and errors are passed over. The walk ends at the first value beyond.
 */
function lastNotBeyond(list: readonly Scalar[], wanted: Scalar, direction: 1 | -1): number {
  let found = -1;
  for (let row = 0; row < list.length; row += 1) {
    const order = compareValues(list[row] ?? null, wanted);
    if (order === undefined) continue;
    if (order * direction > 0) break;
    found = row;
  }
  return found;
}

function match([wanted, within, kind]: Given): Scalar {
  const list = listOf(within);
  const value = listOf(wanted)[0] ?? null;
  const how = Math.sign(numberOf(kind) ?? 1);
  const row = how === 0 ? firstEqual(list, value) : lastNotBeyond(list, value, how > 0 ? 1 : -1);
  if (row >= 0) return row + 1;
  return how === 0 ? NOT_FOUND : how > 0 ? NOTHING_BELOW : NOTHING_ABOVE;
}

function entryAt(list: readonly Scalar[], row: number): Scalar | CellError {
  if (row < 0 || row >= list.length) return NO_SUCH_ROW;
  return list[row] ?? null;
}

function lookUp([wanted, within, results]: Given): Scalar {
  const row = lastNotBeyond(listOf(within), listOf(wanted)[0] ?? null, 1);
  return row < 0 ? NOTHING_BELOW : entryAt(listOf(results ?? within), row);
}

/** As LOOKUP where `sorted`, or left out; else the first equal one. */
function lookUpInSheet([wanted, within, results, sorted]: Given): Scalar {
  if (sorted !== false) return lookUp([wanted ?? null, within ?? null, results ?? null]);
  const row = firstEqual(listOf(within), listOf(wanted)[0] ?? null);
  return row < 0 ? NOT_FOUND : entryAt(listOf(results), row);
}

const NO_SUCH_WAY = failure(
  'value',
  'XMATCH looks for an equal value (0), the next smaller (-1) or larger (1) or by wildcards (2), from the first row (1) or the last (-1).',
);

/** XMATCH: the row, from 1, of an equal value, or of the nearest below or above where there is none, from either end. */
function crossMatch([wanted, within, kind, order]: Given): Scalar {
  const list = listOf(within);
  const value = listOf(wanted)[0] ?? null;
  const how = Math.trunc(settled(numberOf(kind) ?? 0));
  const way = Math.trunc(settled(numberOf(order) ?? 1));
  if (how < -1 || how > 2 || way === 0 || Math.abs(way) > 2) return NO_SUCH_WAY;
  let best = how === 2 && typeof value === 'string' ? rowByWildcards(list, value, way > 0 ? 1 : -1) : -1;
  for (let step = 0; how !== 2 && step < list.length; step += 1) {
    const row = way > 0 ? step : list.length - 1 - step;
    const entry = list[row] ?? null;
    const beyond = compareValues(entry, value);
    if (beyond === 0) return row + 1;
    if (beyond === undefined || how === 0 || Math.sign(beyond) !== how) continue;
    if (best < 0 || (compareValues(entry, list[best] ?? null) ?? 0) * how < 0) best = row;
  }
  if (best >= 0) return best + 1;
  return how === 1 ? NOTHING_ABOVE : how === -1 ? NOTHING_BELOW : NOT_FOUND;
}

const IN_SHEET = takes(
  needed('wanted', every('K')),
  needed('table', firstColumn(every('K'))),
  needed('column', field(every('R'))),
  optional('sorted', yesno),
);

export const LOOKUP: readonly FunctionDefinition[] = [
  make.form(
    'XLOOKUP',
    'lookup',
    'The value of one column in the first row in which another equals the value looked for: XLOOKUP([Crop]; Prices[Crop]; Prices[Price]). The last argument stands in where there is none.',
    'common spreadsheet practice',
    takes(
      needed('wanted', every('K')),
      needed('within', column(every('K'))),
      needed('results', column(every('R'))),
      optional('otherwise', every('R')),
    ),
    every('R'),
  ),
  make.columns(
    'MATCH',
    'The row, from 1, of a value in a column: 0 the first equal one, 1 the last not above it in a column sorted upwards (where left out), -1 the last not below it in one sorted downwards.',
    '6.14.9',
    takes(needed('wanted', every('K')), needed('within', column(every('K'))), optional('kind', plain)),
    plain,
    match,
  ),
  make.columns(
    'XMATCH',
    'The row, from 1, of a value in a column in any order: 0 an equal one (where left out), -1 else the next smaller, 1 else the next larger, 2 by wildcards; -1 as the last looks from the end.',
    'common spreadsheet practice',
    takes(
      needed('wanted', every('K')),
      needed('within', column(every('K'))),
      optional('kind', plain),
      optional('order', plain),
    ),
    plain,
    crossMatch,
  ),
  make.columns(
    'INDEX',
    'The value of a column in a row, counted from 1.',
    '6.14.6',
    takes(needed('column', column(every('T'))), needed('row', plain)),
    every('T'),
    ([values, row]) => entryAt(listOf(values), Math.trunc(numberOf(row) ?? 0) - 1),
  ),
  make.columns(
    'LOOKUP',
    'The value beside the last one not above the value looked for, in a column sorted upwards: price steps, size bands.',
    '6.14.8',
    takes(needed('wanted', every('K')), needed('within', column(every('K'))), needed('results', column(every('R')))),
    every('R'),
    lookUp,
  ),
  make.other(
    'VLOOKUP',
    'The value of a column, named in quotes or by its number, in the row of a sheet whose first column is the last one not above the value looked for; with FALSE at the end in the first row where it is equal: VLOOKUP([Crop]; Prices; "Price"; FALSE).',
    '6.14.12',
    IN_SHEET,
    every('R'),
    {
      lane: 'by type',
      choose: (args) =>
        args[3]?.constant === false
          ? { lane: 'form', form: 'lookup first column' }
          : columnsBody(IN_SHEET, lookUpInSheet),
    },
  ),
  make.form('ROWS', 'rows', 'How many rows a table has.', '6.13.30', takes(needed('table', table)), plain),
  make.form('COLUMNS', 'columns', 'How many columns a table has.', '6.13.5', takes(needed('table', table)), plain),
];
