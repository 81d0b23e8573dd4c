// One row per pair of rows of two tables. A pair keeps its slot for as long as both rows are there and may meet; the slots
// of pairs that went are used again. Where the sheet's condition compares dates of the two (or anything else that has an
// order), `range` says which rows of the second table a row of the first may meet, and no other pairs are made.

import type { Typed } from '../../language/typed.ts';
import { FILLED, type Token } from '../../values/column.ts';
import type { Frame, FrameState, Shared } from '../frame.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import type { RowSet } from '../row-set.ts';
import type { GeneratedRows, GeneratorInput, RowGenerator } from './generator.ts';

/** Which rows of the second table, as slots in any order, a row of the first may meet. */
export interface PairRange {
  /** What it reads of both tables, besides which rows there are. */
  readonly first: readonly ColumnDef[];
  readonly second: readonly ColumnDef[];
  partners(frame: Frame, row: number): Int32Array;
}

/** The pairs of one row of the first table: partners by rising slot, and the pairs' own slots beside them. */
interface PairsOfRow {
  readonly partners: Int32Array;
  readonly slots: Int32Array;
}

/** The pairs there are, by rows of the first table. */
export class Pairs implements Shared {
  owner: Token | undefined;
  readonly byRow: (PairsOfRow | undefined)[];

  constructor(owner: Token, byRow: (PairsOfRow | undefined)[] = []) {
    this.owner = owner;
    this.byRow = byRow;
  }

  copy(owner: Token): Pairs {
    return new Pairs(owner, this.byRow.slice());
  }
}

const NO_SLOTS = new Int32Array(0);
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
    generate(frame, dirty, rows) {
      const ofFirst = dirty.slice(0, firstInputs.length);
      const ofSecond = dirty.slice(firstInputs.length);
      const [movedFirst, movedSecond] = [ofFirst[0], ofSecond[0]];
      const look = (row: number): void => lookAtRow(row);
      // A row of the second table may meet any of the first: all are looked at again.
      if (ofSecond.some((set) => !set.empty) || ofFirst.some((set) => set.all)) {
        const length = Math.max(frame.table(first).length, pairs.read(frame).byRow.length);
        for (let row = 0; row < length; row++) look(row);
        return;
      }
      for (const row of rowsOf(ofFirst)) look(row);

      function lookAtRow(row: number): void {
        const before = pairs.read(frame).byRow[row] ?? NO_PAIRS;
        const partners = rising(partnersOf(frame, row));
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
            if (movedFirst?.has(row) === true || movedSecond?.has(partner) === true) rows.change(slot);
          } else {
            slots[i] = addPair(frame, row, partner, rows);
            turned = true;
          }
        }
        for (; old < before.partners.length; old++) rows.remove(before.slots[old] as number);
        if (turned) pairs.own(frame).byRow[row] = { partners, slots };
      }
    },
  };

  function partnersOf(frame: Frame, row: number): Int32Array {
    if (!frame.exists(first, row)) return NO_SLOTS;
    if (range === undefined) return frame.rows(second);
    const partners = range.partners(frame, row);
    if (second.shown === undefined && frame.table(second).liveCount === frame.table(second).length) return partners;
    return partners.filter((partner) => frame.exists(second, partner));
  }

  function addPair(frame: Frame, row: number, partner: number, rows: GeneratedRows): number {
    const slot = frame.ownTable(table).takeSlot();
    rows.add(slot);
    frame.write(links[0], slot, row, FILLED);
    frame.write(links[1], slot, partner, FILLED);
    return slot;
  }
}

function rowsOf(sets: readonly RowSet[]): ReadonlySet<number> {
  const rows = new Set<number>();
  for (const set of sets) for (let i = 0; i < set.count; i++) rows.add(set.at(i));
  return rows;
}

/** The slots by rising number, in an array of their own; most come so already. */
function rising(slots: Int32Array): Int32Array {
  const own = slots.slice();
  for (let i = 1; i < own.length; i++) if ((own[i - 1] as number) > (own[i] as number)) return own.sort();
  return own;
}
