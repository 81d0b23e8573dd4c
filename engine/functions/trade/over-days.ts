// What the functions over the days of the Climate sheet share: columns as numbers, the average year that the days stand
// for, and the maker of such functions. Called by climate.ts, bulbing.ts and others of this folder; knows no model.

import { type CourseOfYear, courseOfYear } from '../../agronomy/course-of-year.ts';
import { type WarmthOfYear, warmthOfYear } from '../../agronomy/warmth-of-year.ts';
import type { FunctionGroup, Parameter, Result } from '../../language/signature.ts';
import type { FunctionDefinition, OverNumbers } from '../definition.ts';
import { keptFor, numbersIn } from '../kept-for.ts';
import { type Argument, columnOfDates, columnOfTemperatures, isList, overColumns } from './build.ts';

/** 0 degC in K, the scale temperatures come in from columns. */
export const KELVIN = 273.15;

export function numberOf(argument: Argument): number {
  return typeof argument === 'number' ? argument : Number.NaN;
}

/** The days of a Climate sheet without rows. */
export const NO_DAYS: Float64Array = new Float64Array(0);

/** A column as numbers, blanks as not-a-number; kept for as long as the engine hands over the same list. */
export function numbersOf(argument: Argument): Float64Array {
  return isList(argument) ? numbersIn(argument) : NO_DAYS;
}

/** A column of temperatures in degC; they come in K. */
export const celsiusOf: (kelvin: Float64Array) => Float64Array = keptFor((kelvin: Float64Array) =>
  kelvin.map((value) => value - KELVIN),
);

/** The smooth course of a column of daily temperatures, C. */
export const courseOf: (kelvin: Float64Array) => { readonly course: CourseOfYear | undefined } = keptFor(
  (kelvin: Float64Array) => ({ course: courseOfYear(celsiusOf(kelvin)) }),
);

/** A season has some tens of crops under a few covers; more pairs than this begin anew. */
const MOST_SUMS = 500;
const sumsOf = keptFor((_: Float64Array) => ({ count: 0, byBase: new Map<number, Map<number, WarmthOfYear>>() }));

/** The degree-days of a column of daily means between a base and an upper limit (C), summed once. */
export function warmthOf(kelvin: Float64Array): (base: number, upper: number) => WarmthOfYear {
  const kept = sumsOf(kelvin);
  return (base, upper) => {
    const found = kept.byBase.get(base)?.get(upper);
    if (found !== undefined) return found;
    const made = warmthOfYear(celsiusOf(kelvin), base, upper);
    if (kept.count >= MOST_SUMS) {
      kept.byBase.clear();
      kept.count = 0;
    }
    const ofBase = kept.byBase.get(base) ?? new Map<number, WarmthOfYear>();
    kept.byBase.set(base, ofBase.set(upper, made));
    kept.count++;
    return made;
  };
}

/** The average year that the days of the Climate sheet stand for. */
export interface Year {
  readonly first: number;
  readonly length: number;
}

/** Undefined where the sheet holds less than a year of days. */
export function yearOf(days: Float64Array): Year | undefined {
  const first = days[0];
  return first === undefined || Number.isNaN(first) || days.length < 365 ? undefined : { first, length: days.length };
}

/** Where a day stands in the average year, whatever its own year. */
export function placeOf(year: Year, day: number): number {
  const offset = (Math.floor(day) - year.first) % year.length;
  return offset < 0 ? offset + year.length : offset;
}

/** A number or text worked out from single values and whole columns; no number is blank. */
export function overDays(
  name: string,
  doc: string,
  source: string,
  parameters: readonly Parameter[],
  result: Result,
  compute: (args: readonly Argument[]) => number | string,
  group: FunctionGroup = 'light and climate',
): FunctionDefinition {
  return overColumns({ name, group, parameters, result, doc, source }, compute);
}

/** The same where all single values are numbers, and stand before the columns: these are looked at once for many rows. */
export function overDaysInNumbers(
  name: string,
  doc: string,
  source: string,
  parameters: readonly Parameter[],
  result: Result,
  overNumbers: OverNumbers,
): FunctionDefinition {
  const definition = overDays(name, doc, source, parameters, result, (args) => {
    const columns = args.filter(isList).map(numbersOf);
    const scalars = args.filter((argument) => !isList(argument)).map(numberOf);
    return overNumbers(columns)(Float64Array.from(scalars));
  });
  if (definition.body.lane !== 'columns') throw new Error(`${name} does not run over columns`);
  return { ...definition, body: { ...definition.body, overNumbers } };
}

/** The last two parameters of a function over the average year: its days and their mean temperatures. */
export const YEAR_OF_DAYS: readonly Parameter[] = [columnOfDates('days'), columnOfTemperatures('means')];
