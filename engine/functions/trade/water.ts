// Water as functions: the crop coefficient through the season, the water a crop takes, what the root zone holds. Models
// stand in agronomy/water.ts and soil-water.ts; read by trade/index.ts.

import { hargreaves } from '../../agronomy/reference-evapotranspiration.ts';
import {
  availableWater,
  daysBetweenWaterings,
  readilyAvailableWater,
  SOIL_WATER_LIMITS,
  stressFactor,
} from '../../agronomy/soil-water.ts';
import {
  type Coefficients,
  climateCoefficient,
  coefficientDaysOf,
  coefficientOn,
  type Stages,
  scaledStages,
  WATER_LIMITS,
} from '../../agronomy/water.ts';
import { divideUnits } from '../../units/arithmetic.ts';
import { divideDimensions, LENGTH, TIME } from '../../units/dimension.ts';
import type { Unit } from '../../units/unit.ts';
import { dayOfYear } from '../../values/civil.ts';
import { withLoop } from '../build.ts';
import { type FunctionDefinition, type Run, rowOf } from '../definition.ts';
import { DAY, date, days, length, MILLIMETRE, numeric, PLAIN, plain, quantity, SHARE, temperature } from './build.ts';
import { numberOf } from './over-days.ts';
import { recordOf, recordParameter, scalarRecord } from './records.ts';

const CHAPTER_6 =
  'Allen, Pereira, Raes & Smith 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, chapter 6';
const CHAPTER_8 = 'Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56, chapter 8';
const DEPTH_PER_TIME = divideDimensions(LENGTH, TIME);
const MILLIMETRES_A_DAY: Unit = divideUnits(MILLIMETRE, DAY);

interface Course {
  readonly stages: Stages;
  readonly coefficients: Coefficients;
}

/** How much water a planting takes against short grass from day to day: its stages in days and its coefficients. */
const COURSE = recordOf<Course>('course-of-water', 'course of water use', [
  { name: 'Initial', gives: DAY, from: ({ stages }) => stages.initial },
  { name: 'Development', gives: DAY, from: ({ stages }) => stages.development },
  { name: 'Middle', gives: DAY, from: ({ stages }) => stages.middle },
  { name: 'Late', gives: DAY, from: ({ stages }) => stages.late },
  { name: 'Coefficient initial', gives: PLAIN, from: ({ coefficients }) => coefficients.initial },
  { name: 'Coefficient mid', gives: PLAIN, from: ({ coefficients }) => coefficients.middle },
  { name: 'Coefficient end', gives: PLAIN, from: ({ coefficients }) => coefficients.end },
]);

/** A course out of four stages (days), three coefficients and the season (days) that the stages are stretched to, where given. */
export function courseOfWater(numbers: readonly number[]): Course {
  const [initial = 0, development = 0, middle = 0, late = 0, kcInitial = 0, kcMid = 0, kcEnd = 0, season] = numbers;
  const stages = { initial, development, middle, late };
  const stretched = season !== undefined && !Number.isNaN(season);
  return {
    stages: stretched ? scaledStages(stages, season) : stages,
    coefficients: { initial: kcInitial, middle: kcMid, end: kcEnd },
  };
}

const UNKNOWN = Number.NaN;
/** What stands for an argument that is not given. */
const NONE: Run = { values: Float64Array.of(Number.NaN), at: 0, uniform: true };

const DEPLETION = plain('depletion', { limit: SOIL_WATER_LIMITS.depletion });

