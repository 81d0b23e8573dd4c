// Makes a program of a schema: its formulas checked, circles taken out, the layout of its data and the graph that works it
// out. A program holds no data: every workbook and every branch with the same schema and units runs on the same one.

import { type Dictionaries, Frame } from '../calculation/frame.ts';
import { eachRow } from '../calculation/generators/each.ts';
import { EventSlots, eventRows } from '../calculation/generators/events.ts';
import type { RowGenerator } from '../calculation/generators/generator.ts';
import { Pairs, pairRows } from '../calculation/generators/pairs.ts';
import { spanRows } from '../calculation/generators/span.ts';
import { type ColumnDef, Layout, type TableDef } from '../calculation/layout.ts';
import { type Built, buildGraph, type StatePlaces } from '../calculation/plans/build.ts';
import { pairRange } from '../calculation/plans/pair-ranges.ts';
import type { PlanSchema } from '../calculation/plans/reader.ts';
import { TypedUnits } from '../calculation/typed-cells.ts';
import { FUNCTIONS } from '../functions/index.ts';
import type { Diagnostic } from '../language/tree.ts';
import type { Catalog, Typed } from '../language/typed.ts';
import { createVocabulary, type Vocabulary } from '../units/vocabulary.ts';
import type { CellError } from '../values/error.ts';
import { figureColumn } from '../values/figures.ts';
import { plainText } from '../values/plain-text.ts';
import { Faults, Texts } from '../values/texts.ts';
import { TEXT, type ValueType } from '../values/type.ts';
import { type CheckedFormula, type CheckedSchema, checkSchema } from './check.ts';
import { findCircles } from './circles.ts';
import type { ColumnDeclaration, UnitSystem } from './declaration.ts';
import { checkColumn, FIRST, KIND, LAST, spanTable, WHERE } from './hidden.ts';
import { isComputed, type Schema, type SheetSchema } from './schema.ts';
import { isWhole } from './types.ts';

/** A column of a sheet as it works. */
export interface ProgramColumn {
  readonly id: string;
  readonly name: string;
  readonly role: ColumnDeclaration['role'] | 'made';
  readonly declaration: ColumnDeclaration;
  readonly own: boolean;
  readonly def: ColumnDef;
  /** undefined while the formula that gives the type doesn't check. */
  readonly type: ValueType | undefined;
  /** Its formula with names, as a person wrote it; '' where it has none. */
  readonly formula: string;
  readonly templateFormula: string | undefined;
  readonly typed: Typed | undefined;
  readonly diagnostic: Diagnostic | undefined;
}

/** What a check of a sheet says, worked out in a column that no one sees. */
export interface ProgramCheck {
  readonly check: SheetSchema['checks'][number];
  readonly def: ColumnDef;
  readonly diagnostic: Diagnostic | undefined;
}

export interface ProgramSheet {
  readonly schema: SheetSchema;
  readonly id: string;
  readonly name: string;
  readonly table: TableDef;
  readonly columns: readonly ProgramColumn[];
  readonly checks: readonly ProgramCheck[];
  /** What is wrong with the formulas or the other sheets that its rows follow from. */
  readonly rowDiagnostics: readonly Diagnostic[];
  column(id: string): ProgramColumn | undefined;
}

export interface ProgramSettings {
  readonly units: UnitSystem;
  /** ISO 4217 code. */
  readonly currency: string;
}

export interface Program extends ProgramSettings {
  readonly schema: Schema;
  readonly vocabulary: Vocabulary;
  readonly catalog: Catalog;
  readonly layout: Layout;
  readonly words: Dictionaries;
  readonly typedUnits: TypedUnits;
  readonly plan: PlanSchema;
  readonly built: Built;
  readonly sheets: readonly ProgramSheet[];
  sheet(id: string): ProgramSheet | undefined;
  /** A frame without rows to run it in. */
  newFrame(): Frame;
}

/** What outlives a change of schema: the dictionaries that cells refer to. */
export interface Lasting {
  readonly words: Dictionaries;
  readonly typedUnits: TypedUnits;
}

const compiled = new WeakMap<Schema, Map<string, Program>>();

