// Checks every formula of a schema: parsed, names found, types and units known, or a diagnostic. Formulas whose column takes
// its type from them are tried again until no more can be known. Knows no data; compile.ts makes a program of the outcome.

import { leftOut } from '../functions/elsewhere.ts';
import { noteUnknownFunction } from '../functions/former-wanted.ts';
import { SIGNATURES } from '../functions/index.ts';
import { checkFormula } from '../language/checker.ts';
import type { CheckContext } from '../language/context.ts';
import { parseFormula } from '../language/parser.ts';
import { type FoundName, shownFormula } from '../language/stored.ts';
import type { Diagnostic } from '../language/tree.ts';
import type { Catalog, Typed } from '../language/typed.ts';
import { unknownUnit } from '../language/unknown-unit.ts';
import type { Vocabulary } from '../units/vocabulary.ts';
import { figureColumn, recordColumn } from '../values/figures.ts';
import { DATE, TEXT, type ValueType, YESNO } from '../values/type.ts';
import type { UnitSystem } from './declaration.ts';
import { checkColumn, FIRST, isCheckColumn, isHidden, LAST, spanTable, WHERE } from './hidden.ts';
import { type ColumnSchema, isComputed, isOneRow, type Schema, type SheetSchema } from './schema.ts';
import { typeOf } from './types.ts';

/** A formula and where it stands. */
export interface FormulaPlace {
  readonly sheet: string;
  /** The table in which it is worked out: the sheet's, or the one that holds a span's ends. */
  readonly table: string;
  readonly column: string;
  /** The text with names, as shown. */
  readonly text: string;
  /** The type it must give; undefined where the column takes its type from it. */
  readonly wanted: ValueType | undefined;
}

export interface CheckedFormula extends FormulaPlace {
  readonly typed: Typed | undefined;
  readonly diagnostic: Diagnostic | undefined;
  /** The names in the text and what they were found to mean. */
  readonly found: readonly FoundName[];
}

export interface CheckSettings {
  readonly units: UnitSystem;
  readonly vocabulary: Vocabulary;
}

export interface CheckedSchema {
  readonly formulas: readonly CheckedFormula[];
  readonly catalog: Catalog;
  /** The type of a column; undefined while its formula doesn't check. */
  typeOf(sheet: string, column: string): ValueType | undefined;
}

export type CheckedText =
  | { readonly ok: true; readonly typed: Typed; readonly found: readonly FoundName[] }
  | { readonly ok: false; readonly diagnostic: Diagnostic; readonly found: readonly FoundName[] };

/** Parses and checks one formula as it would stand in a sheet, or in none. */
export function checkText(
  text: string,
  place: {
    readonly table?: string | undefined;
    readonly wanted?: ValueType | undefined;
    readonly column?: string;
    /** It is a check's. */
    readonly saysSomething?: boolean;
  },
  catalog: Catalog,
  vocabulary: Vocabulary,
): CheckedText {
  const parsed = parseFormula(
    text,
    (symbol) => vocabulary.find(symbol) !== undefined,
    (symbol) => unknownUnit(symbol, vocabulary),
  );
  if (!parsed.ok) return { ok: false, diagnostic: parsed.diagnostic, found: [] };
  const found: FoundName[] = [];
  const context: CheckContext = {
    catalog,
    table: place.table,
    functions: SIGNATURES,
    vocabulary,
    leftOut: (name) => {
      noteUnknownFunction();
      return leftOut(name);
    },
    found: ({ from, to }, id) => found.push({ from, to, id }),
    ...(place.wanted === undefined ? {} : { wanted: place.wanted }),
    ...(place.column === undefined ? {} : { column: place.column }),
    ...(place.saysSomething === true ? { saysSomething: true } : {}),
  };
  return { ...checkFormula(parsed.tree, context), found };
}

type Types = Map<string, ValueType | undefined>;

/** Every formula of the sheets, in their order. */
function formulasOf(schema: Schema, types: Types): readonly FormulaPlace[] {
  return schema.sheets.flatMap((sheet) => [
    ...columnFormulas(sheet, schema, types, () => true),
    ...hiddenFormulas(sheet, schema),
  ]);
}

/** The formulas of the columns of a sheet that are looked for. */
function columnFormulas(
  { id: sheet, columns }: SheetSchema,
  schema: Schema,
  types: Types,
  isLookedFor: (column: ColumnSchema, type: ValueType | undefined) => boolean,
): readonly FormulaPlace[] {
  return columns.flatMap((column): FormulaPlace[] => {
    const { id, formula } = column;
    const type = types.get(`${sheet}/${id}`);
    if (!isComputed(column) || !isLookedFor(column, type)) return [];
    const wanted = isInferred(column) ? undefined : type;
    return [{ sheet, table: sheet, column: id, text: shown(formula, schema), wanted }];
  });
}

function isInferred({ declaration }: ColumnSchema): boolean {
  return declaration.inferred === true;
}

function shown(formula: string, schema: Schema): string {
  return shownFormula(formula, (id) => schema.nameOf(id));
}

/** The formulas that stand behind a sheet: checks, the rows' condition, a span's ends. */
function hiddenFormulas({ id, checks, rows }: SheetSchema, schema: Schema): readonly FormulaPlace[] {
  const hidden = (table: string, column: string, wanted: ValueType, formula: string): FormulaPlace => {
    return { sheet: id, table, column, text: shown(formula, schema), wanted };
  };
  const behind = checks.map((check) => hidden(id, checkColumn(check.id), TEXT, check.says));
  if ((rows.from === 'each' || rows.from === 'pairs') && rows.where !== '') {
    behind.push(hidden(id, WHERE, YESNO, rows.where));
  }
  if (rows.from === 'span') {
    behind.push(hidden(spanTable(id), FIRST, DATE, rows.first), hidden(spanTable(id), LAST, DATE, rows.last));
  }
  return behind;
}

