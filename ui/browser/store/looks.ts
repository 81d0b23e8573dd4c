// The view that a sheet is seen in, and the ways to change it: each is one step of undo, and stands in the workbook. Which
// view is on screen is this browser's own affair.

import {
  type ColumnView,
  type Message,
  type MessageCode,
  message,
  type SheetView,
  type View,
  type ViewDeclaration,
  views,
  viewsPutAway,
} from '../../../engine/index.ts';
import { change, UNDO } from './change.ts';
import { desk, setDesk } from './device.ts';
import { tell } from './notices.ts';
import { workbook, workbookNow } from './workbook.ts';

/** The views of a sheet as they stand. A part that asks draws again when one changes. */
export function viewsOf(sheet: SheetView): readonly View[] {
  return views(workbook(), sheet);
}

/** The view that a sheet is seen in: the one last chosen, else its first. */
export function viewOn(sheet: SheetView): View {
  return pick(viewsOf(sheet), sheet.id);
}

/** The same without subscribing. */
export function viewNow(sheet: SheetView): View {
  const book = workbookNow();
  return pick(book === undefined ? [] : views(book, sheet), sheet.id);
}

const NOTHING: View = { id: 'all', name: 'Everything', shows: [], inFront: 0, own: false, changed: false };

function pick(all: readonly View[], sheet: string): View {
  const chosen = desk.value.views[sheet];
  return all.find(({ id }) => id === chosen) ?? all[0] ?? NOTHING;
}

export function chooseView(sheet: string, view: string): void {
  setDesk({ views: { ...desk.peek().views, [sheet]: view } });
}

/** A view as it is kept, without what is worked out of it. */
export function declarationOf({ shows, inFront, own, changed, ...declaration }: View): ViewDeclaration {
  return declaration;
}

/** Parts of a view; undefined takes one out. */
export type ViewChange = { readonly [K in Exclude<keyof ViewDeclaration, 'id'>]?: ViewDeclaration[K] | undefined };

/** Changes the view that a sheet is seen in, as one step; gives the sentence of a refusal, for a dialog to show it too. */
export function changeView(sheet: SheetView, part: ViewChange, code: MessageCode = 'change view'): string | undefined {
  const view = viewNow(sheet);
  const said = message(code, { view: part.name ?? view.name, sheet: sheet.name });
  return setView(sheet, withPart(declarationOf(view), part), said);
}

function withPart(view: ViewDeclaration, part: ViewChange): ViewDeclaration {
  const { id } = view;
  const { name = view.name, columns, pinned, filters, sort, groupBy, totals, order } = { ...view, ...part };
  return {
    id,
    name,
    ...(columns === undefined ? {} : { columns }),
    ...(isNothing(pinned) ? {} : { pinned }),
    ...(isNothing(filters) ? {} : { filters }),
    ...(isNothing(sort) ? {} : { sort }),
    ...(groupBy === undefined ? {} : { groupBy }),
    ...(totals === undefined ? {} : { totals }),
    ...(order === undefined ? {} : { order }),
  };
}

function isNothing<T>(list: readonly T[] | undefined): list is undefined {
  return list === undefined || list.length === 0;
}

function setView(sheet: SheetView, view: ViewDeclaration, said: Message): string | undefined {
  const done = change([{ command: 'set view', sheet: sheet.id, view }], said);
  return done.refused ? done.why : undefined;
}

/**
 * A view of one's own like the one on screen but for a part, which then is on screen. `id` is one that nothing has yet. Gives the
 * sentence of a refusal.
 */
export function addView(sheet: SheetView, id: string, name: string, part: ViewChange = {}): string | undefined {
  const { order, ...like } = declarationOf(viewNow(sheet));
  const columns = like.columns ?? sheet.columns.map((column) => column.id);
  const view = withPart({ ...like, id, name, columns }, { ...part, name });
  const why = setView(sheet, view, message('add view', { view: name, sheet: sheet.name }));
  if (why === undefined) chooseView(sheet.id, id);
  return why;
}

/** Takes an own view out, or puts one of the sheet's away, with the way back. */
export function removeView(sheet: SheetView): void {
  const { id, name } = viewNow(sheet);
  const said = message('remove view', { view: name, sheet: sheet.name });
  const done = change([{ command: 'remove view', sheet: sheet.id, view: id }], said);
  if (!done.refused) tell(`Removed the view ${name}.`, 'done', UNDO);
}

/** The view on screen as the sheet came with it. */
export function takeViewBack(sheet: SheetView): void {
  const { id, name } = viewNow(sheet);
  const said = message('take view back', { view: name, sheet: sheet.name });
  change([{ command: 'take view back', sheet: sheet.id, view: id }], said);
}

/** Every view of the sheet that was put away is there again. */
export function bringViewsBack(sheet: SheetView): void {
  const book = workbookNow();
  const away = book === undefined ? [] : viewsPutAway(book, sheet.id);
  const said = message('bring views back', { sheet: sheet.name });
  change(
    away.map(({ id }) => ({ command: 'take view back', sheet: sheet.id, view: id })),
    said,
  );
}

/** Which end of a column comes first, as one says it of what stands there. */
export function orderWords(column: ColumnView | undefined, descending: boolean): string {
  const kind = column?.type?.kind;
  if (kind === 'text') return descending ? 'Z to A' : 'A to Z';
  if (kind === 'date') return descending ? 'Latest first' : 'Earliest first';
  return descending ? 'Greatest first' : 'Least first';
}
