// The node that makes a sheet's rows: one per row of another sheet, per day, week or month, per pair, per dated event. It
// runs before every column of its sheet, and puts back what a person typed on a row whenever that row comes to life.

import type { Token } from '../../values/column.ts';
import type { Frame, FrameState, Shared } from '../frame.ts';
import type { GeneratedRows, RowGenerator } from '../generators/generator.ts';
import type { ColumnDef } from '../layout.ts';
import { RowSet } from '../row-set.ts';
import { dirtyRows, type Node, passOn, Source } from './graph.ts';

const NO_COLUMNS: readonly ColumnDef[] = [];

/** How the rows that a generator goes by stood when it last made all of its rows: none of them came, went or moved while the stamps last. */
export class RowsSeen implements Shared {
  owner: Token | undefined;
  readonly stamps: readonly (string | undefined)[];

  constructor(owner: Token, stamps: readonly (string | undefined)[] = []) {
    this.owner = owner;
    this.stamps = stamps;
  }

  copy(owner: Token): RowsSeen {
    return new RowsSeen(owner, this.stamps);
  }
}

export class GeneratorNode implements Node {
  readonly name: string;
  readonly dependencies: Node[] = [];
  readonly source = new Source(this);
  rank = 0;
  firstSet = 0;
  readonly generator: RowGenerator;
  /** What readers of a column of the sheet hang on. */
  readonly #sourceOf: (column: ColumnDef) => Source;
  readonly #seen: FrameState<RowsSeen>;

  constructor(generator: RowGenerator, sourceOf: (column: ColumnDef) => Source, seen: FrameState<RowsSeen>) {
    this.name = generator.table.id;
    this.generator = generator;
    this.#sourceOf = sourceOf;
    this.#seen = seen;
  }

  /** One for each input. */
  get lanes(): number {
    return Math.max(1, this.generator.inputs.length);
  }

  /** Makes all rows anew, where its generator can. */
  remake(frame: Frame, blank: readonly ColumnDef[]): void {
    this.generator.remake?.(frame, blank);
  }

  run(frame: Frame, changed: RowSet): void {
    this.#make(frame, changed);
  }

  runSome(frame: Frame, changed: RowSet, goOn: () => boolean): boolean {
    this.#make(frame, changed, goOn);
    if (this.generator.isLeft?.(frame) !== true) return false;
    for (let lane = 0; lane < this.lanes; lane++) dirtyRows(frame, this, lane).clear();
    return true;
  }

  #make(frame: Frame, changed: RowSet, goOn?: () => boolean): void {
    const { table, inputs, columns } = this.generator;
    const first = dirtyRows(frame, this);
    const dirty = inputs.map((_, lane) => dirtyRows(frame, this, lane));
    if (first.all) this.#askedWhole(frame, dirty);
    const came: number[] = [];
    const gone: number[] = [];
    const rows: GeneratedRows = {
      add(row) {
        if (row < frame.table(table).length) frame.setLive(table, row, true);
        else frame.addSlot(table, row, columns);
        came.push(row);
        changed.add(row);
      },
      expect(slots) {
        for (const column of table.columns) frame.ownColumn(column).makeRoom(slots);
      },
      remove(row) {
        gone.push(row);
        changed.add(row);
      },
      change(row) {
        changed.add(row);
      },
    };
    this.generator.generate(frame, dirty, rows, goOn);
    frame.fillOut(table);
    frame.setManyLive(table, gone, false);
    const touched = new Map<ColumnDef, RowSet>();
    const { madeCells } = frame;
    const { live } = frame.table(table);
    for (const row of came) {
      if (live[row] !== 1) continue;
      for (const column of madeCells?.rowMade(table, row) ?? NO_COLUMNS) touch(touched, column, row);
    }
    for (const [column, touchedRows] of touched) this.#tell(frame, column, touchedRows);
  }

  /** Every input counts as changed, but for rows that are known to stand as they stood. */
  #askedWhole(frame: Frame, dirty: readonly RowSet[]): void {
    const { inputs } = this.generator;
    const { stamps } = this.#seen.read(frame);
    const now = inputs.map((input) => ('rowsOf' in input ? frame.rowsStamp(input.rowsOf) : undefined));
    for (const [lane, set] of dirty.entries()) {
      if (now[lane] === undefined || now[lane] !== stamps[lane]) set.addAll();
      else set.clear();
    }
    this.#seen.put(frame, new RowsSeen(frame.token, now));
  }

  #tell(frame: Frame, column: ColumnDef, rows: RowSet): void {
    passOn(frame, this.#sourceOf(column), rows);
  }
}

function touch(touched: Map<ColumnDef, RowSet>, column: ColumnDef, row: number): void {
  let rows = touched.get(column);
  if (rows === undefined) {
    rows = new RowSet();
    touched.set(column, rows);
  }
  rows.add(row);
}
