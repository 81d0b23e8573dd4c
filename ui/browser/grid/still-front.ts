// What stays in sight at the left sticks there when a sheet is scrolled sideways, for which the browser makes a layer of every row's. While
// the sheet is scrolled up or down, rows come and go with every frame, and their layers would cost more than their cells: as
// long as that lasts they are part of the sheet like the rest, which looks the same. sheet-grid.ts makes one a sheet.

/** Milliseconds after the last scroll. */
const REST = 200;

export class StillFront {
  private readonly host: HTMLElement;
  private top = 0;
  private timer: number | undefined;

  constructor(host: HTMLElement) {
    this.host = host;
    host.addEventListener('scroll', this.scrolled, { capture: true, passive: true });
  }

  destroy(): void {
    this.host.removeEventListener('scroll', this.scrolled, { capture: true });
    window.clearTimeout(this.timer);
  }

  private readonly scrolled = ({ target }: Event): void => {
    if (!(target instanceof HTMLElement) || !target.classList.contains('ag-grid-viewport')) return;
    const { scrollLeft, scrollTop } = target;
    const isStill = scrollLeft === 0 && scrollTop !== this.top;
    this.top = scrollTop;
    this.let(isStill);
    window.clearTimeout(this.timer);
    if (isStill) this.timer = window.setTimeout(() => this.let(false), REST);
  };

  /** Lets the front stand still, or stick again. */
  private let(isStill: boolean): void {
    this.host.classList.toggle('front-is-still', isStill);
  }
}
