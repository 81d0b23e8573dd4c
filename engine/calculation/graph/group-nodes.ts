// The graph's nodes around groups: one keeps an index current, one keeps totals per group current, one says which groups
// changed for those who look through their rows. The rows of their change sets are groups, not rows.

import type { Frame, FrameState } from '../frame.ts';
import type { GroupIndex } from '../indexes/group-index.ts';
import type { TotalOf, Totals } from '../indexes/totals.ts';
import type { TableDef } from '../layout.ts';
import type { RowSet } from '../row-set.ts';
import { dirtyRows, type Node, Source } from './graph.ts';

/** Dirty: rows of the table whose key cells, existence or place changed. Changed: groups that gained, lost or reordered rows. */
export class IndexNode implements Node {
  readonly name = '';
  readonly dependencies: Node[] = [];
  readonly source = new Source(this);
  readonly lanes = 1;
  rank = 0;
  firstSet = 0;
  readonly index: FrameState<GroupIndex>;
  readonly table: TableDef;
  /** Only asked for the way back along links: no one hears of its groups, so it is made when first asked. */
  readonly #onlyWayBack: boolean;

  constructor(index: FrameState<GroupIndex>, table: TableDef, onlyWayBack: boolean) {
    this.index = index;
    this.table = table;
    this.#onlyWayBack = onlyWayBack;
  }

  isKept(frame: Frame): boolean {
    return this.#waits(frame) || this.index.read(frame).built;
  }

  /** The index for the way back along links: a change of every row never asks for it. */
  forWayBack(frame: Frame): GroupIndex {
    const index = this.index.read(frame);
    if (index.built) return index;
    const own = this.index.own(frame);
    own.fromScratch(frame);
    return own;
  }

  /** Where it is only asked for the way back, it is made anew when that is next asked for. */
  forgetWayBack(frame: Frame): void {
    if (this.#onlyWayBack) this.index.own(frame).forget();
  }

  /** Looks at all rows again, groups keeping their numbers. */
  again(frame: Frame): void {
    this.index.own(frame).again(frame);
  }

  /** Whether nobody hears of its groups. */
  get isWayBack(): boolean {
    return this.#onlyWayBack;
  }

  #waits(frame: Frame): boolean {
    return this.#onlyWayBack && !this.index.read(frame).built;
  }

  run(frame: Frame, changed: RowSet): void {
    const dirty = dirtyRows(frame, this);
    if (this.#onlyWayBack && dirty.all) this.index.own(frame).forget();
    if (this.#waits(frame)) return;
    if (dirty.all || !this.index.read(frame).built) {
      this.index.own(frame).fromScratch(frame);
      changed.addAll();
    } else this.index.own(frame).update(frame, dirty, changed);
  }
}

/** Takes dirty groups, and in its second lane changed rows, which become groups once the index is known to be current. */
abstract class GroupReader implements Node {
  readonly name = '';
  readonly dependencies: Node[] = [];
  readonly source = new Source(this);
  readonly lanes = 2;
  rank = 0;
  firstSet = 0;
  readonly index: FrameState<GroupIndex>;

  constructor(index: FrameState<GroupIndex>) {
    this.index = index;
  }

  /** Takes changed rows of the source table. */
  rowsChanged(rows: RowSet, frame: Frame): void {
    dirtyRows(frame, this, 1).addFrom(rows);
  }

  /** The dirty groups, those of the changed rows among them. */
  protected dirtyGroups(frame: Frame): RowSet {
    const groups = dirtyRows(frame, this);
    const rows = dirtyRows(frame, this, 1);
    if (rows.all) groups.addAll();
    const { groupOf } = this.index.read(frame);
    for (let i = 0; i < rows.count; i++) {
      const group = groupOf[rows.at(i)] ?? -1;
      if (group >= 0) groups.add(group);
    }
    return groups;
  }

  abstract run(frame: Frame, changed: RowSet): void;
}

/** Changed: groups whose total did. Of a least or most the second lane has every row that may be another in its group, or of another. */
export class TotalNode extends GroupReader {
  readonly total: TotalOf;
  readonly totals: FrameState<Totals>;

  constructor(total: TotalOf, totals: FrameState<Totals>) {
    super(total.index);
    this.total = total;
    this.totals = totals;
  }

  override run(frame: Frame, changed: RowSet): void {
    const { groupCount, numbering } = this.index.read(frame);
    const dirty = this.dirtyGroups(frame);
    const totals = this.totals.own(frame);
    totals.ready(this.total, frame);
    if (dirty.all) {
      // Where groups have the numbers that they had, those whose total stayed concern nobody.
      if (totals.numbering !== numbering) changed.addAll();
      totals.refreshAll(this.total, frame, changed);
      totals.forgetPast(groupCount);
      totals.numbering = numbering;
      return;
    }
    if (this.total.fold.picks !== undefined) {
      totals.pickAgain(this.total, dirty, dirtyRows(frame, this, 1), frame, changed);
      return;
    }
    for (let i = 0; i < dirty.count; i++) {
      const group = dirty.at(i);
      if (group < groupCount && totals.refresh(this.total, group, frame)) changed.add(group);
    }
  }
}

/** As a total's node without a total: says which groups' rows changed in cells that scanning formulas read. */
export class WatchNode extends GroupReader {
  override run(frame: Frame, changed: RowSet): void {
    changed.addFrom(this.dirtyGroups(frame));
  }
}
