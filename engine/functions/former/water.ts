// The water a crop takes, asked with every stage and coefficient in the call, as templates did before the course of water use
// was worked out in a column of its own.

import { coefficientDays, cropCoefficient } from '../../agronomy/water.ts';
import type { Parameter } from '../../language/signature.ts';
import { divideDimensions, LENGTH, TIME } from '../../units/dimension.ts';
import type { FunctionDefinition } from '../definition.ts';
import { days, MILLIMETRE, numeric, PLAIN, plain, quantity } from '../trade/build.ts';
import { courseOfWater } from '../trade/water.ts';

const CHAPTER_6 =
  'Allen, Pereira, Raes & Smith 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, chapter 6';

/** Four stages, three coefficients, and the season that the stages are stretched to. */
const CURVE: readonly Parameter[] = [
  days('initial_stage'),
  days('development_stage'),
  days('mid_stage'),
  days('late_stage'),
  plain('kc_initial'),
  plain('kc_mid'),
  plain('kc_end'),
  days('season', { optional: true }),
];

export const FORMER_WATER: readonly FunctionDefinition[] = [
  numeric(
    {
      name: 'CROPCOEFFICIENT',
      group: 'soil and water',
      parameters: [days('day'), ...CURVE],
      gives: PLAIN,
      doc: 'Water use over that of short grass on a day since planting; stages are stretched to the season where it is given.',
      source: CHAPTER_6,
    },
    (day = Number.NaN, ...curve) => {
      const { stages, coefficients } = courseOfWater(curve);
      return cropCoefficient(day, stages, coefficients);
    },
  ),
  numeric(
    {
      name: 'CROPWATER',
      group: 'soil and water',
      parameters: [
        quantity('reference', divideDimensions(LENGTH, TIME), { unit: 'mm/day' }),
        days('from'),
        days('to'),
        ...CURVE,
      ],
      gives: MILLIMETRE,
      doc: 'Depth of water a crop takes between two days since planting: the sum of its coefficients x reference evapotranspiration.',
      source: CHAPTER_6,
    },
    (reference = Number.NaN, from = Number.NaN, to = Number.NaN, ...curve) => {
      const { stages, coefficients } = courseOfWater(curve);
      return coefficientDays(from, to, stages, coefficients) * reference;
    },
  ),
];
