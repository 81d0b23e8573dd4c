// What the middle of the page shows: a sheet, the season at a glance, a picture, pages for paper, or the first questions. A
// workbook opens on the glance; going to a sheet, a row or a cell by whatever way shows the sheet.

import { effect, signal } from '@preact/signals';
import { arrival } from './selection.ts';
import { openings } from './workbook.ts';

export type View =
  | { readonly at: 'sheet' }
  | { readonly at: 'glance' }
  /** A picture by its name; '' for the first there is. */
  | { readonly at: 'pictures'; readonly picture: string }
  /** Pages for paper by their name; '' for the first there are. */
  | { readonly at: 'paper'; readonly pages: string }
  | { readonly at: 'first visit' };

export const view = signal<View>({ at: 'glance' });

let opened = openings.peek();
let arrived = arrival.peek();

effect(() => {
  const [opening, arriving] = [openings.value, arrival.value];
  if (opening !== opened) view.value = { at: 'glance' };
  else if (arriving !== arrived) view.value = { at: 'sheet' };
  opened = opening;
  arrived = arriving;
});
