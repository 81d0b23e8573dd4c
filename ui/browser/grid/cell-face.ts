// How a cell is drawn: its text, figures in parts so that they line up on the decimal mark, and the classes and words that
// tell entered, computed, overridden and stood-in values apart. The grid calls it for every cell that comes into view.

import type { Attention, CellView, ColumnView } from '../../../engine/index.ts';
import { figureParts, padding, type Room } from './figures.ts';

/** Whether a column's values stand to the right, on the decimal mark. */
export function isFigure(column: ColumnView): boolean {
  return column.type?.kind === 'number' || column.type?.kind === 'temperature';
}

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
    face.append(...figureNodes(cell.text, room));
  } else {
    face.textContent = cell.text;
  }
  return face;
}

function figureNodes(text: string, room: Room): readonly Node[] {
  const parts = figureParts(text);
  if (parts === undefined) return [document.createTextNode(text)];
  const nodes: Node[] = [document.createTextNode(`${parts.whole}${parts.fraction}`)];
  const pad = padding(parts.fraction, room);
  if (pad !== '') nodes.push(invisible('pad', pad));
  if (parts.unit !== '') {
    const unit = document.createElement('span');
    unit.className = 'own-unit';
    unit.textContent = `\u00a0${parts.unit}`;
    nodes.push(unit);
    if (parts.unit.length < room.unit.length) nodes.push(invisible('pad own-unit', room.unit.slice(parts.unit.length)));
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

/** The standing in words, for those who don't see the mark; '' where there is nothing to say. */
export function standingWords(cell: CellView): string {
  if (cell.standing === 'override') return 'typed over the formula';
  if (cell.standing === 'computed') return 'computed';
  if (cell.standing === 'default' && cell.text !== '') return 'from the formula, nothing typed here';
  return '';
}

/** The classes of a cell: what it is, how it stands, what was found in it. */
export function cellClasses(cell: CellView | undefined, column: ColumnView, found: Attention | undefined): string[] {
  const classes = [`role-${column.role}`];
  if (isFigure(column)) classes.push('figure');
  if (cell !== undefined) {
    classes.push(`standing-${cell.standing}`);
    if (isErrorCell(cell)) classes.push('is-error');
  }
  if (found !== undefined) classes.push('found', `found-${found.level}`);
  return classes;
}
