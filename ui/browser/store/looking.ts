// Find and replace over values: looking through them, walking through what was found, putting another text in its place. Comes with
// the bar. Large workbooks are looked through in parts, so that the page stays in hand.

import {
  type Book,
  type Command,
  cellView,
  message,
  rowId,
  rows,
  type SheetView,
  sheetViews,
} from '../../../engine/index.ts';
import { change, UNDO } from './change.ts';
import { type Finding, type FoundCell, finding, setFinding as set } from './find.ts';
import { tell } from './notices.ts';
import { goTo, selection } from './selection.ts';
import { workbookNow } from './workbook.ts';

/** More than so many are not told one by one. */
export const MOST_FOUND = 10_000;

/** So long the page looks before it lets others have their turn, in milliseconds. */
const TURN = 12;

/** Shuts the bar and leads back to the cell in hand. */
export function closeFind(): void {
  set({ open: undefined, found: [], matches: new Set(), at: -1, looking: false });
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
  const wanted = text.trim().toLowerCase();
  if (book === undefined || wanted === '') {
    set({ found: [], matches: new Set(), at: -1, looking: false });
    return;
  }
  set({ looking: true });
  const here = selection.peek().sheet;
  const all = sheetViews(book);
  const searched = everywhere ? all : all.filter(({ id }) => id === here);
  const found: FoundCell[] = [];
  let started = performance.now();
  for (const cell of matching(book, searched, wanted)) {
    if (cell !== undefined) found.push(cell);
    if (found.length >= MOST_FOUND) break;
    if (performance.now() - started < TURN) continue;
    await new Promise((resolve) => setTimeout(resolve));
    if (mine !== turn) return;
    started = performance.now();
  }
  if (finding.peek().open === undefined) return;
  const matches = new Set(found.map(({ sheet, row, column }) => `${sheet} ${row} ${column}`));
  set({ found, matches, at: -1, looking: false });
  for (const by of stepsAhead.splice(0)) stepFound(by);
}

/** A cell for each match, and undefined after every row, so that whoever asks can rest. */
function* matching(book: Book, sheets: readonly SheetView[], wanted: string): Iterable<FoundCell | undefined> {
  for (const { id: sheet, columns } of sheets) {
    for (const slot of rows(book, sheet)) {
      for (const { id: column } of columns) {
        if (!cellView(book, sheet, slot, column).text.toLowerCase().includes(wanted)) continue;
        yield { sheet, row: rowId(book, sheet, slot), slot, column };
      }
      yield undefined;
    }
  }
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

/** What typing the other text in place of the wanted one would be; undefined where nobody typed what stands there. */
function replacing(book: Book, { sheet, row, slot, column }: FoundCell): Command | undefined {
  const { text, instead } = finding.peek();
  const { origin, entry } = cellView(book, sheet, slot, column);
  if (origin !== 'entered' && origin !== 'override') return undefined;
  const wanted = text.trim().toLowerCase();
  const at = entry.toLowerCase().indexOf(wanted);
  if (at < 0) return undefined;
  return { command: 'set cell', sheet, row, column, entry: replaced(entry, wanted, instead) };
}

function replaced(entry: string, wanted: string, instead: string): string {
  let rest = entry;
  let out = '';
  for (let at = rest.toLowerCase().indexOf(wanted); at >= 0; at = rest.toLowerCase().indexOf(wanted)) {
    out += rest.slice(0, at) + instead;
    rest = rest.slice(at + wanted.length);
  }
  return out + rest;
}

/** Replaces in the match in hand, then goes to the next. */
export async function replaceOne(): Promise<void> {
  const book = workbookNow();
  const { found, at } = finding.peek();
  const cell = found[at];
  if (book === undefined) return;
  if (cell === undefined) {
    stepFound(1);
    return;
  }
  const command = replacing(book, cell);
  if (command === undefined) {
    tell('Nobody typed what stands here, a formula gives it: it is passed over.', 'refusal');
    stepFound(1);
    return;
  }
  if (change([command], message('replace cell')).refused) return;
  await look();
  set({ at: Math.min(at, finding.peek().found.length) - 1 });
  stepFound(1);
}

/** Replaces in every match as one step, with the way back. */
export async function replaceAll(): Promise<void> {
  const book = workbookNow();
  if (book === undefined) return;
  const { found } = finding.peek();
  const commands = found.flatMap((cell) => replacing(book, cell) ?? []);
  const left = found.length - commands.length;
  if (commands.length === 0) {
    tell('Nothing replaced: nobody typed what was found, formulas give it.', 'refusal');
    return;
  }
  const count = commands.length;
  const said = count === 1 ? message('replace cell') : message('replace cells', { count });
  if (change(commands, said).refused) return;
  const kept = left === 0 ? '' : ` ${left} ${left === 1 ? 'is' : 'are'} given by formulas and left.`;
  tell(`Replaced in ${count === 1 ? 'a cell' : `${count} cells`}.${kept}`, 'done', UNDO);
  await look();
}
