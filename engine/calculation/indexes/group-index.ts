// Groups of a table's rows by the values of some of its columns, kept current row by row. Conditional totals, look-ups and
// the way back along links all read it. Groups keep their rows in the order of the table, so that a total summed again has
// the same bits as one summed from scratch.

import { type Column, FILLED, nextStamp, type Token } from '../../values/column.ts';
import type { Texts } from '../../values/texts.ts';
import type { Frame, Shared } from '../frame.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import { bySlot, keysOf, rowsByKeys } from '../row-order.ts';
import { RowSet } from '../row-set.ts';
import { KeyTable } from './key-table.ts';

export interface KeyColumn {
  readonly column: ColumnDef;
  /** Texts are grouped ignoring case. */
  readonly text: boolean;
}

/** What an index groups, the same in every frame. */
export interface Grouping {
  readonly table: TableDef;
  readonly keys: readonly KeyColumn[];
  /** Whether rows that a sheet's own condition leaves out are grouped too: so for the way back along links. */
  readonly leftOutToo: boolean;
}

type Compare = ((a: number, b: number) => number) | undefined;

/** Where the keys of a table's rows are read in a frame. */
interface KeyCells {
  readonly live: Uint8Array;
  /** Whether the sheet's own condition shows a row; undefined where none is asked. */
  readonly shown: Column | undefined;
  readonly columns: readonly Column[];
  readonly texts: Texts;
}

/** Rows in order: `rows[from .. from + count)`. */
export interface Members {
  readonly rows: Int32Array;
  readonly from: number;
  readonly count: number;
}

const NO_ROWS: Members = { rows: new Int32Array(0), from: 0, count: 0 };

/** The rows of one group, in a stretch of an array in which other groups' rows may stand beside them. */
class RowList implements Members {
  rows = NO_ROWS.rows;
  from = 0;
  count = 0;
  /** So many rows have room. */
  room = 0;
  owner: Token;

  constructor(owner: Token) {
    this.owner = owner;
  }

  /** From now on so many rows stand in a stretch of an array that has room for so many. */
  stand(rows: Int32Array, from: number, count: number, room: number): void {
    this.rows = rows;
    this.from = from;
    this.count = count;
    this.room = room;
  }

  copy(owner: Token): RowList {
    const { rows, from, count } = this;
    const copy = new RowList(owner);
    if (count > 0) copy.stand(rows.slice(from, from + count), 0, count, count);
    return copy;
  }

  /** Where in its array `row` is or would go. */
  #place(row: number, compare: Compare): number {
    let low = this.from;
    let high = this.from + this.count;
    while (low < high) {
      const middle = (low + high) >> 1;
      const there = this.rows[middle] as number;
      if ((compare === undefined ? there - row : compare(there, row)) < 0) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  insert(row: number, compare: Compare): void {
    if (this.count === this.room) this.#grow();
    const place = this.#place(row, compare);
    this.rows.copyWithin(place + 1, place, this.from + this.count);
    this.rows[place] = row;
    this.count++;
  }

  /** Puts a row after the others. */
  push(row: number): void {
    if (this.count === this.room) this.#grow();
    this.rows[this.from + this.count++] = row;
  }

  #grow(): void {
    const rows = new Int32Array(Math.max(4, Math.ceil(this.count * 1.5)));
    rows.set(this.rows.subarray(this.from, this.from + this.count));
    this.stand(rows, 0, this.count, rows.length);
  }

  /** Whether rows that are here and may have moved in the table's order stand in it still; the others do, among themselves. */
  standsInOrder(moved: Int32Array, compare: (a: number, b: number) => number): boolean {
    const { rows, from, count } = this;
    if (moved.length * FEW_OF < count)
      return moved.every((row) => this.#staysAt(this.#place(row, compare), row, compare));
    for (let place = from + 1; place < from + count; place++) {
      if (compare(rows[place - 1] as number, rows[place] as number) > 0) return false;
    }
    return true;
  }

  /** Where all rows stand in order, a row is where it is looked for, between those before and after it. */
  #staysAt(place: number, row: number, compare: (a: number, b: number) => number): boolean {
    const { rows, from } = this;
    const end = from + this.count;
    if (place === end || rows[place] !== row) return false;
    if (place > from && compare(rows[place - 1] as number, row) > 0) return false;
    return place + 1 === end || compare(row, rows[place + 1] as number) <= 0;
  }

