// Beds out of sight come into it while a bar is held near the upper or lower edge of what the calendar stands in.

import { edgeSpeed } from '../../drawing/edge-speed.ts';

/** So near an edge, in pixels: a pointer can't leave a window that fills the screen. */
const EDGE = 28;

/**
 * What the pointer's height is to be told to while it carries something. `moved` is called after each step, for what lies under the
 * pointer is another then; it ends with the signal.
 */
export function scrollAlong(svg: SVGElement, moved: () => void, signal: AbortSignal): (y: number) => void {
  const view = scrollerOf(svg);
  let y = 0;
  let frame: number | undefined;
  const step = (): void => {
    frame = undefined;
    const { from, to } = inSight(view);
    const before = view.scrollTop;
    view.scrollTop += edgeSpeed(y, from + EDGE, to - EDGE);
    if (view.scrollTop === before) return;
    moved();
    frame = requestAnimationFrame(step);
  };
  signal.addEventListener('abort', () => {
    if (frame !== undefined) cancelAnimationFrame(frame);
  });
  return (at) => {
    y = at;
    frame ??= requestAnimationFrame(step);
  };
}

function scrollerOf(svg: SVGElement): Element {
  for (let at = svg.parentElement; at !== null; at = at.parentElement) {
    const scrolls = /auto|scroll/.test(getComputedStyle(at).overflowY);
    if (scrolls && at.scrollHeight > at.clientHeight) return at;
  }
  return document.documentElement;
}

/** From where to where it is seen: what follows from the move lies over its foot. */
function inSight(view: Element): { readonly from: number; readonly to: number } {
  const { top, bottom } = view.getBoundingClientRect();
  const over = view.querySelector('.follows')?.getBoundingClientRect().top ?? bottom;
  return { from: Math.max(0, top), to: Math.min(innerHeight, bottom, over) };
}
