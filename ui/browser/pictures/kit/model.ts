// What pictures are as data: columns through the year with what limits them, and lines with bands, rules and points. The models of
// the pictures make them, the kit draws them and reads them out; no page is needed to make or to test one.

import { decimalText, type Writing } from '../../../../engine/index.ts';
import type { Mark } from '../../drawing/chart.tsx';
import type { Reading } from '../../drawing/reader.tsx';
import { roundMarks, roundStep, roundTop } from '../../drawing/scale.ts';
import { withUnit } from '../../store/shown.ts';

export interface PictureTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

interface Common {
  readonly title: string;
  /** What the picture shows, in a sentence or two. */
  readonly says: string;
  readonly readings: readonly Reading[];
  readonly table: PictureTable;
  /** The day that has a rule of its own; undefined where the picture has no days. */
  readonly today: number | undefined;
}

/** Something that is stacked in each column; `mark` is the class that fills it. */
export interface Part {
  readonly name: string;
  readonly mark: string;
}

export interface Column {
  readonly from: number;
  readonly until: number;
  /** In the order of the picture's parts. */
  readonly parts: readonly number[];
  /** The room there is, the hands, what is wanted; undefined where not known. */
  readonly limit: number | undefined;
}

export interface ColumnsModel extends Common {
  readonly kind: 'columns';
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  readonly parts: readonly Part[];
  /** What the limit is called; undefined where the picture has none. */
  readonly limitName: string | undefined;
  /** Whether more than the limit is too much, or the limit is what is wished for. */
  readonly limitIs: 'room' | 'wish';
  readonly columns: readonly Column[];
  /** How the figures along its axes are written. */
  readonly writing: Writing | undefined;
}

export interface Line {
  readonly name: string;
  readonly mark: string;
  /** One of several that stand under one name in the legend. */
  readonly quiet?: boolean;
  readonly points: readonly { readonly x: number; readonly y: number }[];
}

export interface Band {
  readonly name: string;
  readonly mark: string;
  readonly points: readonly { readonly x: number; readonly low: number; readonly high: number }[];
}

export interface Dot {
  readonly name: string;
  readonly x: number;
  readonly y: number;
}

export interface Axis {
  /** With its unit. */
  readonly label: string;
  readonly from: number;
  readonly to: number;
  readonly marks: readonly Mark[];
}

export interface LinesModel extends Common {
  readonly kind: 'lines';
  readonly x: Axis;
  readonly y: Axis;
  readonly bands: readonly Band[];
  readonly lines: readonly Line[];
  readonly dots: readonly Dot[];
  /** What the dots are, for the legend; left out where each says so itself. */
  readonly dotsAre?: string;
}

/** Round marks from one figure to another, as texts. */
export function figureMarks(from: number, to: number, count: number, writing?: Writing): readonly Mark[] {
  return roundMarks(from, to, count).map((figure) => ({ figure, text: decimalText(figure, 0, 6, writing) }));
}

/** An axis that holds all figures and 0 and has a mark at either end. */
export function roundAxis(
  figures: readonly number[],
  count: number,
  writing?: Writing,
): Pick<Axis, 'from' | 'to' | 'marks'> {
  const [least, most] = [Math.min(0, ...figures), Math.max(0, ...figures)];
  const step = roundStep(Math.max(1e-9, most - least) / count);
  const from = Math.floor(least / step + 1e-9) * step;
  const to = Math.max(Math.ceil(most / step - 1e-9) * step, from + step);
  return { from, to, marks: figureMarks(from, to, Math.round((to - from) / step), writing) };
}

export function totalOf({ parts }: Column): number {
  return parts.reduce((sum, part) => sum + part, 0);
}

/** The upper end of the axis: all columns and limits below it, a limit that towers over all columns aside. */
export function topOf({ columns }: Pick<ColumnsModel, 'columns'>): number {
  const most = Math.max(0, ...columns.map(totalOf));
  const limits = columns.flatMap(({ limit }) => limit ?? []).filter((limit) => most === 0 || limit <= most * 3);
  return roundTop([most, ...limits]);
}

/** Columns that go past their limit. */
export function overLimit({ columns }: Pick<ColumnsModel, 'columns'>): readonly Column[] {
  return columns.filter((column) => column.limit !== undefined && totalOf(column) > column.limit * (1 + 1e-9));
}

/** What is drawn and what it means: a limit above the picture has no line, and so no place among the marks. */
export function legendOf(
  model: Pick<ColumnsModel, 'columns' | 'parts' | 'limitName' | 'limitIs'>,
): readonly { readonly mark: string; readonly words: string }[] {
  const { columns, parts, limitName, limitIs } = model;
  const legend = parts.length > 1 ? parts.map(({ name, mark }) => ({ mark, words: name })) : [];
  const top = topOf(model);
  if (limitName === undefined || !columns.some(({ limit }) => limit !== undefined && limit <= top)) return legend;
  legend.push({ mark: 'mark-limit', words: limitName });
  if (limitIs === 'room' && overLimit(model).length > 0) legend.push({ mark: 'mark-over', words: 'more than that' });
  return legend;
}

/** Decimals that three figures take; 0 for 0. */
export function decimalsOf(figure: number): number {
  return figure === 0 ? 0 : Math.max(0, Math.min(6, 2 - Math.floor(Math.log10(Math.abs(figure)))));
}

/** A figure as pictures say it: three figures at most, none of them idle, and no more decimals than its sheet shows. */
export function said(figure: number, most = 6, writing?: Writing): string {
  return decimalText(figure, 0, Math.min(decimalsOf(figure), most), writing);
}

export function withSaidUnit(figure: number, unit: string, most?: number, writing?: Writing): string {
  return withUnit(said(figure, most, writing), unit);
}
