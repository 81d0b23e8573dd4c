// How wide a column begins: as wide as its header's longest word and its longest texts need, within reason. Measured with
// the page's own face on a canvas; the column definitions call it.

import { type Book, type ColumnView, cellView } from '../../../engine/index.ts';

const LEAST = 72;
const MOST = 300;
/** Texts of so many rows are measured. */
const LOOKED_AT = 300;
/** Room at both sides, the mark of computed cells included. */
const SIDES = 26;

let pen: CanvasRenderingContext2D | null | undefined;

function measure(text: string): number {
  if (pen === undefined) {
    pen = document.createElement('canvas').getContext('2d');
    const style = getComputedStyle(document.documentElement);
    if (pen !== null) pen.font = `${style.getPropertyValue('--size-small')} ${style.getPropertyValue('--sans')}`;
  }
  return pen?.measureText(text).width ?? text.length * 7;
}

/** The width in pixels that a column begins with. */
export function startingWidth(book: Book, sheet: string, rows: Int32Array, column: ColumnView): number {
  let texts = 0;
  for (const row of rows.subarray(0, LOOKED_AT)) {
    texts = Math.max(texts, measure(cellView(book, sheet, row, column.id).text));
  }
  return Math.round(Math.min(MOST, Math.max(LEAST, headerWidth(column) + SIDES, texts + SIDES)));
}

/** The header's name may stand in two lines: the narrowest width that lets it, the unit beside the second. */
function headerWidth(column: ColumnView): number {
  const words = column.name.split(' ');
  let best = measure(column.name);
  for (let cut = 1; cut < words.length; cut += 1) {
    const first = measure(words.slice(0, cut).join(' '));
    const second = measure(words.slice(cut).join(' '));
    best = Math.min(best, Math.max(first, second));
  }
  return Math.max(best, measure(column.unit));
}
