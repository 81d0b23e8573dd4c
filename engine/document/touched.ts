// What changes touched: the rows that came, went or moved since everything was last up to date, and what nobody was told of
// yet. Whatever does operations notes it here; changes.ts reads it, puts in order what it names, and tells.

import { type ChangeSet, NO_CHANGE } from './change-set.ts';

export class Touched {
  // What is to be brought up to date.

  /** Sheets whose rows are no longer in the order of their slots. */
  readonly unordered = new Set<string>();
  /** Rows that came, by sheet. */
  readonly came = new Map<string, Set<string>>();
  /** Rows that went, by sheet and by the slot they had. */
  readonly went = new Map<string, Map<number, string>>();

  // What is to be told, each as the change set has it.

  readonly rowsOf = new Set<string>();
  readonly columnsOf = new Set<string>();
  readonly looksOf = new Set<string>();
  readonly papers = new Set<string>();
  sheets = false;
  settings = false;

  /** Rows came to a sheet; `last`: behind all others, in the order of their slots. */
  rowsCame(sheet: string, rows: readonly { readonly row: string }[], last: boolean): void {
    if (!last) this.unordered.add(sheet);
    this.rowsOf.add(sheet);
    const came = this.came.get(sheet) ?? new Set<string>();
    this.came.set(sheet, came);
    for (const { row } of rows) came.add(row);
  }

  /** Rows went from a sheet, as they stood until then. */
  rowsWent(sheet: string, rows: readonly { readonly id: string; readonly slot: number }[]): void {
    this.rowsOf.add(sheet);
    const came = this.came.get(sheet);
    const went = this.went.get(sheet) ?? new Map<number, string>();
    this.went.set(sheet, went);
    for (const { id, slot } of rows) {
      went.set(slot, id);
      came?.delete(id);
    }
  }

  rowMoved(sheet: string): void {
    this.unordered.add(sheet);
    this.rowsOf.add(sheet);
  }

  /** Everything is up to date. */
  settled(): void {
    this.unordered.clear();
    this.came.clear();
    this.went.clear();
  }

  /** What changed since it was last told, together with what was worked out since then. */
  tell({ cells, rowsOf }: Pick<ChangeSet, 'cells' | 'rowsOf'>): ChangeSet {
    const told = [this.rowsOf, this.columnsOf, this.looksOf, this.papers];
    const isNothing = cells.length + rowsOf.length === 0 && told.every(({ size }) => size === 0);
    if (isNothing && !this.sheets && !this.settings) return NO_CHANGE;
    const change: ChangeSet = {
      cells,
      rowsOf: [...new Set([...this.rowsOf, ...rowsOf])],
      columnsOf: [...this.columnsOf],
      looksOf: [...this.looksOf],
      papers: [...this.papers],
      sheets: this.sheets,
      settings: this.settings,
    };
    for (const ids of told) ids.clear();
    this.sheets = false;
    this.settings = false;
    return change;
  }
}
