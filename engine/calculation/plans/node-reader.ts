// What the planner is told and asks while it plans the formula of one node: each read becomes an edge to that node. The
// builder hands over the ways to draw them; called by build.ts alone, once a node, so it is a class and not a bag of closures.

import type { FunctionDefinition } from '../../functions/definition.ts';
import type { Typed } from '../../language/typed.ts';
import type { Unit } from '../../units/unit.ts';
import type { Vocabulary } from '../../units/vocabulary.ts';
import type { Scalar } from '../../values/error.ts';
import type { ValueType } from '../../values/type.ts';
import type { Dictionaries, FrameState } from '../frame.ts';
import type { ColumnNode } from '../graph/column-node.ts';
import type { Source } from '../graph/graph.ts';
import type { IndexNode, TotalNode, WatchNode } from '../graph/group-nodes.ts';
import type { RangeNode } from '../graph/range-node.ts';
import type { RecordNode } from '../graph/record-node.ts';
import type { GroupIndex } from '../indexes/group-index.ts';
import { cellKernel } from '../kernels/kept-cells.ts';
import { typedKernel } from '../kernels/load-kernels.ts';
import type { Kernel } from '../kernels/vector.ts';
import type { ColumnDef, Layout, TableDef } from '../layout.ts';
import type { Edges } from './edges.ts';
import { plan } from './plan.ts';
import type {
  CountedRows,
  KeySource,
  LinkStep,
  PlannedRange,
  PlannedTotal,
  PlanSchema,
  RangedRequest,
  Reader,
  ScanRequest,
  TotalRequest,
} from './reader.ts';

/** The node of a computed column. */
export type ComputedNode = ColumnNode | RecordNode;

/** How the builder makes and wires what a formula reads. */
export interface Wiring {
  readonly schema: PlanSchema;
  readonly layout: Layout;
  readonly words: Dictionaries;
  readonly edges: Edges;
  readonly todaySource: Source;
  columnSource(column: ColumnDef): Source;
  typedSource(column: ColumnDef): Source;
  rowsSource(table: TableDef): Source;
  /** Whether a column is worked out rather than entered. */
  isComputed(column: ColumnDef): boolean;
  index(table: string, columns: readonly string[]): IndexNode;
  total(request: TotalRequest): TotalNode;
  watch(request: ScanRequest): WatchNode;
  ranged(request: RangedRequest, to: ComputedNode): RangeNode;
  /** From changed groups to the rows that read them; gives whether that is every row. */
  groupEdge(from: Source, index: FrameState<GroupIndex>, sources: readonly KeySource[], to: ComputedNode): boolean;
  linkEdge(source: Source, links: readonly LinkStep[], to: ComputedNode): void;
  asColumn(tree: Typed, table: TableDef, asker: ColumnDef): ColumnDef;
  /** One changed row of the table has every row of the column worked out again. */
  readsWhole(column: ColumnDef, table: TableDef): void;
  counts(call: Typed, rows: CountedRows, step: ComputedNode): void;
}

export class NodeReader implements Reader {
  readonly #wiring: Wiring;
  readonly #node: ComputedNode;
  /** The column whose formula asks, where the node stands for a part of it. */
  readonly #named: ColumnDef;

  constructor(wiring: Wiring, node: ComputedNode, named: ColumnDef) {
    this.#wiring = wiring;
    this.#node = node;
    this.#named = named;
  }

  // The schema.

  get functions(): ReadonlyMap<string, FunctionDefinition> {
    return this.#wiring.schema.functions;
  }

  get vocabulary(): Vocabulary {
    return this.#wiring.schema.vocabulary;
  }

  unit(symbol: string): Unit | undefined {
    return this.#wiring.schema.unit(symbol);
  }

  keyOf(table: string): string | undefined {
    return this.#wiring.schema.keyOf(table);
  }

  typeOf(table: string, column: string): ValueType | undefined {
    return this.#wiring.schema.typeOf(table, column);
  }

  tableName(table: string): string {
    return this.#wiring.schema.tableName(table);
  }

  columnName(table: string, column: string): string {
    return this.#wiring.schema.columnName(table, column);
  }

  say(scalar: Scalar, type: ValueType): string {
    return this.#wiring.schema.say(scalar, type);
  }

  get layout(): Layout {
    return this.#wiring.layout;
  }

  get words(): Dictionaries {
    return this.#wiring.words;
  }

  get table(): TableDef {
    return this.#node.column.table;
  }

  plan(tree: Typed): Kernel {
    return plan(tree, this);
  }

  // What is read.

  readsCell(links: readonly LinkStep[], table: string, column: string): void {
    const { layout } = this.#wiring;
    this.#wiring.linkEdge(this.#wiring.columnSource(layout.column(table, column)), links, this.#node);
  }

  readsWhole(table: string, column: string): void {
    this.#all(this.#wiring.columnSource(this.layout.column(table, column)), table);
  }

  readsRowsOf(id: string): void {
    const table = this.layout.table(id);
    this.#all(this.#wiring.rowsSource(table), id);
    if (table.shown !== undefined) this.#all(this.#wiring.columnSource(table.shown), id);
  }

  readsToday(): void {
    this.#wiring.edges.all(this.#wiring.todaySource, this.#node);
  }

  indexForLookup(table: string, columns: readonly string[]): FrameState<GroupIndex> {
    const index = this.#wiring.index(table, columns);
    this.#all(index.source, table);
    return index.index;
  }

  total(request: TotalRequest): PlannedTotal {
    const total = this.#wiring.total(request);
    this.#grouped(total.source, total.index, request);
    return { index: total.index, totals: total.totals };
  }

  scan(request: ScanRequest): FrameState<GroupIndex> {
    const watch = this.#wiring.watch(request);
    this.#grouped(watch.source, watch.index, request);
    return watch.index;
  }

  asColumn(tree: Typed, table = this.table): ColumnDef {
    return this.#wiring.asColumn(tree, table, this.#named);
  }

  load(column: ColumnDef): Kernel {
    this.#wiring.edges.sameRows(this.#wiring.columnSource(column), this.#node);
    return cellKernel(this.#wiring.layout, [column]);
  }

  typed(column: ColumnDef): Kernel {
    if (!this.#wiring.isComputed(column)) return this.load(column);
    this.#wiring.edges.sameRows(this.#wiring.typedSource(column), this.#node);
    return typedKernel(column);
  }

  ranged(request: RangedRequest): PlannedRange {
    const { of, ranged } = this.#wiring.ranged(request, this.#node);
    return { index: of.index, ranged };
  }

  counts(call: Typed, rows: CountedRows): void {
    this.#wiring.counts(call, rows, this.#node);
  }

  #all(source: Source, table: string): void {
    this.#wiring.readsWhole(this.#named, this.layout.table(table));
    this.#wiring.edges.all(source, this.#node);
  }

  #grouped(from: Source, index: FrameState<GroupIndex>, { sources, table }: TotalRequest | ScanRequest): void {
    if (this.#wiring.groupEdge(from, index, sources, this.#node))
      this.#wiring.readsWhole(this.#named, this.layout.table(table));
  }
}
