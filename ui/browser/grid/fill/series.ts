// How a few cells go on when they are filled further: dates by day, week, month or the step that two of them show, numbers by
// their step, names that end in numbers by counting on, anything else over and over. Pure; the fill handle and its commands
// call it.

import { civilDay, yearMonthDay } from '../../../../engine/index.ts';

/** A cell to go on from. */
export type Source =
  | { readonly kind: 'blank' }
  /** `unit` is what follows the number where the cell has a unit of its own: ' cm'. */
  | { readonly kind: 'number'; readonly number: number; readonly unit: string }
  | { readonly kind: 'date'; readonly day: number }
  | { readonly kind: 'text'; readonly text: string };

/** 'count': by what the cells show; 'copy': the same over and over. */
export type Way = 'count' | 'copy' | 'day' | 'week' | 'month';

/** What comes next: a number to be written with its unit, a day, a text; undefined for a blank. */
export type Filled =
  | { readonly number: number; readonly unit: string }
  | { readonly day: number }
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
  return nameSeries(sources, direction);
}

function filledBy(source: Source | undefined): Filled {
  switch (source?.kind) {
    case 'number':
      return { number: source.number, unit: source.unit };
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

function numberSeries(numbers: readonly NumberSource[], direction: number): Series | undefined {
  const [first] = numbers;
  const last = numbers.at(-1);
  if (first === undefined || last === undefined || numbers.some(({ unit }) => unit !== first.unit)) return undefined;
  const step = numbers.length === 1 ? direction : evenStep(numbers.map(({ number }) => number));
  if (step === undefined) return undefined;
  return (at) => ({ number: withoutDust(last.number + step * (at + 1)), unit: first.unit });
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
