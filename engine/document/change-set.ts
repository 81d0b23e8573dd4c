// What a transaction changed, for whoever shows or follows a workbook: cells, rows and columns, by ids of sheets and columns
// and slots of rows. Change sets join, so that none is lost between two looks.

export interface ChangedCells {
  readonly sheet: string;
  readonly column: string;
  /** Slots, rising; 'all' where most changed. */
  readonly rows: Int32Array | 'all';
}

export interface ChangeSet {
  readonly cells: readonly ChangedCells[];
  /** Sheets whose rows came, went or moved. */
  readonly rowsOf: readonly string[];
  /** Sheets whose columns, formulas, names or units changed. */
  readonly columnsOf: readonly string[];
  /** Sheets of which views, colours or notes changed. */
  readonly looksOf: readonly string[];
  /** Scratch papers that came, went, were renamed or written on. */
  readonly papers: readonly string[];
  /** Sheets came, went, moved or were renamed. */
  readonly sheets: boolean;
  /** Title, units, today, locale or template changed. */
  readonly settings: boolean;
}

export const NO_CHANGE: ChangeSet = {
  cells: [],
  rowsOf: [],
  columnsOf: [],
  looksOf: [],
  papers: [],
  sheets: false,
  settings: false,
};

/** One change set that says what both say. */
export function joinChanges(first: ChangeSet, second: ChangeSet): ChangeSet {
  if (first === NO_CHANGE) return second;
  if (second === NO_CHANGE) return first;
  const cells = new Map<string, ChangedCells>();
  for (const one of [...first.cells, ...second.cells]) {
    const name = `${one.sheet}/${one.column}`;
    const before = cells.get(name);
    cells.set(name, before === undefined ? one : { ...one, rows: joinRows(before.rows, one.rows) });
  }
  return {
    cells: [...cells.values()],
    rowsOf: [...new Set([...first.rowsOf, ...second.rowsOf])],
    columnsOf: [...new Set([...first.columnsOf, ...second.columnsOf])],
    looksOf: [...new Set([...first.looksOf, ...second.looksOf])],
    papers: [...new Set([...first.papers, ...second.papers])],
    sheets: first.sheets || second.sheets,
    settings: first.settings || second.settings,
  };
}

function joinRows(a: Int32Array | 'all', b: Int32Array | 'all'): Int32Array | 'all' {
  if (a === 'all' || b === 'all') return 'all';
  const both = new Int32Array(a.length + b.length);
  let [i, j, count] = [0, 0, 0];
  while (i < a.length || j < b.length) {
    const [ofA, ofB] = [a[i] ?? Number.POSITIVE_INFINITY, b[j] ?? Number.POSITIVE_INFINITY];
    if (ofA <= ofB) i++;
    if (ofB <= ofA) j++;
    both[count++] = Math.min(ofA, ofB);
  }
  return both.subarray(0, count);
}

/** Whether a row is among the changed ones. */
export function isChanged(rows: Int32Array | 'all', row: number): boolean {
  if (rows === 'all') return true;
  let [low, high] = [0, rows.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rows[middle] as number) < row) low = middle + 1;
    else high = middle;
  }
  return rows[low] === row;
}
