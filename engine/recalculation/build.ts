// Builds the graph of a workbook: plans every computed column, shares indexes and totals between those who ask for the
// same, draws the edges along which dirty rows travel, and orders the nodes. Built anew whenever formulas, columns or units
// change; data edits never come here.

import type { FunctionDefinition } from '../functions/definition.ts';
import type { Typed } from '../language/typed.ts';
import type { Unit } from '../units/unit.ts';
import type { Vocabulary } from '../units/vocabulary.ts';
import type { Column } from '../values/column.ts';
import type { Scalar } from '../values/error.ts';
import type { ValueType } from '../values/type.ts';
import { ColumnNode } from './column-node.ts';
import { Graph, type Node, orderNodes, Source } from './graph.ts';
import { GroupIndex } from './group-index.ts';
import { IndexNode, RollupNode, WatchNode } from './group-nodes.ts';
import { type Maker, MakerNode } from './maker-node.ts';
import type { Model, TableData } from './model.ts';
import { plan } from './plan.ts';
import type { KeySource, LinkStep, Reader, RollupRequest, ScanRequest } from './reader.ts';
import { Rollup } from './rollup.ts';
import type { RowSet } from './row-set.ts';

/** A column to compute. */
export interface Computed {
  readonly table: string;
  readonly column: string;
  readonly typed: Typed;
  readonly overrides: ReadonlySet<number>;
}

/** What the builder needs to know of the workbook's schema. */
export interface Schema {
  readonly functions: ReadonlyMap<string, FunctionDefinition>;
  readonly vocabulary: Vocabulary;
  unit(symbol: string): Unit | undefined;
  keyOf(table: string): string | undefined;
  tableBehind(table: string, column: string): string;
  isText(table: string, column: string): boolean;
  say(scalar: Scalar, type: ValueType): string;
}

export interface Built {
  readonly graph: Graph;
  readonly columnNode: (table: string, column: string) => ColumnNode | undefined;
  /** What readers of an entered column hang on; the workbook spreads its edits through it. */
  readonly columnSource: (column: Column) => Source;
  readonly rowsSource: (table: TableData) => Source;
  readonly todaySource: Source;
  /** The columns on each circle, 'Plantings / Stations' style, in reading order. */
  readonly circles: readonly (readonly ColumnNode[])[];
}

export function buildGraph(
  model: Model,
  schema: Schema,
  computed: readonly Computed[],
  makers: readonly Maker[],
): Built {
  const builder = new Builder(model, schema);
  return builder.build(computed, makers);
}

class Builder {
  readonly model: Model;
  readonly #schema: Schema;
  readonly #nodes: Node[] = [];
  readonly #columnNodes = new Map<Column, ColumnNode>();
  readonly #columnSources = new Map<Column, Source>();
  readonly #rowsSources = new Map<TableData, Source>();
  readonly #todaySource = new Source(undefined);
  readonly #indexes = new Map<string, IndexNode>();
  readonly #rollups = new Map<string, RollupNode>();

  constructor(model: Model, schema: Schema) {
    this.model = model;
    this.#schema = schema;
  }

  build(computed: readonly Computed[], makers: readonly Maker[]): Built {
    for (const maker of makers) this.#addMaker(maker);
    // Nodes first, so that every read finds the source it hangs on; kernels are planned once all are there.
    const planned = computed.map((one) => {
      const table = this.model.table(one.table);
      const node = new ColumnNode(table, one.column, one.overrides, this.model.faults);
      this.#nodes.push(node);
      this.#columnNodes.set(node.column, node);
      this.#columnSources.set(node.column, node.source);
      return { node, one, table };
    });
    for (const maker of makers) this.#wireMaker(maker);
    for (const { node, one, table } of planned) {
      node.kernel = plan(one.typed, this.#readerFor(node, table));
      this.#edge(this.rowsSource(table), node, (changed) => node.dirty.addFrom(changed));
    }
    const { order, circles } = orderNodes(this.#nodes);
    return {
      graph: new Graph(order),
      columnNode: (table, column) => {
        const data = this.model.tables.get(table)?.columns.get(column);
        return data === undefined ? undefined : this.#columnNodes.get(data);
      },
      columnSource: (column) => this.columnSource(column),
      rowsSource: (table) => this.rowsSource(table),
      todaySource: this.#todaySource,
      circles: circles.map((circle) => circle.filter((node) => node instanceof ColumnNode)),
    };
  }

  columnSource(column: Column): Source {
    let source = this.#columnSources.get(column);
    if (source === undefined) {
      source = new Source(undefined);
      this.#columnSources.set(column, source);
    }
    return source;
  }

  rowsSource(table: TableData): Source {
    let source = this.#rowsSources.get(table);
    if (source === undefined) {
      source = new Source(undefined);
      this.#rowsSources.set(table, source);
    }
    return source;
  }

  #edge(source: Source, to: Node, spread: (changed: RowSet) => void): void {
    source.edges.push({ to, spread });
    if (source.maker !== undefined && !to.feeds.includes(source.maker)) to.feeds.push(source.maker);
  }

  #addMaker(maker: Maker): void {
    const node = new MakerNode(maker);
    this.#nodes.push(node);
    this.#rowsSources.set(maker.table, node.source);
    // The columns a maker fills hang on it: what reads them must come after.
    for (const column of maker.columns) this.#columnSources.set(column, node.source);
  }

