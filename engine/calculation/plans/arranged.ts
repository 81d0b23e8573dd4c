// Rows put in order by what a condition with a value of the reading row looks at, so that those that meet it are the first so many of
// them, those from a place on, or both. Called by side-folds.ts and scan-plans.ts.

import { FILLED } from '../../values/column.ts';
import { firstPlace } from '../../values/first-place.ts';
import type { Texts } from '../../values/texts.ts';
import { isText } from '../../values/type.ts';
import type { Frame } from '../frame.ts';
import type { Members } from '../indexes/group-index.ts';
import { boundary } from '../indexes/ranged-rows.ts';
import { meetsAll, type RowFilter } from '../indexes/totals.ts';
import type { ColumnDef } from '../layout.ts';
import { type Criterion, holdsNumbers } from './criteria-roles.ts';

/** So few rows are looked through sooner than put in order, however many ask for them. */
export const FEW_TO_ORDER = 16;

/** How cells are told to be alike: numbers but for dust, texts but for case, links and the like by what they hold. */
type Alike = 'numbers' | 'texts' | 'same';

/** Rows in order, and where those like a value begin and end. */
interface InOrder {
  readonly rows: Int32Array;
  readonly beginOf: (wanted: number) => number;
  readonly endOf: (wanted: number) => number;
}

/** Rows in an order in which those that meet a condition stand before some place, from another on, or both. */
export interface Arranged {
  readonly rows: Int32Array;
  readonly until: (wanted: number) => number;
  readonly since: (wanted: number) => number;
}

/** `held`: what a row's cell holds. */
export type Arranging = (taking: Int32Array, held: (row: number) => number) => Arranged;

export function alikeness({ column }: Criterion): Alike {
  if (isText(column.type)) return 'texts';
  return holdsNumbers(column.type) ? 'numbers' : 'same';
}

/** What puts rows in such an order; undefined where they are to be equal. */
export function arranging(criterion: Criterion, texts: Texts): Arranging | undefined {
  const { comparison } = criterion;
  if (comparison === '=') return undefined;
  const alike = alikeness(criterion);
  const kindOf = (value: number): number => (alike === 'texts' ? texts.fold(value) : value);
  return (taking, held) => {
    const inOrder =
      comparison === '<>' && alike !== 'numbers'
        ? byKind(taking, held, kindOf)
        : alike === 'texts'
          ? byText(taking, held, texts)
          : byNumber(taking, held);
    const { rows, beginOf, endOf } = inOrder;
    // '<>' takes rows at both ends, the others at one.
    const takesBelow = comparison === '<' || comparison === '<>';
    const takesAbove = comparison === '>' || comparison === '<>';
    return {
      rows,
      until: comparison === '<=' ? endOf : takesBelow ? beginOf : () => 0,
      since: comparison === '>=' ? beginOf : takesAbove ? endOf : () => rows.length,
    };
  };
}

/** A group in order for a condition, and where each of its members stands there, -1 for one that never meets it or another that is fixed. */
export interface Ranked extends Arranged {
  readonly ranks: Int32Array;
}

export function ranked(
  { column, arrange }: { readonly column: ColumnDef; readonly arrange: Arranging | undefined },
  filters: readonly RowFilter[],
  { rows, from, count }: Members,
  frame: Frame,
): readonly Ranked[] {
  if (arrange === undefined) return [];
  const { values, states } = frame.column(column);
  const members = rows.subarray(from, from + count);
  const taking = members.filter((row) => states[row] === FILLED && meetsAll(filters, row, frame));
  const made = arrange(taking, (row) => values[row] as number);
  const rankOf = new Map(Array.from(made.rows, (row, rank) => [row, rank]));
  return [{ ...made, ranks: members.map((row) => rankOf.get(row) ?? -1) }];
}

/** Which members of a group meet conditions with the values that stand in a key from a place on, into a list; gives how many. */
export function choose(
  conditions: readonly Ranked[],
  key: Float64Array,
  at: number,
  into: Int32Array,
  count: number,
): number {
  let found = count;
  for (let k = 0; k < count; k++) into[k] = k;
  for (let t = 0; t < conditions.length; t++) {
    const { until, since, ranks } = conditions[t] as Ranked;
    const wanted = key[at + t] as number;
    const [before, behind] = [until(wanted), since(wanted)];
    let met = 0;
    for (let k = 0; k < found; k++) {
      const member = into[k] as number;
      const rank = ranks[member] as number;
      into[met] = member;
      if (rank < before ? rank >= 0 : rank >= behind) met++;
    }
    found = met;
  }
  return found;
}

/** Rows by their texts, those with one text as in the table. */
function byText(taking: Int32Array, text: (row: number) => number, texts: Texts): InOrder {
  const rows = Int32Array.from(Array.from(taking).sort((a, b) => texts.order(text(a), text(b))));
  const against = (place: number, wanted: number): number => texts.order(text(rows[place] as number), wanted);
  return {
    rows,
    beginOf: (wanted) => firstPlace(0, rows.length, (place) => against(place, wanted) < 0),
    endOf: (wanted) => firstPlace(0, rows.length, (place) => against(place, wanted) <= 0),
  };
}

/** Rows by rising number, those with one number as in the table. */
function byNumber(taking: Int32Array, number: (row: number) => number): InOrder {
  const rows = Int32Array.from(Array.from(taking).sort((a, b) => number(a) - number(b)));
  const numbers = Float64Array.from(rows, number);
  return {
    rows,
    beginOf: (wanted) => boundary(numbers, 0, numbers.length, '<', wanted),
    endOf: (wanted) => boundary(numbers, 0, numbers.length, '<=', wanted),
  };
}

/** Rows by kind, the kind first that comes first in the table. */
function byKind(taking: Int32Array, held: (row: number) => number, kindOf: (value: number) => number): InOrder {
  const kind = (row: number): number => kindOf(held(row));
  const sizes = new Map<number, number>();
  for (const row of taking) sizes.set(kind(row), (sizes.get(kind(row)) ?? 0) + 1);
  const begins = new Map<number, number>();
  let begin = 0;
  for (const [one, size] of sizes) {
    begins.set(one, begin);
    begin += size;
  }
  const next = new Map(begins);
  const rows = new Int32Array(taking.length);
  for (const row of taking) {
    const place = next.get(kind(row)) ?? 0;
    rows[place] = row;
    next.set(kind(row), place + 1);
  }
  return {
    rows,
    beginOf: (wanted) => begins.get(kindOf(wanted)) ?? 0,
    endOf: (wanted) => (begins.get(kindOf(wanted)) ?? 0) + (sizes.get(kindOf(wanted)) ?? 0),
  };
}
