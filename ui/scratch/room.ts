// The scratch papers of a workbook worked out: hyperformula over what is typed on them, with the workbook's columns and the
// engine's functions at hand. It follows the workbook and never writes to it; whoever types on a paper does so by commands.
// hyperformula is fetched with this file, when a paper is first opened.

import { CellValueDetailedType, DetailedCellError, ErrorType, HyperFormula, type RawCellContent } from 'hyperformula';
import {
  type Book,
  type ChangeSet,
  createVocabulary,
  decimalText,
  freeName,
  showDate,
  type Writing,
} from '../../engine/index.ts';
import { cellNamed } from './addresses.ts';
import type { Measures } from './call-measures.ts';
import { civilOf } from './figures.ts';
import { isFormula, wordsOf } from './formula-words.ts';
import { withoutLet } from './let.ts';
import { ColumnNames } from './names.ts';
import { measureOfColumn, Tables } from './tables.ts';
import { FROM_ENGINE, nameInside, SAID_BY_ENGINE, WorkbookContext } from './trade-functions.ts';
import { TypedFigures } from './typed-figures.ts';

/** A cell as a paper shows it. */
export interface ShownCell {
  readonly is: 'blank' | 'number' | 'text' | 'yes or no' | 'fault';
  readonly text: string;
  /** Of a fault: what is wrong, and what to do. */
  readonly why: string;
  readonly value: number | string | boolean | null;
}

const BLANK: ShownCell = { is: 'blank', text: '', why: '', value: null };

const FAULTS: Readonly<Record<string, string>> = {
  DIV_BY_ZERO: 'It divides by zero or by a blank cell.',
  NAME: 'It names something that is not here: a function, or a column of the workbook with the unit in its name.',
  VALUE: 'A value of the wrong sort reached it: a text where a number is wanted, or many cells where one is.',
  NUM: 'There is no such number: it is too large, or a root of a negative.',
  NA: 'Nothing was found.',
  CYCLE: 'It follows from itself: one of the cells it reads reads this one.',
  REF: 'It reads a cell that is not there.',
  SPILL: 'Its figures want the cells beside or below, and something stands there.',
  ERROR: 'It cannot be read as a formula: look at its brackets and commas.',
};

const LET_UNREAD =
  'LET wants names and what they stand for in pairs and a formula at the end: LET(x,5,x*2). A name is a word that is no cell, and RAND can’t stand behind one.';

export class ScratchRoom {
  readonly #book: Book;
  #engine: HyperFormula;
  #names: ColumnNames;
  #tables: Tables;
  #measures: Measures;
  /** Reads what is typed as the workbook's locale writes numbers. */
  #figures: TypedFigures;
  #writing: Writing | undefined;
  /** hyperformula's sheets by paper, and what was last put on them. */
  readonly #papers = new Map<string, { readonly sheet: number; readonly typed: Map<string, string> }>();

