// The graph run again and again for trials on frames that only their maker sees: of the steps, those alone that follow from what
// is tried and lead to what is asked. Which those are is found out once. Several trials, each in a frame of its own, are run side
// by side, step by step: a step that was just run for one trial runs for the next in little more than half the time. Nothing is
// noted or told, and the frames are of no use for anything else afterwards. Called by queries/draws.ts.

import type { Frame } from '../frame.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import { RowSet } from '../row-set.ts';
import { ColumnNode } from './column-node.ts';
import { GeneratorNode } from './generator-node.ts';
import { dirtyRows, type Edge, type Graph, type Node, type Source } from './graph.ts';
import { IndexNode } from './group-nodes.ts';
import { RangeNode } from './range-node.ts';
import { RecordNode } from './record-node.ts';

/** Changes what a step has worked out, for every row, before others read it; `at`: of the trials side by side, which one. */
export type Touch = (frame: Frame, at: number) => void;

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

/** After so many trials it is known which steps have most of their rows worked out again each time. */
const WATCHED = 8;
/** The first works everything out. */
const UNWATCHED = 1;

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
  #runs = 0;

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

  /** Whether it is known how each step is best run: from then on there may be frames beside the first. */
  get isSettled(): boolean {
    return this.#runs >= UNWATCHED + WATCHED;
  }

  /** Another frame to run trials in, which stands as the first does. */
  beside(first: Frame, frame: Frame): void {
    const tables = new Set(this.#steps.flatMap(({ shown }) => shown ?? []));
    for (const shown of tables) shown.beside(first, frame);
  }

  /** Brings what is asked for up to date in each frame. */
  run(frames: readonly Frame[]): void {
    this.#runs += 1;
    for (const step of this.#steps) {
      for (let at = 0; at < frames.length; at++) this.#runStep(step, frames[at] as Frame, at);
    }
    this.#changed.clear();
    for (const frame of frames) frame.releaseSlots();
    const [first] = frames;
    if (this.#runs === UNWATCHED + WATCHED && first !== undefined) this.#settle(first);
  }

  #runStep(step: Step, frame: Frame, at: number): void {
    const { node, touch } = step;
    const { pending } = frame;
    const changed = this.#changed;
    if (step.whole) {
      dirtyRows(frame, node).addAll();
      pending[node.rank] = 1;
    } else if (this.#runs > UNWATCHED && this.#runs <= UNWATCHED + WATCHED) step.waited += waitingShare(frame, node);
    step.shown?.narrow(frame, node, this.#runs);
    if (pending[node.rank] !== 1) return;
    pending[node.rank] = 0;
    changed.clear();
    // Where nobody listens, nobody is told which.
    if (step.edges.length === 0) changed.addAll();
    step.make(frame, changed);
    for (let lane = 0; lane < node.lanes; lane++) dirtyRows(frame, node, lane).clear();
    if (touch !== undefined) {
      touch(frame, at);
      changed.addAll();
    }
    if (!changed.empty) tell(frame, step.edges, changed);
  }

  /** Steps most of whose rows waited in most trials hear no more of which: they are worked out whole from now on. */
  #settle(frame: Frame): void {
    const whole = new Set<Node>();
    const remade = remadeTables(this.#steps, this.#trials);
    for (const step of this.#steps) {
      const { node } = step;
      if (node instanceof GeneratorNode) {
        const blank = remade.get(node.generator.table);
        if (blank !== undefined) step.make = remaking(node, blank);
        continue;
      }
      const table = tableOf(node);
      if (table !== undefined && remade.has(table)) {
        step.whole ||= !(node instanceof IndexNode && node.isWayBack);
        step.shown = undefined;
      }
      step.whole ||= step.waited / WATCHED >= MOSTLY;
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
const MOSTLY = 0.3;

/** Of the rows of a step, the share that waits; 0 where it is not told by rows. */
function waitingShare(frame: Frame, node: Node): number {
  if (frame.pending[node.rank] !== 1) return 0;
  if (node instanceof GeneratorNode) return 1;
  const dirty = dirtyRows(frame, node);
  if (node instanceof IndexNode && !node.isWayBack) {
    return dirty.all ? 1 : dirty.count / Math.max(1, frame.rows(node.table).length);
  }
  if (!(node instanceof ColumnNode || node instanceof RecordNode)) return 0;
  return dirty.all ? 1 : dirty.count / Math.max(1, frame.rows(node.column.table).length);
}

/** Which rows the condition of a step's sheet shows, where the step comes after it; the same for all steps of a sheet. */
function shownRows(node: Node, graph: Graph, known: Map<TableDef, ShownRows>): ShownRows | undefined {
  const table = tableOf(node);
  const condition = graph.order.find((one) => one instanceof ColumnNode && one.column === table?.shown);
  if (table === undefined || condition === undefined || node.rank <= condition.rank) return undefined;
  const shown = known.get(table) ?? new ShownRows(table);
  known.set(table, shown);
  return shown;
}

/** The table whose rows a step looks at. */
function tableOf(node: Node): TableDef | undefined {
  if (node instanceof ColumnNode || node instanceof RecordNode) return node.column.table;
  if (node instanceof IndexNode) return node.table;
  return node instanceof RangeNode ? node.of.table : undefined;
}

/** The rows of a sheet that its condition shows, as they were last seen in a frame. */
interface Seen {
  readonly run: number;
  /** Of the rows and of the condition. */
  readonly stamps: readonly (number | undefined)[];
  readonly shown: readonly number[];
  /** By slot. */
  readonly isShown: Uint8Array;
  /** Rows that came to be shown, or are no more, since the run before. */
  readonly turned: readonly number[];
}

/**
 * Which rows of a sheet its own condition shows, run by run. Where all rows of such a sheet are to be looked at again, those
 * are enough that are shown, or were: what a sheet of pairs leaves out is most of it.
 */
class ShownRows {
  readonly #table: TableDef;
  readonly #seen = new Map<Frame, Seen>();

  constructor(table: TableDef) {
    this.#table = table;
  }

  beside(first: Frame, frame: Frame): void {
    const seen = this.#seen.get(first);
    if (seen !== undefined) this.#seen.set(frame, { ...seen, isShown: seen.isShown.slice() });
  }

  narrow(frame: Frame, node: Node, run: number): void {
    const known = this.#seen.get(frame);
    const seen = known?.run === run ? known : this.#look(frame, run, known);
    // The first run looks at every row, so that what is left out then is as fresh as any.
    if (run === 1) return;
    const { shown, turned } = seen;
    const dirty = dirtyRows(frame, node);
    // Where most rows are shown, all are looked at sooner than they are told apart.
    if (dirty.all && shown.length * 2 > frame.table(this.#table).length) return;
    if (dirty.all || dirty.count > shown.length) {
      const kept = dirty.all ? shown : shown.filter((row) => dirty.has(row));
      dirty.clear();
      for (const row of kept) dirty.add(row);
    }
    for (const row of turned) dirty.add(row);
    if (turned.length > 0) frame.pending[node.rank] = 1;
  }

  #look(frame: Frame, run: number, before: Seen | undefined): Seen {
    const { length, stamp } = frame.table(this.#table);
    const stamps = [stamp, this.#table.shown === undefined ? undefined : frame.column(this.#table.shown).stamp];
    const isSame = before !== undefined && before.stamps[0] === stamps[0] && before.stamps[1] === stamps[1];
    const seen = isSame ? { ...before, run, turned: [] } : this.#lookAgain(frame, run, length, stamps, before);
    this.#seen.set(frame, seen);
    return seen;
  }

  #lookAgain(frame: Frame, run: number, length: number, stamps: Seen['stamps'], before: Seen | undefined): Seen {
    const shown: number[] = [];
    const turned: number[] = [];
    let isShown = before?.isShown ?? new Uint8Array(length);
    if (length > isShown.length) {
      const longer = new Uint8Array(length * 2);
      longer.set(isShown);
      isShown = longer;
    }
    for (let row = 0; row < length; row++) {
      const is = frame.exists(this.#table, row) ? 1 : 0;
      if (is === 1) shown.push(row);
      if (is !== isShown[row] && before !== undefined) turned.push(row);
      isShown[row] = is;
    }
    return { run, stamps, shown, isShown, turned };
  }
}
