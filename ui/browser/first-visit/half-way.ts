// How far the first questions are answered: whether a season holds anything but their answers yet, and whether one of them is still
// open. Pure, but for the view that a visit opens on; the glance and the phone's day ask it, and what follows the browser's way back.

import { type DocumentData, rows, type Workbook } from '../../../engine/index.ts';
import { BEDS, FARM, PLANTING, PLANTINGS, VARIETIES } from '../panels/columns.ts';
import { farmFigure } from '../panels/read.ts';
import { askRows } from '../pictures/kit/ask.ts';
import { OPENING, view } from '../store/view.ts';

const MONTHS = 'monthly-climate';
const LAST_FROST = 'average-last-frost';
const FIRST_FROST = 'average-first-frost';

/** The columns that answers fill, by sheet, with those that proposed beds and the calendar below the answers fill; the farm's are all. */
const ANSWERED: Readonly<Record<string, readonly string[]>> = {
  [MONTHS]: ['low', 'high'],
  [BEDS]: ['bed'],
  [VARIETIES]: ['variety', 'crop'],
  [PLANTINGS]: [
    'planting',
    'variety',
    'sown',
    PLANTING.plantedOut,
    PLANTING.bed,
    'proposed-bed',
    'proposed-bed-beside',
    'not-placed',
  ],
};

/** Whether nothing is in a workbook yet but what the first questions and the plan below them put there. */
export function hasOnlyFirstAnswers(book: Workbook): boolean {
  // Mostly told from the plantings, which a tick calls like their crops: what a large workbook holds takes longer to put together.
  const areTicked = askRows(book, PLANTINGS).every((row) => row.text('planting') === row.text('variety'));
  return areTicked && isOnlyAnswers(book.data());
}

function isOnlyAnswers({ own, rows: held, removed, aside, branches, notes, papers }: DocumentData): boolean {
  const others = [own, removed, aside, branches ?? {}, notes ?? {}, papers ?? {}];
  if (others.some((kept) => Object.keys(kept).length > 0)) return false;
  return Object.entries(held).every(
    ([sheet, all]) =>
      sheet === FARM ||
      all.every(({ cells }) => Object.keys(cells).every((column) => ANSWERED[sheet]?.includes(column) === true)),
  );
}

/** Whether a season holds answers alone, and one of the four questions has none: where, how warm, which beds, which crops. */
export function isHalfWay(book: Workbook): boolean {
  const months = askRows(book, MONTHS).filter((row) => row.figure('low') !== undefined);
  const isOpen =
    farmFigure(book, 'latitude') === undefined ||
    (months.length < 12 && (farmFigure(book, LAST_FROST) ?? farmFigure(book, FIRST_FROST)) === undefined) ||
    rows(book, BEDS).length === 0 ||
    rows(book, PLANTINGS).length === 0;
  return isOpen && hasOnlyFirstAnswers(book);
}

/** Whether a visit opens on a season whose questions are half answered: they are shown in place of the glance, unless it is asked for. */
export function opensHalfWay(book: Workbook): boolean {
  return view.peek() === OPENING && isHalfWay(book);
}