  constructor(book: Book) {
    this.#book = book;
    [this.#engine, this.#names, this.#tables, this.#measures, this.#figures] = this.#begin();
    this.#writing = book.document.writing;
  }

  /** Brings the papers in line with what changed in the workbook. */
  update(change: ChangeSet): void {
    const isOther = change.sheets || change.columnsOf.length > 0 || this.#book.document.writing !== this.#writing;
    if (isOther || this.#someRenamed(change.papers)) {
      this.#beginAgain();
      return;
    }
    try {
      this.#engine.batch(() => {
        this.#tables.follow(change);
        for (const paper of change.papers) this.#follow(paper);
      });
      for (const paper of change.papers) this.#spreadAgain(paper);
    } catch {
      // hyperformula keeps the cells that an array fills shut against single changes; on a fresh sheet all have their place.
      this.#beginAgain();
    }
  }

  cell(paper: string, cell: string): ShownCell {
    const sheet = this.#papers.get(paper)?.sheet;
    const at = cellNamed(cell);
    if (sheet === undefined || at === undefined) return BLANK;
    return this.#shown({ sheet, row: at.row, col: at.column });
  }

  /** What a formula gives as if it stood nowhere on this paper; undefined where it can't be read, or gives many figures. */
  value(paper: string, given: string): number | string | boolean | null | undefined {
    const sheet = this.#papers.get(paper)?.sheet;
    const formula = asTaken(given, this.#figures);
    if (sheet === undefined || !this.#engine.validateFormula(formula)) return undefined;
    this.#tables.want(namesIn(formula));
    const value = this.#engine.calculateFormula(formula, sheet);
    return Array.isArray(value) || value instanceof DetailedCellError ? undefined : value;
  }

  /** The names that formulas can say. */
  get names(): ColumnNames {
    return this.#names;
  }

  get measures(): Measures {
    return this.#measures;
  }

  destroy(): void {
    this.#engine.destroy();
  }

  #beginAgain(): void {
    this.#engine.destroy();
    [this.#engine, this.#names, this.#tables, this.#measures, this.#figures] = this.#begin();
    this.#writing = this.#book.document.writing;
  }

  #begin(): [HyperFormula, ColumnNames, Tables, Measures, TypedFigures] {
    const book = this.#book;
    const { units, currency } = book.document.program;
    const measures: Measures = { units, vocabulary: createVocabulary({ currency }) };
    const figures = new TypedFigures(book.document.writing, measures.vocabulary);
    const names = new ColumnNames(book);
    const context = new WorkbookContext(measures, (name) => {
      const named = names.find(name);
      return named === undefined ? undefined : measureOfColumn(named);
    });
    const engine = HyperFormula.buildEmpty({
      licenseKey: 'gpl-v3',
      context,
      precisionRounding: 14,
      dateFormats: ['YYYY-MM-DD', ...(units === 'us' ? ['MM/DD/YYYY', 'MM/DD/YY'] : ['DD.MM.YYYY', 'DD/MM/YYYY'])],
    });
    // Other spreadsheets know both without brackets. No column has such a name: theirs join the sheet's by a stroke.
    for (const name of ['TRUE', 'FALSE']) engine.addNamedExpression(name, `=${name}()`);
    const tables = new Tables(engine, book, names);
    this.#papers.clear();
    const papers = [...book.document.papers.all()];
    engine.batch(() => {
      // All papers before any cell, so that formulas find the papers they name.
      for (const [id, { name }] of papers) {
        const sheet = engine.getSheetId(
          engine.addSheet(freeName(name ?? NAMELESS, (one) => engine.doesSheetExist(one))),
        );
        if (sheet !== undefined) this.#papers.set(id, { sheet, typed: new Map() });
      }
      for (const [id, { cells }] of papers) {
        const paper = this.#papers.get(id);
        if (paper === undefined) continue;
        for (const [cell, entry] of cells) paper.typed.set(cell, entry);
        for (const entry of cells.values()) tables.want(namesIn(entry));
        engine.setSheetContent(paper.sheet, asRows(cells, figures));
      }
    });
    return [engine, names, tables, measures, figures];
  }

  #someRenamed(papers: readonly string[]): boolean {
    return papers.some((id) => {
      const known = this.#papers.get(id);
      const now = this.#book.document.papers.paper(id);
      if (known === undefined || now === undefined) return true;
      return this.#engine.getSheetName(known.sheet)?.toLowerCase() !== (now.name ?? NAMELESS).toLowerCase();
    });
  }

  #follow(id: string): void {
    const known = this.#papers.get(id);
    const cells = this.#book.document.papers.paper(id)?.cells ?? new Map<string, string>();
    if (known === undefined) return;
    for (const cell of [...known.typed.keys()]) if (!cells.has(cell)) this.#put(known, cell, undefined);
    for (const [cell, entry] of cells) if (known.typed.get(cell) !== entry) this.#put(known, cell, entry);
  }

  /** Several figures that found something in their way try again: it may be gone. */
  #spreadAgain(id: string): void {
    const paper = this.#papers.get(id);
    for (const [cell, entry] of paper?.typed ?? []) {
      const at = isFormula(entry) ? cellNamed(cell) : undefined;
      if (paper === undefined || at === undefined) continue;
      const place = { sheet: paper.sheet, row: at.row, col: at.column };
      const value = this.#engine.getCellValue(place);
      if (value instanceof DetailedCellError && value.type === ErrorType.SPILL)
        this.#engine.setCellContents(place, [[asTaken(entry, this.#figures)]]);
    }
  }

  #put({ sheet, typed }: { sheet: number; typed: Map<string, string> }, cell: string, entry: string | undefined): void {
    const at = cellNamed(cell);
    if (at === undefined) return;
    if (entry === undefined) typed.delete(cell);
    else {
      typed.set(cell, entry);
      this.#tables.want(namesIn(entry));
    }
    this.#engine.setCellContents({ sheet, row: at.row, col: at.column }, [
      [entry === undefined ? null : asTaken(entry, this.#figures)],
    ]);
  }

  #shown(at: { readonly sheet: number; readonly row: number; readonly col: number }): ShownCell {
    const value = this.#engine.getCellValue(at);
    if (value === null || value === '') return BLANK;
    if (value instanceof DetailedCellError) {
      const own = value.message.startsWith(SAID_BY_ENGINE) ? value.message.slice(SAID_BY_ENGINE.length) : undefined;
      const isLet = value.type === ErrorType.NAME && /\bLET\(/i.test(this.#engine.getCellFormula(at) ?? '');
      const why = own ?? (isLet ? LET_UNREAD : FAULTS[value.type]) ?? value.value;
      return { is: 'fault', text: value.value, why, value: null };
    }
    if (typeof value === 'string') return { is: 'text', text: value, why: '', value };
    if (typeof value === 'boolean') return { is: 'yes or no', text: value ? 'yes' : 'no', why: '', value };
    return { is: 'number', text: this.#figure(value, this.#engine.getCellValueDetailedType(at)), why: '', value };
  }

  #figure(value: number, type: CellValueDetailedType): string {
    const { writing } = this.#book.document;
    switch (type) {
      case CellValueDetailedType.NUMBER_DATE:
      case CellValueDetailedType.NUMBER_DATETIME:
        return showDate(civilOf(value), writing);
      case CellValueDetailedType.NUMBER_PERCENT:
        return `${plainText(value * 100, writing)}%`;
      default:
        return plainText(value, writing);
    }
  }
}

