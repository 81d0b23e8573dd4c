// One paste on its way: the block, where it begins, how it is to be read, what a person mended or skips. Gives the plan as it
// stands and the commands that carry it out. Nothing is changed by it.

import {
  type Book,
  type ColumnView,
  type Command,
  cellView,
  type Message,
  message,
  rowWithId,
  type SheetView,
} from '../../../../engine/index.ts';
import { type Block, width } from './block.ts';
import { type CutCell, cutKey, holdsStill } from './cut.ts';
import { type Reading, usualOf } from './paste-entry.ts';
import {
  cellKey,
  type LandingRow,
  mendedAt,
  namedColumns,
  type PastePlan,
  type PlannedCell,
  planPaste,
} from './paste-plan.ts';
import { freeNames, passedNames, rowsAsNamed } from './row-names.ts';

export interface PasteParts {
  readonly book: Book;
  readonly sheet: SheetView;
  readonly block: Block;
  /** The columns from the first cell to the right. */
  readonly columns: readonly ColumnView[];
  /** Where so many lines land from the first cell downwards; fewer where there is no room. */
  readonly rows: (lines: number) => readonly LandingRow[];
  /** It stands there more often than once, so that its first line is no line of headers. */
  readonly repeated: boolean;
  /** Never types over a formula. */
  readonly keepFormulas: boolean;
}

export interface PasteOptions {
  readonly reading: Reading;
  readonly byName: boolean;
  /** Lines that name the rows they lie on in another order go each to the row that it names, and no row is renamed. */
  readonly toNamed: boolean;
  readonly keepFormulas: boolean;
  readonly mended: ReadonlyMap<string, string>;
}

export class PasteJob {
  readonly parts: PasteParts;
  /** The columns that the block's first line names; undefined where it is no line of headers. */
  readonly named: readonly (ColumnView | undefined)[] | undefined;
  readonly options: PasteOptions;
  /** Cells of the widest line. */
  readonly width: number;

  constructor(parts: PasteParts, options?: PasteOptions) {
    this.parts = parts;
    this.width = width(parts.block);
    this.named = parts.repeated ? undefined : namedColumns(parts.block, parts.sheet);
    const computed = new Set(parts.columns.slice(0, this.width).filter(({ role }) => role === 'computed')).size;
    this.options = options ?? {
      reading: usualOf(parts.book).reading,
      byName: this.named !== undefined,
      // Names alone would go nowhere: they are meant to pass from row to row.
      toNamed: this.width > 1,
      // One column put on a computed one is meant to be typed over it; a block of several leaves it be.
      keepFormulas: parts.keepFormulas || this.width > 1 || computed === 0,
      mended: new Map(),
    };
  }

  with(options: Partial<PasteOptions>): PasteJob {
    return new PasteJob(this.parts, { ...this.options, ...options });
  }

  /** The lines that are pasted: all, or those under the headers. */
  get lines(): Block['cells'] {
    const { cells } = this.parts.block;
    return this.options.byName ? cells.slice(1) : cells;
  }

  plan(): PastePlan {
    const { book, sheet, rows } = this.parts;
    const asNamed = this.options.toNamed ? this.asNamed() : undefined;
    const landing = { sheet, columns: this.#into(), rows: asNamed ?? rows(this.lines.length) };
    return planPaste(book, { cells: this.lines }, landing, this.options);
  }

  #into(): readonly (ColumnView | undefined)[] {
    const { columns } = this.parts;
    return this.options.byName && this.named !== undefined
      ? this.named
      : Array.from({ length: this.width }, (_, across) => columns[across]);
  }

  /** The row that each line names, where the lines name all rows that they lie on, in another order; undefined where they don't. */
  asNamed(): readonly LandingRow[] | undefined {
    const { book, sheet, rows } = this.parts;
    const across = this.#into().findIndex((column) => column !== undefined && column.id === sheet.key);
    const names = this.lines.map((cells, line) => {
      return (mendedAt(this.options, line, across) ?? cells[across]?.text ?? '').trim();
    });
    return rowsAsNamed(book, sheet, names, rows(names.length));
  }

