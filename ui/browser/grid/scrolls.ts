// Hears of every scroll of a sheet, and of when scrolling has come to rest. Called by scroll-rest.ts and still-front.ts.

/** Milliseconds after the last scroll: by then the grid listens to all its scroll bars again. */
const REST = 200;

/** `scrolled` hears what was scrolled, `rested` that nothing was for a while; gives back the way to stop. */
export function followScrolls(
  host: HTMLElement,
  scrolled: (target: HTMLElement) => void,
  rested: () => void,
): () => void {
  let timer: number | undefined;
  const hear = ({ target }: Event): void => {
    window.clearTimeout(timer);
    timer = window.setTimeout(rested, REST);
    if (target instanceof HTMLElement) scrolled(target);
  };
  host.addEventListener('scroll', hear, { capture: true, passive: true });
  return () => {
    host.removeEventListener('scroll', hear, { capture: true });
    window.clearTimeout(timer);
  };
}
