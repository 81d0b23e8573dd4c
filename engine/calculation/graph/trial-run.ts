// The graph run again and again for trials on a frame that only its maker sees: of the steps, those alone that follow from what
// is tried and lead to what is asked. Which those are is found out once. Nothing is noted or told, and the frame is of no use for
// anything else afterwards. Called by queries/draws.ts.

import type { Frame } from '../frame.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import { RowSet } from '../row-set.ts';
import { ColumnNode } from './column-node.ts';
import { GeneratorNode } from './generator-node.ts';
import { dirtyRows, type Edge, type Graph, type Node, type Source } from './graph.ts';
import { IndexNode } from './group-nodes.ts';
import { RangeNode } from './range-node.ts';
import { RecordNode } from './record-node.ts';
import { ShownRows } from './shown-rows.ts';

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
  /** Tables in whose rows nothing is typed and whose rows nobody keeps by their slots: made anew in every trial where rows come and go. */
  readonly free: ReadonlySet<TableDef>;
}

/** After so many trials it is known which tables' rows mostly come and go, and after as many more which steps have most of their
    rows worked out again each time: tables made anew tell more, or less, than those whose rows come and go one by one. */
const WATCHED = 4;
/** The first works everything out, and so does the one after tables began to be made anew. */
const UNWATCHED = 1;
const REMADE_FROM = UNWATCHED + WATCHED;
const SETTLED_FROM = REMADE_FROM + UNWATCHED + WATCHED;

interface Step {
  readonly node: Node;
  /** Brings its dirty rows up to date, as the node does, or all that it makes anew. */
  make: (frame: Frame, changed: RowSet) => void;
  /** To the steps that hear of it. */
  edges: readonly Edge[];
  readonly touch: Touch | undefined;
  /** Of steps over the rows of a sheet with a condition, which stand after the condition. */
  shown: ShownRows | undefined;
  /** Rows that waited, as shares of all there are, over the trials that were watched; of what makes rows, in how many of them it ran. */
  waited: number;
  /** Worked out whole in every trial: asking which rows wait would cost more. */
  whole: boolean;
}

export class TrialRun {
  /** In order. */
  readonly #steps: Step[] = [];
  /** From what is tried. */
  readonly #edges = new Map<Source, readonly Edge[]>();
  readonly #changed = new RowSet();
  readonly #trials: Trials;
  #trial = 0;

