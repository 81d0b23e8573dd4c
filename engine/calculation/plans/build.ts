// Builds the graph of a workbook's schema: plans every computed column, shares indexes and totals between those who ask for
// the same, draws the edges along which dirty rows travel, and orders the nodes. Built anew whenever formulas, columns or
// units change; data edits never come here, and all frames of a schema share what is built.

import type { Typed } from '../../language/typed.ts';
import type { Token } from '../../values/column.ts';
import { figureColumn } from '../../values/figures.ts';
import { isText, type ValueType } from '../../values/type.ts';
import { type Dictionaries, FrameState, type Shared } from '../frame.ts';
import type { RowGenerator } from '../generators/generator.ts';
import { ColumnNode } from '../graph/column-node.ts';
import { GeneratorNode, RowsSeen } from '../graph/generator-node.ts';
import { Graph, type Node, orderNodes, Source } from '../graph/graph.ts';
import { IndexNode, TotalNode, WatchNode } from '../graph/group-nodes.ts';
import { type GroupReaders, RangeNode } from '../graph/range-node.ts';
import { RecordNode } from '../graph/record-node.ts';
import { GroupIndex, type KeyColumn } from '../indexes/group-index.ts';
import { RangedRows, type RangeOf } from '../indexes/ranged-rows.ts';
import { Totals } from '../indexes/totals.ts';
import type { ColumnDef, Layout, TableDef } from '../layout.ts';
import { Edges } from './edges.ts';
import { type ComputedNode, NodeReader, type Wiring } from './node-reader.ts';
import { conditionInParts } from './pair-conditions.ts';
import type { PairSheet } from './pair-ranges.ts';
import { plan } from './plan.ts';
import type {
  CountedRows,
  KeySource,
  LinkStep,
  PlanSchema,
  RangedRequest,
  Reader,
  ScanRequest,
  TotalRequest,
} from './reader.ts';

/** A column to compute. */
export interface Computed {
  readonly column: ColumnDef;
  readonly typed: Typed;
}

/** Makes a place for a piece of state in frames. */
export type StatePlaces = <T extends Shared>(make: (owner: Token) => T) => FrameState<T>;

export interface BuildRequest {
  readonly layout: Layout;
  readonly words: Dictionaries;
  readonly schema: PlanSchema;
  readonly computed: readonly Computed[];
  /** The row generators, which may keep state of their own in frames. */
  readonly generators: (state: StatePlaces) => readonly RowGenerator[];
}

export interface Built {
  readonly graph: Graph;
  readonly columnNode: (column: ColumnDef) => ComputedNode | undefined;
  /** What readers of a column hang on; the document propagates its edits through it. */
  readonly columnSource: (column: ColumnDef) => Source;
  /** What those hang on who read only what is typed over a column's formula; undefined where none does. */
  readonly typedSource: (column: ColumnDef) => Source | undefined;
  readonly rowsSource: (table: TableDef) => Source;
  readonly todaySource: Source;
  /** Tables of which one changed row has every row of a column worked out again. */
  readonly readWhole: (column: ColumnDef) => ReadonlySet<TableDef>;
  /** Which rows of another table a call in a formula counts for one row; undefined for calls that count none. */
  readonly countedRows: (call: Typed) => Counted | undefined;
  /** The columns that formulas read, and the tables whose rows they go through: what isn't worked out here. */
  readonly reads: { readonly columns: readonly ColumnDef[]; readonly tables: readonly TableDef[] };
}

/** The rows that a call counts, once the step that asks for it is up to date. */
export interface Counted {
  readonly step: Node;
  readonly rows: CountedRows;
}

export function buildGraph(request: BuildRequest): Built {
  return new Builder(request).build();
}

const NOTHING: ReadonlySet<TableDef> = new Set();

class Builder {
  readonly #request: BuildRequest;
  readonly #wiring: Wiring;
  readonly #edges = new Edges();
  readonly #nodes: Node[] = [];
  readonly #columnNodes = new Map<ColumnDef, ComputedNode>();
  readonly #columnSources = new Map<ColumnDef, Source>();
  readonly #typedSources = new Map<ColumnDef, Source>();
  readonly #rowsSources = new Map<TableDef, Source>();
  readonly #generators = new Map<TableDef, GeneratorNode>();
  readonly #todaySource = new Source(undefined);
  readonly #indexes = new Map<string, IndexNode>();
  readonly #totals = new Map<string, TotalNode>();
  readonly #counted = new Map<Typed, Counted>();
  readonly #parts = new Map<string, ColumnDef>();
  readonly #partTypes = new Map<ColumnDef, ValueType>();
  readonly #readWhole = new Map<ColumnDef, Set<TableDef>>();
  #states = 0;

