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
import { FROM_ENGINE } from './engine-functions.ts';
import { MANY_FIGURES, whyOf } from './faults.ts';
import { civilOf } from './figures.ts';
import { isFormula } from './formula-words.ts';
import { PASTED, WorkbookContext } from './inside.ts';
import { ColumnNames } from './names.ts';
import './pasted-functions.ts';
import './day-functions.ts';
import { Tables } from './tables.ts';
import { namesIn, takenAs } from './taken.ts';
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

/** What works the papers out: made anew when columns, papers or units are others. */
interface Works {
  readonly engine: HyperFormula;
  readonly names: ColumnNames;
  readonly tables: Tables;
  readonly measures: Measures;
  /** Reads what is typed as the workbook's locale writes numbers. */
  readonly figures: TypedFigures;
}

interface Paper {
  readonly id: string;
  /** hyperformula's number of its sheet. */
  readonly sheet: number;
  /** What was last put on it. */
  readonly typed: Map<string, string>;
}

export class ScratchRoom {
  readonly #book: Book;
  readonly #papers = new Map<string, Paper>();
  /** Cells with a formula at which hyperformula gives up without an answer: each stands as a fault until it is typed anew. */
  readonly #unworkable = new Set<string>();
  #works: Works;
  #writing: Writing | undefined;

  constructor(book: Book) {
    this.#book = book;
    this.#works = this.#begin();
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
      this.#works.engine.batch(() => {
        this.#putNaming(this.#works.tables.follow(change));
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
    return this.#shown({ sheet, row: at.row, col: at.column }, keyOf(paper, cell));
  }

  /** What a formula gives as if it stood nowhere on this paper; undefined where it can't be read, or gives many figures. */
  value(paper: string, given: string): number | string | boolean | null | undefined {
    const sheet = this.#papers.get(paper)?.sheet;
    const { engine, tables } = this.#works;
    tables.want(namesIn(given));
    const formula = takenAs(given, this.#works);
    if (sheet === undefined || !engine.validateFormula(formula)) return undefined;
    const value = engine.calculateFormula(formula, sheet);
    return Array.isArray(value) || value instanceof DetailedCellError ? undefined : value;
  }

  /** The names that formulas can say. */
  get names(): ColumnNames {
    return this.#works.names;
  }

  get measures(): Measures {
    return this.#works.measures;
  }

  destroy(): void {
    this.#works.engine.destroy();
  }

  #beginAgain(): void {
    this.#works.engine.destroy();
    this.#works = this.#begin();
    this.#writing = this.#book.document.writing;
  }

  /** All at once; where hyperformula gives up, cell by cell without those at which it does. */
  #begin(): Works {
    this.#unworkable.clear();
    for (let atOnce = true; ; atOnce = false) {
      const { size } = this.#unworkable;
      const works = this.#prepare();
      try {
        if (atOnce) works.engine.batch(() => this.#fill(works));
        else this.#fillOneByOne(works);
        return works;
      } catch (gaveUp) {
        works.engine.destroy();
        if (!atOnce && this.#unworkable.size === size) throw gaveUp;
      }
    }
  }

  #prepare(): Works {
    const book = this.#book;
    const { units, currency } = book.document.program;
    const { locale = 'en-US' } = book.document.writing ?? {};
    const measures: Measures = { units, vocabulary: createVocabulary({ currency }) };
    const names = new ColumnNames(book);
    const context = new WorkbookContext(measures, { locale, currency }, (sheet) => tables.measureOn(sheet));
    const engine = HyperFormula.buildEmpty({
      licenseKey: 'gpl-v3',
      context,
      precisionRounding: 14,
      // Every formula is an array formula, as in other spreadsheets today: many cells are taken one by one, and what comes of them
      // stands below and beside.
      useArrayArithmetic: true,
      dateFormats: ['YYYY-MM-DD', ...(units === 'us' ? ['MM/DD/YYYY', 'MM/DD/YY'] : ['DD.MM.YYYY', 'DD/MM/YYYY'])],
    });
    // Other spreadsheets know both without brackets. No column has such a name: theirs join the sheet's by a stroke.
    for (const name of ['TRUE', 'FALSE']) engine.addNamedExpression(name, `=${name}()`);
    const tables = new Tables(engine, book, names);
    // All papers before any cell, so that formulas find the papers they name.
    this.#papers.clear();
    for (const [id, { name, cells }] of book.document.papers.all()) {
      const sheet = engine.getSheetId(engine.addSheet(freeName(name ?? NAMELESS, (one) => engine.doesSheetExist(one))));
      if (sheet !== undefined) this.#papers.set(id, { id, sheet, typed: new Map(cells) });
      for (const entry of cells.values()) tables.want(namesIn(entry));
    }
    return { engine, names, tables, measures, figures: new TypedFigures(book.document.writing, measures.vocabulary) };
  }

  #fill(works: Works): void {
    for (const { sheet, typed } of this.#papers.values())
      works.engine.setSheetContent(
        sheet,
        asRows(typed, (entry) => takenAs(entry, works)),
      );
  }

