// What stays in sight at the left sticks there when a sheet is scrolled sideways, for which the browser makes a layer of every row's. While
// the sheet is scrolled up or down, rows come and go with every frame, and their layers would cost more than their cells: as
// long as that lasts they are part of the sheet like the rest, which looks the same. sheet-grid.ts asks for it once a sheet.

import { followScrolls } from './scrolls.ts';

/** Gives back the way to stop. */
export function keepFrontStill(host: HTMLElement): () => void {
  let top = 0;
  const stand = (isStill: boolean): void => {
    host.classList.toggle('front-is-still', isStill);
  };
  const scrolled = ({ classList, scrollLeft, scrollTop }: HTMLElement): void => {
    if (!classList.contains('ag-grid-viewport')) return;
    stand(scrollLeft === 0 && scrollTop !== top);
    top = scrollTop;
  };
  return followScrolls(host, scrolled, () => stand(false));
}
