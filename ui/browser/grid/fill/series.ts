// How a few cells go on when they are filled further: dates by day, week, month or the step that two of them show, numbers by
// their step, ranges by the steps of their ends, names that end in numbers by counting on, anything else over and over. Pure; the
// fill handle and its commands call it.

import { civilDay, yearMonthDay } from '../../../../engine/index.ts';

/** A cell to go on from. */
export type Source =
  | { readonly kind: 'blank' }
  | End
  /** Low and high, or low, likely and high, each as a cell of its own would have it. */
  | { readonly kind: 'range'; readonly entry: string; readonly ends: readonly End[] }
  | { readonly kind: 'text'; readonly text: string };

/** A figure or a day, as a range has them at its ends. */
export type End =
  | {
      readonly kind: 'number';
      readonly entry: string;
      /** In the column's unit. */
      readonly own: number;
      /** As it was typed with a unit; `unit` is what follows it: ' cm'. undefined where there is none, or not one number: '2 ft 6 in'. */
      readonly typed: { readonly number: number; readonly unit: string } | undefined;
    }
  | { readonly kind: 'date'; readonly day: number };

/** 'count': by what the cells show; 'copy': the same over and over. */
export type Way = 'count' | 'copy' | 'day' | 'week' | 'month';

/** What comes next: a number to be written with its unit, a day, a range of them, a text; undefined for a blank. */
export type Filled =
  | { readonly number: number; readonly unit: string }
  | { readonly day: number }
  | { readonly ends: readonly Filled[] }
  | { readonly text: string }
  | undefined;

/** The value that stands `step` cells past the last source, from 0; the sources in the direction of the filling. */
export type Series = (step: number) => Filled;

/** The ways that make sense for these cells, the usual one first. */
export function waysFor(sources: readonly Source[]): readonly Way[] {
  const filled = sources.filter(({ kind }) => kind !== 'blank');
  const [first] = filled;
  if (first === undefined) return ['copy'];
  if (filled.every(({ kind }) => kind === 'date')) {
    return filled.length === 1 ? ['day', 'week', 'month', 'copy'] : ['count', 'copy'];
  }
  // One number says of no step: it is copied unless a person asks to count on.
  if (filled.every(({ kind }) => kind === 'number')) return filled.length === 1 ? ['copy', 'count'] : ['count', 'copy'];
  // One range says of none either; several that show a step go on by it at each end.
  if (filled.some(({ kind }) => kind === 'range')) {
    return rangeSeries(sources, 1) === undefined ? ['copy'] : ['count', 'copy'];
  }
  const counts = filled.some((source) => source.kind === 'text' && numberedName(source.text) !== undefined);
  return counts ? ['count', 'copy'] : ['copy'];
}

/** How the cells go on. `forward` is false upwards and to the left: a single date then counts back. */
export function seriesOf(sources: readonly Source[], way: Way, forward: boolean): Series {
  const repeated: Series = (step) => filledBy(sources[step % sources.length]);
  const direction = forward ? 1 : -1;
  const days = sources.flatMap((source) => (source.kind === 'date' ? [source.day] : []));
  if (days.length === sources.length && days.length > 0) return dateSeries(days, way, direction) ?? repeated;
  if (way === 'copy') return repeated;
  const numbers = sources.flatMap((source) => (source.kind === 'number' ? [source] : []));
  if (numbers.length === sources.length && numbers.length > 0) return numberSeries(numbers, direction) ?? repeated;
  if (sources.some(({ kind }) => kind === 'range')) return rangeSeries(sources, direction) ?? repeated;
  return nameSeries(sources, direction);
}

function filledBy(source: Source | undefined): Filled {
  switch (source?.kind) {
    case 'number':
    case 'range':
      return { text: source.entry };
    case 'date':
      return { day: source.day };
    case 'text':
      return { text: source.text };
    default:
      return undefined;
  }
}

/** The step between neighbours where it is the same all along. */
function evenStep(values: readonly number[]): number | undefined {
  const [first = 0, second = 0] = values;
  const step = second - first;
  const even = values.every(
    (value, at) => Math.abs(value - (first + at * step)) <= 1e-9 * Math.max(1, Math.abs(value)),
  );
  return values.length > 1 && even ? step : undefined;
}

function dateSeries(days: readonly number[], way: Way, direction: number): Series | undefined {
  const [first = 0] = days;
  const last = days.at(-1) ?? 0;
  if (days.length === 1) {
    if (way === 'copy') return undefined;
    if (way === 'month') return (step) => ({ day: monthsLater(first, direction * (step + 1)) });
    const each = (way === 'week' ? 7 : 1) * direction;
    return (step) => ({ day: last + each * (step + 1) });
  }
  if (way === 'copy') return undefined;
  const months = evenMonths(days);
  if (months !== undefined) return (step) => ({ day: monthsLater(first, months * (days.length + step)) });
  const each = evenStep(days);
  return each === undefined ? undefined : (step) => ({ day: last + each * (step + 1) });
}

