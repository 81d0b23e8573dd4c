// How a cell is drawn: its text, figures in parts so that they line up on the decimal mark, the sign of its colour, and the
// classes and words that tell entered, computed, overridden and stood-in values apart, what was found in it, and its note. The
// grid calls it for every cell that comes into view.

import type { CellView, ColourRule, ColumnView, Finding } from '../../../engine/index.ts';
import { isFigure } from '../store/sheets.ts';
import { endsAfter } from '../store/shown.ts';
import { figureParts, padding, type Room } from './figures.ts';
import type { RowHandle } from './row-handle.ts';

/** What is told of a cell besides its text. */
export interface CellMarks {
  readonly found?: Finding | undefined;
  readonly colour?: ColourRule | undefined;
  readonly note?: string;
  /** It holds what is looked for. */
  readonly isMatch?: boolean;
  /** It was cut, and goes when that is pasted. */
  readonly isCut?: boolean;
}

/** The element that a cell shows. */
export function cellElement(
  cell: CellView | undefined,
  column: ColumnView,
  room: Room,
  { colour }: CellMarks = {},
): HTMLElement {
  const face = document.createElement('span');
  face.className = 'face';
  // An input method that begins on the cell writes beside the face, not into it.
  face.contentEditable = 'false';
  if (cell === undefined) return face;
  if (colour !== undefined && colour.mark !== '') face.append(colourMark(colour));
  if (isErrorCell(cell)) {
    const mark = document.createElement('span');
    mark.className = 'no-figure';
    mark.textContent = cell.text === '' ? 'see why' : cell.text;
    face.append(mark);
  } else if (isFigure(column)) {
    face.append(...figureNodes(cell, room));
  } else {
    // A name runs in the direction of its own script.
    face.dir = 'auto';
    face.append(cell.text);
    if (cell.ends !== '') face.append(endsNode(cell.ends));
  }
  return face;
}

function colourMark({ mark }: ColourRule): HTMLElement {
  const sign = document.createElement('span');
  sign.className = 'colour-mark';
  sign.setAttribute('aria-hidden', 'true');
  sign.textContent = mark;
  return sign;
}

/** Where a new row begins: what stands in its first cell until something is typed. */
export function newRowElement(): HTMLElement {
  const face = document.createElement('span');
  face.className = 'face new-row';
  face.contentEditable = 'false';
  face.textContent = 'New row';
  return face;
}

/** The head of a group: its name and how many rows it has, or what stands for a column under it. */
export function headElement({ group, folded }: RowHandle, naming: boolean, total: string): HTMLElement {
  const face = document.createElement('span');
  face.className = naming ? 'face group-face' : 'face total-face';
  if (!naming) {
    face.textContent = total;
    face.title = total;
    return face;
  }
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
  face.append(sign, name, count);
  return face;
}

/** Between which ends a figure lies, quieter than the figure. */
function endsNode(ends: string): HTMLElement {
  const node = document.createElement('span');
  node.className = 'ends';
  node.textContent = endsAfter(ends);
  return node;
}

function figureNodes({ figure, unit, ends, text }: CellView, room: Room): readonly Node[] {
  const parts = figureParts(figure, room.decimal);
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
  if (ends !== '') nodes.push(endsNode(ends));
  if (room.ends.length > ends.length) {
    const rest = ends === '' ? endsAfter(room.ends) : room.ends.slice(ends.length);
    nodes.push(invisible('pad ends', rest));
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

/** The classes of a cell: what it is, where its value comes from, what is told of it. */
export function cellClasses(cell: CellView | undefined, column: ColumnView, marks: CellMarks): string[] {
  const { found, colour, note = '', isMatch = false, isCut = false } = marks;
  const classes = [`role-${column.role}`];
  if (isFigure(column)) classes.push('figure');
  if (cell !== undefined) {
    classes.push(`origin-${cell.origin}`);
    if (isErrorCell(cell)) classes.push('is-error');
  }
  if (found !== undefined) classes.push('found', `found-${found.level}`);
  if (colour !== undefined) classes.push('has-colour', `tone-${colour.tone}`);
  if (note !== '') classes.push('has-note');
  if (isMatch) classes.push('is-match');
  if (isCut) classes.push('is-cut');
  return classes;
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
  const said = [found?.says ?? '', colour?.name ?? '', note === '' ? '' : `Note: ${note}`].filter(
    (part) => part !== '',
  );
  const words = [origin, ...said].filter((part) => part !== '').join('. ');
  if (words === '') cell.removeAttribute('aria-description');
  else cell.setAttribute('aria-description', words);
  if (cell.getAttribute('role') === 'gridcell') cell.setAttribute('aria-readonly', String(column.role === 'made'));
  cell.title = said.join('\n');
}
