// A column that a person is about to add to a sheet: what was typed so far, what the checker says of it, and adding it as
// one step. The dialog draws it.

import { signal } from '@preact/signals';
import { createVocabulary, type Edit, type TypeDeclaration } from '../../../engine/index.ts';
import { edit, goTo, workbookNow } from '../state.ts';

export type ColumnKind = 'formula' | 'number' | 'text' | 'date' | 'yesno';

export interface NewColumn {
  readonly table: string;
  readonly name: string;
  readonly kind: ColumnKind;
  readonly formula: string;
  /** Of a number typed by hand; '' for a plain number. */
  readonly unit: string;
  /** Why it could not be added, in a sentence. */
  readonly refused: string | undefined;
}

/** The column being described; undefined while none is. */
export const newColumn = signal<NewColumn | undefined>(undefined);

export function beginColumn(table: string): void {
  newColumn.value = { table, name: '', kind: 'formula', formula: '', unit: '', refused: undefined };
}

/** Takes what was typed; an earlier refusal is over with it. */
export function describeColumn(part: Partial<NewColumn>): void {
  const now = newColumn.peek();
  if (now !== undefined) newColumn.value = { ...now, refused: undefined, ...part };
}

/** What the formula gives, or what is wrong with it; '' before there is one. */
export function formulaSays({ table, name, formula }: NewColumn): { readonly ok: boolean; readonly says: string } {
  if (formula.trim() === '') return { ok: false, says: '' };
  const tried = workbookNow()?.tryFormula(table, name === '' ? 'New column' : name, formula);
  if (tried === undefined) return { ok: false, says: '' };
  return tried.ok ? { ok: true, says: `Gives ${tried.inferred}.` } : { ok: false, says: tried.complaint.why };
}

/** Adds the column, or keeps the description with the sentence that refuses it. */
export function addColumn(): void {
  const now = newColumn.peek();
  if (now === undefined) return;
  const wish = wishFor(now);
  if (typeof wish === 'string') {
    describeColumn({ refused: wish });
    return;
  }
  const done = edit([wish], `Add the column ${now.name}`, true);
  if (done.refused) {
    describeColumn({ refused: done.why });
    return;
  }
  newColumn.value = undefined;
  goTo(now.table, workbookNow()?.rows(now.table)[0], now.name.trim());
}

function wishFor(column: NewColumn): Edit | string {
  const { table, kind, formula, unit } = column;
  const name = column.name.trim();
  if (name === '') return 'The column needs a name.';
  const taken = workbookNow()
    ?.table(table)
    ?.columns.some((other) => other.name.toLowerCase() === name.toLowerCase());
  if (taken === true) return `${table} has a column ${name} already: choose another name.`;
  if (kind === 'formula') {
    const said = formulaSays(column);
    if (!said.ok) return said.says === '' ? 'The column needs a formula.' : said.says;
    return { edit: 'formula', table, column: name, formula };
  }
  const type = typeFor(kind, unit.trim());
  return typeof type === 'string' ? type : { edit: 'add column', table, column: name, type };
}

function typeFor(kind: Exclude<ColumnKind, 'formula'>, unit: string): TypeDeclaration | string {
  if (kind !== 'number') return { type: kind };
  const vocabulary = createVocabulary({ currency: workbookNow()?.currency ?? 'USD' });
  if (unit !== '' && vocabulary.find(unit) === undefined) {
    const near = vocabulary.nearest(unit);
    return `${unit} is not a unit${near === undefined ? '' : `; the nearest is ${near}`}: write one such as in, lb or %.`;
  }
  return { type: 'number', unit: { us: unit, si: unit } };
}
