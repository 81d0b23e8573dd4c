// What the planner asks of the graph's builder while it plans a column: the columns it reads, so that edges can be drawn,
// and shared indexes and totals. An interface, so that planning and wiring stay two rooms.

import type { Fold, FunctionDefinition } from '../functions/definition.ts';
import type { Typed } from '../language/typed.ts';
import type { Unit } from '../units/unit.ts';
import type { Vocabulary } from '../units/vocabulary.ts';
import type { Scalar } from '../values/error.ts';
import type { ValueType } from '../values/type.ts';
import type { GroupIndex } from './group-index.ts';
import type { Model, TableData } from './model.ts';
import type { Rollup, RowFilter } from './rollup.ts';
import type { Kernel } from './vector.ts';

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

export interface Reader {
  readonly model: Model;
  readonly functions: ReadonlyMap<string, FunctionDefinition>;
  /** The table whose column is being planned. */
  readonly table: TableData;
  /** For reading the conditions that stand as text in sheets of criteria. */
  readonly vocabulary: Vocabulary;
  unit(symbol: string): Unit | undefined;
  /** The key column's name of a table, if it has one. */
  keyOf(table: string): string | undefined;
  /** The table that a link column names rows of. */
  tableBehind(table: string, column: string): string;
  /** Whether a column holds texts, compared by their folded numbers. */
  isText(table: string, column: string): boolean;
  /** Text of a value as `&` joins it. */
  say(scalar: Scalar, type: ValueType): string;

  /** The kernel of a part of the formula in hand. */
  plan(tree: Typed): Kernel;

  readsCell(links: readonly LinkStep[], table: string, column: string): void;
  /** One value or a whole column: any change concerns every row. */
  readsWhole(table: string, column: string): void;
  readsRowsOf(table: string): void;
  readsToday(): void;
  /** An index shared by all who group by the same columns; any change of groups concerns every row. */
  indexForLookup(table: string, columns: readonly string[]): GroupIndex;
  /** A total per group shared by all who ask for the same. */
  rollup(request: RollupRequest): Rollup;
  /** Rows of another table scanned by key: changes of `reads` there concern the rows that read the group. */
  scan(request: ScanRequest): GroupIndex;
}

export interface ScanRequest {
  readonly table: string;
  readonly keys: readonly string[];
  readonly sources: readonly KeySource[];
  readonly reads: readonly string[];
}

export interface RollupRequest extends ScanRequest {
  /** undefined: rows are counted. */
  readonly column: string | undefined;
  readonly filters: readonly (RowFilter & { readonly name: string })[];
  readonly fold: Fold;
  /** Says the fold and filters in words, so that equal requests share one rollup. */
  readonly sameAs: string;
}
