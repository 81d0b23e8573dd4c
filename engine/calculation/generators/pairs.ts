// One row per pair of rows of two tables. A pair keeps its slot for as long as both rows are there and may meet; the slots
// of pairs that went are used again. Where the sheet's condition compares dates of the two (or anything else that has an
// order), `range` says which rows of the second table a row of the first may meet, and no other pairs are made.

import type { Typed } from '../../language/typed.ts';
import { FILLED, type Token } from '../../values/column.ts';
import type { Frame, FrameState, Shared } from '../frame.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import { bySlot, slotsUpTo } from '../row-order.ts';
import { inEither, type RowSet } from '../row-set.ts';
import type { GeneratedRows, GeneratorInput, RowGenerator } from './generator.ts';

/** Slots of rows: `rows[from..to)`. */
export interface Stretch {
  rows: Int32Array;
  from: number;
  to: number;
}

/** Which rows of the second table, in any order, a row of the first may meet; good until the next is asked for. */
export type PartnersOf = (row: number) => Readonly<Stretch>;

/** Which rows of the two tables may meet. */
export interface PairRange {
  /** What it reads of both tables, besides which rows there are. */
  readonly first: readonly ColumnDef[];
  readonly second: readonly ColumnDef[];
  /** Asked as both tables stand now. */
  partners(frame: Frame): PartnersOf;
}

/** The pairs of one row of the first table: partners by rising slot, and the pairs' own slots beside them. */
interface PairsOfRow {
  readonly partners: Int32Array;
  readonly slots: Int32Array;
}

/** What is left to look at where the work stopped: rows of the first table, and which rows of either had moved. */
interface Left {
  readonly rows: Int32Array;
  readonly first: RowSet;
  readonly second: RowSet;
}

/** The pairs there are, by rows of the first table. */
export class Pairs implements Shared {
  owner: Token | undefined;
  readonly byRow: (PairsOfRow | undefined)[];
  left: Left | undefined;

  constructor(owner: Token, byRow: (PairsOfRow | undefined)[] = [], left?: Left) {
    this.owner = owner;
    this.byRow = byRow;
    this.left = left;
  }

  copy(owner: Token): Pairs {
    return new Pairs(owner, this.byRow.slice(), this.left);
  }
}

/** So many rows of the first table are looked at between two looks at the time. */
const ROWS_AT_ONCE = 16;

const NO_SLOTS = new Int32Array(0);
export const NOBODY: Readonly<Stretch> = { rows: NO_SLOTS, from: 0, to: 0 };
const NO_PAIRS: PairsOfRow = { partners: NO_SLOTS, slots: NO_SLOTS };