  /** Figures before formulas, so that it is a formula at which hyperformula gives up. */
  #fillOneByOne(works: Works): void {
    const cells = [...this.#papers.values()].flatMap((paper) =>
      Array.from(paper.typed, ([cell, entry]) => ({ paper, cell, entry })),
    );
    for (const wantsFormula of [false, true]) {
      for (const { paper, cell, entry } of cells) {
        if (isFormula(entry) !== wantsFormula) continue;
        const key = keyOf(paper.id, cell);
        try {
          putInto(works.engine, paper.sheet, cell, this.#unworkable.has(key) ? UNWORKABLE : takenAs(entry, works));
        } catch (gaveUp) {
          this.#unworkable.add(key);
          throw gaveUp;
        }
      }
    }
  }

  #someRenamed(papers: readonly string[]): boolean {
    return papers.some((id) => {
      const known = this.#papers.get(id);
      const now = this.#book.document.papers.paper(id);
      if (known === undefined || now === undefined) return true;
      return this.#works.engine.getSheetName(known.sheet)?.toLowerCase() !== (now.name ?? NAMELESS).toLowerCase();
    });
  }

  #follow(id: string): void {
    const known = this.#papers.get(id);
    const cells = this.#book.document.papers.paper(id)?.cells ?? new Map<string, string>();
    if (known === undefined) return;
    for (const cell of [...known.typed.keys()]) if (!cells.has(cell)) this.#put(known, cell, undefined);
    for (const [cell, entry] of cells) if (known.typed.get(cell) !== entry) this.#put(known, cell, entry);
  }

  /** Formulas that say names which stand for more or fewer cells than before are put anew. */
  #putNaming(names: ReadonlySet<string>): void {
    if (names.size === 0) return;
    for (const paper of this.#papers.values())
      for (const [cell, entry] of paper.typed)
        if (namesIn(entry).some((name) => names.has(name.toLowerCase()))) this.#put(paper, cell, entry);
  }

  /** Several figures that found something in their way try again: it may be gone. */
  #spreadAgain(id: string): void {
    const paper = this.#papers.get(id);
    const { engine } = this.#works;
    for (const [cell, entry] of paper?.typed ?? []) {
      const at = isFormula(entry) ? cellNamed(cell) : undefined;
      if (paper === undefined || at === undefined) continue;
      const value = engine.getCellValue({ sheet: paper.sheet, row: at.row, col: at.column });
      if (value instanceof DetailedCellError && value.type === ErrorType.SPILL) this.#put(paper, cell, entry);
    }
  }

  #put({ id, sheet, typed }: Paper, cell: string, entry: string | undefined): void {
    this.#unworkable.delete(keyOf(id, cell));
    if (entry === undefined) typed.delete(cell);
    else {
      typed.set(cell, entry);
      this.#works.tables.want(namesIn(entry));
    }
    putInto(this.#works.engine, sheet, cell, entry === undefined ? null : takenAs(entry, this.#works));
  }

  #shown(at: { readonly sheet: number; readonly row: number; readonly col: number }, key: string): ShownCell {
    const { engine } = this.#works;
    const value = engine.getCellValue(at);
    if (value === null || value === '') return BLANK;
    if (value instanceof DetailedCellError) {
      const why = this.#unworkable.has(key)
        ? MANY_FIGURES
        : whyOf(value.type, value.message, engine.getCellFormula(at) ?? '');
      return { is: 'fault', text: value.value, why: why ?? value.value, value: null };
    }
    if (typeof value === 'string') return { is: 'text', text: value, why: '', value };
    if (typeof value === 'boolean') return { is: 'yes or no', text: value ? 'yes' : 'no', why: '', value };
    return { is: 'number', text: this.#figure(value, engine.getCellValueDetailedType(at)), why: '', value };
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
  return [...new Set([...FROM_ENGINE, ...own, ...PASTED, 'LET'])];
}

const NAMELESS = 'Scratch paper';

/** Up to twelve figures: what a spreadsheet's wide column shows. */
function plainText(value: number, writing: Parameters<typeof decimalText>[3]): string {
  const decimals = value === 0 ? 0 : 11 - Math.floor(Math.log10(Math.abs(value)));
  return decimalText(value, 0, Math.min(12, Math.max(0, decimals)), writing);
}

/** Stands for a formula at which hyperformula gives up. */
const UNWORKABLE = '#VALUE!';

function keyOf(paper: string, cell: string): string {
  return `${paper} ${cell}`;
}

function putInto(engine: HyperFormula, sheet: number, cell: string, content: string | null): void {
  const at = cellNamed(cell);
  if (at !== undefined) engine.setCellContents({ sheet, row: at.row, col: at.column }, [[content]]);
}

function asRows(cells: ReadonlyMap<string, string>, taken: (entry: string) => string): RawCellContent[][] {
  const rows: RawCellContent[][] = [];
  for (const [cell, entry] of cells) {
    const at = cellNamed(cell);
    if (at === undefined) continue;
    while (rows.length <= at.row) rows.push([]);
    const row = rows[at.row];
    if (row === undefined) continue;
    while (row.length < at.column) row.push(null);
    row[at.column] = taken(entry);
  }
  return rows;
}