/** Every function that formulas of papers may call. */
export function functionNames(): readonly string[] {
  const own = HyperFormula.getRegisteredFunctionNames('enGB').filter((name) => !name.includes('DIBBLE.'));
  return [...new Set([...FROM_ENGINE, ...own, 'LET'])];
}

const NAMELESS = 'Scratch paper';

/** Up to twelve figures: what a spreadsheet's wide column shows. */
function plainText(value: number, writing: Parameters<typeof decimalText>[3]): string {
  const decimals = value === 0 ? 0 : 11 - Math.floor(Math.log10(Math.abs(value)));
  return decimalText(value, 0, Math.min(12, Math.max(0, decimals)), writing);
}

/** What is typed, as hyperformula takes it. */
function asTaken(entry: string, figures: TypedFigures): string {
  if (!isFormula(entry)) return figures.taken(entry);
  return wordsOf(withoutLet(entry))
    .map(({ kind, text }) => (kind === 'function' ? nameInside(text) : text))
    .join('');
}

function namesIn(entry: string): readonly string[] {
  if (!isFormula(entry)) return [];
  return wordsOf(entry).flatMap(({ kind, text }) => (kind === 'name' ? [text] : []));
}

function asRows(cells: ReadonlyMap<string, string>, figures: TypedFigures): RawCellContent[][] {
  const rows: RawCellContent[][] = [];
  for (const [cell, entry] of cells) {
    const at = cellNamed(cell);
    if (at === undefined) continue;
    while (rows.length <= at.row) rows.push([]);
    const row = rows[at.row];
    if (row === undefined) continue;
    while (row.length < at.column) row.push(null);
    row[at.column] = asTaken(entry, figures);
  }
  return rows;
}
