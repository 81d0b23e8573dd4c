// How the crop library is written: a figure is text as a grower types it, with where it comes from. The family files
// call these; library.ts turns the crops into rows of the Crops sheet.

import type { FigureColumn } from './columns.ts';
import { asFor, MEMORY, PRACTICE, type Source } from './source.ts';

/** A figure that varies: what the sheet starts with stands between the lowest and the highest. */
export interface Range {
  readonly low: string;
  readonly text: string;
  readonly high: string;
}

/** A figure as typed, or one with its range. */
export type Reading = string | Range;

export interface Figure {
  readonly text: string;
  readonly range: Range | undefined;
  readonly source: Source;
}

export type Figures = Partial<Readonly<Record<FigureColumn, Figure>>>;

/** Figures of one source, by column. */
export type Readings = Partial<Readonly<Record<FigureColumn, Reading>>>;

export interface Crop {
  /** Never changes: workbooks hold what a grower changed of this crop under it. */
  readonly id: string;
  readonly name: string;
  readonly figures: Figures;
  /** Where sources disagree or stop short, a sentence each. */
  readonly doubts: readonly string[];
}

export function crop(id: string, name: string, figures: Figures, ...doubts: readonly string[]): Crop {
  return { id, name, figures, doubts };
}

export function range(low: string, text: string, high: string): Range {
  return { low, text, high };
}

function figure(reading: Reading, source: Source): Figure {
  return typeof reading === 'string'
    ? { text: reading, range: undefined, source }
    : { text: reading.text, range: reading, source };
}

/** Figures read in `source`, or with a range chosen inside the one read there. */
export function given(source: Source, readings: Readings): Figures {
  return Object.fromEntries(Object.entries(readings).map(([column, reading]) => [column, figure(reading, source)]));
}

/** Recalled figures, to be checked before much hangs on them. */
export function recalled(readings: Readings): Figures {
  return given(MEMORY, readings);
}

/** What growers commonly do or say, without a source. */
export function usual(readings: Readings): Figures {
  return given(PRACTICE, readings);
}

/** Figures of a related crop, recalled for this one. */
export function like(crop: string, readings: Readings): Figures {
  return given(asFor(crop), readings);
}
