// A column that a person is about to add to a sheet: what was typed so far, what the checker says of it, and adding it as
// one step. The dialog draws it.

import { signal } from '@preact/signals';
import {
  type Command,
  columnNamed,
  createVocabulary,
  message,
  rowId,
  rows,
  settings,
  sheetView,
  sheetViews,
  type TypeDeclaration,
  tryFormula,
} from '../../../engine/index.ts';
import { change } from '../store/change.ts';
import { goTo } from '../store/selection.ts';
import { withUnits } from '../store/units.ts';
import { workbookNow } from '../store/workbook.ts';

export type ColumnKind = 'formula' | 'number' | 'text' | 'date' | 'yesno' | 'choice' | 'link';

export interface NewColumn {
  readonly sheet: string;
  readonly sheetName: string;
  readonly name: string;
  readonly kind: ColumnKind;
  readonly formula: string;
  /** Of a number typed by hand; '' for a plain number. */
  readonly unit: string;
  /** What can be chosen, parted by semicolons. */
  readonly options: string;
  /** The sheet whose rows a link leads to. */
  readonly linked: string;
  /** Why it could not be added, in a sentence. */
  readonly refused: string | undefined;
}

/** The column being described; undefined while none is. */
export const newColumn = signal<NewColumn | undefined>(undefined);

export function beginColumn(sheet: string): void {
  const book = workbookNow();
  const view = book === undefined ? undefined : sheetView(book, sheet);
  if (view === undefined) return;
  newColumn.value = {
    sheet,
    sheetName: view.name,
    name: '',
    kind: 'formula',
    formula: '',
    unit: '',
    options: '',
    linked: linkable(sheet)[0]?.id ?? '',
    refused: undefined,
  };
}

/** The sheets to whose rows a column can lead: those whose rows have names. */
export function linkable(sheet: string): readonly { readonly id: string; readonly name: string }[] {
  const book = workbookNow();
  return book === undefined ? [] : sheetViews(book).filter((one) => one.id !== sheet && one.entered && !one.oneRow);
}

/** Takes what was typed; an earlier refusal is over with it. */
export function describeColumn(part: Partial<NewColumn>): void {
  const now = newColumn.peek();
  if (now !== undefined) newColumn.value = { ...now, refused: undefined, ...part };
}

/** What the formula gives, or what is wrong with it; '' before there is one. */
export function formulaSays({ sheet, formula }: NewColumn): { readonly ok: boolean; readonly says: string } {
  const book = workbookNow();
  if (book === undefined || formula.trim() === '') return { ok: false, says: '' };
  const tried = tryFormula(book, sheet, undefined, formula);
  return tried.ok ? { ok: true, says: `Gives ${tried.inferred}.` } : { ok: false, says: tried.diagnostic.why };
}

/** Adds the column, or keeps the description with the sentence that refuses it. */
export function addColumn(): void {
  const now = newColumn.peek();
  if (now === undefined) return;
  withUnits(
    () => tryToAdd(now),
    (refused) => refused !== undefined,
    (refused) => {
      if (refused !== undefined) describeColumn({ refused });
      else {
        newColumn.value = undefined;
        arriveAt(now);
      }
    },
  );
}

/** Why the column could not be added; undefined where it was. */
function tryToAdd(column: NewColumn): string | undefined {
  const command = commandFor(column);
  if (typeof command === 'string') return command;
  const done = change([command], message('add column', { column: column.name.trim() }), { quietly: true });
  return done.refused ? done.why : undefined;
}

function arriveAt({ sheet, name }: NewColumn): void {
  const book = workbookNow();
  const view = book === undefined ? undefined : sheetView(book, sheet);
  if (book === undefined || view === undefined) return;
  const [slot] = rows(book, sheet);
  goTo(sheet, slot === undefined ? undefined : rowId(book, sheet, slot), columnNamed(view, name)?.id);
}

function commandFor(column: NewColumn): Command | string {
  const { sheet, kind, formula, unit } = column;
  const name = column.name.trim();
  if (name === '') return 'The column needs a name.';
  if (kind === 'formula') {
    const said = formulaSays(column);
    if (!said.ok) return said.says === '' ? 'The column needs a formula.' : said.says;
    return { command: 'add formula', sheet, name, formula };
  }
  const type = kind === 'choice' ? choiceOf(column) : kind === 'link' ? linkOf(column) : typeFor(kind, unit.trim());
  return typeof type === 'string' ? type : { command: 'add column', sheet, name, type };
}

function choiceOf({ options }: NewColumn): TypeDeclaration | string {
  const words = [...new Set(options.split(/[;,]/).map((word) => word.trim()))].filter((word) => word !== '');
  return words.length < 2 ? 'Write two choices or more, parted by semicolons.' : { type: 'choice', options: words };
}

function linkOf({ linked }: NewColumn): TypeDeclaration | string {
  return linked === '' ? 'There is no sheet whose rows it could lead to.' : { type: 'link', sheet: linked };
}

function typeFor(kind: 'number' | 'text' | 'date' | 'yesno', unit: string): TypeDeclaration | string {
  if (kind !== 'number') return { type: kind };
  const book = workbookNow();
  const vocabulary = createVocabulary({ currency: book === undefined ? 'USD' : settings(book).currency });
  if (unit !== '' && vocabulary.find(unit) === undefined) {
    const near = vocabulary.nearest(unit);
    return `${unit} is not a unit${near === undefined ? '' : `; the nearest is ${near}`}: write one such as in, lb or %.`;
  }
  return { type: 'number', unit: { us: unit, si: unit } };
}
