// Find and replace over values: looking through them, walking through what was found, putting another text in its place. Comes with
// the bar. Found is what is looked at: rows that a filter keeps back are counted, and neither walked through nor changed. Large
// workbooks are looked through in parts, so that the page stays in hand.

import {
  arrange,
  type Book,
  cellView,
  message,
  rowId,
  rows,
  type SheetView,
  sheetViews,
  tryEntry,
} from '../../../engine/index.ts';
import { gridOnScreen } from '../grid/grid-surface.ts';
import { change, UNDO } from './change.ts';
import { type Finding, type FoundCell, finding, setFinding as set } from './find.ts';
import { findings } from './findings.ts';
import { inSmall, replacedIn } from './in-any-case.ts';
import { viewNow } from './looks.ts';
import { tell } from './notices.ts';
import { goTo, selection } from './selection.ts';
import { columnAt } from './sheets.ts';
import { workbookNow } from './workbook.ts';

/** More than so many are not told one by one. */
export const MOST_FOUND = 10_000;

/** So long the page looks before it lets others have their turn, in milliseconds. */
const TURN = 12;

const NOTHING_FOUND = { found: [], behind: 0, matches: new Set<string>(), at: -1, looking: false };

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

/** Looks through the values anew. */
export async function look(): Promise<void> {
  turn += 1;
  stepsAhead = [];
  const mine = turn;
  const book = workbookNow();
  const { text, everywhere } = finding.peek();
  const wanted = inSmall(text.trim());
  if (book === undefined || wanted === '') {
    set(NOTHING_FOUND);
    return;
  }
  set({ looking: true });
  const here = selection.peek().sheet;
  const all = sheetViews(book);
  const searched = everywhere ? all : all.filter(({ id }) => id === here);
  const found: FoundCell[] = [];
  let behind = 0;
  let started = performance.now();
  for (const cell of matching(book, searched, wanted)) {
    if (cell?.behind === true) behind += 1;
    else if (cell !== undefined) found.push(cell);
    if (found.length >= MOST_FOUND) break;
    if (performance.now() - started < TURN) continue;
    await new Promise((resolve) => setTimeout(resolve));
    if (mine !== turn) return;
    started = performance.now();
  }
  if (finding.peek().open === undefined) return;
  const matches = new Set(found.map(({ sheet, row, column }) => `${sheet} ${row} ${column}`));
  set({ found, behind, matches, at: -1, looking: false });
  for (const by of stepsAhead.splice(0)) stepFound(by);
}

interface Match extends FoundCell {
  /** A filter keeps its row back. */
  readonly behind: boolean;
}

/** A cell for each match, and undefined after every row, so that whoever asks can rest. */
function* matching(book: Book, sheets: readonly SheetView[], wanted: string): Iterable<Match | undefined> {
  for (const view of sheets) {
    const { id: sheet, columns } = view;
    const isLookedAt = lookedAt(book, view);
    for (const slot of rows(book, sheet)) {
      for (const { id: column } of columns) {
        if (!inSmall(cellView(book, sheet, slot, column).text).includes(wanted)) continue;
        const row = rowId(book, sheet, slot);
        yield { sheet, row, slot, column, behind: !isLookedAt(slot, row) };
      }
      yield undefined;
    }
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

/** A cell with the other text in place of the wanted one. */
interface Replaced extends FoundCell {
  readonly entry: string;
}

/** Why it can't be: it was typed as something in which the wanted text doesn't stand; undefined where nobody typed it. */
interface Left {
  readonly typed: string | undefined;
}

function replacing(book: Book, cell: FoundCell): Replaced | Left {
  const { text, instead } = finding.peek();
  const { origin, entry } = cellView(book, cell.sheet, cell.slot, cell.column);
  if (origin !== 'entered' && origin !== 'override') return { typed: undefined };
  const wanted = inSmall(text.trim());
  if (!inSmall(entry).includes(wanted)) return { typed: entry };
  return { ...cell, entry: replacedIn(entry, wanted, instead) };
}

function typing({ sheet, row, column, entry }: Replaced) {
  return { command: 'set cell', sheet, row, column, entry } as const;
}

/** The replacement that was asked about: done when it is asked for again. */
let asked = '';

/** Asks about a date far from all others before it is put in; whether all may be. */
function areMeant(book: Book, cells: readonly Replaced[]): boolean {
  const { text, instead } = finding.peek();
  const now = JSON.stringify([text, instead]);
  const before = asked;
  asked = '';
  if (before === now) return true;
  for (const { sheet, column, slot, entry } of cells) {
    if (columnAt(book, { sheet, column })?.type?.kind !== 'date') continue;
    const tried = tryEntry(book, sheet, column, entry, slot);
    if (!tried.ok || tried.far === undefined) continue;
    asked = now;
    tell(`${tried.text} is ${tried.far}. Replace again if it is meant.`, 'refusal');
    return false;
  }
  return true;
}

/** Replaces in the match in hand, then goes to the next. */
export async function replaceOne(): Promise<void> {
  const book = workbookNow();
  const { found, at, text } = finding.peek();
  const cell = found[at];
  if (book === undefined) return;
  if (cell === undefined) {
    stepFound(1);
    return;
  }
  const replaced = replacing(book, cell);
  if ('typed' in replaced) {
    const { typed } = replaced;
    const why =
      typed === undefined
        ? 'Nobody typed what stands here, a formula gives it'
        : `This was typed as ${typed}, in which “${text.trim()}” doesn’t stand`;
    tell(`${why}: it is passed over.`, 'refusal');
    stepFound(1);
    return;
  }
  if (!areMeant(book, [replaced]) || change([typing(replaced)], message('replace cell')).refused) return;
  await look();
  set({ at: Math.min(at, finding.peek().found.length) - 1 });
  stepFound(1);
}

/** Replaces in every match as one step, with the way back. */
export async function replaceAll(): Promise<void> {
  // What is found may be other cells by now.
  await look();
  const book = workbookNow();
  const { found, looking } = finding.peek();
  if (book === undefined || looking) return;
  const answers = found.map((cell) => replacing(book, cell));
  const cells = answers.flatMap((answer) => ('typed' in answer ? [] : [answer]));
  const left = leftWords(answers.flatMap((answer) => ('typed' in answer ? [answer] : [])));
  const count = cells.length;
  if (count === 0) {
    tell(`Nothing replaced.${left}`, 'refusal');
    return;
  }
  if (!areMeant(book, cells)) return;
  const said = count === 1 ? message('replace cell') : message('replace cells', { count });
  if (change(cells.map(typing), said).refused) return;
  tell(`Replaced in ${count === 1 ? 'a cell' : `${count} cells`}.${left}`, 'done', UNDO);
  await look();
}

/** What was found and stays, and why. */
function leftWords(left: readonly Left[]): string {
  const { behind } = finding.peek();
  const otherwise = left.flatMap(({ typed }) => typed ?? []);
  const given = left.length - otherwise.length;
  const [one = ''] = otherwise;
  const are = (count: number, is: string, more: string): string => (count === 1 ? is : more);
  return [
    given === 0 ? '' : ` ${given} ${are(given, 'is', 'are')} given by formulas and left.`,
    otherwise.length === 0
      ? ''
      : ` ${otherwise.length} ${are(otherwise.length, 'was', 'were')} typed otherwise (${one}) and left.`,
    behind === 0 ? '' : ` ${behind} behind ${filterWords()} ${are(behind, 'stays', 'stay')}.`,
  ].join('');
}

/** What keeps back the rows that are behind it. */
export function filterWords(): string {
  return finding.peek().everywhere ? 'filters' : 'the filter';
}
