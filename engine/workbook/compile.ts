// From formulas as text to a graph ready to run: parses and checks every formula against the sheets as they stand, then has
// the recalculation build its graph. Columns whose formula doesn't check, or that stand on a circle, become errors and stop
// nothing else.

import { FUNCTIONS, SIGNATURES } from '../functions/index.ts';
import { leftOut } from '../functions/left-out.ts';
import { checkFormula } from '../language/checker.ts';
import type { CheckContext } from '../language/context.ts';
import { parseFormula } from '../language/parser.ts';
import type { Complaint } from '../language/tree.ts';
import type { Catalog, Typed } from '../language/typed.ts';
import { unknownUnit } from '../language/unknown-unit.ts';
import { type Built, buildGraph, type Computed, type Schema } from '../recalculation/build.ts';
import type { Maker } from '../recalculation/maker-node.ts';
import { eachMaker, eventsMaker, pairsMaker, spanMaker } from '../recalculation/makers.ts';
import type { Model } from '../recalculation/model.ts';
import type { Vocabulary } from '../units/vocabulary.ts';
import type { CellError } from '../values/error.ts';
import { plainText } from '../values/plain-text.ts';
import { TEXT, type ValueType } from '../values/type.ts';
import { FIRST, isHidden, LAST, spanTable } from './names.ts';
import { isComputed, type Sheet, type SheetColumn } from './sheet.ts';

export interface CompileContext {
  readonly model: Model;
  readonly sheets: ReadonlyMap<string, Sheet>;
  readonly vocabulary: Vocabulary;
  readonly currency: string;
}

/** What the checker may know of the sheets. */
export function catalogOf(sheets: ReadonlyMap<string, Sheet>): Catalog {
  return {
    tables: [...sheets.values()].map((sheet) => ({
      name: sheet.name,
      oneRow: sheet.source.from === 'single',
      key: sheet.declaration.key,
      columns: sheet.columns.map((column) => ({ name: column.declaration.name, type: column.type })),
    })),
  };
}

export type CheckedText =
  | { readonly ok: true; readonly typed: Typed }
  | { readonly ok: false; readonly complaint: Complaint };

/** Parses and checks one formula text as it would stand in a sheet (or in none). */
export function checkText(
  text: string,
  table: string | undefined,
  wanted: ValueType | undefined,
  column: string | undefined,
  context: CompileContext,
  catalog: Catalog = catalogOf(context.sheets),
): CheckedText {
  const { vocabulary } = context;
  const parsed = parseFormula(
    text,
    (symbol) => vocabulary.find(symbol) !== undefined,
    (symbol) => unknownUnit(symbol, vocabulary),
  );
  if (!parsed.ok) return parsed;
  const check: CheckContext = {
    catalog,
    table,
    functions: SIGNATURES,
    vocabulary,
    leftOut,
    ...(wanted === undefined ? {} : { wanted }),
    ...(column === undefined || isHidden(column) ? {} : { column }),
  };
  return checkFormula(parsed.tree, check);
}

function computedColumns(
  sheets: ReadonlyMap<string, Sheet>,
): { readonly sheet: Sheet; readonly column: SheetColumn; readonly table: string }[] {
  return [...sheets.values()].flatMap((sheet) => [
    ...sheet.columns.filter(isComputed).map((column) => ({ sheet, column, table: sheet.name })),
    ...sheet.hidden.map((column) => ({
      sheet,
      column,
      table: column.declaration.name === FIRST || column.declaration.name === LAST ? spanTable(sheet.name) : sheet.name,
    })),
  ]);
}

/** Checks every formula; columns whose type follows their formula are tried again until no more can be known. */
function checkAll(context: CompileContext): void {
  const all = computedColumns(context.sheets);
  for (const { column } of all) {
    column.typed = undefined;
    column.complaint = undefined;
    if (column.inferred) column.type = undefined;
  }
  let open = all;
  let knownMore = true;
  while (open.length > 0) {
    const catalog = catalogOf(context.sheets);
    const left: typeof open = [];
    for (const one of open) {
      const { column, table } = one;
      const checked = checkText(
        column.formula,
        table,
        column.inferred ? undefined : column.type,
        column.declaration.name,
        context,
        catalog,
      );
      if (checked.ok) {
        column.typed = checked.typed;
        column.complaint = undefined;
        if (column.inferred) {
          column.type = checked.typed.type;
          knownMore = true;
        }
      } else {
        column.complaint = checked.complaint;
        left.push(one);
      }
    }
    if (!knownMore) return;
    knownMore = false;
    open = left.length === open.length ? [] : left;
  }
}

