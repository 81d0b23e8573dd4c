// The course of an average year: its temperatures smoothed, its warmest and coldest day, and from when until when it is at
// least so warm. Called by the functions over the Climate sheet; calls nothing. Days are offsets from the year's first day.

import type { ModelSource } from './source.ts';

/** Each day is averaged with so many days on either side, twice over: a station's few years leave weather in their means. */
export const SMOOTHING_REACH = 7;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Course of the year',
    gives: 'the smooth temperature of a date, the middle of summer, and the dates between which it is at least so warm',
    equation: `mean of ${2 * SMOOTHING_REACH + 1} days, taken twice; from the warmest day back and on to the first day that is cooler`,
    range: 'average years with one warm and one cool season; a blank day makes no answer',
    source: 'moving averages as in the WMO Guidelines on the Calculation of Climate Normals 2017 (WMO-No. 1203)',
    standing: 'common practice',
  },
];

export interface CourseOfYear {
  /** C, one a day; the year is a ring. */
  readonly values: Float64Array;
  readonly warmest: number;
  readonly coldest: number;
}

function movingMean(values: Float64Array): Float64Array {
  const { length } = values;
  const span = 2 * SMOOTHING_REACH + 1;
  let sum = 0;
  for (let day = -SMOOTHING_REACH; day <= SMOOTHING_REACH; day += 1) sum += values[(day + length) % length] as number;
  return values.map((_, day) => {
    const mean = sum / span;
    sum +=
      (values[(day + SMOOTHING_REACH + 1) % length] as number) -
      (values[(day - SMOOTHING_REACH + length) % length] as number);
    return mean;
  });
}

/** The smooth course of a year of daily temperatures; undefined where a day has none. */
export function courseOfYear(temperatures: Float64Array): CourseOfYear | undefined {
  if (temperatures.length === 0 || temperatures.some(Number.isNaN)) return undefined;
  const values = movingMean(movingMean(temperatures));
  let warmest = 0;
  let coldest = 0;
  for (let day = 1; day < values.length; day += 1) {
    if ((values[day] as number) > (values[warmest] as number)) warmest = day;
    if ((values[day] as number) < (values[coldest] as number)) coldest = day;
  }
  return { values, warmest, coldest };
}

/** The days around the warmest of the year that are at least as warm as a level, counted from the warmest. */
export interface WarmSpan {
  /** First of them, 0 or less: -30 is thirty days before the warmest. */
  readonly from: number;
  /** First day after them that is cooler. */
  readonly until: number;
}

/** 'all' where no day of the year is cooler than `level` (C), 'none' where no day is as warm. */
export function warmSpan(course: CourseOfYear, level: number): WarmSpan | 'all' | 'none' {
  const { values, warmest, coldest } = course;
  if ((values[warmest] as number) < level) return 'none';
  if ((values[coldest] as number) >= level) return 'all';
  const at = (offset: number): number => values[(warmest + offset + values.length) % values.length] as number;
  let from = 0;
  while (at(from - 1) >= level) from -= 1;
  let until = 1;
  while (at(until) >= level) until += 1;
  return { from, until };
}