/** The program of a schema. Asked again for the same it gives the same one, unless something lasting is handed over. */
export function compile(schema: Schema, settings: ProgramSettings, lasting?: Lasting): Program {
  const name = `${settings.units} ${settings.currency}`;
  const known = compiled.get(schema) ?? new Map<string, Program>();
  compiled.set(schema, known);
  const program = known.get(name);
  if (program !== undefined && (lasting === undefined || program.words === lasting.words)) return program;
  const { words, typedUnits } = lasting ?? sharedBy(known) ?? newLasting();
  const { units, currency } = settings;
  const made = new Compiler(schema, { units, currency }, { words, typedUnits }).compile();
  if (program === undefined) known.set(name, made);
  return made;
}

/** Switching units keeps the cells, so the programs of one schema share what cells refer to. */
function sharedBy(known: ReadonlyMap<string, Program>): Lasting | undefined {
  return known.values().next().value;
}

function newLasting(): Lasting {
  return { words: { texts: new Texts(), faults: new Faults(), figures: [] }, typedUnits: new TypedUnits() };
}

class Compiler {
  readonly #schema: Schema;
  readonly #settings: ProgramSettings;
  readonly #lasting: Lasting;
  readonly #layout = new Layout();
  readonly #vocabulary: Vocabulary;

  constructor(schema: Schema, settings: ProgramSettings, lasting: Lasting) {
    this.#schema = schema;
    this.#settings = settings;
    this.#lasting = lasting;
    this.#vocabulary = createVocabulary({ currency: settings.currency });
  }