function failed(error: CellError, type: ValueType | undefined): Typed {
  return { node: 'constant', value: error, type: type ?? TEXT, from: 0, to: 0 };
}

function makersOf(context: CompileContext): Maker[] {
  const { model, sheets } = context;
  const makers: Maker[] = [];
  for (const { name, source, data } of sheets.values()) {
    if (source.from === 'each') makers.push(eachMaker(data, data.column(source.as), model.table(source.table)));
    else if (source.from === 'span') {
      const ends = model.table(spanTable(name));
      makers.push(spanMaker(data, data.column(source.as), ends.column(FIRST), ends.column(LAST), source.step));
    } else if (source.from === 'pairs') {
      makers.push(
        pairsMaker(
          data,
          [data.column(source.as[0]), data.column(source.as[1])],
          [model.table(source.tables[0]), model.table(source.tables[1])],
        ),
      );
    } else if (source.from === 'events') {
      const dated = source.dates.map((date) => ({
        table: model.table(date.table),
        column: model.table(date.table).column(date.column),
        event: date.event,
        about: data.column(date.about),
      }));
      makers.push(eventsMaker(model, data, data.column(source.as), data.column(source.event), dated));
    }
  }
  return makers;
}

/** What the planner may ask of the sheets. */
export function schemaOf(context: CompileContext): Schema {
  const { sheets, vocabulary, currency } = context;
  const columnOf = (table: string, name: string): SheetColumn | undefined =>
    sheets.get(table)?.columns.find((column) => column.declaration.name === name);
  return {
    functions: FUNCTIONS,
    vocabulary,
    unit: (symbol) => vocabulary.find(symbol),
    keyOf: (table) => sheets.get(table)?.declaration.key,
    tableBehind: (table, name) => {
      const type = columnOf(table, name)?.type;
      return type?.kind === 'link' ? type.table : '';
    },
    isText: (table, name) => {
      const kind = columnOf(table, name)?.type?.kind;
      return kind === 'text' || kind === 'choice';
    },
    say: (scalar, type) => plainText(scalar, type, currency),
  };
}

/** Checks all formulas and builds the graph; complaints stand in the columns afterwards. */
export function compile(context: CompileContext): Built {
  checkAll(context);
  const all = computedColumns(context.sheets);
  const makers = makersOf(context);
  const schema = schemaOf(context);
  for (;;) {
    const computed = all.map(({ column, table }): Computed => {
      const { complaint, typed, type, overrides } = column;
      const error: CellError = {
        error: complaint?.circle === true ? 'circle' : 'formula',
        why: complaint?.why ?? 'This formula has not been checked.',
        at: { table, row: -1, column: column.declaration.name },
      };
      return {
        table,
        column: column.declaration.name,
        typed: typed === undefined || complaint !== undefined ? failed(error, type) : typed,
        overrides,
      };
    });
    const built = buildGraph(context.model, schema, computed, makers);
    const circles = built.circles.filter((circle) => circle.length > 0);
    if (circles.length === 0) return built;
    for (const circle of circles) {
      const names = circle.map((node) => `[${node.columnName}]`);
      const tables = new Set(circle.map((node) => node.table.name));
      const path = (tables.size === 1 ? names : circle.map((node) => node.name)).concat(
        tables.size === 1 ? (names[0] ?? '') : (circle[0]?.name ?? ''),
      );
      const why = `These formulas go in a circle: ${path.join(' reads ')}. Change one of them so that it no longer needs the others.`;
      for (const node of circle) {
        const entry = all.find(
          (one) => one.table === node.table.name && one.column.declaration.name === node.columnName,
        );
        if (entry !== undefined)
          entry.column.complaint = { from: 0, to: entry.column.formula.length, why, circle: true };
      }
    }
  }
}