export function pairRows(
  table: TableDef,
  links: readonly [ColumnDef, ColumnDef],
  sources: readonly [TableDef, TableDef],
  pairs: FrameState<Pairs>,
  rangeOf: (asColumn: (tree: Typed, table: TableDef) => ColumnDef) => PairRange | undefined,
): RowGenerator {
  const [first, second] = sources;
  let range: PairRange | undefined;
  let made: MadePairs = { ofFirst: NO_SLOTS, ofSecond: NO_SLOTS };
  let firstInputs: readonly GeneratorInput[] = [{ rowsOf: first }];
  let secondInputs: readonly GeneratorInput[] = [{ rowsOf: second }];
  return {
    table,
    columns: links,
    get inputs() {
      return [...firstInputs, ...secondInputs];
    },
    prepare(asColumn) {
      range = rangeOf(asColumn);
      firstInputs = [{ rowsOf: first }, ...(range?.first ?? []).map((column) => ({ column }))];
      secondInputs = [{ rowsOf: second }, ...(range?.second ?? []).map((column) => ({ column }))];
    },
    isLeft: (frame) => pairs.read(frame).left !== undefined,
    generate(frame, dirty, rows, goOn) {
      const ofFirst = dirty.slice(0, firstInputs.length);
      const ofSecond = dirty.slice(firstInputs.length);
      const { left } = pairs.read(frame);
      const movedFirst = inEither(left?.first, ofFirst[0]);
      const movedSecond = inEither(left?.second, ofSecond[0]);
      const partnersOf = partnersIn(frame);
      const wanted = rowsToLookAt();
      const before = frame.table(table).length;
      for (let at = 0; at < wanted.length; at++) {
        if (at === ROWS_AT_ONCE && left === undefined && frame.table(table).length > before) {
          rows.expect(before + Math.ceil((frame.table(table).length - before) * (wanted.length / at)));
        }
        if (goOn !== undefined && at > 0 && at % ROWS_AT_ONCE === 0 && !goOn()) {
          pairs.own(frame).left = { rows: wanted.slice(at), first: movedFirst.copy(), second: movedSecond.copy() };
          return;
        }
        lookAtRow(wanted[at] as number);
      }
      if (left !== undefined) pairs.own(frame).left = undefined;

      function rowsToLookAt(): Int32Array {
        // A row of the second table may meet any of the first: all are looked at again.
        if (ofSecond.every((set) => set.empty) && ofFirst.every((set) => !set.all)) return rowsOf(ofFirst, left?.rows);
        const length = Math.max(frame.table(first).length, pairs.read(frame).byRow.length);
        return slotsUpTo(length);
      }

      function lookAtRow(row: number): void {
        const before = pairs.read(frame).byRow[row] ?? NO_PAIRS;
        const { rows: met, from, to } = partnersOf(row);
        const partners = met.slice(from, to);
        rising(partners, 0, partners.length);
        if (before.partners.length === 0 && partners.length === 0) return;
        const slots = new Int32Array(partners.length);
        let turned = before.partners.length !== partners.length;
        let old = 0;
        for (let i = 0; i < partners.length; i++) {
          const partner = partners[i] as number;
          while (old < before.partners.length && (before.partners[old] as number) < partner) {
            rows.remove(before.slots[old++] as number);
            turned = true;
          }
          if (before.partners[old] === partner) {
            const slot = before.slots[old++] as number;
            slots[i] = slot;
            // A pair stands elsewhere only where one of the two does: what else they say of themselves is theirs.
            if (movedFirst.has(row) || movedSecond.has(partner)) rows.change(slot);
          } else {
            slots[i] = addPair(frame, row, partner, rows);
            turned = true;
          }
        }
        for (; old < before.partners.length; old++) rows.remove(before.slots[old] as number);
        if (turned) pairs.own(frame).byRow[row] = { partners, slots };
      }
    },
    remake(frame, blank) {
      const compare = frame.compare(second);
      const partnersOf = partnersIn(frame);
      let count = 0;
      for (const row of frame.rows(first)) {
        const { rows, from, to } = partnersOf(row);
        const end = count + to - from;
        if (end > made.ofFirst.length) made = longer(made, end);
        for (let at = count, of = from; at < end; at++, of++) {
          made.ofFirst[at] = row;
          made.ofSecond[at] = rows[of] as number;
        }
        if (range !== undefined) rising(made.ofSecond, count, end, compare);
        count = end;
      }
      frame.remake(table, count, blank);
      frame.ownColumn(links[0]).fill(made.ofFirst);
      frame.ownColumn(links[1]).fill(made.ofSecond);
    },
  };

  function partnersIn(frame: Frame): PartnersOf {
    const within = range?.partners(frame);
    const { liveCount, length } = frame.table(second);
    const allThere = second.shown === undefined && liveCount === length;
    const whole = within === undefined ? frame.rows(second) : NO_SLOTS;
    return (row) => {
      if (!frame.exists(first, row)) return NOBODY;
      if (within === undefined) return { rows: whole, from: 0, to: whole.length };
      const partners = within(row);
      if (allThere) return partners;
      const there = partners.rows.slice(partners.from, partners.to).filter((partner) => frame.exists(second, partner));
      return { rows: there, from: 0, to: there.length };
    };
  }

  function addPair(frame: Frame, row: number, partner: number, rows: GeneratedRows): number {
    const slot = frame.ownTable(table).takeSlot();
    rows.add(slot);
    frame.write(links[0], slot, row, FILLED);
    frame.write(links[1], slot, partner, FILLED);
    return slot;
  }
}

/** The rows in any of some sets, each once, after those that were left. */
function rowsOf(sets: readonly RowSet[], left: Int32Array | undefined): Int32Array {
  if (left !== undefined && sets.every((set) => set.empty)) return left;
  const rows = new Set<number>(left);
  for (const set of sets) for (let i = 0; i < set.count; i++) rows.add(set.at(i));
  return Int32Array.from(rows);
}

/** Puts `slots[from..to)` in rising order, or in the order given; most stand so already. */
function rising(slots: Int32Array, from: number, to: number, compare = bySlot): void {
  for (let i = from + 1; i < to; i++) {
    if (compare(slots[i - 1] as number, slots[i] as number) <= 0) continue;
    slots.subarray(from, to).sort(compare);
    return;
  }
}

/** Pairs as they are made, one after another; reused from time to time. */
interface MadePairs {
  readonly ofFirst: Int32Array;
  readonly ofSecond: Int32Array;
}

function longer({ ofFirst, ofSecond }: MadePairs, length: number): MadePairs {
  const room = Math.max(length, ofFirst.length * 2);
  const made = { ofFirst: new Int32Array(room), ofSecond: new Int32Array(room) };
  made.ofFirst.set(ofFirst);
  made.ofSecond.set(ofSecond);
  return made;
}
