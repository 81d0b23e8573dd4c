// Sees to it that the rows that are drawn are those in sight once scrolling rests. The grid keeps a scroll bar of its own in step
// with what scrolls; where the page was busy it takes the echo of that bar for a person's hand, and leaves what the person scrolls
// in the same moment unheeded: the rows would stay blank until the next scroll. sheet-grid.ts makes one a sheet.

import type { GridApi } from 'ag-grid-community';
import type { RowHandle } from './row-handle.ts';

/** Milliseconds after the last scroll: by then the grid listens to all its scroll bars again. */
const REST = 200;

export class ScrollRest {
  private readonly host: HTMLElement;
  private readonly api: GridApi<RowHandle>;
  private timer: number | undefined;

  constructor(host: HTMLElement, api: GridApi<RowHandle>) {
    this.host = host;
    this.api = api;
    host.addEventListener('scroll', this.scrolled, { capture: true, passive: true });
  }

  destroy(): void {
    this.host.removeEventListener('scroll', this.scrolled, { capture: true });
    window.clearTimeout(this.timer);
  }

  private readonly scrolled = (): void => {
    window.clearTimeout(this.timer);
    this.timer = window.setTimeout(() => this.look(), REST);
  };

  private look(): void {
    const viewport = this.host.querySelector<HTMLElement>('.ag-grid-viewport');
    const heads = this.host.querySelector('.ag-header')?.clientHeight ?? 0;
    if (viewport === null || this.isDrawn(viewport.scrollTop, viewport.clientHeight - heads)) return;
    viewport.dispatchEvent(new Event('scroll'));
  }

  /** Whether the rows that are drawn reach from the upper edge of what is in sight to its lower one, as far as there are rows. */
  private isDrawn(scrollTop: number, height: number): boolean {
    const [first, last] = [this.api.getFirstDisplayedRowIndex(), this.api.getLastDisplayedRowIndex()];
    const top = this.api.getDisplayedRowAtIndex(first)?.rowTop ?? 0;
    const lowest = this.api.getDisplayedRowAtIndex(last);
    const bottom = (lowest?.rowTop ?? 0) + (lowest?.rowHeight ?? 0);
    const isLast = last >= this.api.getDisplayedRowCount() - 1;
    return top <= scrollTop && (isLast || bottom >= scrollTop + height);
  }
}
