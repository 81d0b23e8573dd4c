// The frame of a picture of the farm: its title with units, the sentence that says what it shows, the drawing in the screen's own
// pixels, what its marks mean in words, and the same figures as a table. Every picture stands in it.

import type { ComponentChildren } from 'preact';
import { TableOf, type TableTwin } from '../../drawing/chart.tsx';
import { usePrinting } from '../../drawing/printing.ts';
import { useWidth } from '../../drawing/width.ts';
import { type PaperSize, UPRIGHT } from './paper-size.ts';
import './pictures.css';

export interface FrameProps {
  readonly title: string;
  /** What the picture shows, in a sentence or two. */
  readonly says: string;
  readonly table: TableTwin;
  /** Marks and what they mean. */
  readonly legend?: readonly LegendItem[];
  /** What stands between the sentence and the drawing: what can be chosen. */
  readonly choices?: ComponentChildren;
  /** What stands below the drawing: what is in hand. */
  readonly below?: ComponentChildren;
  /** Draws in so many pixels' width. */
  readonly draw: (width: number) => ComponentChildren;
  /** Draws for paper, a drawing a page, where one may be taller than a page. */
  readonly drawOnPaper?: (size: PaperSize) => readonly ComponentChildren[];
}

export interface LegendItem {
  /** The class of the mark, styled by pictures.css. */
  readonly mark: string;
  readonly words: string;
}

export function Frame({ title, says, table, legend = [], choices, below, draw, drawOnPaper }: FrameProps) {
  const printing = usePrinting();
  const { ref, width } = useWidth<HTMLDivElement>();
  return (
    <figure class="farm-picture chart">
      <figcaption>{title}</figcaption>
      <p class="chart-says">{says}</p>
      {choices}
      <div class={printing ? 'chart-picture no-paper' : 'chart-picture'} ref={ref}>
        {width > 0 ? draw(width) : null}
      </div>
      {printing ? <Drawings drawings={drawOnPaper?.(UPRIGHT) ?? [draw(UPRIGHT.width)]} /> : null}
      <Legend legend={legend} />
      {below}
      <TableOf title={title} table={table} />
    </figure>
  );
}

/** Drawings one after another as they stand on paper, none broken by the end of a page. */
function Drawings({ drawings }: { readonly drawings: readonly ComponentChildren[] }) {
  return (
    <>
      {drawings.map((drawing, index) => (
        <div key={index} class="chart-picture one-drawing">
          {drawing}
        </div>
      ))}
    </>
  );
}

export function Legend({ legend }: { readonly legend: readonly LegendItem[] }) {
  if (legend.length === 0) return null;
  return (
    <ul class="picture-legend">
      {legend.map(({ mark, words }) => (
        <li key={words}>
          <svg width="22" height="12" aria-hidden="true">
            <rect class={mark} x="1" y="1" width="20" height="10" />
          </svg>
          {words}
        </li>
      ))}
    </ul>
  );
}

/** The patterns that pictures fill with, so that colour never says anything alone. One per drawing, told apart by `id`. */
export function Hatches({ id }: { readonly id: string }) {
  return (
    <defs>
      <pattern id={`${id}-over`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width="6" height="6" class="hatch-ground" />
        <rect width="2" height="6" class="hatch-line" />
      </pattern>
      <pattern id={`${id}-cover`} width="5" height="5" patternUnits="userSpaceOnUse">
        <circle cx="1.5" cy="1.5" r="1" class="hatch-dot" />
      </pattern>
      <linearGradient id={`${id}-soft`} x1="0" x2="1" y1="0" y2="0">
        <stop offset="0" class="soft-from" />
        <stop offset="1" class="soft-until" />
      </linearGradient>
    </defs>
  );
}

/** Things a page after the other, so many on each. */
export function inParts<T>(all: readonly T[], each: number): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(all.length / each) }, (_, at) => all.slice(at * each, (at + 1) * each));
}
