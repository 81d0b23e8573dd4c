// One row per filled date among some columns of other tables, in date order; equal dates in the order of declaration, then
// of rows. An event keeps its slot while its date stays filled, whatever the date.

import { FILLED, type Token } from '../../values/column.ts';
import type { Frame, FrameState, Shared } from '../frame.ts';
import { AT_ONCE } from '../graph/parts.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import { rowsByKeys, slotsUpTo } from '../row-order.ts';
import { inEither, NOTHING, RowSet } from '../row-set.ts';
import type { GeneratorInput, RowGenerator } from './generator.ts';

export interface DatedColumn {
  readonly table: TableDef;
  readonly column: ColumnDef;
  /** What the event is called. */
  readonly event: string;
  /** The link column, on the sheet of events, that names the row. */
  readonly about: ColumnDef;
}

/** The slots of the events there are: by dated column, then by the row it stands in; -1 is none. */
export class EventSlots implements Shared {
  owner: Token | undefined;
  readonly #slots: Int32Array[];
  /** By input, the rows that are left to look at where the work stopped. */
  left: readonly RowSet[] | undefined;

  constructor(owner: Token, slots: Int32Array[] = [], left?: readonly RowSet[]) {
    this.owner = owner;
    this.#slots = slots;
    this.left = left;
  }

  copy(owner: Token): EventSlots {
    const slots = this.#slots.map((rows) => rows.slice());
    return new EventSlots(owner, slots, this.left);
  }

  slot(kind: number, row: number): number {
    return this.#slots[kind]?.[row] ?? -1;
  }

  put(kind: number, row: number, slot: number): void {
    while (this.#slots.length <= kind) this.#slots.push(new Int32Array(0));
    let slots = this.#slots[kind] as Int32Array;
    if (row >= slots.length) {
      const room = new Int32Array(Math.max(row + 1, slots.length * 2)).fill(-1);
      room.set(slots);
      slots = room;
      this.#slots[kind] = slots;
    }
    slots[row] = slot;
  }
}

/** `kind` holds which of the dated columns an event comes from, by its place among them. */
export function eventRows(
  table: TableDef,
  filled: { readonly date: ColumnDef; readonly event: ColumnDef; readonly kind: ColumnDef },
  dated: readonly DatedColumn[],
  events: FrameState<EventSlots>,
): RowGenerator {
  const { date, event, kind: kindColumn } = filled;
  const abouts = new Set(dated.map((one) => one.about));
  const inputs = dated.flatMap((one): GeneratorInput[] => [{ rowsOf: one.table }, { column: one.column }]);
  return {
    table,
    columns: [date, event, kindColumn, ...abouts],
    inputs,
    isLeft: (frame) => events.read(frame).left !== undefined,
    generate(frame, dirty, rows, goOn) {
      const { left } = events.read(frame);
      const waiting = dirty.map((set, input) => inEither(left?.[input], set));
      const { length } = frame.table(table);
      const most = dated.reduce((sum, one, kind) => {
        const { length } = frame.table(one.table);
        const counts = [waiting[2 * kind], waiting[2 * kind + 1]].map((set) =>
          set?.all === true ? length : (set?.count ?? 0),
        );
        return sum + Math.max(...counts);
      }, 0);
      // Where far more may come than are there, each column makes room once.
      if (most > length) rows.expect(length + most);
      let looked = 0;
      for (const [kind, one] of dated.entries()) {
        const moved = waiting[2 * kind] ?? NOTHING;
        const wanted = rowsInEither(moved, waiting[2 * kind + 1] ?? NOTHING, frame.table(one.table).length);
        for (let at = 0; at < wanted.length; at++, looked++) {
          if (goOn !== undefined && looked > 0 && looked % AT_ONCE === 0 && !goOn()) {
            events.own(frame).left = leftFrom(waiting, kind, wanted.subarray(at));
            return;
          }
          const row = wanted[at] as number;
          lookAt(frame, kind, one, row, moved.has(row));
        }
      }
      if (left !== undefined) events.own(frame).left = undefined;

      function lookAt(frame: Frame, kind: number, one: DatedColumn, row: number, moved: boolean): void {
        const cells = frame.column(one.column);
        const filled = frame.exists(one.table, row) && cells.states[row] === FILLED;
        const before = events.read(frame).slot(kind, row);
        if (!filled) {
          if (before < 0) return;
          rows.remove(before);
          events.own(frame).put(kind, row, -1);
          return;
        }
        const day = cells.values[row] ?? 0;
        if (before >= 0) {
          // Events of one day stand as the rows that they come from do.
          if (frame.write(date, before, day, FILLED) || moved) rows.change(before);
          return;
        }
        const slot = frame.ownTable(table).takeSlot();
        rows.add(slot);
        frame.write(date, slot, day, FILLED);
        frame.write(event, slot, frame.texts.code(one.event), FILLED);
        frame.write(kindColumn, slot, kind, FILLED);
        frame.write(one.about, slot, row, FILLED);
        events.own(frame).put(kind, row, slot);
      }
    },
    remake(frame, blank) {
      const most = dated.reduce((sum, one) => sum + frame.rows(one.table).length, 0);
      const [days, kinds, rows] = [new Float64Array(most), new Int32Array(most), new Int32Array(most)];
      let count = 0;
      for (const [kind, one] of dated.entries()) {
        const { values, states } = frame.column(one.column);
        for (const row of frame.rows(one.table)) {
          if (states[row] !== FILLED) continue;
          days[count] = values[row] as number;
          kinds[count] = kind;
          rows[count++] = row;
        }
      }
      const order = rowsByKeys(slotsUpTo(count), days.subarray(0, count));
      frame.remake(table, count, blank);
      for (const about of abouts) frame.ownColumn(about).blank();
      const codes = Int32Array.from(dated, (one) => frame.texts.code(one.event));
      const aboutOf = dated.map(({ about }) => frame.ownColumn(about));
      const [onDay, ofKind, called] = [new Float64Array(count), new Int32Array(count), new Int32Array(count)];
      for (let slot = 0; slot < count; slot++) {
        const at = order[slot] as number;
        const kind = kinds[at] as number;
        onDay[slot] = days[at] as number;
        ofKind[slot] = kind;
        called[slot] = codes[kind] as number;
        aboutOf[kind]?.put(slot, rows[at] as number, FILLED);
      }
      frame.ownColumn(date).fill(onDay);
      frame.ownColumn(kindColumn).fill(ofKind);
      frame.ownColumn(event).fill(called);
      for (const column of aboutOf) column.touched();
    },
  };
}

/** The rows of two sets, each once, of a table of so many; good until either changes. */
function rowsInEither(one: RowSet, other: RowSet, length: number): Int32Array {
  if (one.all || other.all) return slotsUpTo(length);
  return inEither(one, other).sorted();
}

/** What waits once the kinds of events before one are done, and of that one all but some rows. */
function leftFrom(waiting: readonly RowSet[], kind: number, rows: Int32Array): readonly RowSet[] {
  return waiting.map((set, input) => {
    const of = Math.floor(input / 2);
    if (of > kind) return set.copy();
    const left = new RowSet();
    if (of === kind) for (const row of rows) if (set.has(row)) left.add(row);
    return left;
  });
}
