// In a window so low that the page scrolls, the rows are brought into sight when a person walks in them by keys or goes to one of
// them: the grid keeps the page where it is when it moves the focus. Pressed by hand nothing moves away under the pointer.

import { low } from '../store/screen.ts';

/** Brings the rows into sight where the page scrolls. */
export function bringIntoSight(host: HTMLElement | null): void {
  if (low.peek()) host?.scrollIntoView({ block: 'nearest' });
}
