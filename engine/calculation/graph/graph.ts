// The graph of computed columns: nodes in a fixed order, edges that know how rows map, and the one loop that brings dirty
// rows up to date in a frame. Nodes are made by plans/build.ts and hold no data; the loop knows nothing of formulas, tables or screens.

import type { Frame } from '../frame.ts';
import { RowSet } from '../row-set.ts';

/** Something that changes and that others read: a column, the rows of a table, a total per group. */
export class Source {
  readonly edges: Edge[] = [];
  /** The node that makes it; undefined for what people enter. */
  readonly maker: Node | undefined;

  constructor(maker: Node | undefined) {
    this.maker = maker;
  }
}

export interface Edge {
  readonly to: Node;
  /** Adds to the node's dirty rows what follows from the changed rows of the source. */
  readonly propagate: (changed: RowSet, frame: Frame) => void;
}

/** What `pending` of a frame says of a node: some of its rows wait; or it is to be made whole, and nothing was ever made of it. */
export const [WAITING, ASLEEP] = [1, 2];

/** One step of recalculation: dirty rows in, changed rows out. */
export interface Node {
  /** For naming it in messages: 'plantings/stations'; '' for steps that no one named. */
  readonly name: string;
  /** The nodes this one reads from, directly. */
  readonly dependencies: Node[];
  readonly source: Source;
  /** How many dirty sets it tells apart. */
  readonly lanes: number;
  /** Place in the order; every node comes after those it depends on. */
  rank: number;
  /** Number of its first dirty set in a frame. */
  firstSet: number;
  /** Whether what it made in a frame is kept current row by row and needs no making anew. */
  isKept?(frame: Frame): boolean;
  /** Brings the dirty rows up to date and leaves in `changed` those whose value became another. */
  run(frame: Frame, changed: RowSet): void;
  /** The same for as long as `goOn` says; true where it stopped before its end: what is left waits in its dirty sets, or where
      it remembers it by itself. */
  runSome?(frame: Frame, changed: RowSet, goOn: () => boolean): boolean;
}

/** The rows of a node that wait; a node with several lanes tells them apart by where they come from. */
export function dirtyRows(frame: Frame, node: Node, lane = 0): RowSet {
  return frame.set(node.firstSet + lane);
}

/**
 * Orders nodes so that each comes after its dependencies. Circles are refused before nodes are made, so a node met twice on
 * one way is a slip of the builder.
 */
export function orderNodes(nodes: readonly Node[]): Node[] {
  const order: Node[] = [];
  const state = new Map<Node, 'open' | 'done'>();
  for (const start of nodes) {
    if (state.has(start)) continue;
    const path: { node: Node; next: number }[] = [{ node: start, next: 0 }];
    state.set(start, 'open');
    for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
      const dependency = top.node.dependencies[top.next++];
      if (dependency === undefined) {
        state.set(top.node, 'done');
        order.push(top.node);
        path.pop();
      } else if (state.get(dependency) === 'open') {
        throw new Error(`${dependency.name || 'A step'} depends on itself through ${top.node.name || 'a step'}`);
      } else if (!state.has(dependency)) {
        state.set(dependency, 'open');
        path.push({ node: dependency, next: 0 });
      }
    }
  }
  return order;
}

/** Tells those who read a source that rows of it changed. A node that is to be made whole need not hear which. */
export function passOn(frame: Frame, { edges }: Source, rows: RowSet): void {
  if (rows.empty) return;
  const { pending } = frame;
  for (let k = 0; k < edges.length; k++) {
    const { to, propagate } = edges[k] as Edge;
    if (pending[to.rank] === ASLEEP) continue;
    propagate(rows, frame);
    pending[to.rank] = WAITING;
  }
}

/** Hears of a node whose rows changed, and whether it was asleep. */
export type OnChange = (node: Node, changed: RowSet, wasAsleep: boolean) => void;

export class Graph {
  readonly order: readonly Node[];
  /** Reused from run to run: a set for far rows costs more to make than an edit to work out. */
  readonly #changed = new RowSet();

  /** `order` as orderNodes gives it. */
  constructor(order: readonly Node[]) {
    this.order = order;
    let sets = 0;
    order.forEach((node, rank) => {
      node.rank = rank;
      node.firstSet = sets;
      sets += node.lanes;
    });
  }

