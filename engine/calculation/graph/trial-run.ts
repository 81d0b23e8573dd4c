// The graph run again and again for trials on a frame that only its maker sees: of the steps, those alone that follow from what
// is tried and lead to what is asked. Which those are is found out once. Nothing is noted or told, and the frame is of no use for
// anything else afterwards. Called by queries/draws.ts.

import type { Frame } from '../frame.ts';
import type { TableDef } from '../layout.ts';
import { RowSet } from '../row-set.ts';
import { ColumnNode } from './column-node.ts';
import { dirtyRows, type Edge, type Graph, type Node, type Source } from './graph.ts';
import { IndexNode } from './group-nodes.ts';
import { RangeNode } from './range-node.ts';
import { RecordNode } from './record-node.ts';

/** Changes what a step has worked out, for every row, before others read it. */
export type Touch = (frame: Frame) => void;

export interface Trials {
  /** What trials change. */
  readonly tried: readonly Source[];
  /** The steps whose outcome is asked for. */
  readonly wanted: readonly Node[];
  /** Steps that stay as they are, whatever is tried. */
  readonly held: ReadonlySet<Node>;
  readonly touched: ReadonlyMap<Node, Touch>;
}

export class TrialRun {
  /** In order. */
  readonly #steps: Node[] = [];
  readonly #edges = new Map<Source, readonly Edge[]>();
  /** Steps over the rows of a sheet with a condition, which stand after the condition. */
  readonly #conditional = new Map<Node, ShownRows>();
  readonly #touched: ReadonlyMap<Node, Touch>;
  readonly #changed = new RowSet();
  #trial = 0;

  constructor(graph: Graph, { tried, wanted, held, touched }: Trials) {
    const up = graph.upstream(wanted, held);
    const isStep = new Uint8Array(graph.order.length);
    for (const { edges } of tried) for (const { to } of edges) isStep[to.rank] = 1;
    for (const node of touched.keys()) isStep[node.rank] = 1;
    for (const node of graph.order) {
      if (node.dependencies.some(({ rank }) => isStep[rank] === 1)) isStep[node.rank] = 1;
      if (isStep[node.rank] === 1 && up[node.rank] === 1) this.#steps.push(node);
      else isStep[node.rank] = 0;
    }
    for (const source of [...tried, ...this.#steps.map((node) => node.source)]) {
      this.#edges.set(
        source,
        source.edges.filter(({ to }) => isStep[to.rank] === 1),
      );
    }
    const shown = new Map<TableDef, ShownRows>();
    for (const node of this.#steps) {
      const table = tableOf(node);
      const condition = graph.order.find((one) => one instanceof ColumnNode && one.column === table?.shown);
      if (table === undefined || condition === undefined || node.rank <= condition.rank) continue;
      const known = shown.get(table) ?? new ShownRows(table);
      shown.set(table, known);
      this.#conditional.set(node, known);
    }
    this.#touched = new Map([...touched].filter(([node]) => isStep[node.rank] === 1));
  }

  /** How many steps a trial has at most. */
  get length(): number {
    return this.#steps.length;
  }

  /** Tells that rows of something tried changed. */
  changed(frame: Frame, source: Source, rows: RowSet): void {
    if (rows.empty) return;
    for (const { to, propagate } of this.#edges.get(source) ?? []) {
      propagate(rows, frame);
      frame.pending[to.rank] = 1;
    }
  }

  /** Brings what is asked for up to date. */
  run(frame: Frame): void {
    for (const node of this.#touched.keys()) {
      dirtyRows(frame, node).addAll();
      frame.pending[node.rank] = 1;
    }
    const { pending } = frame;
    const changed = this.#changed;
    this.#trial += 1;
    for (const node of this.#steps) {
      this.#conditional.get(node)?.narrow(frame, node, this.#trial);
      if (pending[node.rank] !== 1) continue;
      pending[node.rank] = 0;
      changed.clear();
      node.run(frame, changed);
      for (let lane = 0; lane < node.lanes; lane++) dirtyRows(frame, node, lane).clear();
      const touch = this.#touched.get(node);
      if (touch !== undefined) {
        touch(frame);
        changed.addAll();
      }
      this.changed(frame, node.source, changed);
    }
    changed.clear();
    frame.releaseSlots();
  }
}

/** The table whose rows a step looks at. */
function tableOf(node: Node): TableDef | undefined {
  if (node instanceof ColumnNode || node instanceof RecordNode) return node.column.table;
  if (node instanceof IndexNode) return node.table;
  return node instanceof RangeNode ? node.of.table : undefined;
}

/**
 * Which rows of a sheet its own condition shows, trial by trial. Where all rows of such a sheet are to be looked at again, those
 * are enough that are shown, or were: what a sheet of pairs leaves out is most of it.
 */
class ShownRows {
  readonly #table: TableDef;
  #trial = 0;
  #shown: readonly number[] = [];
  #was = new Uint8Array(0);
  /** Rows that came to be shown, or are no more, since the trial before. */
  #turned: readonly number[] = [];

  constructor(table: TableDef) {
    this.#table = table;
  }

  narrow(frame: Frame, node: Node, trial: number): void {
    if (this.#trial !== trial) this.#look(frame, trial);
    // The first trial looks at every row, so that what is left out then is as fresh as any.
    if (trial === 1) return;
    const dirty = dirtyRows(frame, node);
    if (dirty.all || dirty.count > this.#shown.length) {
      const kept = this.#shown.filter((row) => dirty.has(row));
      dirty.clear();
      for (const row of kept) dirty.add(row);
    }
    for (const row of this.#turned) dirty.add(row);
    if (this.#turned.length > 0) frame.pending[node.rank] = 1;
  }

  #look(frame: Frame, trial: number): void {
    const shown: number[] = [];
    const turned: number[] = [];
    const { length } = frame.table(this.#table);
    if (length > this.#was.length) {
      const longer = new Uint8Array(length * 2);
      longer.set(this.#was);
      this.#was = longer;
    }
    for (let row = 0; row < length; row++) {
      const is = frame.exists(this.#table, row) ? 1 : 0;
      if (is === 1) shown.push(row);
      if (is !== this.#was[row]) turned.push(row);
      this.#was[row] = is;
    }
    this.#trial = trial;
    this.#shown = shown;
    this.#turned = trial === 1 ? [] : turned;
  }
}
