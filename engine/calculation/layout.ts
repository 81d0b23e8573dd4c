// Where the data of a workbook's tables lies in a frame: every table and column has a number there. Made once for a schema
// by the builder and shared by all frames; holds no data.

/** How the rows of a table stand in order, for totals and lists. */
export type RowOrder =
  /** By the labels of its own rows; by slot where it has none. */
  | { readonly by: 'own' }
  /** Each row has the slot and the place of the row it was made from. */
  | { readonly by: 'table'; readonly table: TableDef }
  /** By the rows that two links name, the first link first. */
  | { readonly by: 'links'; readonly links: readonly [LinkDef, LinkDef] }
  /** By date, then by which dated column it is (`kind`), then by the row that it stands in. */
  | { readonly by: 'events'; readonly date: ColumnDef; readonly kind: ColumnDef; readonly about: readonly LinkDef[] };

/** A column that holds slots of another table's rows. */
export interface LinkDef {
  readonly column: ColumnDef;
  readonly to: TableDef;
}

export interface TableDef {
  readonly number: number;
  /** Never changes and is never shown. */
  readonly id: string;
  readonly columns: ColumnDef[];
  /** For sheets with a condition on their rows: the yes/no column that says which of them exist. */
  shown: ColumnDef | undefined;
  order: RowOrder;
}

export interface ColumnDef {
  readonly number: number;
  readonly table: TableDef;
  readonly id: string;
  /** Holds text codes or row slots rather than doubles. */
  readonly whole: boolean;
}

/** Tables and columns by their ids, and by their numbers. */
export class Layout {
  readonly tables: TableDef[] = [];
  readonly columns: ColumnDef[] = [];
  readonly #tables = new Map<string, TableDef>();
  /** Columns by id, by their table's id. */
  readonly #columns = new Map<string, Map<string, ColumnDef>>();

  /** The same tables and columns, with room for more beside them. */
  static beside(layout: Layout): Layout {
    const beside = new Layout();
    for (const table of layout.tables) {
      beside.tables.push(table);
      beside.#tables.set(table.id, table);
    }
    for (const column of layout.columns) {
      beside.columns.push(column);
      beside.#file(column);
    }
    return beside;
  }

  addTable(id: string): TableDef {
    const table: TableDef = { number: this.tables.length, id, columns: [], shown: undefined, order: { by: 'own' } };
    this.tables.push(table);
    this.#tables.set(id, table);
    return table;
  }

  addColumn(table: TableDef, id: string, whole: boolean): ColumnDef {
    const column: ColumnDef = { number: this.columns.length, table, id, whole };
    this.columns.push(column);
    table.columns.push(column);
    this.#file(column);
    return column;
  }

  #file(column: ColumnDef): void {
    const columns = this.#columns.get(column.table.id);
    if (columns === undefined) this.#columns.set(column.table.id, new Map([[column.id, column]]));
    else columns.set(column.id, column);
  }

  findTable(id: string): TableDef | undefined {
    return this.#tables.get(id);
  }

  findColumn(table: string, id: string): ColumnDef | undefined {
    return this.#columns.get(table)?.get(id);
  }

  /** The builder made it, so it is there. */
  table(id: string): TableDef {
    const table = this.#tables.get(id);
    if (table === undefined) throw new Error(`No table ${id}`);
    return table;
  }

  column(table: string, id: string): ColumnDef {
    const column = this.findColumn(table, id);
    if (column === undefined) throw new Error(`No column ${id} in ${table}`);
    return column;
  }
}

/** Columns behind a sheet that no one sees have ids that no typed name can have. */
export function isHidden(column: string): boolean {
  return column.includes('·');
}

/** A column's name in the whole workbook; ids have no slash. */
export function columnKey(table: string, column: string): string {
  return `${table}/${column}`;
}
