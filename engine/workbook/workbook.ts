// The workbook: the one object that faces talk to. Keeps the promise of face.ts by handing each question to the file that
// answers it, and keeps the journal of transactions for undo and redo.

import type { Typed } from '../language/typed.ts';
import { canonicalUnit } from '../units/arithmetic.ts';
import type { CellAddress, Scalar } from '../values/error.ts';
import { showWithUnit, unitLabel } from '../values/show.ts';
import { nameOfType, type ValueType } from '../values/type.ts';
import { attentionOf } from './attention.ts';
import { otherColumnFor, readContent, rowName, scalarAt, viewCell } from './cells.ts';
import { Changes } from './changes.ts';
import type { WorkbookDeclaration } from './declaration.ts';
import { declarationOf } from './declare.ts';
import { Evaluator } from './evaluate.ts';
import { explainCell } from './explain.ts';
import type {
  Attention,
  CellView,
  ChangeSet,
  ColumnView,
  Edit,
  Explanation,
  Refusal,
  TableView,
  UndoState,
  WorkbookFace,
} from './face.ts';
import { printed } from './formula-text.ts';
import { openWorkbook } from './open.ts';
import { findSheetColumn, isComputed, isEnteredSheet, type Sheet, type SheetColumn } from './sheet.ts';
import type { State } from './state.ts';
import type { Step } from './steps.ts';
import { grant, tryText } from './wishes.ts';

export type WorkbookOpened =
  | { readonly ok: true; readonly workbook: Workbook }
  | { readonly ok: false; readonly problems: readonly string[] };

/** A workbook worked out and ready, or every problem of its declaration in a sentence each. */
export function createWorkbook(declaration: WorkbookDeclaration): WorkbookOpened {
  const opened = openWorkbook(declaration);
  return opened.ok ? { ok: true, workbook: new Workbook(opened.state, declaration) } : opened;
}

interface JournalEntry {
  readonly label: string;
  readonly undo: readonly Step[];
  readonly redo: readonly Step[];
}

/** What a set of edits did, up to the one that was refused. */
interface Applied {
  readonly redo: readonly Step[];
  readonly undo: readonly Step[];
  readonly inserted: readonly number[];
  readonly refused: Refusal | undefined;
}

/** Two entries as one. A drag touches the same cells over and over: then the first way back and the last way on are enough. */
function joinEntries(before: JournalEntry, after: JournalEntry): JournalEntry {
  const same = cellsOf(before.redo) === cellsOf(after.redo) && cellsOf(after.redo) !== undefined;
  return {
    label: after.label,
    undo: same ? before.undo : [...after.undo, ...before.undo],
    redo: same ? after.redo : [...before.redo, ...after.redo],
  };
}

/** The cells that steps write, as one text; undefined where they do anything else. */
function cellsOf(steps: readonly Step[]): string | undefined {
  const cells = steps.map((step) =>
    step.step === 'cell' ? JSON.stringify([step.table, step.row, step.column]) : undefined,
  );
  return cells.includes(undefined) ? undefined : cells.join(' ');
}

const NO_CELL: CellView = { value: null, number: undefined, text: '', entry: '', standing: 'entered' };

export class Workbook implements WorkbookFace {
  readonly #state: State;
  readonly #declaration: WorkbookDeclaration;
  readonly #changes: Changes;
  readonly #listeners = new Set<(change: ChangeSet) => void>();
  /** Sheets as described since the last change of columns, formulas or units; faces ask for them at every turn. */
  readonly #views = new Map<string, TableView>();
  #done: JournalEntry[] = [];
  #undone: JournalEntry[] = [];

  constructor(state: State, declaration: WorkbookDeclaration) {
    this.#state = state;
    this.#declaration = declaration;
    this.#changes = new Changes(state);
  }

  get title(): string {
    return this.#state.title;
  }

  get units(): 'us' | 'si' {
    return this.#state.units;
  }

  get currency(): string {
    return this.#state.currency;
  }

  get today(): number {
    return this.#state.model.today.values[0] ?? 0;
  }

  tables(): readonly TableView[] {
    return [...this.#state.sheets.values()].map((sheet) => this.#viewSheet(sheet));
  }

  table(name: string): TableView | undefined {
    const sheet = this.#state.sheet(name);
    return sheet === undefined ? undefined : this.#viewSheet(sheet);
  }

  #viewSheet(sheet: Sheet): TableView {
    const kept = this.#views.get(sheet.name);
    if (kept !== undefined) return kept;
    const made = this.#makeView(sheet);
    this.#views.set(sheet.name, made);
    return made;
  }

