// What the planner asks of the graph's builder while it plans a column: the columns it reads, so that edges can be drawn,
// and shared indexes and totals. An interface, so that planning and wiring stay two rooms.

import type { Fold, FunctionDefinition } from '../../functions/definition.ts';
import type { Typed } from '../../language/typed.ts';
import type { Unit } from '../../units/unit.ts';
import type { Vocabulary } from '../../units/vocabulary.ts';
import type { Scalar } from '../../values/error.ts';
import { isText, type ValueType } from '../../values/type.ts';
import type { Dictionaries, Frame, FrameState } from '../frame.ts';
import type { GroupIndex } from '../indexes/group-index.ts';
import type { RangeCondition, RangedRows } from '../indexes/ranged-rows.ts';
import type { RowFilter, Totals } from '../indexes/totals.ts';
import type { Kernel } from '../kernels/vector.ts';
import type { ColumnDef, Layout, TableDef } from '../layout.ts';

/** What planning needs to know of the workbook's schema. Sheets (tables here) and columns go by their ids. */
export interface PlanSchema {
  readonly functions: ReadonlyMap<string, FunctionDefinition>;
  /** For reading the conditions that stand as text in sheets of criteria. */
  readonly vocabulary: Vocabulary;
  unit(symbol: string): Unit | undefined;
  /** The key column of a sheet, if it has one. */
  keyOf(table: string): string | undefined;
  /** The type of a column; undefined while its formula doesn't check. */
  typeOf(table: string, column: string): ValueType | undefined;
  /** As people know it, for sentences. */
  tableName(table: string): string;
  columnName(table: string, column: string): string;
  /** Text of a value as `&` joins it. */
  say(scalar: Scalar, type: ValueType): string;
}

/** A link column followed, and the table it stands in. */
export interface LinkStep {
  readonly table: string;
  readonly column: string;
}

/** How the cells that read a group are found from the group's key values. */
export type KeySource =
  /** The reading row is the key. */
  | { readonly by: 'own row' }
  /** The reading row's cell in this column is the key. */
  | { readonly by: 'column'; readonly column: string }
  /** Not to be found: every row of the reading table is looked at again. */
  | { readonly by: 'any' };

/** The rows of another table that one row's formula counted; for explaining it. */
export type CountedRows = (frame: Frame, row: number) => Int32Array;

export interface Reader extends PlanSchema {
  readonly layout: Layout;
  readonly words: Dictionaries;
  /** The table whose column is being planned. */
  readonly table: TableDef;

  /** The kernel of a part of the formula in hand. */
  plan(tree: Typed): Kernel;

  readsCell(links: readonly LinkStep[], table: string, column: string): void;
  /** One value or a whole column: any change concerns every row. */
  readsWhole(table: string, column: string): void;
  readsRowsOf(table: string): void;
  readsToday(): void;
  /** An index shared by all who group by the same columns; any change of groups concerns every row. */
  indexForLookup(table: string, columns: readonly string[]): FrameState<GroupIndex>;
  /** A total per group shared by all who ask for the same. */
  total(request: TotalRequest): PlannedTotal;
  /** Rows of another table looked through by key: changes of `reads` there concern the rows that read the group. */
  scan(request: ScanRequest): FrameState<GroupIndex>;
  /**
   * A part of the formula worked out in a column, its own where it is a plain cell of this row, so that others may look at it;
   * behind another table where it is said as seen from there.
   */
  asColumn(tree: Typed, table?: TableDef): ColumnDef;
  /** The kernel of this row's cell in a column of the reading table. */
  load(column: ColumnDef): Kernel;
  /** The kernel of what a person typed in this row's cell of a column of the reading table. */
  typed(column: ColumnDef): Kernel;
  /** Rows of another table between values of this row: a change there concerns the rows whose conditions it meets. */
  ranged(request: RangedRequest): PlannedRange;
  /** Remembers which rows a call counts, for explaining it with the same index and filters. */
  counts(call: Typed, rows: CountedRows): void;
}

export interface PlannedTotal {
  readonly index: FrameState<GroupIndex>;
  readonly totals: FrameState<Totals>;
}

export interface PlannedRange {
  readonly index: FrameState<GroupIndex>;
  readonly ranged: FrameState<RangedRows>;
}

export interface RangedRequest {
  readonly table: string;
  readonly keys: readonly string[];
  readonly sources: readonly KeySource[];
  readonly filters: readonly RowFilter[];
  readonly conditions: readonly RangeCondition[];
  readonly sortedBy: ColumnDef;
  /** Columns whose cells the answer rests on besides. */
  readonly values: readonly ColumnDef[];
}

export interface ScanRequest {
  readonly table: string;
  readonly keys: readonly string[];
  readonly sources: readonly KeySource[];
  readonly reads: readonly string[];
}

export interface TotalRequest extends ScanRequest {
  /** undefined: rows are counted. */
  readonly column: string | undefined;
  readonly filters: readonly RowFilter[];
  readonly fold: Fold;
  /** Says the fold and filters in words, so that equal requests share one total. */
  readonly sameAs: string;
}

/** The sheet that a link column's rows belong to; the checker has seen that it is one. */
export function tableBehind(schema: PlanSchema, table: string, column: string): string {
  const type = schema.typeOf(table, column);
  if (type?.kind !== 'link') throw new Error(`${table}/${column} is no link`);
  return type.table;
}

/** Whether a column holds texts, compared by their folded numbers. */
export function holdsText(schema: PlanSchema, table: string, column: string): boolean {
  return isText(schema.typeOf(table, column));
}

/** The key column of a sheet, which a link to it is shown by; links go to sheets that have one. */
export function keyColumn(reader: Reader, table: string): ColumnDef {
  const key = reader.keyOf(table);
  if (key === undefined) throw new Error(`${table} has no key`);
  return reader.layout.column(table, key);
}