  compile(): Program {
    const schema = this.#schema;
    const checked = checkSchema(schema, { units: this.#settings.units, vocabulary: this.#vocabulary });
    const circles = findCircles(schema, checked);
    const diagnostics = new Map<string, Diagnostic>();
    for (const { table, column, diagnostic } of checked.formulas) {
      if (diagnostic !== undefined) diagnostics.set(`${table}/${column}`, diagnostic);
    }
    for (const circle of circles.formulas) this.#diagnoseCircle(circle, checked, diagnostics);
    this.#lay(checked);
    const plan = this.#planSchema(checked);
    const wheres = new Map(
      checked.formulas.flatMap(({ table, column, typed }): [string, Typed][] =>
        column === WHERE && typed !== undefined && !diagnostics.has(`${table}/${column}`) ? [[table, typed]] : [],
      ),
    );
    const built = buildGraph({
      layout: this.#layout,
      words: this.#lasting.words,
      schema: plan,
      computed: checked.formulas.map((formula) => ({
        column: this.#layout.column(formula.table, formula.column),
        typed: runnable(formula, diagnostics.get(`${formula.table}/${formula.column}`), checked),
      })),
      generators: (state) => this.#generators(state, new Set(circles.rows), wheres),
    });
    const formulas = new Map(checked.formulas.map((formula) => [`${formula.table}/${formula.column}`, formula]));
    const sheets = schema.sheets.map((sheet) => this.#sheet(sheet, checked, formulas, diagnostics, circles.rows));
    const byId = new Map(sheets.map((sheet) => [sheet.id, sheet]));
    const { layout } = { layout: this.#layout };
    return {
      ...this.#settings,
      ...this.#lasting,
      schema,
      vocabulary: this.#vocabulary,
      catalog: checked.catalog,
      layout,
      plan,
      built,
      sheets,
      sheet: (id) => byId.get(id),
      newFrame: () => Frame.empty(layout, built.graph.order.length, this.#lasting.words),
    };
  }

  #diagnoseCircle(circle: readonly string[], checked: CheckedSchema, diagnostics: Map<string, Diagnostic>): void {
    const schema = this.#schema;
    const tables = new Set(circle.map((column) => column.slice(0, column.indexOf('/'))));
    const names = circle.map((column) => {
      const name = schema.nameOf(column) ?? column;
      const sheet = schema.nameOf(column.slice(0, column.indexOf('/'))) ?? '';
      return tables.size === 1 ? `[${name}]` : `${sheet} / ${name}`;
    });
    const path = [...names, names[0] ?? ''].join(' reads ');
    const why = `These formulas go in a circle: ${path}. Change one of them so that it no longer needs the others.`;
    for (const { table, column, text } of checked.formulas) {
      if (!circle.includes(`${table}/${column}`) || diagnostics.has(`${table}/${column}`)) continue;
      diagnostics.set(`${table}/${column}`, { from: 0, to: text.length, why, circle: true });
    }
  }

  /** A column; of a record also those behind it that keep its figures. */
  #layColumn(table: TableDef, id: string, type: ValueType | undefined): void {
    this.#layout.addColumn(table, id, isWhole(type));
    if (type?.kind !== 'record') return;
    for (const figure of type.record.figures)
      this.#layout.addColumn(table, figureColumn(id, figure.id), isWhole(figure.type));
  }

  /** Gives every table and column its place in frames. */
  #lay(checked: CheckedSchema): void {
    for (const sheet of this.#schema.sheets) {
      const table = this.#layout.addTable(sheet.id);
      for (const { id } of sheet.columns) this.#layColumn(table, id, checked.typeOf(sheet.id, id));
      if (sheet.rows.from === 'events') this.#layout.addColumn(table, KIND, false);
      for (const check of sheet.checks) this.#layout.addColumn(table, checkColumn(check.id), true);
      if ((sheet.rows.from === 'each' || sheet.rows.from === 'pairs') && sheet.rows.where !== '') {
        table.shown = this.#layout.addColumn(table, WHERE, false);
      }
      if (sheet.rows.from === 'span') {
        const ends = this.#layout.addTable(spanTable(sheet.id));
        this.#layout.addColumn(ends, FIRST, false);
        this.#layout.addColumn(ends, LAST, false);
      }
    }
  }

  #planSchema(checked: CheckedSchema): PlanSchema {
    const schema = this.#schema;
    const vocabulary = this.#vocabulary;
    return {
      functions: FUNCTIONS,
      vocabulary,
      unit: (symbol) => vocabulary.find(symbol),
      keyOf: (table) => schema.sheet(table)?.key,
      typeOf: (table, column) => checked.typeOf(table, column),
      tableName: (table) => schema.sheet(table)?.name ?? table,
      columnName: (table, column) => schema.column(table, column)?.name ?? column,
      say: (scalar, type) => plainText(scalar, type, this.#settings.currency),
    };
  }

  #generators(
    state: StatePlaces,
    left: ReadonlySet<string>,
    wheres: ReadonlyMap<string, Typed>,
  ): readonly RowGenerator[] {
    const layout = this.#layout;
    return this.#schema.sheets.flatMap(({ id, rows }): RowGenerator[] => {
      if (left.has(id) || !this.#namesWhatIsThere(id)) return [];
      const table = layout.table(id);
      const column = (name: string): ColumnDef => layout.column(id, name);
      switch (rows.from) {
        case 'each': {
          const source = layout.table(rows.sheet);
          table.order = { by: 'table', table: source };
          return [eachRow(table, column(rows.as.id), source)];
        }
        case 'span': {
          const ends = spanTable(id);
          const [first, last] = [layout.column(ends, FIRST), layout.column(ends, LAST)];
          return [spanRows(table, column(rows.as.id), first, last, rows.step)];
        }
        case 'pairs': {
          const sources = [layout.table(rows.sheets[0]), layout.table(rows.sheets[1])] as const;
          const links = [column(rows.as[0].id), column(rows.as[1].id)] as const;
          table.order = {
            by: 'links',
            links: [
              { column: links[0], to: sources[0] },
              { column: links[1], to: sources[1] },
            ],
          };
          const where = wheres.get(id);
          const pairs = state((owner) => new Pairs(owner));
          return [
            pairRows(table, links, sources, pairs, (asColumn) =>
              where === undefined ? undefined : pairRange(where, { table, links, sources }, asColumn),
            ),
          ];
        }
        case 'events': {
          const dated = rows.dates.map((date) => ({
            table: layout.table(date.sheet),
            column: layout.column(date.sheet, date.column),
            event: date.event,
            about: column(date.about.id),
          }));
          const filled = { date: column(rows.as.id), event: column(rows.event.id), kind: column(KIND) };
          const about = dated.map((one) => ({ column: one.about, to: one.table }));
          table.order = { by: 'events', date: filled.date, kind: filled.kind, about };
          return [
            eventRows(
              table,
              filled,
              dated,
              state((owner) => new EventSlots(owner)),
            ),
          ];
        }
        default:
          return [];
      }
    });
  }

