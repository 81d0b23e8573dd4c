// What sheets, columns, formulas and units are to become. Operations on them come one after another, and the program is
// compiled once, when somebody needs it as it is to be. Called by changes.ts; calls schema-operations.ts, the compiler and
// refit.ts.

import type { Catalog } from '../language/typed.ts';
import { catalogWithMore } from '../schema/check.ts';
import { compile, type Program, type ProgramSheet } from '../schema/compile.ts';
import { layOver } from '../schema/lay-over.ts';
import type { Schema } from '../schema/schema.ts';
import type { TemplateShelf } from '../schema/template.ts';
import type { Document } from './document.ts';
import { refit } from './refit.ts';
import { applySchema, type SchemaOperation, type SchemaState } from './schema-operations.ts';
import type { Touched } from './touched.ts';
import type { Operation, OperationOf } from './transaction.ts';

export class Reshaping {
  readonly #document: Document;
  readonly #templates: TemplateShelf;
  readonly #touched: Touched;
  /** What the schema is to become; undefined while it is as the program has it. */
  #wanted: SchemaState | undefined;
  /** The sheets that come of it, once asked for. */
  #schema: Schema | undefined;
  /** The names and types of columns once there are those that came since; undefined where something else changed too. */
  #catalog: Catalog | undefined;

  constructor(document: Document, templates: TemplateShelf, touched: Touched) {
    this.#document = document;
    this.#templates = templates;
    this.#touched = touched;
  }

  /** Takes an operation on sheets, columns or formulas and gives its inverse; settle() does it. */
  schema(operation: SchemaOperation, isOfOthers: (thing: string) => boolean): readonly Operation[] {
    const now = this.#wanted ?? { own: this.#document.program.schema.own, template: this.#document.template };
    const done = applySchema(operation, now, this.#templates, isOfOthers);
    if (done === undefined) return [];
    if (operation.op !== 'add column' && operation.op !== 'add sheet') this.#catalog = undefined;
    else if (this.#wanted === undefined) this.#catalog = this.#document.program.catalog;
    this.#wanted = { own: done.own, template: done.template };
    this.#schema = undefined;
    return done.inverse;
  }

  /** The sheets as they are to be. */
  get schemaToCome(): Schema {
    if (this.#wanted === undefined) return this.#document.program.schema;
    this.#schema ??= layOver(this.#wanted.template, this.#wanted.own);
    return this.#schema;
  }

  /** The names and types that formulas will find: where no more than columns and sheets came, nothing is compiled for it. */
  get catalogToCome(): Catalog {
    const { program } = this.#document;
    if (this.#wanted === undefined) return program.catalog;
    if (this.#catalog !== undefined) {
      this.#catalog = catalogWithMore(this.schemaToCome, this.#catalog, program);
      return this.#catalog;
    }
    this.settle();
    return this.#document.program.catalog;
  }

  /** Other units, at once. */
  units(operation: OperationOf<'units'>): readonly Operation[] {
    const { units } = this.#document.program;
    if (units === operation.units) return [];
    this.settle();
    const { program } = this.#document;
    this.#become(compile(program.schema, { ...program, units: operation.units }, program));
    return [{ op: 'units', units }];
  }

  /** Brings the program in line with what the schema is to be, so that cells and rows find their columns. */
  settle(): void {
    if (this.#wanted === undefined) return;
    const schema = this.schemaToCome;
    const document = this.#document;
    document.template = this.#wanted.template;
    this.#wanted = undefined;
    this.#catalog = undefined;
    if (schema !== document.program.schema) this.#become(compile(schema, document.program, document.program));
  }

  #become(program: Program): void {
    const document = this.#document;
    const touched = this.#touched;
    const before = document.program;
    refit(document, program);
    for (const { id } of [...before.sheets, ...program.sheets]) touched.columnsOf.add(id);
    for (const { id } of program.sheets) touched.rowsOf.add(id);
    const names = (sheets: readonly ProgramSheet[]): string => sheets.map(({ id, name }) => `${id} ${name}`).join('\n');
    if (names(before.sheets) !== names(program.sheets)) touched.sheets = true;
    touched.settings = true;
  }
}
