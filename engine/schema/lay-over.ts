// The one way to a schema: a template with what a person changed laid over it. Where things of the template were renamed its
// formulas are first turned into their kept form, so that they follow the new names.

import { shownFormula, storedFormula } from '../language/stored.ts';
import { createVocabulary } from '../units/vocabulary.ts';
import { type CheckedFormula, checkSchema } from './check.ts';
import type { CheckDeclaration, RowSource, SheetDeclaration } from './declaration.ts';
import { checkColumn, FIRST, LAST, spanTable, WHERE } from './hidden.ts';
import { laidOver } from './overlay.ts';
import { NOTHING_OWN, type OwnSchema } from './own.ts';
import type { Schema } from './schema.ts';
import type { Template } from './template.ts';

const untouched = new WeakMap<Template, Schema>();
const bound = new WeakMap<Template, readonly SheetDeclaration[]>();

/** The sheets as they stand. The same template with nothing own gives the same schema, whatever workbook asks. */
export function layOver(template: Template, own: OwnSchema): Schema {
  if (Object.keys(own).length === 0) return pristine(template);
  return laidOver(template, own, renamesTemplate(own) ? boundSheets(template) : template.sheets);
}

function pristine(template: Template): Schema {
  const known = untouched.get(template) ?? laidOver(template, NOTHING_OWN, template.sheets);
  untouched.set(template, known);
  return known;
}

function renamesTemplate(own: OwnSchema): boolean {
  return Object.values(own).some(
    ({ name, declaration, columns }) =>
      (name !== undefined && declaration === undefined) ||
      Object.values(columns ?? {}).some((column) => column.name !== undefined && column.declaration === undefined),
  );
}

/** A template's sheets with their formulas in kept form. */
function boundSheets(template: Template): readonly SheetDeclaration[] {
  const known = bound.get(template);
  if (known !== undefined) return known;
  const made = bindSheets(pristine(template), template.sheets);
  bound.set(template, made);
  return made;
}

/** The same sheets with every formula in kept form, its names found among the sheets of the schema. */
export function bindSheets(schema: Schema, sheets: readonly SheetDeclaration[]): readonly SheetDeclaration[] {
  // Names are the same under any units and currency.
  const vocabulary = createVocabulary({ currency: 'USD' });
  const { formulas } = checkSchema(schema, { units: 'us', vocabulary });
  const byPlace = new Map(formulas.map((formula) => [`${formula.table}/${formula.column}`, formula]));
  const kept = (place: string, formula: string): string => keptForm(byPlace.get(place), formula);
  return sheets.map((sheet): SheetDeclaration => {
    const columns = sheet.columns.map((column) => ({
      ...column,
      formula: kept(`${sheet.id}/${column.id}`, column.formula),
    }));
    const checks = sheet.checks.map(
      (check): CheckDeclaration => ({ ...check, says: kept(`${sheet.id}/${checkColumn(check.id)}`, check.says) }),
    );
    return { ...sheet, columns, checks, rows: boundRows(sheet, kept) };
  });
}

function boundRows({ id, rows }: SheetDeclaration, kept: (place: string, formula: string) => string): RowSource {
  switch (rows.from) {
    case 'each':
    case 'pairs':
      return { ...rows, where: kept(`${id}/${WHERE}`, rows.where) };
    case 'span': {
      const ends = spanTable(id);
      return { ...rows, first: kept(`${ends}/${FIRST}`, rows.first), last: kept(`${ends}/${LAST}`, rows.last) };
    }
    default:
      return rows;
  }
}

function keptForm(checked: CheckedFormula | undefined, formula: string): string {
  return checked === undefined ? formula : storedFormula(checked.text, checked.found);
}

/** A kept formula with the names of a schema. */
export function formulaText(stored: string, schema: Schema): string {
  return shownFormula(stored, (id) => schema.nameOf(id));
}
