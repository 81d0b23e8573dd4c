// A cell's value and how it reads. Shared by the queries; rows and links read as their names, which go through here too.

import { toScalar } from '../calculation/kernels/scalars.ts';
import type { ColumnDef } from '../calculation/layout.ts';
import { sameContent } from '../document/content.ts';
import { shippedRows } from '../document/template-rows.ts';
import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { shownNumber, type Unit } from '../units/unit.ts';
import { BLANK } from '../values/column.ts';
import type { Scalar } from '../values/error.ts';
import { figureColumn } from '../values/figures.ts';
import { showParts, showWithUnit } from '../values/show.ts';
import { type RecordFigure, type RecordType, TEXT, type ValueType } from '../values/type.ts';
import { type Book, sheetOf } from './book.ts';
import { inOwnDegrees } from './own-units.ts';

/** A cell's canonical value: dates civil days, links slots, quantities in canonical units; null for a blank. */
export function scalarAt({ document }: Book, column: ProgramColumn, row: number): Scalar {
  const { values, states, length } = document.frame.column(column.def);
  if (row < 0 || row >= length) return null;
  const scalar = toScalar(document.program.words, column.type ?? TEXT, values[row] ?? 0, states[row] ?? BLANK);
  if (column.type?.kind !== 'record' || typeof scalar !== 'number') return scalar;
  return figuresInWords(document, column.def, column.type.record, row);
}

/** Figures that were worked out together, one after the other: 'Isolated mass 3.1 lb, Ceiling yield 4.2 lb/ft²'. */
function figuresInWords(document: Book['document'], def: ColumnDef, record: RecordType, row: number): string {
  return record.figures
    .flatMap((figure) => {
      const said = figureInWords(document, def, figure, row);
      return said === 'blank' ? [] : [`${figure.name} ${said}`];
    })
    .join(', ');
}

/** One figure of a record column with its unit, in the workbook's own system and written as numbers are here. */
export function figureInWords(
  { frame, program, writing }: Pick<Book['document'], 'frame' | 'program' | 'writing'>,
  def: ColumnDef,
  { id, type, usUnit }: RecordFigure,
  row: number,
): string {
  const { words, currency, layout, units } = program;
  const { values, states } = frame.column(layout.column(def.table.id, figureColumn(def.id, id)));
  const value = toScalar(words, type, values[row] ?? 0, states[row] ?? BLANK);
  if (value === null) return 'blank';
  const inOwn = units === 'us' && usUnit !== undefined && type.kind === 'number' ? { ...type, unit: usUnit } : type;
  return showWithUnit(value, inOwn, { currency, writing });
}

/** The unit a cell was typed in, where it was not the column's own. */
export function typedUnit({ document }: Book, column: ProgramColumn, row: number): Unit | undefined {
  const number = document.frame.typedIn(column.def)?.unitNumber(row) ?? 0;
  return document.program.typedUnits.unit(number);
}

/**
 * The unit in which a cell is shown, where it is not the column's own: the one a person typed. What a template ships follows the
 * workbook's units for as long as nobody changes it, whatever the unit that its source has; it is kept, copied and edited in that one.
 */
export function shownUnit(book: Book, column: ProgramColumn, row: number): Unit | undefined {
  const unit = typedUnit(book, column, row);
  return unit === undefined || isShipped(book, column, row) ? undefined : unit;
}

/** Whether a cell holds what the template ships there. */
function isShipped({ document }: Book, { id, def }: ProgramColumn, row: number): boolean {
  const sheet = def.table.id;
  const rowId = document.rowIdOf(sheet, row) ?? '';
  const content = shippedRows(document.template, sheet).get(rowId)?.cells.get(id);
  return content !== undefined && sameContent(document.contentOf(sheet, rowId, id), content);
}

export interface Shown {
  readonly figure: string;
  /** '' where it is the column's own, or there is none. */
  readonly unit: string;
}

/** As a table shows it. */
export function shownCell(book: Book, column: ProgramColumn, row: number): Shown {
  const type = column.type ?? TEXT;
  const value = inOwnProse(book, column, row, scalarAt(book, column, row));
  return shownScalar(book, value, type, shownUnit(book, column, row), decimalsOf(book, column, row, value, type));
}