  /** Takes out `going[from..to)`, which are looked for: they may have moved in the table's order since they were put here. */
  removeAll(going: Int32Array, from: number, to: number): void {
    if (to - from < FEW_MOVED) {
      for (let i = from; i < to; i++) {
        const place = this.rows.indexOf(going[i] as number, this.from);
        this.rows.copyWithin(place, place + 1, this.from + this.count);
        this.count--;
      }
      return;
    }
    for (let i = from; i < to; i++) leaving.add(going[i] as number);
    let kept = this.from;
    for (let place = this.from; place < this.from + this.count; place++) {
      const row = this.rows[place] as number;
      if (!leaving.has(row)) this.rows[kept++] = row;
    }
    this.count = kept - this.from;
    leaving.clear();
  }

  /** Takes in `joining[from..to)`; many of them are to stand in order among themselves. */
  insertAll(joining: Int32Array, from: number, to: number, compare: Compare): void {
    if (to - from < MANY_JOINING) {
      for (let i = from; i < to; i++) this.insert(joining[i] as number, compare);
      return;
    }
    const before = compare ?? bySlot;
    const rows = new Int32Array(this.count + to - from);
    let here = this.from;
    const end = this.from + this.count;
    let coming = from;
    for (let place = 0; place < rows.length; place++) {
      const row = joining[coming] as number;
      const isNext = coming < to && (here === end || before(this.rows[here] as number, row) > 0);
      rows[place] = isNext ? row : (this.rows[here] as number);
      if (isNext) coming++;
      else here++;
    }
    this.stand(rows, 0, rows.length, rows.length);
  }
}

/** Up to so many rows it costs less to find each than to go through the list. */
const FEW_MOVED = 8;

/** Up to one row in so many it costs less to look each up than to go through the list. */
const FEW_OF = 16;

/** So many groups a row are kept at most where they are filled again. */
const MOST_EMPTY = 4;
const FEW_ROWS = 64;

/** From so many rows on it costs less to go through the list once than to find the place of each. */
const MANY_JOINING = 32;

/** From one row in so many on, many of a table are looked at. */
const MANY_OF = 16;

/** Where so many of a table's rows come, go or move, all its rows are gone through once. */
const MUCH_OF = 4;

/** Rows looked at again: those that leave their groups, those that join another, which that is, and those that stay. */
interface Moves {
  readonly going: SlotList;
  readonly joining: SlotList;
  /** The groups that those join, in their order. */
  readonly joined: SlotList;
  readonly staying: SlotList;
}

/** Slots noted one after the other. */
class SlotList {
  #room = new Int32Array(64);
  count = 0;

  push(slot: number): void {
    if (this.count === this.#room.length) {
      const room = new Int32Array(this.count * 2);
      room.set(this.#room);
      this.#room = room;
    }
    this.#room[this.count++] = slot;
  }

  /** Good until the next is noted. */
  get all(): Int32Array {
    return this.#room.subarray(0, this.count);
  }
}

/** Reused from call to call: a set for far rows, and lists for many, cost more to make than an edit to work out. */
const leaving = new RowSet();
const anew = new RowSet();
const MOVES: Moves = {
  going: new SlotList(),
  joining: new SlotList(),
  joined: new SlotList(),
  staying: new SlotList(),
};
const ALL_GROUPS = new RowSet();
ALL_GROUPS.addAll();

/** Of groups without a row: nobody's own, so it is replaced before one is put in. */
const EMPTY = new RowList({});

export class GroupIndex implements Shared {
  readonly grouping: Grouping;
  owner: Token | undefined;
  /** Whether it was made from scratch once and is kept current since. */
  built = false;
  /** Another whenever groups were numbered anew. */
  numbering = 0;
  #groups: KeyTable;
  #members: RowList[] = [];
  /** For each row how often its slot had come to life when it was last looked at: another row since then is news to its group. */
  #bornAs = new Uint32Array(0);
  /** Whether the rows of groups were last seen in another order than that of their slots. */
  #outOfSlotOrder = false;
  groupOf = new Int32Array(0);
  /** Lists of groups that are no more, for groups to come. */
  #spare: RowList[] = [];
  readonly #row: number[] = [];

  constructor(grouping: Grouping, owner: Token) {
    this.grouping = grouping;
    this.owner = owner;
    this.#groups = new KeyTable(grouping.keys.length);
  }

