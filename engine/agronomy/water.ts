// Water a crop takes, after FAO Irrigation and Drainage Paper 56 with the single crop coefficient: the coefficient rises and
// falls through four stages, times reference evapotranspiration, times bed area. Depths are in mm, areas in m2, volumes in
// litres (1 mm on 1 m2), days counted from 0 at planting. Calls nothing.

import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export const WATER_LIMITS = {
  wind: { min: 1, max: 6, why: 'FAO-56 equation 62: wind 1 to 6 m/s at 2 m' },
  humidity: { min: 0.2, max: 0.8, why: 'FAO-56 equation 62: least daily humidity 20 to 80 %' },
  height: { min: 0.1, max: 10, why: 'FAO-56 equation 62: plants 0.1 to 10 m tall' },
} satisfies Limits;

/** Lengths of the four stages in days. */
export interface Stages {
  readonly initial: number;
  readonly development: number;
  readonly middle: number;
  readonly late: number;
}

/** Crop coefficients at the start, in mid-season and at the end. */
export interface Coefficients {
  readonly initial: number;
  readonly middle: number;
  readonly end: number;
}

/** Days from planting to the end of the last stage. */
export function seasonLength(stages: Stages): number {
  return stages.initial + stages.development + stages.middle + stages.late;
}

/** Stages stretched or shrunk in proportion so that they fill a season of `days`. NaN lengths for stages without length. */
export function scaledStages(stages: Stages, days: number): Stages {
  const factor = days / seasonLength(stages);
  return {
    initial: stages.initial * factor,
    development: stages.development * factor,
    middle: stages.middle * factor,
    late: stages.late * factor,
  };
}

/**
 * The crop coefficient on a day: constant in the initial and middle stages, in a straight line between the others (FAO-56
 * equation 66). NaN before planting and after the season.
 */
export function cropCoefficient(day: number, stages: Stages, coefficients: Coefficients): number {
  const { initial, development, middle, late } = stages;
  return coefficientOn(
    day,
    initial,
    development,
    middle,
    late,
    coefficients.initial,
    coefficients.middle,
    coefficients.end,
  );
}

/** As cropCoefficient, of plain numbers: a season asks for it once a planting and week. */
export function coefficientOn(
  day: number,
  initial: number,
  development: number,
  middle: number,
  late: number,
  atFirst: number,
  inMiddle: number,
  atEnd: number,
): number {
  if (!(day >= 0) || day > initial + development + middle + late) return Number.NaN;
  const full = initial + development;
  const ripening = full + middle;
  const end = ripening + late;
  if (day <= initial) return atFirst;
  if (day <= full) return full > initial ? between(day, initial, atFirst, full, inMiddle) : inMiddle;
  if (day <= ripening) return inMiddle;
  if (day <= end) return end > ripening ? between(day, ripening, inMiddle, end, atEnd) : atEnd;
  return atEnd;
}

/** The coefficient on a day between two corners of the curve. */
function between(day: number, start: number, there: number, end: number, then: number): number {
  return there + ((day - start) / (end - start)) * (then - there);
}

/** Area under one straight piece of the curve between two days. */
function under(from: number, to: number, start: number, there: number, end: number, then: number): number {
  const low = Math.max(from, start);
  const high = Math.min(to, end);
  if (!(high > low)) return 0;
  return ((between(low, start, there, end, then) + between(high, start, there, end, then)) / 2) * (high - low);
}

/**
 * Area under the coefficient curve between two days, parts outside the season counting as nothing: the days' worth of
 * reference evapotranspiration that the crop takes.
 */
export function coefficientDays(from: number, to: number, stages: Stages, coefficients: Coefficients): number {
  const { initial, development, middle, late } = stages;
  return coefficientDaysOf(
    from,
    to,
    initial,
    development,
    middle,
    late,
    coefficients.initial,
    coefficients.middle,
    coefficients.end,
  );
}

/** As coefficientDays, of plain numbers. */
export function coefficientDaysOf(
  from: number,
  to: number,
  initial: number,
  development: number,
  middle: number,
  late: number,
  atFirst: number,
  inMiddle: number,
  atEnd: number,
): number {
  if (Number.isNaN(from + to + (initial + development + middle + late))) return Number.NaN;
  const full = initial + development;
  const ripening = full + middle;
  return (
    under(from, to, 0, atFirst, initial, atFirst) +
    under(from, to, initial, atFirst, full, inMiddle) +
    under(from, to, full, inMiddle, ripening, inMiddle) +
    under(from, to, ripening, inMiddle, ripening + late, atEnd)
  );
}

