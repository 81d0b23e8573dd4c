// What is typed of a column that a person is about to add, what the checker says of it, and adding it as one step. Fetched with the
// dialog, which calls it.

import {
  type Command,
  columnNamed,
  createVocabulary,
  message,
  rowId,
  rows,
  settings,
  sheetView,
  type TypeDeclaration,
  tryFormula,
} from '../../../engine/index.ts';
import { change } from '../store/change.ts';
import { goTo } from '../store/selection.ts';
import { withFetched } from '../store/wanted.ts';
import { workbookNow } from '../store/workbook.ts';
import { type NewColumn, newColumn } from './new-column-state.ts';

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
  withFetched(
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
