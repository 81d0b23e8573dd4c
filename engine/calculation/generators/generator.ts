// What a row generator is: a sheet's rows that follow from other data. Each kind stands in a file of its own beside this
// one; graph/generator-node.ts runs them before every column of their sheet.

import type { Typed } from '../../language/typed.ts';
import type { Frame } from '../frame.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import type { RowSet } from '../row-set.ts';

/** Something a generator reads; changes of it come to the generator in a lane of its own. */
export type GeneratorInput =
  /** Rows of the table that came, went, or moved in its order. */
  { readonly rowsOf: TableDef } | { readonly column: ColumnDef };

export interface RowGenerator {
  readonly table: TableDef;
  /** The columns it fills: the link, the date, the names of events. */
  readonly columns: readonly ColumnDef[];
  readonly inputs: readonly GeneratorInput[];
  /** Called once before the inputs are looked at: what the rows depend on may be worked out in columns behind other sheets. */
  prepare?(asColumn: (tree: Typed, table: TableDef) => ColumnDef): void;
  /**
   * Brings the rows up to date. `dirty[i]` are the changed rows of input i; `rows` takes every row of the table that came,
   * went, moved or was filled anew. One that makes rows by the thousand may stop where `goOn` says so, and goes on from there
   * when it is called again.
   */
  generate(frame: Frame, dirty: readonly RowSet[], rows: GeneratedRows, goOn?: () => boolean): void;
  /** Whether it stopped before its end. */
  isLeft?(frame: Frame): boolean;
  /**
   * Makes all rows anew, in slots that stand in their order, where nothing is typed in them and nobody keeps their slots: less
   * work than telling which came and went where many do. What `generate` remembers holds no more. `blank`: columns that nobody works out.
   */
  remake?(frame: Frame, blank: readonly ColumnDef[]): void;
}

/** Rows as a generator makes and unmakes them. */
export interface GeneratedRows {
  /** Brings a slot to life. */
  add(row: number): void;
  /** So many slots are likely to be needed in all: room is made for them at once. */
  expect(slots: number): void;
  /** Lets a slot die. */
  remove(row: number): void;
  /** A row that stays was filled anew or stands elsewhere now. */
  change(row: number): void;
}
