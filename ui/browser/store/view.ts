// What the middle of the page shows: a sheet, the season at a glance, a picture, pages for paper, scratch paper, or the first questions. The
// first workbook of a visit opens on the glance; going to a sheet, a row or a cell by whatever way shows the sheet.

import { effect, signal } from '@preact/signals';
import { arrival } from './selection.ts';

export type View =
  | { readonly at: 'sheet' }
  | { readonly at: 'glance' }
  /** A picture by its name; '' for the first there is. */
  | { readonly at: 'pictures'; readonly picture: string }
  /** Pages for paper by their name; '' for the first there are. */
  | { readonly at: 'paper'; readonly pages: string }
  /** Scratch papers, whatever the workbook is made of. */
  | { readonly at: 'scratch' }
  | { readonly at: 'first visit' };

/** What a visit opens on, as long as nothing is asked for. */
export const OPENING: View = { at: 'glance' };

export const view = signal<View>(OPENING);

let arrived = arrival.peek();

effect(() => {
  const arriving = arrival.value;
  if (arriving !== arrived) view.value = { at: 'sheet' };
  arrived = arriving;
});