  copy(owner: Token): GroupIndex {
    const copy = new GroupIndex(this.grouping, owner);
    copy.built = this.built;
    copy.numbering = this.numbering;
    copy.#groups = this.#groups.copy();
    copy.#members = this.#members.slice();
    copy.groupOf = this.groupOf.slice();
    copy.#bornAs = this.#bornAs.slice();
    copy.#outOfSlotOrder = this.#outOfSlotOrder;
    return copy;
  }

  get groupCount(): number {
    return this.#members.length;
  }

  /** The rows of a group, in the order of the table; good until the next change. */
  members(group: number): Members {
    return this.#members[group] ?? NO_ROWS;
  }

  /** The value of key column `k` shared by a group's rows: a number, a row slot or a folded text. */
  keyValue(group: number, k: number): number {
    return this.#groups.key(group, k);
  }

  /** The group whose key values these begin with; -1 where no row has or had them. */
  find(keyValues: ArrayLike<number>): number {
    return this.#groups.find(keyValues);
  }

  /** As find, for an index on two columns. */
  findTwo(one: number, other: number): number {
    return this.#groups.findTwo(one, other);
  }

  /** As find, for an index on one column. */
  findOne(keyValue: number): number {
    return this.#groups.findOne(keyValue);
  }

  /** The group a row belongs to by its cells; -1 where it doesn't exist or a key is blank or faulty. */
  #groupFor({ live, shown, columns, texts }: KeyCells, row: number): number {
    if (live[row] !== 1) return -1;
    if (shown !== undefined && (shown.states[row] !== FILLED || shown.values[row] !== 1)) return -1;
    const { keys } = this.grouping;
    const values = this.#row;
    if (values.length !== keys.length) values.length = keys.length;
    for (let k = 0; k < columns.length; k++) {
      const column = columns[k] as Column;
      if (column.states[row] !== FILLED) return -1;
      const value = column.values[row] as number;
      values[k] = keys[k]?.text === true ? texts.fold(value) : value;
    }
    const known =
      keys.length === 2 ? this.#groups.findTwo(values[0] as number, values[1] as number) : this.#groups.find(values);
    if (known >= 0) return known;
    return this.#add(values);
  }