/** The same day of months a whole number apart: 15 Jan, 15 Feb; 31 Jan, 28 Feb, 31 Mar. */
function evenMonths(days: readonly number[]): number | undefined {
  const [first = 0, second = 0] = days;
  const [a, b] = [yearMonthDay(first), yearMonthDay(second)];
  const step = (b.year - a.year) * 12 + b.month - a.month;
  if (step === 0) return undefined;
  return days.every((day, at) => monthsLater(first, at * step) === day) ? step : undefined;
}

/** The same day of the month so many months on; the month's last day where it has none so late. */
function monthsLater(civil: number, months: number): number {
  const { year, month, day } = yearMonthDay(civil);
  const lastDay = civilDay(year, month + months + 1, 1) - 1;
  return Math.min(civilDay(year, month + months, day), lastDay);
}

type NumberSource = Extract<Source, { readonly kind: 'number' }>;

/** In the unit that all of them were typed in; in the column's own where they differ, or where one is no single number. */
function numberSeries(numbers: readonly NumberSource[], direction: number): Series | undefined {
  const unit = numbers[0]?.typed?.unit;
  const asTyped = unit !== undefined && numbers.every(({ typed }) => typed?.unit === unit);
  const values = numbers.map(({ typed, own }) => (asTyped ? (typed?.number ?? own) : own));
  const last = values.at(-1);
  const step = values.length === 1 ? direction : evenStep(values);
  if (last === undefined || step === undefined) return undefined;
  return (at) => ({ number: withoutDust(last + step * (at + 1)), unit: asTyped ? unit : '' });
}

/** No filling goes on for so many cells. */
const FAR = 100_000;

/** Two ranges and more, all of as many ends, each of which goes on by its own step; undefined where they would come to cross. */
function rangeSeries(sources: readonly Source[], direction: number): Series | undefined {
  const ranges = sources.flatMap((source) => (source.kind === 'range' ? [source.ends] : []));
  const count = ranges[0]?.length ?? 0;
  if (ranges.length < 2 || ranges.length < sources.length || ranges.some(({ length }) => length !== count))
    return undefined;
  const series = Array.from({ length: count }, (_, end) =>
    endSeries(
      ranges.flatMap((ends) => ends[end] ?? []),
      direction,
    ),
  );
  const known = series.filter((one) => one !== undefined);
  const last = known.map((one) => sizeOf(one(FAR)));
  const cross = last.some((size, end) => size < (last[end - 1] ?? size));
  return known.length < count || cross ? undefined : (step) => ({ ends: known.map((one) => one(step)) });
}

function sizeOf(value: Filled): number {
  if (value === undefined) return 0;
  if ('day' in value) return value.day;
  return 'number' in value ? value.number : 0;
}

function endSeries(ends: readonly End[], direction: number): Series | undefined {
  const days = ends.flatMap((end) => (end.kind === 'date' ? [end.day] : []));
  if (days.length > 0) return dateSeries(days, 'count', direction);
  return numberSeries(
    ends.flatMap((end) => (end.kind === 'number' ? [end] : [])),
    direction,
  );
}

/** 0.1 and 0.2 go on with 0.3. */
function withoutDust(n: number): number {
  return Number(n.toPrecision(12));
}

interface NumberedName {
  readonly stem: string;
  readonly number: number;
  /** Figures that the number is written with at least: 2 of 'Row 07'. */
  readonly width: number;
}

function numberedName(text: string): NumberedName | undefined {
  const match = /^(.*?)(\d{1,9})$/.exec(text);
  if (match === null) return undefined;
  const [, stem = '', digits = ''] = match;
  return { stem, number: Number(digits), width: digits.startsWith('0') ? digits.length : 1 };
}

/** Names of one stem by their step, others each by one more for every time round; what has no number is repeated. */
function nameSeries(sources: readonly Source[], direction: number): Series {
  const names = sources.map((source) => (source.kind === 'text' ? numberedName(source.text) : undefined));
  const [first] = names;
  const oneStem = first !== undefined && names.every((name) => name?.stem === first.stem);
  const step = oneStem && names.length > 1 ? evenStep(names.map((name) => name?.number ?? 0)) : undefined;
  const last = names.at(-1);
  if (oneStem && last !== undefined && (step !== undefined || names.length === 1)) {
    const each = step ?? direction;
    return (at) => named(last, last.number + each * (at + 1));
  }
  return (at) => {
    const place = at % sources.length;
    const name = names[place];
    if (name === undefined) return filledBy(sources[place]);
    return named(name, name.number + direction * (Math.floor(at / sources.length) + 1));
  };
}

function named({ stem, width }: NumberedName, number: number): Filled {
  return { text: `${stem}${String(Math.max(0, number)).padStart(width, '0')}` };
}
