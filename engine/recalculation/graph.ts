// The graph of computed columns: nodes in a fixed order, edges that know how rows map, and the one loop that brings dirty
// rows up to date. Nodes are made by build.ts; the loop knows nothing of formulas, tables or screens.

import { RowSet } from './row-set.ts';

/** Something that changes and that others read: a column, the row set of a table, a group total. */
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
  readonly spread: (changed: RowSet) => void;
}

/** One step of recalculation: dirty rows in, changed rows out. */
export interface Node {
  /** For naming circles: 'Plantings / Stations'; '' for steps that no one named. */
  readonly name: string;
  readonly dirty: RowSet;
  /** The nodes this one reads from, directly. */
  readonly feeds: Node[];
  readonly source: Source;
  /** What it made is kept current row by row and needs no making anew when values are worked out again. */
  readonly kept?: boolean;
  /** Place in the order; every node comes after those that feed it. */
  rank: number;
  /** Brings the dirty rows up to date and leaves in `changed` those whose value became another. */
  run(changed: RowSet): void;
}

/** Spreads the changed rows of a source to those who read it. */
export function spread(source: Source, changed: RowSet, pending: Uint8Array): void {
  if (changed.empty) return;
  for (const edge of source.edges) {
    edge.spread(changed);
    pending[edge.to.rank] = 1;
  }
}

/**
 * Orders nodes so that each comes after its feeds. Nodes on a circle are left out of the order and come back as circles,
 * each in reading order; nodes that only depend on a circle are ordered as if its nodes were inputs.
 */
export function orderNodes(nodes: readonly Node[]): { readonly order: Node[]; readonly circles: Node[][] } {
  const order: Node[] = [];
  const circles: Node[][] = [];
  const state = new Map<Node, 'open' | 'done'>();
  const inCircle = new Set<Node>();
  for (const start of nodes) {
    if (state.has(start)) continue;
    const path: { node: Node; next: number }[] = [{ node: start, next: 0 }];
    state.set(start, 'open');
    while (path.length > 0) {
      const top = path[path.length - 1];
      if (top === undefined) break;
      const feed = top.node.feeds[top.next++];
      if (feed === undefined) {
        state.set(top.node, 'done');
        order.push(top.node);
        path.pop();
      } else if (state.get(feed) === 'open') {
        const from = path.findIndex((step) => step.node === feed);
        const circle = path.slice(from).map((step) => step.node);
        circles.push(circle);
        for (const node of circle) inCircle.add(node);
      } else if (!state.has(feed)) {
        state.set(feed, 'open');
        path.push({ node: feed, next: 0 });
      }
    }
  }
  return { order: order.filter((node) => !inCircle.has(node)), circles };
}

export class Graph {
  readonly order: readonly Node[];
  readonly #pending: Uint8Array;
  readonly #changed = new RowSet();

  /** `order` as orderNodes gives it. */
  constructor(order: readonly Node[]) {
    this.order = order;
    this.#pending = new Uint8Array(order.length);
    order.forEach((node, rank) => {
      node.rank = rank;
    });
  }

  /** Tells the graph that rows of an entered source changed. */
  changed(source: Source, rows: RowSet): void {
    spread(source, rows, this.#pending);
  }

  /** Asks for rows of one node to be worked out again. */
  demand(node: Node, row: number): void {
    node.dirty.add(row);
    this.#pending[node.rank] = 1;
  }

  /** Asks for everything to be worked out again. */
  demandAll(): void {
    for (const node of this.order) {
      if (node.kept === true) continue;
      node.dirty.addAll();
      this.#pending[node.rank] = 1;
    }
  }

  /** Marks, by rank, some nodes and all that feed them, directly or through others. */
  upstream(nodes: readonly Node[]): Uint8Array {
    const marks = new Uint8Array(this.order.length);
    const open = [...nodes];
    for (let node = open.pop(); node !== undefined; node = open.pop()) {
      if (this.order[node.rank] !== node || marks[node.rank] === 1) continue;
      marks[node.rank] = 1;
      open.push(...node.feeds);
    }
    return marks;
  }

  /**
   * Brings everything up to date in order; `onChange` hears of each node whose rows changed. With `only`, nodes without
   * its mark keep their dirty rows for a later run.
   */
  run(onChange: (node: Node, changed: RowSet) => void, only?: Uint8Array): void {
    const { order } = this;
    for (let rank = 0; rank < order.length; rank++) {
      if (this.#pending[rank] !== 1 || (only !== undefined && only[rank] !== 1)) continue;
      this.#pending[rank] = 0;
      const node = order[rank];
      if (node === undefined) continue;
      this.#changed.clear();
      node.run(this.#changed);
      node.dirty.clear();
      if (this.#changed.empty) continue;
      spread(node.source, this.#changed, this.#pending);
      onChange(node, this.#changed);
    }
  }
}
