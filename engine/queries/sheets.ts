// The sheets of a workbook as faces show them, in their order, and how things are found by the names people know.

import { parseFormula } from '../language/parser.ts';
import { printFormula } from '../language/printer.ts';
import type { Diagnostic } from '../language/tree.ts';
import type { Program, ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import type { RowSource } from '../schema/declaration.ts';
import { formulaText } from '../schema/lay-over.ts';
import { isComputed, isEnteredSheet, isOneRow } from '../schema/schema.ts';
import type { Vocabulary } from '../units/vocabulary.ts';
import { unitLabel } from '../values/show.ts';
import type { ValueType } from '../values/type.ts';
import { type Book, sheetOf } from './book.ts';
import { inOwnUnits } from './own-units.ts';

export interface SheetView {
  readonly id: string;
  readonly name: string;
  readonly question: string;
  readonly about: string;
  readonly source: RowSource;
  readonly oneRow: boolean;
  /** Rows can be added and removed by hand. */
  readonly entered: boolean;
  /** The id of the column that names a row. */
  readonly key: string | undefined;
  readonly columns: readonly ColumnView[];
  readonly cautions: readonly string[];
  /** A person's own. */
  readonly own: boolean;
}

export interface ColumnView {
  readonly id: string;
  readonly name: string;
  /** undefined only where a formula without declared type doesn't check. */
  readonly type: ValueType | undefined;
  /** Unit as shown in the header: 'in', 'lb', 'EUR', '' for none. */
  readonly unit: string;
  readonly role: 'entered' | 'computed' | 'default' | 'made';
  /** As printed; '' for entered and made columns. */
  readonly formula: string;
  /** The template's formula as printed, where a person's own stands in its place. */
  readonly templateFormula: string | undefined;
  /** What is wrong with the formula, if anything. */
  readonly diagnostic: Diagnostic | undefined;
  readonly group: string;
  readonly note: string;
  readonly decimals: number | undefined;
  readonly required: boolean;
  readonly own: boolean;
}

const views = new WeakMap<Program, Map<string, SheetView>>();

export function sheetViews(book: Book): readonly SheetView[] {
  return book.document.program.sheets.map((sheet) => viewOf(book, sheet));
}

export function sheetView(book: Book, id: string): SheetView | undefined {
  const sheet = sheetOf(book, id);
  return sheet === undefined ? undefined : viewOf(book, sheet);
}

/** Faces ask at every turn, so a view is kept for as long as the program is the same. */
function viewOf({ document }: Book, sheet: ProgramSheet): SheetView {
  const { program } = document;
  const known = views.get(program) ?? new Map<string, SheetView>();
  views.set(program, known);
  const view = known.get(sheet.id) ?? makeView(sheet, program);
  known.set(sheet.id, view);
  return view;
}

function makeView({ schema, id, name, columns }: ProgramSheet, program: Program): SheetView {
  return {
    id,
    name,
    question: schema.question,
    about: inOwnUnits(schema.about, program.units),
    source: schema.rows,
    oneRow: isOneRow(schema),
    entered: isEnteredSheet(schema),
    key: schema.key,
    columns: columns.map((column) => viewColumn(column, program)),
    cautions: schema.cautions.map((caution) => inOwnUnits(caution, program.units)),
    own: schema.own,
  };
}

function viewColumn(column: ProgramColumn, program: Program): ColumnView {
  const { declaration, type, templateFormula } = column;
  const { vocabulary, schema } = program;
  const isNumber = type?.kind === 'number' || type?.kind === 'temperature';
  return {
    id: column.id,
    name: column.name,
    type,
    unit: isNumber ? unitLabel(type.unit, program.currency) : '',
    role: column.role,
    formula: isComputed(column) ? printed(column.formula, vocabulary) : '',
    templateFormula:
      templateFormula === undefined ? undefined : printed(formulaText(templateFormula, schema), vocabulary),
    diagnostic: column.diagnostic,
    group: declaration.group,
    // What a person wrote of an own column stays as it is.
    note: column.own ? declaration.note : inOwnUnits(declaration.note, program.units),
    decimals: declaration.decimals,
    required: declaration.required === true,
    own: column.own,
  };
}

/** The formula in its canonical form; as written where it doesn't read. */
export function printed(text: string, vocabulary: Vocabulary): string {
  const parsed = parseFormula(text, (symbol) => vocabulary.find(symbol) !== undefined);
  return parsed.ok ? printFormula(parsed.tree) : text;
}

/** The sheet that people know by this name, case aside; undefined where none is. */
export function sheetNamed(book: Book, name: string): SheetView | undefined {
  const wanted = name.trim().toLowerCase();
  const sheet = book.document.program.sheets.find((one) => one.name.toLowerCase() === wanted);
  return sheet === undefined ? undefined : viewOf(book, sheet);
}

/** The column of a sheet that people know by this name, case aside. */
export function columnNamed(sheet: SheetView, name: string): ColumnView | undefined {
  const wanted = name.trim().toLowerCase();
  return sheet.columns.find((column) => column.name.toLowerCase() === wanted);
}
