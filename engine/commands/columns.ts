// Formulas, and columns of a person's own: added, removed, renamed, moved. A formula that doesn't check is kept as written and
// says so in its column.

import { storedFormula } from '../language/stored.ts';
import { checkText } from '../schema/check.ts';
import type { ProgramColumn } from '../schema/compile.ts';
import type { ColumnDeclaration, TypeDeclaration } from '../schema/declaration.ts';
import { typeDeclaration } from '../schema/declaration-shape.ts';
import { isTaken } from '../schema/distinct-names.ts';
import { isHidden } from '../schema/hidden.ts';
import type { After } from '../schema/own.ts';
import { rehung } from '../schema/places.ts';
import { entry } from '../schema/records.ts';
import { isComputed, type SheetSchema } from '../schema/schema.ts';
import { refuseUnkept } from './as-kept.ts';
import type { CommandOf } from './command.ts';
import { type Draft, findAmong, findColumn, findSheet } from './draft.ts';
import type { Refused } from './refusal.ts';

const OWN_COLUMNS = 'Own columns';

export function setFormula({ sheet, column, formula }: CommandOf<'set formula'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  const of = findColumn(found.found, column);
  if (!of.ok) return of.refused;
  const place = { sheet, column };
  if (!isComputed(of.found)) {
    const why = `${of.found.name} is typed by hand and has no formula: add a column of your own for this one.`;
    return { ...place, why };
  }
  if (formula === null) {
    if (of.found.own) return { ...place, why: `${of.found.name} is your own: it has no other formula to go back to.` };
    draft.perform({ op: 'formula', ...place, formula: null });
    return undefined;
  }
  if (formula.trim() === '') {
    return { ...place, why: 'A computed column needs a formula: write one, or remove the column if it is your own.' };
  }
  draft.perform({ op: 'formula', ...place, formula: keptFormula(formula, sheet, of.found, draft) });
  return undefined;
}

/** A formula with ids in place of the names that were found. */
function keptFormula(formula: string, table: string, column: ProgramColumn | undefined, draft: Draft): string {
  const wanted = column === undefined || column.declaration.inferred === true ? undefined : column.type;
  const { found } = checkText(formula, { table, wanted }, draft.catalog(), draft.document.program.vocabulary);
  return storedFormula(formula, found);
}

export function addFormula({ sheet, name, formula }: CommandOf<'add formula'>, draft: Draft): Refused {
  const found = findAmong(draft.schema(), sheet);
  if (!found.ok) return found.refused;
  const why = refuseColumnName(found.found, name, undefined);
  if (why !== undefined) return { sheet, column: name, why };
  const kept = keptFormula(formula, sheet, undefined, draft);
  addOwn(found.found, { name, type: { type: 'text' }, role: 'computed', formula: kept, inferred: true }, draft);
  return undefined;
}

export function addColumn({ sheet, name, type }: CommandOf<'add column'>, draft: Draft): Refused {
  const found = findAmong(draft.schema(), sheet);
  if (!found.ok) return found.refused;
  const why = refuseColumnName(found.found, name, undefined) ?? refuseType(type, draft);
  if (why !== undefined) return { sheet, column: name, why };
  addOwn(found.found, { name, type, role: 'entered', formula: '' }, draft);
  return undefined;
}

type OwnParts = Pick<ColumnDeclaration, 'name' | 'type' | 'role' | 'formula' | 'inferred'>;

function addOwn(sheet: SheetSchema, parts: OwnParts, draft: Draft): void {
  const last = sheet.columns.findLast(({ role }) => role !== 'made')?.id;
  const column: ColumnDeclaration = { id: draft.newId(), group: OWN_COLUMNS, note: '', ...parts };
  draft.perform({ op: 'add column', sheet: sheet.id, column, ...(last === undefined ? {} : { after: last }) });
}

interface NamedColumns {
  readonly name: string;
  readonly columns: readonly { readonly id: string; readonly name: string }[];
}

function refuseColumnName(sheet: NamedColumns, name: string, own: string | undefined): string | undefined {
  if (name.trim() === '' || name !== name.trim()) return 'A column needs a name without blanks at its ends.';
  if (isHidden(name) || /[[\]'#\r\n]/.test(name)) {
    return `“${name}” can't be a column's name: use one line without [ ] ' # and no dot in front.`;
  }
  return refuseTaken(sheet, name, own);
}

function refuseTaken(
  { name: sheet, columns }: NamedColumns,
  name: string,
  own: string | undefined,
): string | undefined {
  return isTaken(name, columns, own) ? `${sheet} already has a column called ${name}: choose another name.` : undefined;
}

function refuseType(type: TypeDeclaration, draft: Draft): string | undefined {
  const { vocabulary } = draft.document.program;
  const schema = draft.schema();
  if (type.type === 'number') {
    const unknown = [type.unit.us, type.unit.si].find((unit) => vocabulary.find(unit) === undefined);
    if (unknown !== undefined) return `“${unknown}” is not a unit known here: use one such as in, cm, lb or kg.`;
  }
  if (type.type === 'link' && schema.sheet(type.sheet)?.key === undefined) {
    const name = schema.nameOf(type.sheet) ?? type.sheet;
    return `A link needs a sheet whose rows have names; ${name} is none.`;
  }
  if (type.type === 'choice' && type.options.length === 0)
    return 'A choice needs at least one option: write them with commas.';
  return refuseUnkept(typeDeclaration, type);
}

export function removeColumn({ sheet, column }: CommandOf<'remove column'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  const of = findColumn(found.found, column);
  if (!of.ok) return of.refused;
  if (!of.found.own) {
    return { sheet, column, why: `${of.found.name} belongs to the sheet; only columns you added can be removed.` };
  }
  hangElsewhere(sheet, column, undefined, draft);
  draft.perform({ op: 'remove column', sheet, column });
  return undefined;
}

export function renameColumn({ sheet, column, name }: CommandOf<'rename column'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  const of = findColumn(found.found, column);
  if (!of.ok) return of.refused;
  const isBack = name === '' && !of.found.own;
  const why = isBack
    ? refuseTaken(found.found, of.found.declaration.name, column)
    : refuseColumnName(found.found, name, column);
  if (why !== undefined) return { sheet, column, why };
  draft.perform({ op: 'rename column', sheet, column, name: isBack ? null : name });
  return undefined;
}

export function moveColumn({ sheet, column, after }: CommandOf<'move column'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  const of = findColumn(found.found, column);
  if (!of.ok) return of.refused;
  if (of.found.role === 'made') {
    return { sheet, column, why: `${of.found.name} names the rows of this sheet and stays in front.` };
  }
  if (after !== column) hangElsewhere(sheet, column, after, draft);
  return undefined;
}

/** Moves a column, or takes it out where `to` is undefined, from among the others, which stay in their order. */
function hangElsewhere(sheet: string, moved: string, to: After | undefined, draft: Draft): void {
  const { schema } = draft.document.program;
  const own = entry(schema.own, sheet)?.columns;
  const columns = schema.sheet(sheet)?.columns.filter(({ role }) => role !== 'made') ?? [];
  const places = columns.map(({ id }) => ({ id, after: entry(own, id)?.after }));
  for (const [column, after] of rehung(places, moved, to)) draft.perform({ op: 'move column', sheet, column, after });
}
