// How a cell is drawn: its text, figures in parts so that they line up on the decimal mark, and the classes and words that
// tell entered, computed, overridden and stood-in values apart. The grid calls it for every cell that comes into view.

import type { CellView, ColumnView, Finding } from '../../../engine/index.ts';
import { isFigure } from '../store/sheets.ts';
import { figureParts, padding, type Room } from './figures.ts';

/** The element that a cell shows. */
export function cellElement(cell: CellView | undefined, column: ColumnView, room: Room): HTMLElement {
  const face = document.createElement('span');
  face.className = 'face';
  if (cell === undefined) return face;
  if (isErrorCell(cell)) {
    const mark = document.createElement('span');
    mark.className = 'no-figure';
    mark.textContent = cell.text === '' ? 'see why' : cell.text;
    face.append(mark);
  } else if (isFigure(column)) {
    face.append(...figureNodes(cell, room));
  } else {
    face.textContent = cell.text;
  }
  return face;
}

function figureNodes({ figure, unit, text }: CellView, room: Room): readonly Node[] {
  const parts = figureParts(figure);
  if (parts === undefined) return [document.createTextNode(text)];
  const nodes: Node[] = [document.createTextNode(figure)];
  const pad = padding(parts.fraction, room);
  if (pad !== '') nodes.push(invisible('pad', pad));
  if (unit !== '') {
    const own = document.createElement('span');
    own.className = 'own-unit';
    own.textContent = unit === '%' ? unit : `\u00a0${unit}`;
    nodes.push(own);
    if (unit.length < room.unit.length) nodes.push(invisible('pad own-unit', room.unit.slice(unit.length)));
  } else if (room.unit !== '') {
    nodes.push(invisible('pad own-unit', `\u00a0${room.unit}`));
  }
  return nodes;
}

/** Room as wide as the text, seen and read by nobody: the style sheet draws data-pad. */
function invisible(className: string, text: string): HTMLElement {
  const pad = document.createElement('span');
  pad.className = className;
  pad.dataset.pad = text;
  return pad;
}

export function isErrorCell(cell: CellView): boolean {
  return typeof cell.value === 'object' && cell.value !== null;
}

/** Where the value comes from in words, for those who don't see the mark; '' where there is nothing to say. */
export function originWords({ origin, text }: CellView): string {
  if (origin === 'override') return 'typed over the formula';
  if (origin === 'computed') return 'computed';
  if (origin === 'default' && text !== '') return 'from the formula, nothing typed here';
  return '';
}

/** The classes of a cell: what it is, where its value comes from, what was found in it. */
export function cellClasses(cell: CellView | undefined, column: ColumnView, found: Finding | undefined): string[] {
  const classes = [`role-${column.role}`];
  if (isFigure(column)) classes.push('figure');
  if (cell !== undefined) {
    classes.push(`origin-${cell.origin}`);
    if (isErrorCell(cell)) classes.push('is-error');
  }
  if (found !== undefined) classes.push('found', `found-${found.level}`);
  return classes;
}