  /** What a person should know before it is done, in sentences; none where everything simply fits. */
  questions(plan: PastePlan): readonly string[] {
    const { block, sheet } = this.parts;
    const { landing, cells } = plan;
    const said: string[] = [];
    if (block.from !== undefined && block.from.sheet !== sheet.id) {
      const how = cells.some((cell) => cell.cut !== undefined) ? 'cut' : 'copied';
      said.push(`It was ${how} from another sheet: see that each column lands where it belongs.`);
    }
    if (this.named !== undefined) said.push('Its first line names columns.');
    const outside = landing.columns.filter((column) => column === undefined).length;
    if (outside > 0) {
      const past = outside === 1 ? 'One column of it has' : `${outside} columns of it have`;
      said.push(`${past} no place here and ${outside === 1 ? 'is' : 'are'} left out.`);
    }
    const lost = this.lines.length - landing.rows.length;
    if (lost > 0)
      said.push(`${lost} of its ${this.lines.length} lines find no row: rows of ${sheet.name} are not added by hand.`);
    if (this.options.toNamed && this.asNamed() !== undefined) {
      said.push(
        'Its lines name these rows in another order: each goes to the row that it names, which stays where it is.',
      );
    } else if (passedNames(this.parts.book, plan).length > 0) {
      said.push('Names pass from row to row: what is linked to a row stays with it, whatever it is called then.');
    }
    const refused = countOf(cells, 'refused');
    if (refused > 0) said.push(`${refused === 1 ? 'One cell doesn’t' : `${refused} cells don’t`} fit.`);
    const open = countOf(cells, 'open');
    if (open > 0) said.push(`${open === 1 ? 'One cell' : `${open} cells`} could be read in two ways.`);
    const far = countOf(cells, 'far');
    if (far > 0) {
      const dates = far === 1 ? 'One date lies' : `${far} dates lie`;
      said.push(`${dates} far from the season and from the dates around: see that the year is meant.`);
    }
    return said;
  }

  /** Commands for what fits, cells that a person skips left out; of a cut what is pasted goes from where it stood first. */
  commands(plan: PastePlan, skipped: ReadonlySet<string>): readonly Command[] {
    const { book, sheet } = this.parts;
    const taken = plan.cells.filter((cell) => isTaken(cell, skipped));
    const cleared = this.#cleared(taken);
    const typed: Command[] = [];
    const added = new Map<number, Record<string, string>>();
    for (const { into: row, column, entry } of taken) {
      if ('row' in row) typed.push({ command: 'set cell', sheet: sheet.id, row: row.row.id, column: column.id, entry });
      else if (entry.trim() !== '') added.set(row.fresh, { ...added.get(row.fresh), [column.id]: entry });
    }
    const rows = [...added.values()].map((entries): Command => ({ command: 'insert row', sheet: sheet.id, entries }));
    return [...cleared, ...freeNames(book, plan, taken), ...typed, ...rows];
  }

  /** What takes the cells that were cut from where they stand, but those that others come into. */
  #cleared(taken: readonly PlannedCell[]): readonly Command[] {
    const { sheet } = this.parts;
    const gone = new Map(
      taken.flatMap(({ cut }) => (cut === undefined ? [] : [[cutKey(cut.sheet, cut.row, cut.column), cut] as const])),
    );
    if (gone.size === 0) return [];
    const into = new Set(
      taken.flatMap(({ into: at, column }) => ('row' in at ? [cutKey(sheet.id, at.row.id, column.id)] : [])),
    );
    return [...gone].flatMap(([key, cell]) => (into.has(key) ? [] : this.#clearing(cell)));
  }

  /** What takes a cell that was cut from where it stands; what was typed there since stays. */
  #clearing(cell: CutCell): readonly Command[] {
    const { book } = this.parts;
    const { sheet, row, column } = cell;
    const slot = rowWithId(book, sheet, row);
    if (slot === undefined || !holdsStill(book, cell)) return [];
    const { origin, entry } = cellView(book, sheet, slot, column);
    if (origin === 'override') return [{ command: 'take back', sheet, row, column }];
    return origin === 'entered' && entry !== '' ? [{ command: 'set cell', sheet, row, column, entry: '' }] : [];
  }

  /** How many cells would be pasted. */
  count(plan: PastePlan, skipped: ReadonlySet<string>): number {
    return plan.cells.filter((cell) => isTaken(cell, skipped) && ('row' in cell.into || cell.entry.trim() !== ''))
      .length;
  }
}

function isTaken({ state, line, across }: PlannedCell, skipped: ReadonlySet<string>): boolean {
  return (
    (state === 'fits' || state === 'open' || state === 'far') &&
    (skipped.size === 0 || !skipped.has(cellKey(line, across)))
  );
}

function countOf(cells: readonly PlannedCell[], state: PlannedCell['state']): number {
  return cells.filter((cell) => cell.state === state).length;
}

/** The names of columns that their formulas go on filling. */
export function keptColumns({ cells }: PastePlan): readonly string[] {
  const kept = cells.filter(({ state, given }) => state === 'kept' && given.trim() !== '');
  return [...new Set(kept.map(({ column }) => column.name))];
}

export function pasteMessage(count: number): Message {
  return count === 1 ? message('paste cell') : message('paste cells', { count });
}
