// A column's header: its name, its unit small beside it, marks where the sheet is sorted or filtered by it, and a button for the
// menu of the column, which Enter and the right button open too. A press selects the column. The grid makes one for each.

import type { IHeaderComp, IHeaderParams } from 'ag-grid-community';
import type { ColumnView, View } from '../../../engine/index.ts';
import { isFigure } from '../store/sheets.ts';
import type { RowHandle } from './row-handle.ts';

export interface HeaderProps {
  readonly shows: ColumnView;
  readonly view: View;
}

export class HeaderFace implements IHeaderComp {
  private readonly face = document.createElement('div');

  init(params: IHeaderParams<RowHandle> & HeaderProps): void {
    this.draw(params);
  }

  getGui(): HTMLElement {
    return this.face;
  }

  refresh(params: IHeaderParams<RowHandle> & HeaderProps): boolean {
    this.draw(params);
    return true;
  }

  destroy(): void {
    this.face.remove();
  }

  private draw({ shows, view }: IHeaderParams<RowHandle> & HeaderProps): void {
    const { id, name, unit, note, role, diagnostic, formula } = shows;
    this.face.className = `column-head role-${role}${isFigure(shows) ? ' figure' : ''}`;
    const title = part('column-name', name);
    title.dir = 'auto';
    const sorted = sortMark(id, view);
    const filtered = (view.filters ?? []).some((filter) => filter.by === 'cell' && filter.column === id);
    const marks = [
      sorted === undefined ? undefined : part('column-sort', sorted.sign, sorted.words),
      filtered ? filterMark() : undefined,
    ].filter((mark) => mark !== undefined);
    const menu = part('column-menu', '\u22ee');
    menu.setAttribute('aria-hidden', 'true');
    // Apart by blanks, so that a line may end between any two of them.
    const parts = [title, ...marks, part('column-unit', unit)].flatMap((each) => [each, ' ']);
    this.face.replaceChildren(...parts, menu);
    const about = [note, formula === '' ? '' : `= ${formula}`, diagnostic?.why ?? ''].filter((line) => line !== '');
    this.face.title = [name, ...about].join('\n');
    this.face.classList.toggle('is-error', diagnostic !== undefined);
  }
}

function part(className: string, text: string, words = ''): HTMLElement {
  const element = document.createElement('span');
  element.className = className;
  element.textContent = text;
  if (words === '') return element;
  element.title = words;
  element.setAttribute('role', 'img');
  element.setAttribute('aria-label', words);
  return element;
}

/** A funnel, drawn: not every font has one. */
function filterMark(): HTMLElement {
  const mark = part('column-filter', '', 'filtered');
  const drawing = document.createElementNS(SVG, 'svg');
  drawing.setAttribute('viewBox', '0 0 10 10');
  const path = document.createElementNS(SVG, 'path');
  path.setAttribute('d', 'M0 1H10L6 5.5V10L4 8.5V5.5Z');
  drawing.append(path);
  mark.append(drawing);
  return mark;
}

const SVG = 'http://www.w3.org/2000/svg';

interface SortMark {
  readonly sign: string;
  readonly words: string;
}

/** An arrow, and which key it is where there are several. */
function sortMark(column: string, { sort = [] }: View): SortMark | undefined {
  const at = sort.findIndex((key) => key.column === column);
  const key = sort[at];
  if (key === undefined) return undefined;
  const down = key.descending === true;
  const place = sort.length > 1 ? String(at + 1) : '';
  return {
    sign: `${down ? '\u2193' : '\u2191'}${place}`,
    words: `sorted ${down ? 'greatest first' : 'least first'}${place === '' ? '' : `, key ${place}`}`,
  };
}
