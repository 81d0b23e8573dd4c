// How a cell is drawn: its text, figures in parts so that they line up on the decimal mark, the sign of its colour, its classes
// and what is said of it. cell-drawer.ts calls it for every cell that comes into view: as few elements and attributes as will do.

import type { CellView, ColourRule, ColumnView } from '../../../engine/index.ts';
import { isFigure } from '../store/sheets.ts';
import { endsAfter } from '../store/shown.ts';
import { type CellMarks, isErrorCell, originWords } from './cell-words.ts';
import { figureParts, padding, type Room } from './figures.ts';
import type { RowHandle } from './row-handle.ts';

/** Draws what a cell shows into its face, and gives the text that takes up room there; undefined where there is more than that. */
export function drawCell(
  face: HTMLElement,
  cell: CellView | undefined,
  column: ColumnView,
  room: Room,
  { colour }: CellMarks,
): string | undefined {
  if (cell === undefined) return '';
  if (colour !== undefined && colour.mark !== '') face.append(colourMark(colour));
  if (isErrorCell(cell)) {
    const mark = document.createElement('span');
    mark.className = 'no-figure';
    mark.textContent = cell.text === '' ? 'see why' : cell.text;
    face.append(mark);
    return undefined;
  }
  const width = isFigure(column) ? drawFigure(face, cell, room) : drawText(face, cell);
  return colour !== undefined && colour.mark !== '' ? undefined : width;
}

function drawText(face: HTMLElement, { text, ends }: CellView): string | undefined {
  if (text === '') return '';
  face.append(text);
  if (ends === '') return text;
  face.append(endsNode(ends));
  return undefined;
}

function colourMark({ mark }: ColourRule): HTMLElement {
  const sign = document.createElement('span');
  sign.className = 'colour-mark';
  sign.setAttribute('aria-hidden', 'true');
  sign.textContent = mark;
  return sign;
}

/** What stands where a new row begins. */
export const NEW_ROW = 'New row';

/** In the first cell of a new row, until something is typed. */
export function drawNewRow(face: HTMLElement): void {
  face.className = 'face new-row';
  face.textContent = NEW_ROW;
}

/** The head of a group in the column that names rows: its name, and how many rows it has. */
export function drawHead(face: HTMLElement, { group, folded }: RowHandle): void {
  face.className = 'face group-face';
  const sign = document.createElement('span');
  sign.className = 'fold-sign';
  sign.setAttribute('aria-hidden', 'true');
  sign.textContent = folded === true ? '\u25b8' : '\u25be';
  const name = document.createElement('span');
  name.dir = 'auto';
  name.textContent = group?.name === '' ? 'nothing there' : (group?.name ?? '');
  const count = document.createElement('span');
  count.className = 'group-count';
  const rows = group?.rows.length ?? 0;
  count.textContent = rows === 1 ? '1 row' : `${rows} rows`;
  face.title = `${name.textContent}, ${count.textContent}`;
  face.append(sign, stacked(name, count));
}

/** What stands in the head for a column under it: a figure, under what it is of the group where that is not the sum. */
export function drawTotal(face: HTMLElement, total: string, column: ColumnView): void {
  face.className = isFigure(column) ? 'face total-face figure' : 'face total-face';
  face.title = total;
  const [, kind, figure] = /^(\p{L}+) (.+)$/u.exec(total) ?? [];
  if (kind === undefined || figure === undefined) {
    face.textContent = total;
    return;
  }
  const words = document.createElement('span');
  words.className = 'total-kind';
  words.textContent = kind;
  const number = document.createElement('span');
  number.textContent = figure;
  face.append(stacked(words, number));
}

/** Two texts, the second under the first: a column is seldom wide enough for both side by side. Read out with a blank between. */
function stacked(first: HTMLElement, second: HTMLElement): HTMLElement {
  const both = document.createElement('span');
  both.className = 'stacked';
  both.append(first, ' ', second);
  return both;
}

/** Between which ends a figure lies, quieter than the figure. */
function endsNode(ends: string): HTMLElement {
  const node = document.createElement('span');
  node.className = 'ends';
  node.textContent = endsAfter(ends);
  return node;
}

/**
 * The figure, what of unit and ends stands in the cell itself, and the room that lines it up with the others. Gives the text that takes
 * up room.
 */
function drawFigure(face: HTMLElement, { figure, unit, ends, text }: CellView, room: Room): string {
  const parts = figureParts(figure, room.decimal);
  if (parts === undefined) {
    if (text !== '') face.append(text);
    return text;
  }
  face.append(figure);
  // What nobody sees is put off until something seen comes behind it: most cells need no element but their face.
  let unseen = padding(parts.fraction, room);
  let width = figure;
  const show = (node: HTMLElement): void => {
    width += `${unseen}${node.textContent}`;
    if (unseen !== '') face.append(invisible(unseen));
    unseen = '';
    face.append(node);
  };
  if (unit !== '') {
    show(ownUnit(unit));
    unseen = room.unit.slice(unit.length);
  } else if (room.unit !== '') {
    unseen += `\u00a0${room.unit}`;
  }
  if (ends !== '') show(endsNode(ends));
  if (room.ends.length > ends.length) unseen += ends === '' ? endsAfter(room.ends) : room.ends.slice(ends.length);
  if (unseen !== '') face.dataset.pad = unseen;
  return width + unseen;
}

function ownUnit(unit: string): HTMLElement {
  const own = document.createElement('span');
  own.className = 'own-unit';
  own.textContent = unit === '%' ? unit : `\u00a0${unit}`;
  return own;
}

/** Room as wide as the text, seen and read by nobody: the style sheet draws data-pad. */
function invisible(text: string): HTMLElement {
  const pad = document.createElement('span');
  pad.dataset.pad = text;
  return pad;
}

/** The classes that each cell on screen was given here; the others are the grid's and the selection's. */
const dressed = new WeakMap<Element, string>();

/** Gives a cell its classes in place of those it had from here before. */
export function dressCell(cell: HTMLElement, classes: string): void {
  const before = dressed.get(cell);
  if (before === classes) return;
  if (before === undefined) cell.className += ` ${classes}`;
  else {
    cell.classList.remove(...before.split(' '));
    cell.classList.add(...classes.split(' '));
  }
  dressed.set(cell, classes);
}

/** What is said of a cell beyond its text: read out with it, and shown where the pointer rests on it. */
export function describeCell(
  cell: HTMLElement,
  value: CellView | undefined,
  column: ColumnView,
  marks: CellMarks,
): void {
  const { found, colour, note = '' } = marks;
  const origin = value === undefined ? '' : originWords(value);
  if (column.role === 'made') cell.setAttribute('aria-readonly', 'true');
  if (found === undefined && colour === undefined && note === '') {
    say(cell, 'aria-description', origin);
    say(cell, 'title', '');
    return;
  }
  const said = [found?.says ?? '', colour?.name ?? '', note === '' ? '' : `Note: ${note}`].filter(
    (part) => part !== '',
  );
  say(cell, 'aria-description', [origin, ...said].filter((part) => part !== '').join('. '));
  say(cell, 'title', said.join('\n'));
}

function say(cell: HTMLElement, attribute: string, words: string): void {
  if (words !== '') cell.setAttribute(attribute, words);
  else if (cell.hasAttribute(attribute)) cell.removeAttribute(attribute);
}
