// Sees to it that the rows that are drawn are those in sight once scrolling rests. The grid keeps a scroll bar of its own in step
// with what scrolls; where the page was busy it takes the echo of that bar for a person's hand, and leaves what the person scrolls
// in the same moment unheeded: the rows would stay blank until the next scroll. sheet-grid.ts asks for it once a sheet.

import type { GridApi } from 'ag-grid-community';
import type { RowHandle } from './row-handle.ts';
import { followScrolls } from './scrolls.ts';

/** Gives back the way to stop. */
export function drawWhatIsInSight(host: HTMLElement, api: GridApi<RowHandle>): () => void {
  const look = (): void => {
    const viewport = host.querySelector<HTMLElement>('.ag-grid-viewport');
    const heads = host.querySelector('.ag-header')?.clientHeight ?? 0;
    if (viewport === null || isDrawn(api, viewport.scrollTop, viewport.clientHeight - heads)) return;
    viewport.dispatchEvent(new Event('scroll'));
  };
  return followScrolls(host, () => undefined, look);
}

/** Whether the rows that are drawn reach from the upper edge of what is in sight to its lower one, as far as there are rows. */
function isDrawn(api: GridApi<RowHandle>, scrollTop: number, height: number): boolean {
  const [first, last] = [api.getFirstDisplayedRowIndex(), api.getLastDisplayedRowIndex()];
  const top = api.getDisplayedRowAtIndex(first)?.rowTop ?? 0;
  const lowest = api.getDisplayedRowAtIndex(last);
  const bottom = (lowest?.rowTop ?? 0) + (lowest?.rowHeight ?? 0);
  const isLast = last >= api.getDisplayedRowCount() - 1;
  return top <= scrollTop && (isLast || bottom >= scrollTop + height);
}
