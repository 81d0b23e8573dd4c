// The scratch paper in hand: which one, which cells, what is being typed; and the acts on it, each one step of undo. The parts of
// the paper on screen read and call this; it calls the store.

import { batch, computed, signal } from '@preact/signals';
import { type Command, freeName, message, PAPER_COLUMNS, PAPER_ROWS, type Workbook } from '../../../engine/index.ts';
import { type At, type Block, blockName, blockOf, cellName, cellNamed, cellsOf } from '../../scratch/addresses.ts';
import {
  isFormula,
  moveFormula,
  withCommas,
  withPaperRenamed,
  withPapersRenamed,
} from '../../scratch/formula-words.ts';
import { keptDay } from '../../scratch/typed-days.ts';
import { TypedFigures } from '../../scratch/typed-figures.ts';
import { change } from '../store/change.ts';
import { workbookNow } from '../store/workbook.ts';

export interface PaperName {
  readonly id: string;
  readonly name: string;
}

/** The paper that was chosen; the first there is where it is none any more. */
export const chosen = signal('');

const START: At = { row: 0, column: 0 };
/** The cell in hand, and the other corner of the selection. */
export const hand = signal<At>(START);
export const corner = signal<At>(START);
/** The cell that is kept in sight. */
export const watched = signal<At>(START);
export const selected = computed<Block>(() => blockOf(hand.value, corner.value));

/** What is being typed into the cell in hand; undefined at rest. */
export const typing = signal<{ readonly text: string; readonly where: 'cell' | 'line' } | undefined>(undefined);

/** Shows the question which sheet gets the formula in hand as a column. */
export const turning = signal(false);

/** Papers by name, as people count: 2 before 10. */
export function papersOf(book: Workbook): readonly PaperName[] {
  return Array.from(book.document.papers.all(), ([id, { name }]) => ({ id, name: name ?? 'Scratch paper' })).sort(
    (a, b) => a.name.localeCompare(b.name, undefined, { numeric: true }),
  );
}

export function paperInHand(book: Workbook): PaperName | undefined {
  const papers = papersOf(book);
  return papers.find(({ id }) => id === chosen.value) ?? papers[0];
}

export function choose(id: string): void {
  batch(() => {
    chosen.value = id;
    typing.value = undefined;
    hand.value = START;
    corner.value = START;
    watched.value = START;
  });
}

/** Takes a cell in hand; `stretch` moves the other corner alone. */
export function goTo(at: At, stretch = false): void {
  const within = {
    row: Math.min(PAPER_ROWS - 1, Math.max(0, at.row)),
    column: Math.min(PAPER_COLUMNS - 1, Math.max(0, at.column)),
  };
  batch(() => {
    corner.value = within;
    watched.value = within;
    if (!stretch) hand.value = within;
  });
}

export function entryAt(book: Workbook, at: At): string {
  const paper = paperInHand(book);
  return paper === undefined ? '' : (book.document.papers.entry(paper.id, cellName(at)) ?? '');
}

/** The last row and column that hold anything. */
export function extentOf(book: Workbook): At {
  const paper = paperInHand(book);
  const extent = { row: 0, column: 0 };
  for (const cell of paper === undefined ? [] : (book.document.papers.paper(paper.id)?.cells.keys() ?? [])) {
    const at = cellNamed(cell);
    if (at === undefined) continue;
    extent.row = Math.max(extent.row, at.row);
    extent.column = Math.max(extent.column, at.column);
  }
  return extent;
}

// Acts.

type Cells = Readonly<Record<string, string>>;

/** Types into cells as one step; the first entry of a workbook brings its first paper. */
function type(
  cells: Cells,
  code: 'type on paper' | 'clear on paper' | 'paste on paper' | 'fill on paper',
  where: string,
): boolean {
  const book = workbookNow();
  if (book === undefined) return false;
  const known = paperInHand(book);
  const paper = known?.id ?? book.newId();
  const name = known?.name ?? nextName(book);
  const first: readonly Command[] = known === undefined ? [{ command: 'add paper', paper, name }] : [];
  const entry = Object.values(cells)[0] ?? '';
  const parts = code === 'type on paper' ? { paper: name, cell: where, entry } : { paper: name, cells: where };
  return !change([...first, { command: 'type on paper', paper, cells }], message(code, parts)).refused;
}

/** Names of papers in small letters: those that another can't have. */
function namesTaken(book: Workbook): Set<string> {
  return new Set(papersOf(book).map(({ name }) => name.toLowerCase()));
}

function nextName(book: Workbook): string {
  const taken = namesTaken(book);
  return freeName('Scratch paper', (name) => taken.has(name.toLowerCase()));
}

/** Begins to type into the cell in hand, over what it holds or on from there. */
export function beginTyping(text: string, where: 'cell' | 'line' = 'cell'): void {
  typing.value = { text, where };
}

/** What a paper keeps of texts that are typed or pasted: formulas with commas, numbers with a point, days with their year. */
export function entriesOf({ document }: Workbook): (typed: string) => string {
  const figures = new TypedFigures(document.writing, document.program.vocabulary);
  return (typed) => (isFormula(typed) ? withCommas(typed) : (keptDay(typed, document.entry) ?? figures.kept(typed)));
}

