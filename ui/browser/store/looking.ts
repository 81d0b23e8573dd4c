// Finding over values: looking through them, and walking through what was found. Comes with the bar. Found is what is looked at: rows
// that a filter keeps back are counted, and neither walked through nor changed. Large workbooks are looked through in parts, so that
// the page stays in hand.

import { signal } from '@preact/signals';
import {
  arrange,
  type Book,
  cellValue,
  lookThrough,
  rowId,
  rows,
  type SheetView,
  sheetViews,
  type Wanted,
} from '../../../engine/index.ts';
import { gridOnScreen } from '../grid/grid-surface.ts';
import { type Finding, type FoundCell, finding, setFinding as set } from './find.ts';
import { findings } from './findings.ts';
import { inSmall } from './in-any-case.ts';
import { viewNow } from './looks.ts';
import { goTo, selection } from './selection.ts';
import { workbookNow } from './workbook.ts';

/** More than so many are not told one by one. */
export const MOST_FOUND = 10_000;

/** So long the page looks before it lets others have their turn, in milliseconds. */
const TURN = 12;

/** A look that takes longer says how far it is, in milliseconds. */
const LONG = 300;

const NOTHING_FOUND = { found: [], behind: 0, cut: undefined, matches: new Set<string>(), at: -1, looking: false };

/** Shuts the bar and leads back to the cell in hand. */
export function closeFind(): void {
  set({ open: undefined, ...NOTHING_FOUND });
  const { sheet, row, column } = selection.peek();
  goTo(sheet, row, column);
}

export function lookFor(part: Partial<Pick<Finding, 'text' | 'instead' | 'everywhere'>>): void {
  set(part);
  if ('text' in part || 'everywhere' in part) void look();
}

let turn = 0;

/** Steps that were asked for while the values were still being looked through. */
let stepsAhead: (1 | -1)[] = [];

/** How far a look that takes its time has come, from 0 to 1; undefined while none does. */
export const share = signal<number | undefined>(undefined);

/** A look that a person ended. */
let ended = 0;

/** Ends the look that goes on; what it found so far stays. */
export function endLook(): void {
  ended = turn;
}

/** Looks through the values anew. */
export async function look(): Promise<void> {
  turn += 1;
  stepsAhead = [];
  const mine = turn;
  const book = workbookNow();
  const wanted = wantedNow();
  share.value = undefined;
  if (book === undefined || wanted === undefined) {
    set(NOTHING_FOUND);
    return;
  }
  set({ looking: true });
  const begun = performance.now();
  const found: FoundCell[] = [];
  let behind = 0;
  let cut: Finding['cut'];
  await inTurns(matching(book, searchedNow(book), wanted), ({ cell, done }) => {
    if (mine !== turn) return false;
    if (cell?.behind === true) behind += 1;
    else if (cell !== undefined) found.push(cell);
    else if (performance.now() - begun > LONG) share.value = Math.floor(done * 100) / 100;
    if (found.length >= MOST_FOUND) cut = 'full';
    else if (ended === mine) cut = 'ended';
    return cut === undefined;
  });
  if (mine !== turn) return;
  share.value = undefined;
  if (finding.peek().open === undefined) return;
  const matches = new Set(found.map(({ sheet, row, column }) => `${sheet} ${row} ${column}`));
  set({ found, behind, cut, matches, at: -1, looking: false });
  for (const by of stepsAhead.splice(0)) stepFound(by);
}

/** What is looked for now; undefined for nothing. */
export function wantedNow(): Wanted | undefined {
  const text = inSmall(finding.peek().text.trim());
  return text === '' ? undefined : { text, holds: (shown) => inSmall(shown).includes(text) };
}

/** The sheets that are looked through now. */
export function searchedNow(book: Book): readonly SheetView[] {
  const { everywhere } = finding.peek();
  const all = sheetViews(book);
  return everywhere ? all : all.filter(({ id }) => id === selection.peek().sheet);
}

export interface Match extends FoundCell {
  /** A filter keeps its row back. */
  readonly behind: boolean;
}

/** A match; or none, where whoever asks can rest, and how much is done by then, from 0 to 1. */
export interface Looked {
  readonly cell: Match | undefined;
  readonly done: number;
}

/** The matches in some sheets, of all cells or with `typed` of those that a person typed. */
export function* matching(
  book: Book,
  sheets: readonly SheetView[],
  wanted: Wanted,
  { typed = false } = {},
): Iterable<Looked> {
  const all: { readonly view: SheetView; readonly slots: Int32Array }[] = [];
  for (const view of sheets) {
    all.push({ view, slots: rows(book, view.id) });
    yield { cell: undefined, done: 0 };
  }
  const cells = all.reduce((sum, { view, slots }) => sum + view.columns.length * slots.length, 0);
  let done = 0;
  for (const { view, slots } of all) {
    const { id: sheet, columns } = view;
    const [first] = slots;
    if (first === undefined) continue;
    // What sleeps is worked out a column at a time.
    for (const { id } of typed ? [] : columns) {
      cellValue(book, sheet, first, id);
      yield { cell: undefined, done: done / cells };
    }
    const isLookedAt = lookedAt(book, view);
    const found = lookThrough(book, sheet, wanted, { typed });
    for (const slot of slots) {
      for (const column of found(slot)) {
        const row = rowId(book, sheet, slot);
        yield { cell: { sheet, row, slot, column, behind: !isLookedAt(slot, row) }, done: done / cells };
      }
      done += columns.length;
      yield { cell: undefined, done: done / cells };
    }
  }
}

/** Hands over what is looked at until `each` says that it is enough, in parts between which the page has its turn. */
export async function inTurns(all: Iterable<Looked>, each: (one: Looked) => boolean): Promise<void> {
  let started = performance.now();
  for (const one of all) {
    if (!each(one)) return;
    if (performance.now() - started < TURN) continue;
    await new Promise((resolve) => setTimeout(resolve));
    started = performance.now();
  }
}

/** Whether a row is on screen, or left by the filters of the view in which its sheet comes on screen. */
function lookedAt(book: Book, sheet: SheetView): (slot: number, row: string) => boolean {
  const { id, name, filters = [] } = viewNow(sheet);
  if (filters.length === 0) return () => true;
  const onScreen = gridOnScreen.peek()?.rowsOf(sheet.id);
  if (onScreen !== undefined) return (_, row) => onScreen.has(row);
  const ofSheet = findings.peek().filter((one) => one.sheet === sheet.id);
  const { rows: left } = arrange(book, sheet.id, { id, name, filters }, (row, level) =>
    ofSheet.some((one) => one.rowId === row && (level === 'any' || one.level === level)),
  );
  const slots = new Set(left);
  return (slot) => slots.has(slot);
}

/** Goes to the next match, or with -1 to the one before, round and round. */
export function stepFound(by: 1 | -1): void {
  const { found, at, looking } = finding.peek();
  if (looking) stepsAhead.push(by);
  if (looking || found.length === 0) return;
  const next = at < 0 ? (by === 1 ? 0 : found.length - 1) : (at + by + found.length) % found.length;
  const cell = found[next];
  set({ at: next });
  if (cell !== undefined) goTo(cell.sheet, cell.row, cell.column, false);
}

/** What keeps back the rows that are behind it. */
export function filterWords(): string {
  return finding.peek().everywhere ? 'filters' : 'the filter';
}