/** Mean coefficient of a period inside the season, as FAO-56 reads it off the curve for ten days. NaN without a period. */
export function meanCoefficient(from: number, to: number, stages: Stages, coefficients: Coefficients): number {
  return to > from ? coefficientDays(from, to, stages, coefficients) / (to - from) : Number.NaN;
}

/**
 * A mid-season or end coefficient from the table made fit for the climate: table + (0.04 (wind - 2) - 0.004 (humidity - 45))
 * (height / 3)^0.3, wind in m/s at 2 m, humidity the mean of daily least values as a share, height in m (FAO-56 equations
 * 62 and 65). An end coefficient below 0.45 stays as it is: pass only those from 0.45.
 */
export function climateCoefficient(table: number, wind: number, leastHumidity: number, height: number): number {
  const { wind: w, humidity: h, height: t } = WATER_LIMITS;
  const inside = (value: number, limit: { min: number; max: number }): boolean =>
    value >= limit.min && value <= limit.max;
  if (!inside(wind, w) || !inside(leastHumidity, h) || !inside(height, t)) return Number.NaN;
  return table + (0.04 * (wind - 2) - 0.004 * (leastHumidity * 100 - 45)) * (height / 3) ** 0.3;
}

/** Water of a depth on an area, litres: 1 mm on 1 m2 is 1 litre. */
export function waterVolume(depth: number, area: number): number {
  return depth >= 0 && area >= 0 ? depth * area : Number.NaN;
}

/** One week of a crop's water. */
export interface WaterWeek {
  /** First day of the week, counted from planting. */
  readonly from: number;
  /** Mean coefficient over the days of the week that the crop stands. */
  readonly coefficient: number;
  /** Depth the crop takes, depth of rain that counts, and what is left to give, mm. */
  readonly crop: number;
  readonly rain: number;
  readonly need: number;
  /** The need on the bed, more where not all that is given arrives, litres. */
  readonly litres: number;
}

export interface WaterPlan {
  readonly stages: Stages;
  readonly coefficients: Coefficients;
  /** Area watered, m2. */
  readonly area: number;
  /** Reference evapotranspiration of each week from planting, mm a day. */
  readonly reference: readonly number[];
  /** Rain of each week, mm; blank counts none, for planning to be on the safe side. */
  readonly rain?: readonly number[];
  /** Share of rain that serves the crop; blank is 0.8, common practice. */
  readonly rainServes?: number;
  /** Share of water given that reaches the crop; blank is 0.9, drip, common practice. */
  readonly reaches?: number;
}

/** Water week by week from planting to the end of the season, as far as reference figures are given. */
export function weeklyWater(plan: WaterPlan): readonly WaterWeek[] {
  const season = seasonLength(plan.stages);
  const weeks = Math.min(plan.reference.length, Math.ceil(season / 7));
  const serves = plan.rainServes ?? 0.8;
  const reaches = plan.reaches ?? 0.9;
  return Array.from({ length: Math.max(0, weeks) }, (_, week) => {
    const from = week * 7;
    const standing = Math.min(7, season - from);
    const days = coefficientDays(from, from + standing, plan.stages, plan.coefficients);
    const crop = days * (plan.reference[week] ?? Number.NaN);
    const rain = (plan.rain?.[week] ?? 0) * serves;
    const need = Math.max(0, crop - rain);
    return {
      from,
      coefficient: days / standing,
      crop,
      rain,
      need,
      litres: reaches > 0 ? waterVolume(need, plan.area) / reaches : Number.NaN,
    };
  });
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Crop water',
    gives: 'water a bed takes in a week',
    equation:
      'crop coefficient x reference evapotranspiration; coefficient in straight lines through four stages (equation 66)',
    range:
      'well-watered crops in the field; coefficients for wind 2 m/s and least humidity 45 %, adjusted by equations 62 and 65',
    source:
      'Allen, Pereira, Raes & Smith 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, chapter 6',
    standing: 'published',
  },
];
