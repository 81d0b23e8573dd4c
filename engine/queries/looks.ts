// How a sheet is looked at: its views as they stand, the colours of its cells, the notes on them.

import { type SheetLooks, standingRules, standingViews } from '../schema/looks.ts';
import { entry } from '../schema/records.ts';
import type { ColourRule, ViewDeclaration } from '../schema/views.ts';
import { type Book, sheetOf } from './book.ts';
import type { SheetView } from './sheets.ts';

/** A view as it stands: what it keeps back, sorts or groups by is of columns that are there; what was of others waits for them. */
export interface View extends ViewDeclaration {
  /** Ids of the columns that it shows and that are there, in order, those in front first. */
  readonly shows: readonly string[];
  /** How many of those stay in sight at the left: what names a row, then what is pinned. */
  readonly inFront: number;
  /** A person's own, rather than one that came with the sheet. */
  readonly own: boolean;
  /** Another than the sheet came with: it can be taken back. */
  readonly changed: boolean;
}

interface Known {
  readonly shipped: readonly ViewDeclaration[];
  readonly looks: SheetLooks | undefined;
  readonly views: readonly View[];
}

/** Faces ask at every turn, so the views of a sheet are kept for as long as nothing of its looks changes. */
const known = new WeakMap<SheetView, Known>();

/** The views of a sheet: the sheet's, a person's own, all columns last; the same list until one of them changes. */
export function views(book: Book, sheet: SheetView): readonly View[] {
  const found = sheetOf(book, sheet.id);
  if (found === undefined) return [];
  const looks = entry(book.document.looks, sheet.id);
  const shipped = found.schema.views;
  const before = known.get(sheet);
  if (before !== undefined && before.looks === looks && before.shipped === shipped) return before.views;
  const made = makeViews(sheet, shipped, looks);
  known.set(sheet, { shipped, looks, views: made });
  return made;
}

function makeViews(
  sheet: SheetView,
  shipped: readonly ViewDeclaration[],
  looks: SheetLooks | undefined,
): readonly View[] {
  return standingViews(shipped, looks).map((declared): View => {
    const view = onColumns(sheet, declared);
    const own = view.id !== 'all' && !shipped.some(({ id }) => id === view.id);
    const front = namingColumns(sheet);
    const pinned = (view.pinned ?? []).filter((id) => !front.includes(id) && hasColumn(sheet, id));
    const columns = view.columns ?? sheet.columns.map(({ id }) => id);
    const inFront = [...front, ...pinned];
    const rest = columns.filter((id) => hasColumn(sheet, id) && !inFront.includes(id));
    return {
      ...view,
      shows: [...inFront, ...rest],
      inFront: inFront.length,
      own,
      changed: !own && entry(looks?.views, view.id) !== undefined,
    };
  });
}

function onColumns(sheet: SheetView, { filters, sort, groupBy, ...view }: ViewDeclaration): ViewDeclaration {
  return {
    ...view,
    ...(filters && { filters: filters.filter((each) => each.by !== 'cell' || hasColumn(sheet, each.column)) }),
    ...(sort && { sort: sort.filter(({ column }) => hasColumn(sheet, column)) }),
    ...(groupBy !== undefined && hasColumn(sheet, groupBy) && { groupBy }),
  };
}

function hasColumn(sheet: SheetView, id: string): boolean {
  return sheet.columns.some((column) => column.id === id);
}

/** The columns that name a row: its key, else what it was made of, else the first. */
export function namingColumns({ key, columns }: SheetView): readonly string[] {
  if (key !== undefined) return [key];
  const made = columns.filter(({ role }) => role === 'made').map(({ id }) => id);
  if (made.length > 0) return made.slice(0, 2);
  return columns.slice(0, 1).map(({ id }) => id);
}

/** Views of the sheet's own that a person put away. */
export function viewsPutAway(book: Book, sheet: string): readonly ViewDeclaration[] {
  const changed = entry(book.document.looks, sheet)?.views;
  return (sheetOf(book, sheet)?.schema.views ?? []).filter(({ id }) => entry(changed, id) === null);
}

/** The colours of a sheet; of several that hold for a cell the first counts. */
export function colourRules({ document }: Book, sheet: string): readonly ColourRule[] {
  return standingRules(entry(document.looks, sheet));
}

/** The note on a cell; '' where there is none. */
export function noteOn({ document }: Book, sheet: string, row: string, column: string): string {
  return document.notes.content(sheet, row, column) ?? '';
}

/** Every note of a sheet, by row and column. */
export function notesOf({ document }: Book, sheet: string): ReadonlyMap<string, ReadonlyMap<string, string>> {
  return document.notes.rows(sheet);
}