function catalogOf(schema: Schema, types: Types, units: UnitSystem): Catalog {
  return {
    units,
    tables: schema.sheets.map((sheet) => ({
      id: sheet.id,
      name: sheet.name,
      oneRow: isOneRow(sheet),
      key: sheet.key,
      columns: sheet.columns.map(({ id, name }) => ({ id, name, type: types.get(`${sheet.id}/${id}`) })),
    })),
  };
}

/** Checks all formulas of a schema under some units. */
export function checkSchema(schema: Schema, settings: CheckSettings): CheckedSchema {
  const types = declaredTypes(schema, settings);
  const places = formulasOf(schema, types);
  const checked = checkAll(places, schema, types, settings);
  const bySheet = new Map(
    schema.sheets.map(({ id, columns }) => [
      id,
      new Map(columns.map((column) => [column.id, types.get(`${id}/${column.id}`)])),
    ]),
  );
  return {
    formulas: places.flatMap((place) => checked.get(place) ?? []),
    catalog: catalogOf(schema, types, settings.units),
    typeOf: (sheet, column) => {
      const columns = bySheet.get(sheet);
      const plain = columns?.get(column);
      if (plain !== undefined) return plain;
      const type = columns?.get(recordColumn(column));
      if (type?.kind !== 'record' || !column.includes('·')) return type;
      return type.record.figures.find(({ id }) => figureColumn(recordColumn(column), id) === column)?.type;
    },
  };
}

/**
 * The catalogue of a schema that has more columns and sheets than one whose catalogue is known, and else the same: only formulas
 * are looked at whose column waits for its type.
 */
export function catalogWithMore(schema: Schema, known: Catalog, settings: CheckSettings): Catalog {
  const types = declaredTypes(schema, settings);
  for (const { id: sheet, columns } of known.tables)
    for (const { id, type } of columns) types.set(`${sheet}/${id}`, types.get(`${sheet}/${id}`) ?? type);
  const waits = (column: ColumnSchema, type: ValueType | undefined): boolean =>
    isInferred(column) && type === undefined;
  const places = schema.sheets.flatMap((sheet) => columnFormulas(sheet, schema, types, waits));
  checkAll(places, schema, types, settings);
  return catalogOf(schema, types, settings.units);
}

/** The types that columns are declared with; of those that take theirs from a formula none is known. */
function declaredTypes(schema: Schema, { units, vocabulary }: CheckSettings): Types {
  const types: Types = new Map();
  for (const sheet of schema.sheets) {
    for (const column of sheet.columns) {
      const type = typeOf(column.declaration.type, units, vocabulary, (of) => schema.nameOf(of));
      types.set(`${sheet.id}/${column.id}`, isInferred(column) ? undefined : type);
    }
  }
  return types;
}

/** Checks formulas until no more can be known, and notes the types that they give. */
function checkAll(
  places: readonly FormulaPlace[],
  schema: Schema,
  types: Types,
  settings: CheckSettings,
): ReadonlyMap<FormulaPlace, CheckedFormula> {
  const checked = new Map<FormulaPlace, CheckedFormula>();
  let open = places;
  for (let knownMore = true; knownMore && open.length > 0; ) {
    knownMore = false;
    const catalog = catalogOf(schema, types, settings.units);
    const left: FormulaPlace[] = [];
    for (const place of open) {
      const { sheet, column } = place;
      const one = checkPlace(place, schema, catalog, settings);
      checked.set(place, one);
      if (one.typed === undefined) left.push(place);
      else if (schema.column(sheet, column)?.declaration.inferred === true) {
        types.set(`${sheet}/${column}`, one.typed.type);
        knownMore = true;
      }
    }
    open = left;
  }
  return checked;
}

/** The unit that a column is declared in, where nobody knows it: its formula has nothing to be held against. */
function strayUnit(
  { sheet, column }: FormulaPlace,
  schema: Schema,
  { units, vocabulary }: CheckSettings,
): string | undefined {
  const declaration = isHidden(column) ? undefined : schema.column(sheet, column)?.declaration;
  if (declaration === undefined || declaration.inferred === true || declaration.type.type !== 'number')
    return undefined;
  const unit = declaration.type.unit[units];
  return vocabulary.find(unit) === undefined ? unit : undefined;
}

function checkPlace(place: FormulaPlace, schema: Schema, catalog: Catalog, settings: CheckSettings): CheckedFormula {
  const { vocabulary } = settings;
  const { text, table, wanted, sheet, column } = place;
  const stray = strayUnit(place, schema, settings);
  if (stray !== undefined) {
    const why = `The column’s own unit: ${unknownUnit(stray, vocabulary).why}`;
    return { ...place, typed: undefined, diagnostic: { from: 0, to: text.length, why }, found: [] };
  }
  const name = isHidden(column) ? undefined : schema.column(sheet, column)?.name;
  const named = name === undefined ? { saysSomething: isCheckColumn(column) } : { column: name };
  const one = checkText(text, { table, wanted, ...named }, catalog, vocabulary);
  return {
    ...place,
    typed: one.ok ? one.typed : undefined,
    diagnostic: one.ok ? undefined : one.diagnostic,
    found: one.found,
  };
}