  /** A sheet whose rows come from a sheet or column that is not there has none; its diagnostic says so. */
  #namesWhatIsThere(id: string): boolean {
    return this.#missingFrom(id) === undefined;
  }

  #missingFrom(id: string): string | undefined {
    const schema = this.#schema;
    const rows = schema.sheet(id)?.rows;
    const sheets = rows?.from === 'each' ? [rows.sheet] : rows?.from === 'pairs' ? rows.sheets : [];
    const missing = sheets.find((sheet) => schema.sheet(sheet) === undefined);
    if (missing !== undefined) return `a sheet that is not in the workbook (${schema.nameOf(missing) ?? missing})`;
    if (rows?.from !== 'events') return undefined;
    const date = rows.dates.find(({ sheet, column }) => schema.column(sheet, column) === undefined);
    if (date === undefined) return undefined;
    const name = schema.nameOf(`${date.sheet}/${date.column}`) ?? date.column;
    return `a column of dates that is not in the workbook (${name})`;
  }

  #sheet(
    schema: SheetSchema,
    checked: CheckedSchema,
    formulas: ReadonlyMap<string, CheckedFormula>,
    diagnostics: ReadonlyMap<string, Diagnostic>,
    circular: readonly string[],
  ): ProgramSheet {
    const table = this.#layout.table(schema.id);
    const columns = schema.columns.map((column): ProgramColumn => {
      const place = `${schema.id}/${column.id}`;
      const formula = isComputed(column) ? formulas.get(place) : undefined;
      return {
        id: column.id,
        name: column.name,
        role: column.role,
        declaration: column.declaration,
        own: column.own,
        def: this.#layout.column(schema.id, column.id),
        type: checked.typeOf(schema.id, column.id),
        formula: formula?.text ?? '',
        templateFormula: column.templateFormula,
        typed: diagnostics.has(place) ? undefined : formula?.typed,
        diagnostic: diagnostics.get(place),
      };
    });
    const byId = new Map(columns.map((column) => [column.id, column]));
    const behind = [`${schema.id}/${WHERE}`, `${spanTable(schema.id)}/${FIRST}`, `${spanTable(schema.id)}/${LAST}`];
    const rowDiagnostics = behind.flatMap((place) => diagnostics.get(place) ?? []);
    const missing = this.#missingFrom(schema.id);
    if (missing !== undefined) {
      rowDiagnostics.push({ from: 0, to: 0, why: `Its rows follow from ${missing}: it has none until that is back.` });
    }
    if (circular.includes(schema.id)) {
      const why =
        'Its rows follow from a sheet whose rows follow from this one: it has none until one of them changes.';
      rowDiagnostics.push({ from: 0, to: 0, why, circle: true });
    }
    return {
      schema,
      id: schema.id,
      name: schema.name,
      table,
      columns,
      checks: schema.checks.map((check) => ({
        check,
        def: this.#layout.column(schema.id, checkColumn(check.id)),
        diagnostic: diagnostics.get(`${schema.id}/${checkColumn(check.id)}`),
      })),
      rowDiagnostics,
      column: (id) => byId.get(id),
    };
  }
}

/** What runs for a formula; one that can't run gives an error in every cell. */
function runnable(formula: CheckedFormula, diagnostic: Diagnostic | undefined, checked: CheckedSchema): Typed {
  const { typed, sheet, table, column, wanted } = formula;
  if (typed !== undefined && diagnostic === undefined) return typed;
  const error: CellError = {
    error: diagnostic?.circle === true ? 'circle' : 'formula',
    why: diagnostic?.why ?? 'This formula has not been checked.',
    at: { sheet: table, row: -1, column },
  };
  const type = wanted ?? checked.typeOf(sheet, column) ?? TEXT;
  return { node: 'constant', value: error, type, from: 0, to: 0 };
}