  /** Tells the graph that rows of a source changed. */
  changed(frame: Frame, source: Source, rows: RowSet): void {
    frame.fresh.fill(0);
    passOn(frame, source, rows);
  }

  /** Asks for rows of one node to be worked out again. */
  demand(frame: Frame, node: Node, row: number): void {
    if (frame.pending[node.rank] === ASLEEP) return;
    frame.fresh.fill(0);
    dirtyRows(frame, node).add(row);
    frame.pending[node.rank] = WAITING;
  }

  /** Asks for everything to be worked out again, or for all of some nodes. */
  demandAll(frame: Frame, nodes: readonly Node[] = this.order): void {
    frame.fresh.fill(0);
    for (const node of nodes) {
      if (node.isKept?.(frame) === true) continue;
      dirtyRows(frame, node).addAll();
      frame.pending[node.rank] = ASLEEP;
    }
  }

  /** Marks, by rank, some nodes and all that they depend on, directly or through others, but for what stays as it is. */
  upstream(nodes: readonly Node[], held?: ReadonlySet<Node>): Uint8Array {
    const marks = new Uint8Array(this.order.length);
    const open = [...nodes];
    for (let node = open.pop(); node !== undefined; node = open.pop()) {
      if (this.order[node.rank] !== node || marks[node.rank] === 1 || held?.has(node) === true) continue;
      marks[node.rank] = 1;
      open.push(...node.dependencies);
    }
    return marks;
  }

  /**
   * Brings everything up to date in order; `onChange` hears of each node whose rows changed. With `asleep` false, what nobody
   * has asked for yet sleeps on, and with `goOn` the work stops where that says so.
   */
  run(frame: Frame, onChange: OnChange, asleep = true, goOn?: () => boolean): void {
    const { pending } = frame;
    for (let rank = 0; rank < pending.length; rank++) {
      if (pending[rank] === 0 || (!asleep && pending[rank] === ASLEEP)) continue;
      if (goOn?.() === false) return;
      if (this.#step(frame, this.order[rank] as Node, onChange, goOn)) return;
    }
  }

  /** Brings one node up to date with all that it depends on; at once where nothing has changed since it last was. */
  bring(frame: Frame, node: Node, onChange: OnChange): void {
    const { fresh, pending } = frame;
    if (fresh[node.rank] === 1 || this.order[node.rank] !== node) return;
    const open = [node];
    const ranks: number[] = [];
    fresh[node.rank] = 1;
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      ranks.push(next.rank);
      for (const one of next.dependencies) {
        if (fresh[one.rank] === 1) continue;
        fresh[one.rank] = 1;
        open.push(one);
      }
    }
    for (const rank of Uint32Array.from(ranks).sort()) {
      if (pending[rank] !== 0) this.#step(frame, this.order[rank] as Node, onChange);
    }
  }

  /** Brings some nodes up to date with all that they depend on for as long as `goOn` says; true where more is left. */
  bringSome(frame: Frame, nodes: readonly Node[], onChange: OnChange, goOn: () => boolean): boolean {
    const { pending } = frame;
    const wanted = this.upstream(nodes.filter((node) => frame.fresh[node.rank] !== 1));
    for (let rank = wanted.indexOf(1); rank >= 0; rank = wanted.indexOf(1, rank + 1)) {
      if (pending[rank] === 0) continue;
      if (!goOn() || this.#step(frame, this.order[rank] as Node, onChange, goOn)) return true;
    }
    return false;
  }

  /** One node; true where it stopped before its end. */
  #step(frame: Frame, node: Node, onChange: OnChange, goOn?: () => boolean): boolean {
    const wasAsleep = frame.pending[node.rank] === ASLEEP;
    const changed = this.#changed;
    changed.clear();
    frame.pending[node.rank] = 0;
    const isLeft = goOn !== undefined && node.runSome?.(frame, changed, goOn) === true;
    if (goOn === undefined || node.runSome === undefined) node.run(frame, changed);
    if (isLeft) frame.pending[node.rank] = WAITING;
    else for (let lane = 0; lane < node.lanes; lane++) dirtyRows(frame, node, lane).clear();
    if (changed.empty) return isLeft;
    passOn(frame, node.source, changed);
    onChange(node, changed, wasAsleep);
    changed.clear();
    return isLeft;
  }
}
