// Which pairs of rows may meet at all, read from the condition on a sheet of pairs: its comparisons between what one row says
// and what the other says, and what it asks of one of them alone. Each side is worked out once a row in a column behind its
// sheet, and the second sheet's rows stand sorted, so that only pairs that may meet are made. The whole condition is looked at
// for each of those afterwards.

import { type Comparison, type Typed, walkTyped } from '../../language/typed.ts';
import { type Column, FILLED } from '../../values/column.ts';
import type { Frame } from '../frame.ts';
import { NOBODY, type PairRange, type Stretch } from '../generators/pairs.ts';
import { boundary, isWithin, type RangeComparison } from '../indexes/ranged-rows.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import { holdsNumbers } from './criteria-roles.ts';

/** The value of a row of the second sheet compared with that of a row of the first. */
interface Meeting {
  readonly second: ColumnDef;
  readonly comparison: RangeComparison;
  readonly first: ColumnDef;
}

export interface PairSheet {
  readonly table: TableDef;
  readonly links: readonly [ColumnDef, ColumnDef];
  readonly sources: readonly [TableDef, TableDef];
}

/** A part of the condition as a column of the sheet that it speaks of. */
export type AsColumn = (tree: Typed, table: TableDef) => ColumnDef;

/** undefined where the condition neither compares one row with the other nor asks anything of one of them alone. */
export function pairRange(where: Typed, sheet: PairSheet, asColumn: AsColumn): PairRange | undefined {
  const parts = partsOf(where);
  const meetings = parts.flatMap((one) => (one.node === 'binary' ? (meetingOf(one, sheet, asColumn) ?? []) : []));
  const [ofFirst, ofSecond] = [askedOf(0, parts, sheet, asColumn), askedOf(1, parts, sheet, asColumn)];
  if (meetings.length + ofFirst.length + ofSecond.length === 0) return undefined;
  const orders = new Map(meetings.map(({ second }) => [second, sortedRows(sheet.sources[1], ofSecond, second)]));
  const inOrder = sortedRows(sheet.sources[1], ofSecond);
  return {
    first: [...new Set([...meetings.map(({ first }) => first), ...ofFirst])],
    second: [...new Set([...meetings.map(({ second }) => second), ...ofSecond])],
    partners(frame) {
      const stands = meetings.map(({ first, comparison, second }) => {
        const ends = comparison === '<' || comparison === '<=';
        return { first: frame.column(first), comparison, ends, second, by: orders.get(second)?.(frame) ?? NO_ROWS };
      });
      const { rows } = stands[0]?.by ?? inOrder(frame);
      // Rows that stand alike by two columns, as weeks do by their first and last days, are cut by both.
      const [cutting, others] = [
        stands.filter(({ by }) => isSame(by.rows, rows)),
        stands.filter(({ by }) => !isSame(by.rows, rows)),
      ];
      const met: Stretch = { rows, from: 0, to: 0 };
      return (row) => {
        if (!saysYes(frame, ofFirst, row)) return NOBODY;
        let from = 0;
        let to = rows.length;
        for (let k = 0; k < cutting.length; k++) {
          const { first, by, comparison, ends } = cutting[k] as Standing;
          if (first.states[row] !== FILLED) return NOBODY;
          const { values } = by;
          const place = boundary(values, 0, values.length, comparison, first.values[row] as number);
          if (ends) to = Math.min(to, place);
          else from = Math.max(from, place);
        }
        if (to <= from) return NOBODY;
        met.rows = rows;
        met.from = from;
        met.to = to;
        for (const one of others) whoMeet(one, frame.column(one.second), row, met);
        return met;
      };
    },
  };
}

function isSame(rows: Int32Array, others: Int32Array): boolean {
  if (rows === others) return true;
  if (rows.length !== others.length) return false;
  for (let i = 0; i < rows.length; i++) if (rows[i] !== others[i]) return false;
  return true;
}

/** Leaves of the partners those who meet the row. */
function whoMeet({ first, comparison }: Standing, { values, states }: Column, row: number, partners: Stretch): void {
  const wanted = first.states[row] === FILLED ? first.values[row] : undefined;
  const met = new Int32Array(partners.to - partners.from);
  let count = 0;
  for (let i = partners.from; i < partners.to && wanted !== undefined; i++) {
    const partner = partners.rows[i] as number;
    if (states[partner] === FILLED && isWithin(comparison, values[partner] as number, wanted)) met[count++] = partner;
  }
  partners.rows = met;
  partners.from = 0;
  partners.to = count;
}

/** The rows of a table that have a value, by rising value. */
interface SortedRows {
  readonly rows: Int32Array;
  readonly values: Float64Array;
}

/** A meeting as both sheets stand: what the rows of the first say, and the rows of the second by what they say. */
interface Standing {
  readonly first: Column;
  readonly comparison: RangeComparison;
  /** Whether those who meet end where the second's values reach the first's, rather than begin there. */
  readonly ends: boolean;
  readonly second: ColumnDef;
  readonly by: SortedRows;
}