  #makeView(sheet: Sheet): TableView {
    const { declaration } = sheet;
    return {
      name: sheet.name,
      question: declaration.question,
      about: declaration.about,
      source: sheet.source,
      oneRow: sheet.source.from === 'single',
      entered: isEnteredSheet(sheet),
      key: declaration.key,
      columns: sheet.columns.map((column) => this.#viewColumn(column)),
      cautions: declaration.cautions,
    };
  }

  #viewColumn(column: SheetColumn): ColumnView {
    const { declaration, type } = column;
    const unit = type?.kind === 'number' || type?.kind === 'temperature' ? unitLabel(type.unit, this.currency) : '';
    return {
      name: declaration.name,
      type,
      unit,
      role: column.role,
      formula: isComputed(column) ? printed(column.formula, this.#state) : '',
      complaint: column.complaint,
      group: declaration.group,
      note: declaration.note,
      decimals: declaration.decimals,
      required: declaration.required === true,
    };
  }

  rows(table: string): Int32Array {
    return this.#state.sheet(table)?.data.rows() ?? new Int32Array(0);
  }

  rowOf(table: string, key: string): number | undefined {
    const sheet = this.#state.sheet(table);
    if (sheet === undefined) return undefined;
    if (sheet.source.from === 'single') return 0;
    const keyed = sheet.keys?.get(key.trim().toLowerCase());
    if (keyed !== undefined || sheet.keys !== undefined) return keyed;
    const wanted = key.trim().toLowerCase();
    return [...sheet.data.rows()].find((row) => rowName(sheet, row, this.#state).toLowerCase() === wanted);
  }

  rowName(table: string, row: number): string {
    const sheet = this.#state.sheet(table);
    return sheet === undefined ? '' : rowName(sheet, row, this.#state);
  }

  #column(table: string, column: string): SheetColumn | undefined {
    const sheet = this.#state.sheet(table);
    return sheet === undefined ? undefined : findSheetColumn(sheet, column);
  }

  cell(table: string, row: number, column: string): CellView {
    const found = this.#column(table, column);
    return found === undefined ? NO_CELL : viewCell(found, row, this.#state);
  }

  value(table: string, row: number, column: string): Scalar {
    const found = this.#column(table, column);
    return found === undefined ? null : scalarAt(found, row, this.#state);
  }

  edit(edits: readonly Edit[], label: string, joined?: 'joined'): ChangeSet | Refusal {
    const applied = this.#apply(edits);
    if (applied.refused !== undefined) {
      this.#takeBack(applied);
      this.#finish(label, []);
      return applied.refused;
    }
    const change = this.#finish(label, applied.inserted);
    if (applied.redo.length > 0) {
      const entry = { label, undo: applied.undo, redo: applied.redo };
      const before = joined === undefined ? undefined : this.#done.at(-1);
      if (before?.label === label) this.#done.splice(-1, 1, joinEntries(before, entry));
      else this.#done.push(entry);
      this.#undone = [];
    }
    this.#tell(change);
    return change;
  }

  /** Brings everything up to date; sheets are described anew once columns, formulas or units changed. */
  #finish(label: string, inserted: readonly number[], cells?: readonly CellAddress[]): ChangeSet {
    const change = this.#changes.finish(label, inserted, cells);
    if (change.columnsOf.length > 0) this.#views.clear();
    return change;
  }

  #apply(edits: readonly Edit[]): Applied {
    const redo: Step[] = [];
    const undo: Step[] = [];
    const inserted: number[] = [];
    const perform = (step: Step): void => {
      redo.push(step);
      undo.unshift(this.#changes.apply(step));
    };
    for (const [index, edit] of edits.entries()) {
      const why = grant(edit, this.#state, perform, inserted);
      if (why !== undefined) return { redo, undo, inserted, refused: { refused: true, index, ...why } };
    }
    return { redo, undo, inserted, refused: undefined };
  }

  #takeBack({ undo }: Applied): void {
    for (const step of undo) this.#changes.apply(step);
  }

  whatIf(
    trials: readonly (readonly Edit[])[],
    cells: readonly CellAddress[],
  ): readonly (readonly Scalar[] | undefined)[] {
    const answers = trials.map((edits) => {
      const applied = this.#apply(edits);
      this.#finish('', [], cells);
      const read =
        applied.refused === undefined
          ? cells.map(({ table, row, column }) => this.value(table, row, column))
          : undefined;
      this.#takeBack(applied);
      return read;
    });
    this.#finish('', []);
    return answers;
  }

  undo(): ChangeSet | undefined {
    const entry = this.#done.pop();
    if (entry === undefined) return undefined;
    this.#undone.push(entry);
    return this.#replay(entry.undo, entry.label);
  }

  redo(): ChangeSet | undefined {
    const entry = this.#undone.pop();
    if (entry === undefined) return undefined;
    this.#done.push(entry);
    return this.#replay(entry.redo, entry.label);
  }

  #replay(steps: readonly Step[], label: string): ChangeSet {
    for (const step of steps) this.#changes.apply(step);
    const change = this.#finish(label, []);
    this.#tell(change);
    return change;
  }

  undoState(): UndoState {
    return { undo: this.#done.at(-1)?.label, redo: this.#undone.at(-1)?.label };
  }

  subscribe(listener: (change: ChangeSet) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #tell(change: ChangeSet): void {
    for (const listener of this.#listeners) listener(change);
  }

  tryEntry(
    table: string,
    column: string,
    entry: string,
  ): { readonly ok: true; readonly text: string } | { readonly ok: false; readonly why: string } {
    const found = this.#column(table, column);
    if (found === undefined) return { ok: false, why: `${table} has no column called ${column}.` };
    const read = readContent(found, entry, this.#state);
    if (!read.ok) {
      const sheet = this.#state.sheet(table);
      const other = sheet === undefined ? undefined : otherColumnFor(sheet, found, entry, this.#state);
      return other === undefined ? read : this.tryEntry(table, other.declaration.name, entry);
    }
    const { type } = found;
    if (read.content.state !== 0 || type === undefined) return { ok: true, text: '' };
    if (type.kind === 'link') return { ok: true, text: this.rowName(type.table, read.content.value) };
    const scalar: Scalar =
      type.kind === 'text' || type.kind === 'choice'
        ? this.#state.model.texts.text(read.content.value)
        : type.kind === 'yesno'
          ? read.content.value === 1
          : read.content.value;
    return { ok: true, text: showWithUnit(scalar, type, { unit: read.content.unit, currency: this.currency }) };
  }

  tryFormula(table: string, column: string, formula: string): ReturnType<WorkbookFace['tryFormula']> {
    const checked = tryText(table, column, formula, this.#state);
    return checked.ok ? { ok: true, inferred: inWords(checked.typed, this.currency) } : checked;
  }

  explain(table: string, row: number, column: string): Explanation {
    const explained = explainCell(this.#state, table, row, column);
    if (explained === undefined) throw new Error(`No cell ${table} / ${row} / ${column}`);
    return explained;
  }

  attention(): readonly Attention[] {
    return attentionOf(this.#state);
  }

  /** Answers formulas that stand in no sheet; good until formulas, columns or units change. */
  evaluator(): Evaluator {
    return new Evaluator(this.#state);
  }

  /** What a file keeps: sheets with their formulas as they are now, and every typed cell. */
  declaration(): WorkbookDeclaration {
    return declarationOf(this.#state, this.#declaration);
  }

  branch(): Workbook {
    const opened = createWorkbook(this.declaration());
    if (!opened.ok) throw new Error(opened.problems.join(' '));
    return opened.workbook;
  }

  /** Every computed cell worked out again from what is entered; for tests and benchmarks. */
  recalculateAll(): void {
    this.#state.built.graph.demandAll();
    this.#finish('', []);
  }

  /** Bytes of column storage held, by the arrays themselves. */
  bytes(): number {
    let bytes = 0;
    for (const table of this.#state.model.tables.values()) {
      bytes += table.live.byteLength;
      for (const column of table.columns.values()) bytes += column.bytes();
    }
    return bytes;
  }
}

function inWords(typed: Typed, currency: string): string {
  const { type } = typed;
  const words = nameOfType(type);
  if (type.kind !== 'number') return words;
  const unit = unitLabel(type.unit, currency) || unitOfPlain(type);
  return unit === '' ? words : `${words} in ${unit}`;
}

function unitOfPlain(type: ValueType & { readonly kind: 'number' }): string {
  return canonicalUnit(type.dimension).symbol;
}