/** Takes what was typed; false where it is refused. */
export function takeTyped(): boolean {
  const now = typing.peek();
  const book = workbookNow();
  if (now === undefined || book === undefined) return true;
  const at = hand.peek();
  const entry = now.text.trim() === '' ? '' : entriesOf(book)(now.text);
  typing.value = undefined;
  if (entry === entryAt(book, at)) return true;
  return entry === ''
    ? type({ [cellName(at)]: '' }, 'clear on paper', cellName(at))
    : type({ [cellName(at)]: entry }, 'type on paper', cellName(at));
}

export function clearSelected(): void {
  const book = workbookNow();
  if (book === undefined || paperInHand(book) === undefined) return;
  const cells = heldIn(book, selected.peek()).map((at) => [cellName(at), '']);
  if (cells.length > 0) type(Object.fromEntries(cells), 'clear on paper', blockName(selected.peek()));
}

/** Cells of a block that hold anything; a block may be far larger than what stands in it. */
function heldIn(book: Workbook, block: Block): readonly At[] {
  const paper = paperInHand(book);
  const cells = paper === undefined ? [] : [...(book.document.papers.paper(paper.id)?.cells.keys() ?? [])];
  return cells.flatMap((cell) => {
    const at = cellNamed(cell);
    const { from, to } = block;
    const within =
      at !== undefined && at.row >= from.row && at.row <= to.row && at.column >= from.column && at.column <= to.column;
    return within ? [at] : [];
  });
}

/** The first row or column of the selection over the rest of it, references moved. */
export function fillSelected(way: 'down' | 'right'): void {
  const book = workbookNow();
  if (book === undefined) return;
  const { from, to } = selected.peek();
  const cells = cellsOf({ from, to }).flatMap((at): [string, string][] => {
    const source = way === 'down' ? { row: from.row, column: at.column } : { row: at.row, column: from.column };
    const [rows, columns] = [at.row - source.row, at.column - source.column];
    return rows === 0 && columns === 0 ? [] : [[cellName(at), moveFormula(entryAt(book, source), rows, columns)]];
  });
  if (cells.length > 0) type(Object.fromEntries(cells), 'fill on paper', blockName({ from, to }));
}

/** Puts rows of entries where the cell in hand is, and selects them; false where that is refused. */
export function putRows(rows: readonly (readonly string[])[]): boolean {
  const { from } = selected.peek();
  const wide = Math.max(...rows.map((row) => row.length));
  const block = { from, to: { row: from.row + rows.length - 1, column: from.column + wide - 1 } };
  const cells = rows.flatMap((row, down) =>
    row.map((entry, along) => [cellName({ row: from.row + down, column: from.column + along }), entry] as const),
  );
  if (!type(Object.fromEntries(cells), 'paste on paper', blockName(block))) return false;
  batch(() => {
    hand.value = block.from;
    corner.value = block.to;
    watched.value = block.from;
  });
  return true;
}

export function addPaper(): void {
  const book = workbookNow();
  if (book === undefined) return;
  const paper = book.newId();
  const name = nextName(book);
  const done = change([{ command: 'add paper', paper, name }], message('add paper', { paper: name }));
  if (!done.refused) choose(paper);
}

/** Formulas that name the paper follow its new name. */
export function renamePaper(paper: PaperName, wanted: string): boolean {
  const book = workbookNow();
  const name = wanted.trim();
  if (book === undefined || name === paper.name) return true;
  const commands: Command[] = [{ command: 'rename paper', paper: paper.id, name }];
  for (const [id, { cells }] of book.document.papers.all()) {
    const changed = [...cells].flatMap(([cell, entry]): [string, string][] => {
      const after = withPaperRenamed(entry, paper.name, name);
      return after === entry ? [] : [[cell, after]];
    });
    if (changed.length > 0) commands.push({ command: 'type on paper', paper: id, cells: Object.fromEntries(changed) });
  }
  return !change(commands, message('rename paper', { paper: paper.name })).refused;
}

export function removePaper({ id, name }: PaperName): void {
  const done = change([{ command: 'remove paper', paper: id }], message('remove paper', { paper: name }));
  if (!done.refused) choose('');
}

/** Sheets of a file as papers of their own, one step; a sheet whose name is taken gets another, and formulas follow it. */
export function bringPapers(
  sheets: readonly { readonly name: string; readonly cells: Cells }[],
  file: string,
): boolean {
  const book = workbookNow();
  if (book === undefined) return false;
  const taken = namesTaken(book);
  const named = sheets.map(({ name: wanted }) => {
    const name = freeName(wanted, (one) => taken.has(one.toLowerCase()));
    taken.add(name.toLowerCase());
    return { wanted, name, paper: book.newId() };
  });
  const renamed = new Map(named.flatMap(({ wanted, name }) => (wanted === name ? [] : [[wanted.toLowerCase(), name]])));
  // Numbers of a file come plain: what else would be read as one is a text there, and stays one.
  const figures = new TypedFigures(book.document.writing, book.document.program.vocabulary);
  const asText = (entry: string): string => (isFormula(entry) || figures.taken(entry) === entry ? entry : `'${entry}`);
  const commands = named.flatMap(({ name, paper }, i): Command[] => {
    const cells = Object.entries(sheets[i]?.cells ?? {}).map(
      ([cell, entry]) => [cell, withPapersRenamed(asText(entry), renamed)] as const,
    );
    return [
      { command: 'add paper', paper, name },
      { command: 'type on paper', paper, cells: Object.fromEntries(cells) },
    ];
  });
  const done = change(commands, message('open on paper', { file }), { source: 'import' });
  if (!done.refused) choose(named[0]?.paper ?? '');
  return !done.refused;
}