const NO_ROWS: SortedRows = { rows: NOBODY.rows, values: new Float64Array(0) };

/** Of which all is so that is asked of a row alone; without `by` in the table's order. Kept until something of it changes. */
function sortedRows(table: TableDef, asked: readonly ColumnDef[], by?: ColumnDef): (frame: Frame) => SortedRows {
  const looked = by === undefined ? asked : [by, ...asked];
  let kept: (SortedRows & { readonly stamp: string }) | undefined;
  return (frame) => {
    const stamp = frame.stampOf(looked, [table]);
    if (kept?.stamp !== stamp) {
      const there = frame.rows(table).filter((row) => saysYes(frame, asked, row));
      if (by === undefined) kept = { stamp, rows: there, values: NO_ROWS.values };
      else {
        const { values, states } = frame.column(by);
        const rows = there.filter((row) => states[row] === FILLED);
        rows.sort((a, b) => (values[a] as number) - (values[b] as number));
        kept = { stamp, rows, values: Float64Array.from(rows, (row) => values[row] as number) };
      }
    }
    return kept;
  };
}

/** Whether all these columns say yes of a row. */
function saysYes(frame: Frame, columns: readonly ColumnDef[], row: number): boolean {
  for (let k = 0; k < columns.length; k++) {
    const { values, states } = frame.column(columns[k] as ColumnDef);
    if (states[row] !== FILLED || values[row] !== 1) return false;
  }
  return true;
}

type Compared = Extract<Typed, { node: 'binary' }>;

/** The parts that must all hold. */
function partsOf(tree: Typed): readonly Typed[] {
  return tree.node === 'call' && tree.signature.name === 'AND' ? tree.args.flatMap(partsOf) : [tree];
}

/** What is asked of the row of one side alone, as columns of its sheet that say yes or no. */
function askedOf(side: 0 | 1, parts: readonly Typed[], sheet: PairSheet, asColumn: AsColumn): readonly ColumnDef[] {
  return parts
    .filter((part) => part.type.kind === 'yesno' && sideOf(part, sheet) === side)
    .map((part) => asColumn(seenFrom(part, sheet, side), sheet.sources[side]));
}

const TURNED: Readonly<Record<RangeComparison, RangeComparison>> = { '<': '>', '<=': '>=', '>': '<', '>=': '<=' };

function rangeOf(operator: string): RangeComparison | undefined {
  return (['<', '<=', '>', '>='] as const satisfies readonly Comparison[]).find((one) => one === operator);
}

function meetingOf({ operator, left, right }: Compared, sheet: PairSheet, asColumn: AsColumn): Meeting | undefined {
  const comparison = rangeOf(operator);
  if (comparison === undefined || !holdsNumbers(left.type) || !holdsNumbers(right.type)) return undefined;
  const { sources } = sheet;
  const [ofLeft, ofRight] = [sideOf(left, sheet), sideOf(right, sheet)];
  if (ofLeft === 1 && ofRight === 0) {
    return {
      second: asColumn(seenFrom(left, sheet, 1), sources[1]),
      comparison,
      first: asColumn(seenFrom(right, sheet, 0), sources[0]),
    };
  }
  if (ofLeft === 0 && ofRight === 1) {
    return {
      second: asColumn(seenFrom(right, sheet, 1), sources[1]),
      comparison: TURNED[comparison],
      first: asColumn(seenFrom(left, sheet, 0), sources[0]),
    };
  }
  return undefined;
}

/** Which of the two rows a part speaks of: 0, 1; undefined where of both, of none, or of the pair's own cells. */
export function sideOf(tree: Typed, sheet: PairSheet): 0 | 1 | undefined {
  const sides = new Set<0 | 1 | 'neither'>();
  walkTyped(tree, (node) => {
    if (node.node === 'cell') {
      const [link] = node.links;
      const side = sheet.links.findIndex(({ id }) => id === link);
      sides.add(side === 0 || side === 1 ? side : 'neither');
    } else if (node.node === 'column' || node.node === 'table' || node.node === 'criteria') sides.add('neither');
  });
  const [only, ...more] = sides;
  return only === 'neither' || more.length > 0 ? undefined : only;
}

/** The same part as a row of that side would say it of itself: without the link that leads to it. */
export function seenFrom(tree: Typed, sheet: PairSheet, side: 0 | 1): Typed {
  switch (tree.node) {
    case 'cell':
      return tree.links[0] === sheet.links[side].id ? { ...tree, links: tree.links.slice(1) } : tree;
    case 'negate':
    case 'key':
      return { ...tree, operand: seenFrom(tree.operand, sheet, side) };
    case 'binary':
      return { ...tree, left: seenFrom(tree.left, sheet, side), right: seenFrom(tree.right, sheet, side) };
    case 'call':
      return { ...tree, args: tree.args.map((argument) => seenFrom(argument, sheet, side)) };
    default:
      return tree;
  }
}