export const WATER: readonly FunctionDefinition[] = [
  numeric(
    {
      name: 'HARGREAVES',
      group: 'soil and water',
      parameters: [
        plain('latitude', { limit: { min: -90, max: 90, why: 'Latitudes lie between -90 and 90 degrees' } }),
        date('date'),
        temperature('low'),
        temperature('high'),
      ],
      gives: MILLIMETRES_A_DAY,
      doc: 'Water that short grass takes in a day, from the daily low and high, the latitude and the date.',
      source: 'Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56, equation 52',
    },
    (latitude = Number.NaN, day = Number.NaN, low = Number.NaN, high = Number.NaN) =>
      hargreaves(low, high, latitude, dayOfYear(day)),
  ),
  scalarRecord(
    {
      name: 'WATERCOURSE',
      group: 'soil and water',
      parameters: [
        days('initial_stage'),
        days('development_stage'),
        days('mid_stage'),
        days('late_stage'),
        plain('kc_initial'),
        plain('kc_mid'),
        plain('kc_end'),
        days('season', { optional: true }),
      ],
      doc: 'How the water use of a crop goes from planting to harvest: four stages, stretched to the season where it is given, and three coefficients.',
      source: CHAPTER_6,
    },
    COURSE,
    (args) => courseOfWater(args.map(numberOf)),
  ),
  withLoop(
    numeric(
      {
        name: 'COEFFICIENTON',
        group: 'soil and water',
        parameters: [recordParameter('course', COURSE), days('day')],
        gives: PLAIN,
        doc: 'Water use over that of short grass on a day since planting.',
        source: CHAPTER_6,
      },
      (a = UNKNOWN, b = UNKNOWN, c = UNKNOWN, d = UNKNOWN, e = UNKNOWN, f = UNKNOWN, g = UNKNOWN, day = UNKNOWN) =>
        coefficientOn(day, a, b, c, d, e, f, g),
    ),
    (out, count, [a = NONE, b = NONE, c = NONE, d = NONE, e = NONE, f = NONE, g = NONE, day = NONE]) => {
      for (let i = 0; i < count; i++) {
        out[i] = coefficientOn(
          rowOf(day, i),
          rowOf(a, i),
          rowOf(b, i),
          rowOf(c, i),
          rowOf(d, i),
          rowOf(e, i),
          rowOf(f, i),
          rowOf(g, i),
        );
      }
    },
  ),
  withLoop(
    numeric(
      {
        name: 'WATERTAKEN',
        group: 'soil and water',
        parameters: [
          recordParameter('course', COURSE),
          quantity('reference', DEPTH_PER_TIME, { unit: 'mm/day' }),
          days('from'),
          days('to'),
        ],
        gives: MILLIMETRE,
        doc: 'Depth of water a crop takes between two days since planting: the sum of its coefficients x reference evapotranspiration.',
        source: CHAPTER_6,
      },
      // The course's figures come first, one by one: most batches have a blank among them and come this way.
      (a = UNKNOWN, b = UNKNOWN, c = UNKNOWN, d = UNKNOWN, e = UNKNOWN, f = UNKNOWN, g = UNKNOWN, ...rest) => {
        const [reference = UNKNOWN, from = UNKNOWN, to = UNKNOWN] = rest;
        return coefficientDaysOf(from, to, a, b, c, d, e, f, g) * reference;
      },
    ),
    (out, count, args) => {
      const [a = NONE, b = NONE, c = NONE, d = NONE, e = NONE, f = NONE, g = NONE] = args;
      const [reference = NONE, from = NONE, to = NONE] = args.slice(COURSE.type.figures.length);
      for (let i = 0; i < count; i++) {
        out[i] =
          coefficientDaysOf(
            rowOf(from, i),
            rowOf(to, i),
            rowOf(a, i),
            rowOf(b, i),
            rowOf(c, i),
            rowOf(d, i),
            rowOf(e, i),
            rowOf(f, i),
            rowOf(g, i),
          ) * rowOf(reference, i);
      }
    },
  ),
  numeric(
    {
      name: 'CLIMATECOEFFICIENT',
      group: 'soil and water',
      parameters: [
        plain('table'),
        quantity('wind', DEPTH_PER_TIME, { unit: 'm/s', limit: WATER_LIMITS.wind }),
        plain('least_humidity', { limit: WATER_LIMITS.humidity }),
        length('height', { limit: WATER_LIMITS.height }),
      ],
      gives: PLAIN,
      doc: 'A mid-season or end coefficient of the table made fit for wind, dryness and height of the crop.',
      source: `${CHAPTER_6}, equations 62 and 65`,
    },
    climateCoefficient,
  ),
  numeric(
    {
      name: 'AVAILABLEWATER',
      group: 'soil and water',
      parameters: [
        plain('field_capacity'),
        plain('wilting_point'),
        length('root_depth', { limit: SOIL_WATER_LIMITS.rootDepth }),
      ],
      gives: MILLIMETRE,
      doc: 'Depth of water a root zone holds between field capacity and wilting point.',
      source: `${CHAPTER_8}, equation 82`,
    },
    availableWater,
  ),
  numeric(
    {
      name: 'READILYAVAILABLE',
      group: 'soil and water',
      parameters: [length('available', { unit: 'mm' }), DEPLETION],
      gives: MILLIMETRE,
      doc: 'The part of the available water that a crop can draw without suffering.',
      source: `${CHAPTER_8}, equation 83`,
    },
    readilyAvailableWater,
  ),
  numeric(
    {
      name: 'WATERSTRESS',
      group: 'soil and water',
      parameters: [length('drawn'), length('available'), DEPLETION],
      gives: SHARE,
      doc: 'Share of its full water use that a crop still reaches when so much is gone from the root zone.',
      source: `${CHAPTER_8}, equation 84`,
    },
    stressFactor,
  ),
  numeric(
    {
      name: 'WATERINGDAYS',
      group: 'soil and water',
      parameters: [length('available'), DEPLETION, quantity('daily_use', DEPTH_PER_TIME)],
      gives: DAY,
      doc: 'Whole days that a full root zone lasts before the crop suffers.',
      source: CHAPTER_8,
    },
    daysBetweenWaterings,
  ),
];
