// Putting another text in the place of what was looked for: in the match in hand, or in every cell that a person typed. Comes with the
// bar. What a formula gives follows what is typed, or is left.

import {
  type Book,
  cellValue,
  cellView,
  message,
  rowId,
  rowName,
  sheetView,
  tryEntry,
  type Workbook,
} from '../../../engine/index.ts';
import { change, UNDO } from './change.ts';
import { type Finding, type FoundCell, finding, setFinding as set } from './find.ts';
import { inSmall, replacedIn } from './in-any-case.ts';
import { filterWords, inTurns, look, type Match, matching, searchedNow, stepFound, wantedNow } from './looking.ts';
import { tell } from './notices.ts';
import { columnAt } from './sheets.ts';
import { workbookNow } from './workbook.ts';

/** What is to stand where. */
type Wish = Pick<Finding, 'text' | 'instead'>;

/** A cell with the other text in place of the wanted one. */
interface Replaced extends FoundCell {
  readonly entry: string;
}

/** Why it can't be: it was typed as something in which the wanted text doesn't stand; undefined where nobody typed it. */
interface Left {
  readonly typed: string | undefined;
}

function replacing(book: Book, cell: FoundCell, { text, instead }: Wish): Replaced | Left {
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

/** What becomes of the cells that were typed and are to read otherwise. */
interface Apart {
  readonly typed: readonly Replaced[];
  /** Links to rows whose names are replaced in the same step. */
  readonly following: number;
  /** Links that would lead nowhere: no row is called so. */
  readonly leading: readonly Replaced[];
}

/** Links read as the rows that they lead to are called: they are typed only where another row is called so already. */
function linksApart(book: Book, cells: readonly Replaced[]): Apart {
  const renamed = new Set(
    cells.flatMap(({ sheet, row, column }) => (sheetView(book, sheet)?.key === column ? [`${sheet} ${row}`] : [])),
  );
  const typed: Replaced[] = [];
  const leading: Replaced[] = [];
  let following = 0;
  for (const cell of cells) {
    const { sheet, slot, column, entry } = cell;
    const type = columnAt(book, { sheet, column })?.type;
    const to = type?.kind === 'link' ? cellValue(book, sheet, slot, column) : undefined;
    if (type?.kind !== 'link') typed.push(cell);
    else if (typeof to === 'number' && renamed.has(`${type.table} ${rowId(book, type.table, to)}`)) following += 1;
    else if (tryEntry(book, sheet, column, entry, slot).ok) typed.push(cell);
    else leading.push(cell);
  }
  return { typed, following, leading };
}

/** Asks about a date far from all others before it is put in; whether all may be. */
function areMeant(book: Book, cells: readonly Replaced[], { text, instead }: Wish): boolean {
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
  const wish = finding.peek();
  const { found, at, text } = wish;
  const cell = found[at];
  if (book === undefined) return;
  if (cell === undefined) {
    stepFound(1);
    return;
  }
  const replaced = replacing(book, cell, wish);
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
  if (!areMeant(book, [replaced], wish) || change([typing(replaced)], message('replace cell')).refused) return;
  await look();
  set({ at: Math.min(at, finding.peek().found.length) - 1 });
  stepFound(1);
}

/** While the cells are looked up in which a text is to be replaced. */
let isReplacing = false;

/** Replaces in every match that was typed, found already or not, as one step, with the way back. */
export async function replaceAll(): Promise<void> {
  const book = workbookNow();
  const wish = finding.peek();
  if (book === undefined || isReplacing) return;
  isReplacing = true;
  const typed = await typedMatches(book).finally(() => {
    isReplacing = false;
  });
  // What was looked through is no longer on screen.
  if (workbookNow() !== book) return;
  const answers = typed.filter(({ behind }) => !behind).map((cell) => replacing(book, cell, wish));
  const {
    typed: cells,
    following,
    leading,
  } = linksApart(
    book,
    answers.flatMap((answer) => ('typed' in answer ? [] : [answer])),
  );
  const otherwise = answers.flatMap((answer) => ('typed' in answer ? (answer.typed ?? []) : []));
  const left = [
    givenWords(answers.length),
    otherwiseWords(otherwise),
    leadingWords(book, leading, wish),
    behindWords(typed.length - answers.length),
  ].join('');
  const count = cells.length + following;
  if (cells.length === 0) {
    tell(`Nothing replaced.${left}`, 'refusal');
    return;
  }
  if (!areMeant(book, cells, wish)) return;
  const said = count === 1 ? message('replace cell') : message('replace cells', { count });
  const outcome = change(cells.map(typing), said, { quietly: true });
  if (outcome.refused) {
    tell(`Nothing replaced. ${placeWords(book, cells[outcome.index])}${outcome.why}`, 'refusal');
    return;
  }
  tell(`Replaced in ${count === 1 ? 'a cell' : `${count} cells`}.${left}`, 'done', UNDO);
  await look();
}

/** All matches that a person typed: what was found before may be other cells by now, and more are typed than are told one by one. */
async function typedMatches(book: Workbook): Promise<readonly Match[]> {
  const wanted = wantedNow();
  const sheets = searchedNow(book);
  let found: Match[] = [];
  let isChanged = true;
  const stop = book.subscribe(() => {
    isChanged = true;
  });
  // What is changed meanwhile is looked through again.
  while (isChanged) {
    isChanged = false;
    found = [];
    if (wanted === undefined) break;
    await inTurns(matching(book, sheets, wanted, { typed: true }), ({ cell }) => {
      if (cell !== undefined) found.push(cell);
      return !isChanged;
    });
  }
  stop();
  return found;
}

/** How many matches no one typed, of all that were found; `typed` of them were. */
function givenWords(typed: number): string {
  const { found, looking, cut } = finding.peek();
  if (looking || cut !== undefined) return ' What formulas give is left.';
  const given = found.length - typed;
  return given <= 0 ? '' : ` ${given} ${given === 1 ? 'is' : 'are'} given by formulas and left.`;
}

/** How many were typed as something in which the wanted text doesn't stand. */
function otherwiseWords(typed: readonly string[]): string {
  const [first] = typed;
  return first === undefined
    ? ''
    : ` ${typed.length} ${typed.length === 1 ? 'was' : 'were'} typed otherwise (${first}) and left.`;
}

/** How many are links that would lead nowhere, and what takes them along. */
function leadingWords(book: Book, links: readonly Replaced[], { everywhere }: Finding): string {
  const [first] = links;
  if (first === undefined) return '';
  const [is, one] = links.length === 1 ? ['is a link', 'it is'] : ['are links', 'they are'];
  const along = everywhere ? '' : ', or replace in all sheets';
  const name = namedWords(book, first);
  return ` ${links.length} ${is} and left, as no row of ${name} is called “${first.entry}”: rename the rows that ${one} linked to${along}.`;
}

/** The sheet that a cell's link leads to. */
function namedWords(book: Book, { sheet, column }: Replaced): string {
  const type = columnAt(book, { sheet, column })?.type;
  return (type?.kind === 'link' ? sheetView(book, type.table)?.name : undefined) ?? 'its sheet';
}

/** 'In Lettuce 1, Variety: ' before the reason of a refusal. */
function placeWords(book: Book, cell: Replaced | undefined): string {
  if (cell === undefined) return '';
  const { sheet, slot, column } = cell;
  return `In ${rowName(book, sheet, slot)}, ${columnAt(book, cell)?.name ?? column}: `;
}

function behindWords(behind: number): string {
  return behind === 0 ? '' : ` ${behind} behind ${filterWords()} ${behind === 1 ? 'stays' : 'stay'}.`;
}
