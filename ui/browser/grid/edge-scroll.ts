// Scrolls the grid while something is dragged past its edge, faster the further it is, and tells the drag where it is then.

import { edgeSpeed } from '../drawing/edge-speed.ts';

export class EdgeScroll {
  private readonly host: HTMLElement;
  private readonly moved: (x: number, y: number) => void;
  private frame: number | undefined;
  private x = 0;
  private y = 0;

  constructor(host: HTMLElement, moved: (x: number, y: number) => void) {
    this.host = host;
    this.moved = moved;
  }

  /** The pointer is here now; scrolling goes on for as long as that is past an edge. */
  follow(x: number, y: number): void {
    this.x = x;
    this.y = y;
    const { across, down } = this.speed();
    if (across === 0 && down === 0) this.stop();
    else this.frame ??= requestAnimationFrame(() => this.step());
  }

  stop(): void {
    if (this.frame !== undefined) cancelAnimationFrame(this.frame);
    this.frame = undefined;
  }

  /** The nearest point within the rows and columns that scroll. */
  within(x: number, y: number): { readonly x: number; readonly y: number } {
    const { left, right, top, bottom } = this.area();
    return { x: clamp(x, left + 2, right - 2), y: clamp(y, top + 2, bottom - 2) };
  }

  private step(): void {
    this.frame = undefined;
    const view = this.viewport();
    const { across, down } = this.speed();
    if (view === null || (across === 0 && down === 0)) return;
    const before = [view.scrollLeft, view.scrollTop];
    view.scrollLeft += across;
    view.scrollTop += down;
    this.moved(this.x, this.y);
    if (view.scrollLeft !== before[0] || view.scrollTop !== before[1]) {
      this.frame = requestAnimationFrame(() => this.step());
    }
  }

  private speed(): { readonly across: number; readonly down: number } {
    const { left, right, top, bottom } = this.area();
    return { across: edgeSpeed(this.x, left, right), down: edgeSpeed(this.y, top, bottom) };
  }

  private viewport(): HTMLElement | null {
    return this.host.querySelector<HTMLElement>('.ag-grid-viewport');
  }

  /** Where rows scroll: below the headers, beside the scrollbars, or short of them where they lie over the rows. */
  private area(): { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number } {
    const view = this.viewport();
    const box = (view ?? this.host).getBoundingClientRect();
    const header = this.host.querySelector('.ag-header')?.getBoundingClientRect();
    const inner = view ?? this.host;
    const [across, down] = [this.scrollbar('horizontal'), this.scrollbar('vertical')];
    return {
      left: box.left,
      right: Math.min(box.left + inner.clientWidth, down?.left ?? Number.POSITIVE_INFINITY),
      top: Math.max(box.top, header?.bottom ?? box.top),
      bottom: Math.min(box.top + inner.clientHeight, across?.top ?? Number.POSITIVE_INFINITY),
    };
  }

  /** Where the grid's own scrollbar stands; undefined where it has none. */
  private scrollbar(way: 'horizontal' | 'vertical'): DOMRect | undefined {
    const box = this.host.querySelector(`.ag-body-${way}-scroll`)?.getBoundingClientRect();
    return box === undefined || box.width === 0 || box.height === 0 ? undefined : box;
  }
}

function clamp(value: number, least: number, most: number): number {
  return Math.max(least, Math.min(value, most));
}
