// Rows beyond those in sight: one at each edge, so that a sheet that is moved a little shows no blank there. Where it is scrolled by many rows at
// once they come into sight only with the others, and cost a tenth of each frame: then none is drawn. sheet-grid.ts
// asks for it once a sheet.

import type { GridApi } from 'ag-grid-community';
import type { RowHandle } from './row-handle.ts';
import { followScrolls } from './scrolls.ts';

/** Rows drawn beyond each edge while the sheet stands or moves a little. */
export const BEYOND = 1;

/** Pixels from one scroll to the next that a row beyond the edge is nothing to. */
const FAR = 320;

/** Gives back the way to stop. */
export function drawFewBeyond(host: HTMLElement, api: GridApi<RowHandle>): () => void {
  let top = 0;
  const scrolled = ({ classList, scrollTop }: HTMLElement): void => {
    if (!classList.contains('ag-grid-viewport')) return;
    if (Math.abs(scrollTop - top) >= FAR) api.setGridOption('rowBuffer', 0);
    top = scrollTop;
  };
  return followScrolls(host, scrolled, () => api.setGridOption('rowBuffer', BEYOND));
}
