// Size grades: shares against the normal distribution of a spreadsheet library, masses and limits against print.
import { HyperFormula } from 'hyperformula';
import {
  gradeMassShare,
  gradeShare,
  meanMassOfDiameter,
  ONION_SHAPE,
  pieceMass,
  shapeFactor,
} from '../../engine/agronomy/grades.ts';
import { ONION_BANDS, packSpread, type SizeBand, US_ONION_SIZES } from '../../engine/agronomy/size-bands.ts';
import type { Check } from './check.ts';

const sheet = HyperFormula.buildFromArray([[0]], { licenseKey: 'gpl-v3' });

/** NORM.DIST of the library, cumulative or not. */
function normal(x: number, mean: number, deviation: number, cumulative: boolean): number {
  const answer = sheet.calculateFormula(
    `=NORM.DIST(${x};${mean};${deviation};${cumulative ? 'TRUE()' : 'FALSE()'})`.replaceAll(';', ','),
    0,
  );
  if (typeof answer !== 'number') throw new Error('the library gave no number');
  return answer;
}

/** Share by mass by Simpson's rule over the library's density, diameters in mm. */
function massShareByQuadrature(mean: number, spread: number, from: number, to: number): number {
  const deviation = mean * spread;
  const moment = (low: number, high: number): number => {
    const steps = 400;
    const width = (high - low) / steps;
    let sum = 0;
    for (let step = 0; step <= steps; step += 1) {
      const x = low + step * width;
      const factor = step === 0 || step === steps ? 1 : step % 2 === 1 ? 4 : 2;
      sum += factor * x ** 3 * normal(x, mean, deviation, false);
    }
    return (sum * width) / 3;
  };
  const reach = 9 * deviation;
  return moment(Math.max(from, mean - reach), Math.min(to, mean + reach)) / moment(mean - reach, mean + reach);
}

const LIBRARY = 'HyperFormula 3, NORM.DIST';
const crops = [50, 60, 70, 80].flatMap((mean) => [0.1, 0.14, 0.18].map((spread) => ({ mean, spread })));

const byNumber = crops.map(
  ({ mean, spread }): Check => ({
    source: LIBRARY,
    what: `share by number of 2 to 3 in, mean ${mean} mm, CV ${spread * 100} %`,
    unit: '',
    published: normal(76.2, mean, mean * spread, true) - normal(50.8, mean, mean * spread, true),
    computed: () => gradeShare(mean / 1000, spread, 0.0508, 0.0762),
    tolerance: 1e-9,
    standing: 'library',
  }),
);

const byMass = crops.map(
  ({ mean, spread }): Check => ({
    source: LIBRARY,
    what: `density integrated by Simpson’s rule: share by mass of 2 to 3 in, mean ${mean} mm, CV ${spread * 100} %`,
    unit: '',
    published: massShareByQuadrature(mean, spread, 50.8, 76.2),
    computed: () => gradeMassShare(mean / 1000, spread, 0.0508, 0.0762),
    tolerance: 1e-6,
    standing: 'library',
  }),
);

function limitChecks(
  source: string,
  bands: readonly SizeBand[],
  printed: readonly (readonly [string, number?, number?])[],
  tolerance: number,
): readonly Check[] {
  return printed.flatMap(([name, from, to]) => {
    const band = bands.find((one) => one.name === name);
    const limit = (end: 'from' | 'to', published: number | undefined): readonly Check[] =>
      published === undefined
        ? []
        : [
            {
              source,
              what: `${name}, ${end === 'from' ? 'least' : 'greatest'} diameter`,
              unit: 'mm',
              published,
              computed: () => (band === undefined ? Number.NaN : band[end] * 1000),
              tolerance,
              standing: 'published',
            },
          ];
    return [...limit('from', from), ...limit('to', to)];
  });
}

const USDA = 'USDA National Nutrient Database for Standard Reference 28, household weights';
const SWEET = 'Grade distribution of sweet onions, abstract: mean mass of graded bulbs';

export const checks: readonly Check[] = [
  ...byNumber,
  ...byMass,
  {
    source: USDA,
    what: 'medium onion 2.5 in across',
    unit: 'g',
    published: 110,
    computed: () => pieceMass(0.0635, ONION_SHAPE) * 1000,
    tolerance: 0.5,
    standing: 'published',
  },
  {
    source: USDA,
    what: 'medium tomato 2.6 in across, by the shape factor of the large one of 3 in and 182 g',
    unit: 'g',
    published: 123,
    computed: () => pieceMass(2.6, shapeFactor(182, 3)),
    tolerance: 6.2,
    standing: 'published',
  },
  {
    source: SWEET,
    what: 'bulbs of 63.5 to 76.2 mm, shape factor 380 kg/m3 for flat types',
    unit: 'g',
    published: 134.5,
    computed: () => pieceMass(0.06985, 380) * 1000,
    tolerance: 6.7,
    standing: 'published',
  },
  {
    source: SWEET,
    what: 'bulbs of 76.2 to 88.9 mm, the same shape factor',
    unit: 'g',
    published: 204.8,
    computed: () => pieceMass(0.08255, 380) * 1000,
    tolerance: 10.2,
    standing: 'published',
  },
  {
    source: LIBRARY,
    what: 'cubes integrated by Simpson’s rule: mean mass at mean 70 mm, CV 14 %, shape 430 kg/m3',
    unit: 'g',
    published: meanCubeByQuadrature(70, 0.14) * 430e-6,
    computed: () => meanMassOfDiameter(0.07, 0.14, 430) * 1000,
    tolerance: 0.001,
    standing: 'library',
  },
  ...limitChecks(
    '7 CFR 51.3198, onion size classes, as printed in mm',
    US_ONION_SIZES,
    [
      ['Small', 25.4, 57.2],
      ['Repacker/Prepacker', 44.5, 76.2],
      ['Medium', 50.8, 82.6],
      ['Large or Jumbo', 76.2],
      ['Colossal', 95.3],
    ],
    0.05,
  ),
  ...limitChecks(
    'Shock et al., Malheur Experiment Station: medium 57-76 mm, jumbo 76-102 mm, colossal above 102 mm',
    ONION_BANDS,
    [
      ['Medium', 57, 76],
      ['Jumbo', 76, 102],
      ['Colossal', 102],
    ],
    0.5,
  ),
  ...limitChecks('7 CFR 51.3198, least diameter unless otherwise specified', ONION_BANDS, [['Small', 38.1]], 0.05),
  ...[
    [10, 5],
    [30, 15],
    [55, 20],
    [70, 30],
  ].map(
    ([smallest = Number.NaN, published = Number.NaN]): Check => ({
      source: 'UNECE standard FFV-25 onions, sizing, as the trade quotes it',
      what: `greatest spread in a pack whose smallest bulb is ${smallest} mm`,
      unit: 'mm',
      published,
      computed: () => packSpread(smallest / 1000) * 1000,
      tolerance: 0,
      standing: 'published',
    }),
  ),
];

function meanCubeByQuadrature(mean: number, spread: number): number {
  const deviation = mean * spread;
  const steps = 400;
  const low = mean - 9 * deviation;
  const width = (18 * deviation) / steps;
  let sum = 0;
  for (let step = 0; step <= steps; step += 1) {
    const x = low + step * width;
    const factor = step === 0 || step === steps ? 1 : step % 2 === 1 ? 4 : 2;
    sum += factor * x ** 3 * normal(x, mean, deviation, false);
  }
  return (sum * width) / 3;
}