  constructor(graph: Graph, trials: Trials) {
    const { tried, wanted, held, touched } = trials;
    const up = graph.upstream(wanted, held);
    const isStep = new Uint8Array(graph.order.length);
    for (const { edges } of tried) for (const { to } of edges) isStep[to.rank] = 1;
    for (const node of touched.keys()) isStep[node.rank] = 1;
    const nodes: Node[] = [];
    for (const node of graph.order) {
      if (node.dependencies.some(({ rank }) => isStep[rank] === 1)) isStep[node.rank] = 1;
      if (isStep[node.rank] === 1 && up[node.rank] === 1) nodes.push(node);
      else isStep[node.rank] = 0;
    }
    const heard = ({ edges }: Source): readonly Edge[] => edges.filter(({ to }) => isStep[to.rank] === 1);
    for (const source of tried) this.#edges.set(source, heard(source));
    const shown = new Map<TableDef, ShownRows>();
    for (const node of nodes) {
      this.#steps.push({
        node,
        make: (frame, changed) => node.run(frame, changed),
        edges: heard(node.source),
        touch: touched.get(node),
        waited: 0,
        whole: touched.has(node),
        shown: shownRows(node, graph, shown),
      });
    }
    this.#trials = trials;
  }

  /** How many steps a trial has at most. */
  get length(): number {
    return this.#steps.length;
  }

  /** Tells that rows of something tried changed. */
  changed(frame: Frame, source: Source, rows: RowSet): void {
    if (!rows.empty) tell(frame, this.#edges.get(source) ?? [], rows);
  }

  /** Brings what is asked for up to date. */
  run(frame: Frame): void {
    const { pending } = frame;
    const changed = this.#changed;
    this.#trial += 1;
    const isWatched = this.#trial <= SETTLED_FROM && this.#trial !== 1 && this.#trial !== REMADE_FROM + 1;
    for (const step of this.#steps) {
      const { node, touch, whole, edges, shown } = step;
      // A whole column needs no list of its rows.
      const isColumn = whole && node instanceof ColumnNode;
      if (whole) {
        if (!isColumn) dirtyRows(frame, node).addAll();
        pending[node.rank] = 1;
      } else if (isWatched) step.waited += waitingShare(frame, step);
      if (!isColumn) shown?.narrow(frame, node, this.#trial);
      if (pending[node.rank] !== 1) continue;
      pending[node.rank] = 0;
      changed.clear();
      // Where nobody listens, nobody is told which.
      if (edges.length === 0) changed.addAll();
      if (isColumn) makeColumn(frame, node, shown?.rows(frame, this.#trial), changed);
      else step.make(frame, changed);
      for (let lane = 0; lane < node.lanes; lane++) dirtyRows(frame, node, lane).clear();
      if (touch !== undefined) {
        touch(frame);
        changed.addAll();
      }
      if (!changed.empty) tell(frame, edges, changed);
    }
    changed.clear();
    frame.releaseSlots();
    if (this.#trial === REMADE_FROM) this.#remakeTables(frame);
    else if (this.#trial === SETTLED_FROM) this.#settle(frame);
  }

  /** Tables whose rows came and went in most trials are made anew from now on, and what is worked out in them is so whole. */
  #remakeTables(frame: Frame): void {
    const remade = remadeTables(this.#steps, this.#trials);
    for (const step of this.#steps) {
      const { node } = step;
      step.waited = 0;
      if (node instanceof GeneratorNode) {
        const blank = remade.get(node.generator.table);
        if (blank !== undefined) step.make = remaking(node, blank);
        continue;
      }
      const table = tableOf(node);
      if (table === undefined || !remade.has(table)) continue;
      step.whole ||= !(node instanceof IndexNode && node.isWayBack);
      step.shown = undefined;
    }
    this.#tellNoMore(frame);
  }

  /** Steps most of whose rows waited in most trials hear no more of which: they are worked out whole from now on. */
  #settle(frame: Frame): void {
    for (const step of this.#steps) {
      if (!(step.node instanceof GeneratorNode)) step.whole ||= step.waited / WATCHED >= MOSTLY;
    }
    this.#tellNoMore(frame);
  }

  /** Steps that are worked out whole are told of no rows. */
  #tellNoMore(frame: Frame): void {
    const whole = new Set<Node>();
    for (const step of this.#steps) {
      if (step.whole) whole.add(step.node);
      makeWhole(step);
    }
    const told = (edges: readonly Edge[]): readonly Edge[] => edges.filter(({ to }) => !whole.has(to));
    for (const [source, edges] of this.#edges) this.#edges.set(source, told(edges));
    for (const step of this.#steps) step.edges = told(step.edges);
    // Ways back are kept up only where somebody still goes them.
    for (const { node } of this.#steps) if (node instanceof IndexNode) node.forgetWayBack(frame);
  }
}

function tell(frame: Frame, edges: readonly Edge[], rows: RowSet): void {
  for (let k = 0; k < edges.length; k++) {
    const { to, propagate } = edges[k] as Edge;
    propagate(rows, frame);
    frame.pending[to.rank] = 1;
  }
}

function makeColumn(frame: Frame, node: ColumnNode, rows: Int32Array | undefined, changed: RowSet): void {
  if (rows === undefined) node.runAll(frame, changed);
  else node.runRows(frame, changed, rows);
}

function remaking(node: GeneratorNode, blank: readonly ColumnDef[]): Step['make'] {
  return (frame, changed) => {
    node.remake(frame, blank);
    changed.addAll();
  };
}

/** An index of a table that is looked at whole keeps its groups. */
function makeWhole(step: Step): void {
  const { node, whole } = step;
  if (!whole || !(node instanceof IndexNode)) return;
  step.make = (frame, changed) => {
    node.again(frame);
    changed.addAll();
  };
}

/**
 * The tables whose rows are made anew from now on, with their columns that nobody works out: those whose rows came and went in most
 * trials. One whose rows another table follows from is so only where that one is, and one of which something stays as it is, or
 * is changed by slots, is not.
 */
function remadeTables(
  steps: readonly Step[],
  { held, touched, free }: Trials,
): ReadonlyMap<TableDef, readonly ColumnDef[]> {
  const kept = new Set<TableDef>();
  for (const node of [...held, ...touched.keys()]) {
    const table = tableOf(node);
    if (table !== undefined) kept.add(table);
  }
  const remade = new Map<TableDef, readonly ColumnDef[]>();
  // Those that follow come after.
  const nodes = steps.map(({ node }) => node);
  for (const { node, waited } of [...steps].reverse()) {
    if (!(node instanceof GeneratorNode)) continue;
    const { table, inputs, remake } = node.generator;
    const comesAndGoes = waited / WATCHED >= MOSTLY;
    if (remake !== undefined && comesAndGoes && free.has(table) && !kept.has(table))
      remade.set(table, blankColumns(table, nodes));
    else for (const input of inputs) if ('rowsOf' in input) kept.add(input.rowsOf);
  }
  return remade;
}

function blankColumns(table: TableDef, nodes: readonly Node[]): readonly ColumnDef[] {
  const made = new Set<ColumnDef>();
  for (const node of nodes) {
    if (node instanceof ColumnNode) made.add(node.column);
    else if (node instanceof RecordNode) for (const column of [node.column, ...node.figures]) made.add(column);
    else if (node instanceof GeneratorNode) for (const column of node.generator.columns) made.add(column);
  }
  return table.columns.filter((column) => !made.has(column));
}

/** From this share of its rows on, a step is worked out whole. */
const MOSTLY = 0.2;

/** Of the rows that a step may have to look at, the share that waits; 0 where it is not told by rows. */
function waitingShare(frame: Frame, { node, shown }: Step): number {
  if (frame.pending[node.rank] !== 1) return 0;
  if (node instanceof GeneratorNode) return 1;
  if (!(node instanceof ColumnNode || node instanceof RecordNode || (node instanceof IndexNode && !node.isWayBack)))
    return 0;
  const dirty = dirtyRows(frame, node);
  if (dirty.all) return 1;
  const table = node instanceof IndexNode ? node.table : node.column.table;
  // A sheet's condition is looked at for the rows that it leaves out too.
  const rows = shown === undefined ? frame.table(table).liveCount : frame.rows(table).length;
  return dirty.count / Math.max(1, rows);
}

/** Which rows the condition of a step's sheet shows, where the step comes after it; the same for all steps of a sheet. */
function shownRows(node: Node, graph: Graph, known: Map<TableDef, ShownRows>): ShownRows | undefined {
  const table = tableOf(node);
  const condition = graph.order.find(
    (one): one is ColumnNode => one instanceof ColumnNode && one.column === table?.shown,
  );
  if (table === undefined || condition === undefined || node.rank <= condition.rank) return undefined;
  const shown = known.get(table) ?? new ShownRows(table, condition.column);
  known.set(table, shown);
  return shown;
}

/** The table whose rows a step looks at. */
function tableOf(node: Node): TableDef | undefined {
  if (node instanceof ColumnNode || node instanceof RecordNode) return node.column.table;
  if (node instanceof IndexNode) return node.table;
  return node instanceof RangeNode ? node.of.table : undefined;
}
