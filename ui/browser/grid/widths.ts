// How wide a column is where nobody drew it: as wide as its header's longest word and its longest texts need, within reason.
// Measured with the page's own face on a canvas; the column definitions call it, and the grid when a longer text comes.

import { type Book, type ColumnView, cellView } from '../../../engine/index.ts';
import { endsAfter } from '../store/shown.ts';

const LEAST = 64;
const MOST = 300;
/** A column that a person fits to its texts may grow so wide. */
const MOST_FITTED = 800;
/** Texts of so many rows are measured. */
const LOOKED_AT = 300;
/** Room at both sides, the mark of computed cells included. */
const SIDES = 24;
/** Room in a header beside its name, marks of order and filter included. */
const HEAD_SIDES = 26;

let pen: CanvasRenderingContext2D | null | undefined;
let measured = new Map<string, number>();

function measure(text: string): number {
  const known = measured.get(text);
  if (known !== undefined) return known;
  if (pen === undefined) {
    pen = document.createElement('canvas').getContext('2d');
    const style = getComputedStyle(document.documentElement);
    if (pen !== null) pen.font = `${style.getPropertyValue('--size-small')} ${style.getPropertyValue('--sans')}`;
  }
  const width = pen?.measureText(text).width ?? text.length * 7;
  if (measured.size > 20_000) measured = new Map();
  measured.set(text, width);
  return width;
}

/** The least width in which a text can be read in full. */
export function widthOfText(text: string): number {
  return Math.round(measure(text) + SIDES);
}

/** The width in pixels that a column begins with. */
export function startingWidth(book: Book, sheet: string, rows: Int32Array, column: ColumnView): number {
  const texts = textsWidth(book, sheet, rows.subarray(0, LOOKED_AT), column);
  return Math.round(Math.min(MOST, Math.max(LEAST, headerWidth(column) + HEAD_SIDES, texts)));
}

/** The width that shows every text of a column in full. */
export function fittedWidth(book: Book, sheet: string, rows: Int32Array, column: ColumnView): number {
  const texts = textsWidth(book, sheet, rows, column);
  return Math.round(Math.min(MOST_FITTED, Math.max(LEAST, headerWidth(column) + HEAD_SIDES, texts)));
}

/** What the texts of some rows need, within reason. */
export function widthOfTexts(book: Book, sheet: string, rows: Int32Array, column: ColumnView): number {
  return Math.round(Math.min(MOST, textsWidth(book, sheet, rows.subarray(0, LOOKED_AT), column)));
}

function textsWidth(book: Book, sheet: string, rows: Int32Array, column: ColumnView): number {
  let widest = 0;
  let widestEnds = 0;
  for (const row of rows) {
    const { text, ends } = cellView(book, sheet, row, column.id);
    widest = Math.max(widest, measure(text));
    if (ends !== '') widestEnds = Math.max(widestEnds, measure(endsAfter(ends)));
  }
  // Ends stand under one another, after the room that figures with a decimal need.
  if (widestEnds > 0) widest += widestEnds + measure('.0');
  return widest + SIDES;
}

/** The header's name may stand in two lines: the narrowest width that lets it, the unit beside the second. */
function headerWidth(column: ColumnView): number {
  const words = column.name.split(' ');
  let best = measure(column.name);
  for (let cut = 1; cut < words.length; cut += 1) {
    const first = measure(words.slice(0, cut).join(' '));
    const second = measure([...words.slice(cut), column.unit].join(' '));
    best = Math.min(best, Math.max(first, second));
  }
  return Math.max(best, measure(column.unit));
}
