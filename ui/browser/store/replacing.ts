// Putting another text in the place of what was looked for: in the match in hand, or in every cell that a person typed. Comes with the
// bar. What a formula gives follows what is typed, or is left.

import { type Book, cellView, message, tryEntry, type Workbook } from '../../../engine/index.ts';
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
  const cells = answers.flatMap((answer) => ('typed' in answer ? [] : [answer]));
  const otherwise = answers.flatMap((answer) => ('typed' in answer ? (answer.typed ?? []) : []));
  const left = [givenWords(answers.length), otherwiseWords(otherwise), behindWords(typed.length - answers.length)].join(
    '',
  );
  const count = cells.length;
  if (count === 0) {
    tell(`Nothing replaced.${left}`, 'refusal');
    return;
  }
  if (!areMeant(book, cells, wish)) return;
  const said = count === 1 ? message('replace cell') : message('replace cells', { count });
  if (change(cells.map(typing), said).refused) return;
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

function behindWords(behind: number): string {
  return behind === 0 ? '' : ` ${behind} behind ${filterWords()} ${behind === 1 ? 'stays' : 'stay'}.`;
}