  #add(values: ArrayLike<number>): number {
    this.#members.push(this.#spare.pop() ?? EMPTY);
    return this.#groups.add(values);
  }

  #cells(frame: Frame): KeyCells {
    const { table, keys, leftOutToo } = this.grouping;
    return {
      live: frame.table(table).live,
      shown: leftOutToo || table.shown === undefined ? undefined : frame.column(table.shown),
      columns: keys.map(({ column }) => frame.column(column)),
      texts: frame.texts,
    };
  }

  /** To be made anew when it is next asked for. */
  forget(): void {
    this.built = false;
    this.#groups = new KeyTable(this.grouping.keys.length);
    this.#members = [];
    this.#spare = [];
    this.groupOf = new Int32Array(0);
    this.#bornAs = new Uint32Array(0);
  }

  fromScratch(frame: Frame): void {
    const { table } = this.grouping;
    const { length } = frame.table(table);
    const cells = this.#cells(frame);
    this.#groups = new KeyTable(this.grouping.keys.length);
    this.#members = [];
    const groupOf = new Int32Array(length);
    this.groupOf = groupOf;
    this.#bornAs = frame.table(table).births.slice(0, length);
    for (let row = 0; row < length; row++) groupOf[row] = this.#groupFor(cells, row);
    this.#gatherMembers(frame, ALL_GROUPS);
    this.#outOfSlotOrder = this.#compare(frame, false) !== undefined;
    this.built = true;
    this.numbering = nextStamp();
  }

  /**
   * Looks at all rows again; groups keep their numbers, those without rows among them. Where much of a table is another from time
   * to time, but of the same kinds, this costs less than telling what changed, or than beginning from scratch.
   */
  again(frame: Frame): void {
    const { table } = this.grouping;
    const { length } = frame.table(table);
    const inOrder = this.grouping.leftOutToo ? undefined : frame.rows(table);
    const count = inOrder?.length ?? length;
    if (!this.built) {
      this.fromScratch(frame);
      return;
    }
    const cells = this.#cells(frame);
    const members = this.#members;
    for (let group = 0; group < members.length; group++) {
      const list = members[group] as RowList;
      if (list.owner === frame.token) list.count = 0;
      else members[group] = EMPTY;
    }
    if (members.length > Math.max(count, FEW_ROWS) * MOST_EMPTY) this.#numberAnew();
    if (length > this.groupOf.length) this.#makeRoom(length - 1);
    this.groupOf.fill(-1);
    this.#bornAs.set(frame.table(table).births.subarray(0, length));
    this.#outOfSlotOrder = this.#compare(frame, false) !== undefined;
    if (inOrder !== undefined && this.#plainAgain(cells, inOrder, frame.token)) return;
    for (let i = 0; i < count; i++) {
      const row = inOrder === undefined ? i : (inOrder[i] as number);
      const group = this.#groupFor(cells, row);
      this.groupOf[row] = group;
      if (group >= 0) this.#listOf(group, frame.token).push(row);
    }
  }

  /** Lets go of all groups, none of which has a row. */
  #numberAnew(): void {
    this.#groups.clear();
    this.#spare = this.#members;
    this.#members = [];
    this.numbering = nextStamp();
  }

  /** Rows that exist, by one or two keys that are all filled and no texts; false where they are not so, with nothing done. */
  #plainAgain({ columns }: KeyCells, rows: Int32Array, owner: Token): boolean {
    const { keys } = this.grouping;
    const [one, other] = columns;
    if (one === undefined || columns.length > 2) return false;
    if (!columns.every(({ exceptions }) => exceptions === 0) || keys.some(({ text }) => text)) return false;
    const [first, second] = [one.values, other?.values];
    for (let i = 0; i < rows.length; i++) {
      const row = rows[i] as number;
      const value = first[row] as number;
      let group =
        second === undefined ? this.#groups.findOne(value) : this.#groups.findTwo(value, second[row] as number);
      if (group < 0) {
        group = this.#add(second === undefined ? [value] : [value, second[row] as number]);
      }
      this.groupOf[row] = group;
      this.#listOf(group, owner).push(row);
    }
    return true;
  }

  /** The rows of some groups from `groupOf`, in the order of the table. */
  #gatherMembers(frame: Frame, groups: RowSet): void {
    const { groupOf } = this;
    const members = this.#members;
    const counts = new Int32Array(members.length);
    for (let row = 0; row < groupOf.length; row++) {
      const group = groupOf[row] as number;
      if (group >= 0) counts[group] = (counts[group] as number) + 1;
    }
    let all = 0;
    for (let group = 0; group < members.length; group++) if (groups.has(group)) all += counts[group] as number;
    // One array for all of them: there may be as many groups as rows, and an array by itself takes more than what is in it.
    const together = new Int32Array(all);
    let from = 0;
    for (let group = 0; group < members.length; group++) {
      if (!groups.has(group)) continue;
      const count = counts[group] as number;
      let list = members[group] as RowList;
      if (list.owner !== frame.token) {
        list = new RowList(frame.token);
        members[group] = list;
      }
      list.stand(together, from, 0, count);
      from += count;
    }
    // Rows that a sheet leaves out stand in no order: the way back along links asks for none.
    const inOrder = this.grouping.leftOutToo ? undefined : frame.rows(this.grouping.table);
    const length = inOrder?.length ?? groupOf.length;
    for (let i = 0; i < length; i++) {
      const row = inOrder === undefined ? i : (inOrder[i] as number);
      const group = groupOf[row] as number;
      if (group < 0 || !groups.has(group)) continue;
      const list = members[group] as RowList;
      list.rows[list.from + list.count++] = row;
    }
  }

  /** Where many rows are compared it pays to know the place of each. */
  #compare(frame: Frame, many: boolean): Compare {
    const { table, leftOutToo } = this.grouping;
    const compare = leftOutToo ? undefined : frame.compare(table);
    if (compare === undefined || !many) return compare;
    const places = frame.places(table);
    return (a, b) => (places[a] as number) - (places[b] as number);
  }

  /**
   * Looks at some rows again: at their cells, and at where they stand in the table's order. The groups they left, joined or
   * moved in go into `touched`. All leave before one joins, for a list is in order only without those that moved.
   */
  update(frame: Frame, rows: RowSet, touched: RowSet): void {
    const { table } = this.grouping;
    const { births, length } = frame.table(table);
    const isMany = rows.count >= MANY_JOINING && rows.count * MANY_OF > length;
    const byTable = this.#compare(frame, isMany);
    // A move may have put the table back in the order of its slots: groups are looked at once more by it.
    const compare = byTable ?? (this.#outOfSlotOrder ? bySlot : undefined);
    this.#outOfSlotOrder = byTable !== undefined;
    const cells = this.#cells(frame);
    const { going, joining, joined, staying } = MOVES;
    for (const list of [going, joining, joined, staying]) list.count = 0;
    for (let i = 0; i < rows.count; i++) {
      const row = rows.at(i);
      this.#makeRoom(row);
      const before = this.groupOf[row] as number;
      const now = this.#groupFor(cells, row);
      if (before === now) {
        if (now >= 0 && compare !== undefined) staying.push(row);
        if (now >= 0 && this.#bornAs[row] !== births[row]) touched.add(now);
      } else {
        if (before >= 0) going.push(row);
        if (now >= 0) {
          joining.push(row);
          joined.push(now);
        }
      }
      this.#bornAs[row] = births[row] as number;
    }
    if (rows.count * MUCH_OF > length) {
      this.#putAll(frame, MOVES, compare, touched);
      return;
    }
    this.#eachGroup(going, (group, gone, from, to) => {
      this.#listOf(group, frame.token).removeAll(gone, from, to);
      touched.add(group);
    });
    this.#regroup(MOVES);
    // Most rows that are looked at again stand where they stood.
    this.#eachGroup(staying, (group, stayed, from, to) => {
      const moved = stayed.subarray(from, to);
      if (compare === undefined || this.#members[group]?.standsInOrder(moved, compare) !== false) return;
      for (const row of moved) joining.push(row);
      this.#listOf(group, frame.token).removeAll(stayed, from, to);
    });
    if (joining.count >= MANY_JOINING) {
      // Many are sorted by the places that they are compared by: that costs a few passes, and a comparison of each with some dozen far more.
      if (isMany && byTable !== undefined)
        joining.all.set(rowsByKeys(joining.all, keysOf(joining.all, frame.places(table))));
      else joining.all.sort(compare);
    }
    this.#eachGroup(joining, (group, joined, from, to) => {
      this.#listOf(group, frame.token).insertAll(joined, from, to, compare);
      touched.add(group);
    });
  }

  #regroup({ going, joining, joined }: Moves): void {
    const [left, come, to] = [going.all, joining.all, joined.all];
    for (let i = 0; i < left.length; i++) this.groupOf[left[i] as number] = -1;
    for (let i = 0; i < come.length; i++) this.groupOf[come[i] as number] = to[i] as number;
  }

  /** Where much of the table comes, goes or moves, the groups that it is in are gathered anew. */
  #putAll(frame: Frame, moves: Moves, compare: Compare, touched: RowSet): void {
    const { going, joined, staying } = moves;
    const [left, to] = [going.all, joined.all];
    for (let i = 0; i < left.length; i++) anew.add(this.groupOf[left[i] as number] as number);
    for (let i = 0; i < to.length; i++) anew.add(to[i] as number);
    this.#regroup(moves);
    for (let i = 0; i < anew.count; i++) touched.add(anew.at(i));
    this.#eachGroup(staying, (group, stayed, from, to) => {
      if (compare === undefined || anew.has(group)) return;
      if (this.#members[group]?.standsInOrder(stayed.subarray(from, to), compare) !== false) return;
      anew.add(group);
      touched.add(group);
    });
    this.#gatherMembers(frame, anew);
    anew.clear();
  }

  /** Rows by the groups they are in now: `rows[from..to)` are those of one, as they stood. */
  #eachGroup(list: SlotList, act: (group: number, rows: Int32Array, from: number, to: number) => void): void {
    const { groupOf } = this;
    // What is done for a group may note more rows.
    const slots = list.all.slice();
    const groups = new Float64Array(slots.length);
    for (let i = 0; i < slots.length; i++) groups[i] = groupOf[slots[i] as number] as number;
    const sorted = rowsByKeys(slots, groups);
    for (let from = 0; from < sorted.length; ) {
      const group = groupOf[sorted[from] as number] as number;
      let to = from + 1;
      while (to < sorted.length && groupOf[sorted[to] as number] === group) to++;
      act(group, sorted, from, to);
      from = to;
    }
  }

  #makeRoom(row: number): void {
    if (row < this.groupOf.length) return;
    const room = Math.max(row + 1, Math.ceil(this.groupOf.length * 1.5));
    const groupOf = new Int32Array(room).fill(-1);
    groupOf.set(this.groupOf);
    this.groupOf = groupOf;
    const bornAs = new Uint32Array(room);
    bornAs.set(this.#bornAs);
    this.#bornAs = bornAs;
  }

  /** The list of a group that there is, to be written to. */
  #listOf(group: number, owner: Token): RowList {
    const list = this.#members[group] ?? EMPTY;
    if (list.owner === owner) return list;
    const own = list.copy(owner);
    this.#members[group] = own;
    return own;
  }
}
