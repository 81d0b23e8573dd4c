// Figures that follow: an edit works out what is on screen, and the rest in idle slices once changes have come to rest. The checks rest on nearly all of it, so
// what they found in the workbook on screen, gravest first, is looked for last, and stays as it was until then.

import { batch, computed, effect, signal, untracked } from '@preact/signals';
import { type Finding, type FindingLevel, type Findings, sheetView, type Workbook } from '../../../engine/index.ts';
import { gridOnScreen } from '../grid/grid-surface.ts';
import { inSlice } from './idle.ts';
import { viewNow } from './looks.ts';
import { selection } from './selection.ts';
import { view } from './view.ts';
import { rests, revision, screens, workbook, workbookNow } from './workbook.ts';

export const LEVELS: Readonly<Record<FindingLevel, string>> = { error: 'Error', warning: 'Warning', note: 'Note' };

/** Milliseconds after which a slice is done though the page is busy. */
const LATEST = 400;

const NONE: readonly Finding[] = [];

export const findings = signal(NONE);

/** Whether figures off screen, or the checks, are behind what was last changed. */
export const following = signal(true);

/** Raised when the figures off screen have followed, before the checks have. */
export const followed = signal(0);

/** Whether they have followed what was last changed: then to read any of them costs nothing. */
export function haveFollowed(): boolean {
  return figuresOf === revision.peek();
}

/** The workbook for figures that rest on the whole season: a part that reads it draws again once they have followed, a moment after
    the cells on screen, rather than hold those up. */
export function workbookFollowed(): Workbook {
  followed.value;
  screens.value;
  return untracked(workbook);
}

type Checking = typeof import('./checking.ts');

let checking: Checking | undefined;

/** Fetches what checks; where there is no way to it, the next change tries again. */
async function fetchChecking(): Promise<void> {
  checking ??= await import('./checking.ts').catch(() => undefined);
  if (checking !== undefined) follow();
}

let keeper: { readonly of: Workbook; readonly findings: Findings } | undefined;
let scheduled = false;
/** The revision that the figures have followed. */
let figuresOf = -1;
/** What is to be done for the checks once changes have come to rest: look at all of them, list what they found, nothing. */
let checks: 'look' | 'list' | 'none' = 'look';

function follow(): void {
  if (scheduled || workbookNow() === undefined) return;
  scheduled = true;
  following.value = true;
  inSlice(slice, LATEST);
}

function slice(goOn: () => boolean): void {
  scheduled = false;
  const book = workbookNow();
  if (book === undefined) return;
  if (isLeft(book, goOn)) follow();
}

function findingsKept(book: Workbook, { Findings }: Checking): Findings {
  if (keeper?.of !== book) keeper = { of: book, findings: new Findings(book) };
  return keeper.findings;
}

/** Does what is left to follow, one thing after another for as long as `goOn` says; whether more is left. */
function isLeft(book: Workbook, goOn: () => boolean): boolean {
  if (book.settle(goOn)) return true;
  if (!haveFollowed()) {
    figuresOf = revision.peek();
    followed.value += 1;
  }
  if (checks === 'none') return false;
  if (checking === undefined) {
    void fetchChecking();
    return false;
  }
  const found = findingsKept(book, checking);
  if (checks === 'look') {
    if (!goOn() || found.prepare(goOn)) return true;
    checks = 'list';
    if (!goOn()) return true;
  }
  checks = 'none';
  const all = found.all();
  batch(() => {
    if (!isSame(all, findings.peek())) findings.value = all;
    following.value = false;
  });
  return false;
}

/** Whether two lists say the same of the same cells: then nothing that shows them has to be drawn again. */
function isSame(a: readonly Finding[], b: readonly Finding[]): boolean {
  return a.length === b.length && a.every((one, at) => isSameFinding(one, b[at]));
}

function isSameFinding(a: Finding, b: Finding | undefined): boolean {
  if (b === undefined || a.says !== b.says || a.rowId !== b.rowId || a.row !== b.row) return false;
  if (a.sheet !== b.sheet || a.column !== b.column || a.level !== b.level || a.check !== b.check) return false;
  return a.rowName === b.rowName && a.columnName === b.columnName && a.sheetName === b.sheetName;
}

effect(() => {
  screens.value;
  findings.value = NONE;
  workbookNow()?.watch(onScreen);
  checks = 'look';
  follow();
});

effect(() => {
  revision.value;
  if (checks === 'list') checks = 'look';
  follow();
});

effect(() => {
  rests.value;
  checks = 'look';
  follow();
});

/**
 * The columns of the sheet on screen that are drawn, or all that its view has where cards are; pictures and the glance read what they show
 * when they draw. A column that is scrolled into sight before it has followed is worked out as it is read.
 */
function onScreen(): readonly { readonly sheet: string; readonly column: string }[] {
  const book = workbookNow();
  const sheet = book === undefined || view.peek().at !== 'sheet' ? undefined : sheetView(book, selection.peek().sheet);
  if (sheet === undefined) return [];
  const columns = gridOnScreen.peek()?.columnsDrawn(sheet.id) ?? viewNow(sheet).shows;
  return columns.map((column) => ({ sheet: sheet.id, column }));
}

/** 'Nothing needs attention', once that is known. */
export function nothingFound(): string {
  return following.value ? 'The checks are still being worked out' : 'Nothing needs attention';
}

/** The same list by sheet, and by row within a sheet ('' for what concerns no one row). */
const placed = computed(() => {
  const sheets = new Map<string, Finding[]>();
  const rows = new Map<string, Finding[]>();
  for (const found of findings.value) {
    putTo(sheets, found.sheet, found);
    putTo(rows, `${found.sheet} ${found.rowId}`, found);
  }
  return { sheets, rows };
});

function putTo(lists: Map<string, Finding[]>, key: string, found: Finding): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [found]);
  else list.push(found);
}

/** What was found on a sheet. */
export function findingsOf(sheet: string): readonly Finding[] {
  return placed.value.sheets.get(sheet) ?? NONE;
}

/** What was found in a row. */
export function findingsIn(sheet: string, row: string): readonly Finding[] {
  return placed.value.rows.get(`${sheet} ${row}`) ?? NONE;
}

/** What was found in a cell. */
export function findingsAt(sheet: string, row: string, column: string): readonly Finding[] {
  return findingsIn(sheet, row).filter((found) => found.column === column);
}

/** What was found in a cell, and of its whole column. */
export function findingsFor(sheet: string, row: string, column: string): readonly Finding[] {
  const ofColumns = findingsIn(sheet, '').filter((found) => found.column === column);
  return ofColumns.length === 0 ? findingsAt(sheet, row, column) : [...findingsAt(sheet, row, column), ...ofColumns];
}

/** 'Plantings / Amber early / Stations'. */
export function placeWords({ sheetName, rowName, columnName }: Finding): string {
  return [sheetName, rowName, columnName].filter((part) => part !== '').join(' / ');
}