  #wireMaker(maker: Maker): void {
    const node = this.rowsSource(maker.table).maker;
    if (!(node instanceof MakerNode)) return;
    for (const table of maker.readsRows)
      this.#edge(this.rowsSource(table), node, (changed) => node.dirty.addFrom(changed));
    for (const column of maker.readsColumns) this.#edge(this.columnSource(column), node, () => node.dirty.addAll());
    for (const table of maker.readsRows) {
      if (table.shown !== undefined)
        this.#edge(this.columnSource(table.shown), node, (changed) => node.dirty.addFrom(changed));
    }
  }

  /**
   * The index on these columns, with its node; made on first asking. `leftOutToo`: for finding the rows that read something,
   * whether or not the sheet's own condition shows them, so that the condition itself may read through links.
   */
  #index(tableName: string, columns: readonly string[], leftOutToo = false): IndexNode {
    const key = JSON.stringify([tableName, columns, leftOutToo]);
    const known = this.#indexes.get(key);
    if (known !== undefined) return known;
    const table = this.model.table(tableName);
    const keys = columns.map((name) => ({ column: table.column(name), text: this.#schema.isText(tableName, name) }));
    const node = new IndexNode(new GroupIndex(table, keys, this.model.texts, leftOutToo));
    this.#indexes.set(key, node);
    this.#nodes.push(node);
    const dirty = (changed: RowSet): void => node.dirty.addFrom(changed);
    for (const one of keys) this.#edge(this.columnSource(one.column), node, dirty);
    this.#edge(this.rowsSource(table), node, dirty);
    if (table.shown !== undefined && !leftOutToo) this.#edge(this.columnSource(table.shown), node, dirty);
    return node;
  }

  #rollup(request: RollupRequest): RollupNode {
    const key = JSON.stringify([request.table, request.keys, request.column, request.sameAs]);
    const known = this.#rollups.get(key);
    if (known !== undefined) return known;
    const index = this.#index(request.table, request.keys);
    const table = this.model.table(request.table);
    const column = request.column === undefined ? undefined : table.column(request.column);
    const node = new RollupNode(new Rollup(index.index, column, request.filters, request.fold, this.model.faults));
    this.#rollups.set(key, node);
    this.#nodes.push(node);
    this.#edge(index.source, node, (changed) => node.dirty.addFrom(changed));
    const reads = new Set([
      ...(column === undefined ? [] : [column]),
      ...request.filters.map((filter) => filter.column),
    ]);
    for (const read of reads) this.#edge(this.columnSource(read), node, (changed) => node.rowsChanged(changed));
    for (const { keys } of request.filters) {
      if (keys !== undefined) this.#edge(this.columnSource(keys), node, () => node.dirty.addAll());
    }
    return node;
  }

  #watch(request: ScanRequest): WatchNode {
    const index = this.#index(request.table, request.keys);
    const table = this.model.table(request.table);
    const node = new WatchNode(index.index);
    this.#nodes.push(node);
    this.#edge(index.source, node, (changed) => node.dirty.addFrom(changed));
    for (const name of new Set(request.reads)) {
      this.#edge(this.columnSource(table.column(name)), node, (changed) => node.rowsChanged(changed));
    }
    return node;
  }

  /** From changed groups of `from` to the rows of the reading table that read them. */
  #groupEdge(from: Source, index: GroupIndex, sources: readonly KeySource[], to: Node, table: TableData): void {
    const own = sources.findIndex((source) => source.by === 'own row');
    if (own >= 0) {
      this.#edge(from, to, (changed) => {
        if (changed.all) to.dirty.addAll();
        else for (let i = 0; i < changed.count; i++) to.dirty.add(index.keyValue(changed.at(i), own));
      });
      return;
    }
    const columns = sources.map((source) => (source.by === 'column' ? source.column : undefined));
    if (columns.length === 0 || columns.includes(undefined)) {
      this.#edge(from, to, () => to.dirty.addAll());
      return;
    }
    const readers = this.#index(
      table.name,
      columns.filter((name) => name !== undefined),
      true,
    );
    to.feeds.push(readers);
    const key: number[] = columns.map(() => 0);
    this.#edge(from, to, (changed) => {
      if (changed.all) {
        to.dirty.addAll();
        return;
      }
      for (let i = 0; i < changed.count; i++) {
        for (let k = 0; k < key.length; k++) key[k] = index.keyValue(changed.at(i), k);
        addMembers(readers.index, readers.index.find(key), to.dirty);
      }
    });
  }

  /** From changed cells of a table reached through links, back along the links to the rows that look through them. */
  #linkEdge(source: Source, links: readonly LinkStep[], to: Node): void {
    if (links.length === 0) {
      this.#edge(source, to, (changed) => to.dirty.addFrom(changed));
      return;
    }
    const ways = links.map((step) => this.#index(step.table, [step.column], true)).reverse();
    for (const way of ways) if (!to.feeds.includes(way)) to.feeds.push(way);
    this.#edge(source, to, (changed) => {
      if (changed.all) {
        to.dirty.addAll();
        return;
      }
      for (let i = 0; i < changed.count; i++) followBack(ways, 0, changed.at(i), to.dirty);
    });
  }

  #readerFor(node: ColumnNode, table: TableData): Reader {
    const schema = this.#schema;
    const reader: Reader = {
      ...schema,
      model: this.model,
      table,
      unit: (symbol) => schema.unit(symbol),
      plan: (tree) => plan(tree, reader),
      readsCell: (links, target, column) => {
        const source = this.columnSource(this.model.table(target).column(column));
        this.#linkEdge(source, links, node);
      },
      readsWhole: (target, column) => {
        this.#edge(this.columnSource(this.model.table(target).column(column)), node, () => node.dirty.addAll());
      },
      readsRowsOf: (target) => {
        const data = this.model.table(target);
        this.#edge(this.rowsSource(data), node, () => node.dirty.addAll());
        if (data.shown !== undefined) this.#edge(this.columnSource(data.shown), node, () => node.dirty.addAll());
      },
      readsToday: () => this.#edge(this.#todaySource, node, () => node.dirty.addAll()),
      indexForLookup: (target, columns) => {
        const index = this.#index(target, columns);
        this.#edge(index.source, node, () => node.dirty.addAll());
        return index.index;
      },
      rollup: (request) => {
        const rollup = this.#rollup(request);
        this.#groupEdge(rollup.source, rollup.rollup.index, request.sources, node, table);
        return rollup.rollup;
      },
      scan: (request) => {
        const watch = this.#watch(request);
        this.#groupEdge(watch.source, watch.index, request.sources, node, table);
        return watch.index;
      },
    };
    return reader;
  }
}

function addMembers(index: GroupIndex, group: number, into: RowSet): void {
  const { rows, count } = index.members(group);
  for (let i = 0; i < count; i++) into.add(rows[i] ?? 0);
}

/** The depth is the number of links in the formula, never the number of rows. */
function followBack(ways: readonly IndexNode[], step: number, row: number, into: RowSet): void {
  const way = ways[step];
  if (way === undefined) {
    into.add(row);
    return;
  }
  const { rows, count } = way.index.members(way.index.findOne(row));
  for (let i = 0; i < count; i++) followBack(ways, step + 1, rows[i] ?? 0, into);
}