/** What a formula says in words has its temperatures in the workbook's own degrees; what a person typed stays. */
function inOwnProse({ document }: Book, column: ProgramColumn, row: number, value: Scalar): Scalar {
  if (typeof value !== 'string' || document.isTyped(column, row)) return value;
  return inOwnDegrees(value, document.program.units);
}

export function shownScalar(
  book: Book,
  value: Scalar,
  type: ValueType,
  unit: Unit | undefined,
  decimals: number | undefined,
): Shown {
  if (type.kind === 'link' && typeof value === 'number') return { figure: rowName(book, type.table, value), unit: '' };
  const { program, writing } = book.document;
  return showParts(value, type, { unit, decimals, currency: program.currency, writing });
}

/**
 * What is typed is what is shown: as many decimals as were typed, not the column's; money keeps its two. What stands where nothing
 * is typed has no noughts at its end either: '8 in', as it would be typed; nor has what is shown in another unit than its source's.
 */
export function decimalsOf(
  book: Book,
  column: ProgramColumn,
  row: number,
  value: Scalar,
  type: ValueType,
): number | undefined {
  const declared = column.declaration.decimals;
  if (typeof value !== 'number') return declared;
  if (type.kind !== 'temperature' && (type.kind !== 'number' || type.dimension.money !== 0)) return declared;
  const shown = shownNumber(type.unit, value);
  const turned = typedUnit(book, column, row) !== shownUnit(book, column, row);
  if (!turned && book.document.isTyped(column, row)) return Math.min(decimalsIn(shown), MOST_TYPED_DECIMALS);
  if (declared === undefined || !(turned || column.role === 'default')) return declared;
  return decimalsIn(Number(shown.toFixed(declared)));
}

/** 2.5 has one. */
function decimalsIn(n: number): number {
  const [, fraction = ''] = /\.(\d+)$/.exec(String(n)) ?? [];
  return fraction.length;
}

/** Past this many decimals a typed figure is shown rounded; the editor opens with all of them. */
const MOST_TYPED_DECIMALS = 6;

/** A cell of a sheet as one text, without its column's unit. */
export function shownText(book: Book, sheet: ProgramSheet, row: number, columnId: string): string {
  const column = sheet.column(columnId);
  if (column?.type === undefined) return '';
  return shownScalar(book, scalarAt(book, column, row), column.type, undefined, undefined).figure;
}

/** A cell's value in words, with its unit: the one it was typed in, or with `own` its column's. */
export function inWords(book: Book, column: ProgramColumn, row: number, own = false): string {
  const { type } = column;
  if (type === undefined) return 'see formula';
  const value = inOwnProse(book, column, row, scalarAt(book, column, row));
  if (value === null) return 'blank';
  if (type.kind === 'link') return shownScalar(book, value, type, undefined, undefined).figure;
  const unit = own ? undefined : shownUnit(book, column, row);
  const decimals = decimalsOf(book, column, row, value, type);
  const { program, writing } = book.document;
  return showWithUnit(value, type, { unit, decimals, currency: program.currency, writing });
}

/** How a row is named: by its key, else by what its source made it of, else by its place. */
export function rowName(book: Book, sheetId: string, row: number): string {
  const sheet = sheetOf(book, sheetId);
  if (sheet === undefined) return '';
  if (sheet.schema.rows.from === 'single') return sheet.name;
  const names = namingColumns(sheet);
  if (names.length === 0) return `row ${(book.document.frame.places(sheet.table)[row] ?? 0) + 1}`;
  return names.map((column) => shownText(book, sheet, row, column)).join(' / ');
}

/** The columns that name a sheet's rows; none where their places do. */
export function namingColumns({ schema }: ProgramSheet): readonly string[] {
  const { rows: source, key } = schema;
  if (key !== undefined) return [key];
  if (source.from === 'each' || source.from === 'span') return [source.as.id];
  if (source.from === 'pairs') return source.as.map(({ id }) => id);
  return source.from === 'events' ? [source.as.id, source.event.id] : [];
}
