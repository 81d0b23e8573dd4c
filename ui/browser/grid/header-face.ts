// A column's header: its name, its unit small beside it, and a mark where the sheet is sorted by it. A press selects the
// column; the menu of the column opens with the right button or the menu key. The grid makes one for every column.

import type { IHeaderComp, IHeaderParams } from 'ag-grid-community';
import type { ColumnView } from '../../../engine/index.ts';
import { isFigure } from '../store/sheets.ts';
import type { RowHandle } from './row-handle.ts';

export interface HeaderProps {
  readonly shows: ColumnView;
}

export class HeaderFace implements IHeaderComp {
  private readonly face = document.createElement('div');
  private readonly sorted = document.createElement('span');
  private stop = (): void => undefined;

  init(params: IHeaderParams<RowHandle> & HeaderProps): void {
    this.draw(params);
    const { column } = params;
    const follow = (): void => this.showSort(column.getSort());
    column.addEventListener('sortChanged', follow);
    this.stop = () => column.removeEventListener('sortChanged', follow);
    follow();
  }

  getGui(): HTMLElement {
    return this.face;
  }

  refresh(params: IHeaderParams<RowHandle> & HeaderProps): boolean {
    this.draw(params);
    return true;
  }

  destroy(): void {
    this.stop();
  }

  private draw({ shows }: HeaderProps): void {
    const { name, unit, note, role, diagnostic, formula } = shows;
    this.face.className = `column-head role-${role}${isFigure(shows) ? ' figure' : ''}`;
    const title = document.createElement('span');
    title.className = 'column-name';
    title.textContent = name;
    this.sorted.className = 'column-sort';
    const under = document.createElement('span');
    under.className = 'column-unit';
    under.textContent = unit;
    this.face.replaceChildren(title, this.sorted, under);
    const about = [note, formula === '' ? '' : `= ${formula}`, diagnostic?.why ?? ''].filter((line) => line !== '');
    this.face.title = [name, ...about].join('\n');
    this.face.classList.toggle('is-error', diagnostic !== undefined);
  }

  private showSort(sort: string | null | undefined): void {
    this.sorted.textContent = sort === 'asc' ? '\u2191' : sort === 'desc' ? '\u2193' : '';
    this.sorted.title = sort === 'asc' ? 'least first' : sort === 'desc' ? 'greatest first' : '';
  }
}