  constructor(request: BuildRequest) {
    this.#request = request;
    this.#wiring = {
      schema: request.schema,
      layout: request.layout,
      words: request.words,
      edges: this.#edges,
      todaySource: this.#todaySource,
      columnSource: (column) => this.#columnSource(column),
      typedSource: (column) => this.#typedSource(column),
      rowsSource: (table) => this.#rowsSource(table),
      isComputed: (column) => this.#columnNodes.has(column),
      index: (table, columns) => this.#index(table, columns),
      total: (wanted) => this.#total(wanted),
      watch: (wanted) => this.#watch(wanted),
      ranged: (wanted, to) => this.#ranged(wanted, to),
      groupEdge: (from, index, sources, to) => this.#groupEdge(from, index, sources, to),
      linkEdge: (source, links, to) => this.#linkEdge(source, links, to),
      asColumn: (tree, table, asker) => this.#asColumn(tree, table, asker),
      readsWhole: (column, table) => this.#noteWhole(column, table),
      counts: (call, rows, step) => this.#counted.set(call, { rows, step }),
    };
  }

  build(): Built {
    const { computed, generators } = this.#request;
    for (const generator of generators((make) => this.#state(make))) this.#addGenerator(generator);
    // Nodes first, so that every read finds the source it hangs on; kernels are planned once all are there.
    const planned = computed.map(({ column, typed }) => ({ node: this.#addColumn(column, typed), typed }));
    for (const node of this.#generators.values()) {
      node.generator.prepare?.((tree, table) => this.#asColumn(tree, table));
      this.#wireGenerator(node);
    }
    for (const { node, typed } of planned) {
      node.kernel = plan(this.#inParts(node.column, typed), this.#readerFor(node));
      this.#edges.sameRows(this.#rowsSource(node.column.table), node);
    }
    return {
      graph: new Graph(orderNodes(this.#nodes)),
      columnNode: (column) => this.#columnNodes.get(column),
      columnSource: (column) => this.#columnSource(column),
      typedSource: (column) => this.#typedSources.get(column),
      rowsSource: (table) => this.#rowsSource(table),
      todaySource: this.#todaySource,
      readWhole: (column) => this.#readWhole.get(column) ?? NOTHING,
      countedRows: (call) => this.#counted.get(call),
      reads: {
        columns: [...this.#columnSources].flatMap(([column, { maker }]) => (maker === undefined ? [column] : [])),
        tables: [...this.#rowsSources].flatMap(([table, { maker }]) => (maker === undefined ? [table] : [])),
      },
    };
  }

  /** The formula as it is planned: the condition on a sheet of pairs has parts of its own. */
  #inParts(column: ColumnDef, typed: Typed): Typed {
    const { table } = column;
    if (column !== table.shown || table.order.by !== 'links') return typed;
    const [first, second] = table.order.links;
    const sheet: PairSheet = { table, links: [first.column, second.column], sources: [first.to, second.to] };
    return conditionInParts(typed, sheet, (tree, of) => this.#asColumn(tree, of));
  }

  #addColumn(column: ColumnDef, { type }: Typed): ComputedNode {
    const figures = type.kind === 'record' ? type.record.figures : [];
    const behind = figures.map(({ id }) => this.#request.layout.column(column.table.id, figureColumn(column.id, id)));
    const node = type.kind === 'record' ? new RecordNode(column, behind) : new ColumnNode(column);
    this.#nodes.push(node);
    this.#columnNodes.set(column, node);
    for (const one of [column, ...behind]) this.#columnSources.set(one, node.source);
    return node;
  }

  #state<T extends Shared>(make: (owner: Token) => T): FrameState<T> {
    return new FrameState(this.#states++, make);
  }

  /** Cells that a person types on made rows come and go with the rows, so their readers come after the generator. */
  #columnSource(column: ColumnDef): Source {
    let source = this.#columnSources.get(column);
    if (source === undefined) {
      source = new Source(this.#generators.get(column.table));
      this.#columnSources.set(column, source);
    }
    return source;
  }

  /** What is typed over a formula rests on nothing, so that a formula may ask of it what its own cell is made from. */
  #typedSource(column: ColumnDef): Source {
    let source = this.#typedSources.get(column);
    if (source === undefined) {
      source = new Source(undefined);
      this.#typedSources.set(column, source);
    }
    return source;
  }

  #rowsSource(table: TableDef): Source {
    let source = this.#rowsSources.get(table);
    if (source === undefined) {
      source = new Source(undefined);
      this.#rowsSources.set(table, source);
    }
    return source;
  }

  #addGenerator(generator: RowGenerator): void {
    const node = new GeneratorNode(
      generator,
      (column) => this.#columnSource(column),
      this.#state((owner) => new RowsSeen(owner)),
    );
    this.#nodes.push(node);
    this.#generators.set(generator.table, node);
    this.#rowsSources.set(generator.table, node.source);
    // The columns a generator fills hang on it: what reads them must come after.
    for (const column of generator.columns) this.#columnSources.set(column, node.source);
  }

  #wireGenerator(node: GeneratorNode): void {
    node.generator.inputs.forEach((input, lane) => {
      if ('column' in input) {
        this.#edges.sameRows(this.#columnSource(input.column), node, lane);
        return;
      }
      const { rowsOf } = input;
      this.#edges.sameRows(this.#rowsSource(rowsOf), node, lane);
      if (rowsOf.shown !== undefined) this.#edges.sameRows(this.#columnSource(rowsOf.shown), node, lane);
    });
  }

  /**
   * The index on these columns, with its node; made on first asking. `leftOutToo`: for finding the rows that read something,
   * whether or not the sheet's own condition shows them, so that the condition itself may read through links.
   */
  #index(tableId: string, columns: readonly string[], leftOutToo = false): IndexNode {
    const name = JSON.stringify([tableId, columns, leftOutToo]);
    const known = this.#indexes.get(name);
    if (known !== undefined) return known;
    const { layout } = this.#request;
    const table = layout.table(tableId);
    const keys = columns.map((id) => this.#keyColumn(tableId, id));
    const state = this.#state((owner) => new GroupIndex({ table, keys, leftOutToo }, owner));
    const node = new IndexNode(state, table, leftOutToo);
    this.#indexes.set(name, node);
    this.#nodes.push(node);
    for (const { column } of keys) this.#edges.sameRows(this.#columnSource(column), node);
    this.#edges.sameRows(this.#rowsSource(table), node);
    if (table.shown !== undefined && !leftOutToo) this.#edges.sameRows(this.#columnSource(table.shown), node);
    return node;
  }

  #keyColumn(table: string, id: string): KeyColumn {
    const column = this.#request.layout.column(table, id);
    return { column, text: isText(this.#partTypes.get(column) ?? this.#request.schema.typeOf(table, id)) };
  }

  #total(request: TotalRequest): TotalNode {
    const name = JSON.stringify([request.table, request.keys, request.column, request.sameAs]);
    const known = this.#totals.get(name);
    if (known !== undefined) return known;
    const index = this.#index(request.table, request.keys);
    const { layout } = this.#request;
    const column = request.column === undefined ? undefined : layout.column(request.table, request.column);
    const node = new TotalNode(
      { index: index.index, column, filters: request.filters, fold: request.fold },
      this.#state((owner) => new Totals(owner)),
    );
    this.#totals.set(name, node);
    this.#nodes.push(node);
    this.#edges.sameRows(index.source, node);
    const reads = [...(column === undefined ? [] : [column]), ...request.filters.map((filter) => filter.column)];
    for (const read of new Set(reads)) this.#edges.sameRows(this.#columnSource(read), node, 1);
    // A least or most is compared with the rows that came, and need not be looked for among the others.
    if (request.fold.picks !== undefined) this.#edges.rowsOfIndex(index, node, 1);
    for (const { keys } of request.filters) if (keys !== undefined) this.#edges.all(this.#columnSource(keys), node);
    return node;
  }

  #watch(request: ScanRequest): WatchNode {
    const index = this.#index(request.table, request.keys);
    const node = new WatchNode(index.index);
    this.#nodes.push(node);
    this.#edges.sameRows(index.source, node);
    for (const id of new Set(request.reads)) {
      this.#edges.sameRows(this.#columnSource(this.#request.layout.column(request.table, id)), node, 1);
    }
    return node;
  }

  #ranged(request: RangedRequest, to: ComputedNode): RangeNode {
    const { table, conditions, sortedBy, values, filters } = request;
    const reading = to.column.table;
    const index = this.#index(table, request.keys);
    const of: RangeOf = {
      table: this.#request.layout.table(table),
      index: index.index,
      filters,
      conditions,
      sortedBy,
      values,
    };
    const { readers, index: readersIndex } = this.#groupReaders(request, reading);
    const node = new RangeNode(
      of,
      this.#state((owner) => new RangedRows(of, owner)),
      reading,
      readers,
    );
    this.#nodes.push(node);
    const rows = new Set([...conditions.map(({ column }) => column), ...filters.map(({ column }) => column)]);
    for (const column of rows) this.#edges.sameRows(this.#columnSource(column), node);
    for (const column of new Set(values))
      if (!rows.has(column)) this.#edges.sameRows(this.#columnSource(column), node, 1);
    for (const { keys } of filters) if (keys !== undefined) this.#edges.all(this.#columnSource(keys), node);
    this.#edges.rowsOfIndex(index, node);
    // Whom a change concerns is asked of what those rows want by now.
    for (const { wanted } of conditions) this.#edges.after(node, this.#columnSource(wanted));
    if (readersIndex !== undefined) this.#edges.after(node, readersIndex.source);
    this.#edges.sameRows(node.source, to);
    return node;
  }

  #groupReaders(
    { sources }: RangedRequest,
    reading: TableDef,
  ): { readonly readers: GroupReaders; readonly index?: IndexNode } {
    const own = sources.findIndex((source) => source.by === 'own row');
    if (own >= 0) return { readers: { by: 'own row', key: own } };
    const columns = sources.flatMap((source) => (source.by === 'column' ? [source.column] : []));
    if (columns.length === 0 || columns.length < sources.length) return { readers: { by: 'any' } };
    const index = this.#index(reading.id, columns, true);
    return { readers: { by: 'index', index, keys: columns.length }, index };
  }

  /** A part of a formula in a column behind the sheet; the same part of several formulas stands in one. */
  #asColumn(tree: Typed, table: TableDef, asker?: ColumnDef): ColumnDef {
    if (tree.node === 'cell' && tree.links.length === 0 && tree.table === table.id) {
      return this.#request.layout.column(table.id, tree.column);
    }
    const name = `${table.id} ${JSON.stringify(tree, (key, value) => (key === 'from' || key === 'to' ? undefined : value))}`;
    const known = this.#parts.get(name);
    if (known !== undefined) return known;
    const column = this.#request.layout.addColumn(table, `·part-${this.#parts.size + 1}`, false);
    this.#parts.set(name, column);
    this.#partTypes.set(column, tree.type);
    const node = new ColumnNode(column);
    this.#nodes.push(node);
    this.#columnNodes.set(column, node);
    this.#columnSources.set(column, node.source);
    node.kernel = plan(tree, this.#readerFor(node, asker));
    this.#edges.sameRows(this.#rowsSource(table), node);
    return column;
  }

  /** From changed groups of `from` to the rows of the reading table that read them; gives whether that is every row. */
  #groupEdge(from: Source, index: FrameState<GroupIndex>, sources: readonly KeySource[], to: ComputedNode): boolean {
    const own = sources.findIndex((source) => source.by === 'own row');
    if (own >= 0) {
      const { id } = to.column.table;
      const others = sources.flatMap((source, key) =>
        source.by === 'column' ? [{ key, ...this.#keyColumn(id, source.column) }] : [],
      );
      this.#edges.ownRow(from, to, index, own, others);
      return false;
    }
    const columns = sources.flatMap((source) => (source.by === 'column' ? [source.column] : []));
    if (columns.length === 0 || columns.length < sources.length) {
      this.#edges.all(from, to);
      return true;
    }
    this.#edges.groups(from, to, index, this.#index(to.column.table.id, columns, true), columns.length);
    return false;
  }

  /** From changed cells of a table reached through links, back along the links to the rows that look through them. */
  #linkEdge(source: Source, links: readonly LinkStep[], to: Node): void {
    if (links.length === 0) this.#edges.sameRows(source, to);
    else this.#edges.backAlong(source, to, links.map((step) => this.#index(step.table, [step.column], true)).reverse());
  }

  /** `named`: the column whose formula asks, where the node stands for a part of it. */
  #readerFor(node: ComputedNode, named: ColumnDef = node.column): Reader {
    return new NodeReader(this.#wiring, node, named);
  }

  #noteWhole(column: ColumnDef, table: TableDef): void {
    const known = this.#readWhole.get(column);
    if (known === undefined) this.#readWhole.set(column, new Set([table]));
    else known.add(table);
  }
}
