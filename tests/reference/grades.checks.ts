// Size grades: shares against the normal distribution of a spreadsheet library, a mass against the food table.
import { HyperFormula } from 'hyperformula';
import {
  gradeMassShare,
  gradeShare,
  meanMassOfDiameter,
  pieceMass,
  shapeFactor,
} from '../../engine/agronomy/grades.ts';
import type { Fact, Program } from './check.ts';
import { NUTRIENT_DATABASE } from './publications.ts';

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

const PROGRAM = (call: string): Program => ({ name: 'HyperFormula', version: '3.5.0', call });
const crops = [50, 60, 70, 80].flatMap((mean) => [0.1, 0.14, 0.18].map((spread) => ({ mean, spread })));

export const facts: readonly Fact[] = [
  {
    kind: 'library',
    fact: 'share by number of bulbs of 2 to 3 in',
    unit: '',
    program: PROGRAM('NORM.DIST'),
    points: crops.map(({ mean, spread }) => ({
      what: `mean ${mean} mm, CV ${spread * 100} %`,
      given: normal(76.2, mean, mean * spread, true) - normal(50.8, mean, mean * spread, true),
      computed: () => gradeShare(mean / 1000, spread, 0.0508, 0.0762),
      tolerance: 1e-9,
    })),
  },
  {
    kind: 'library',
    fact: 'share by mass of bulbs of 2 to 3 in',
    unit: '',
    program: PROGRAM('NORM.DIST as a density, integrated by Simpson’s rule'),
    points: crops.map(({ mean, spread }) => ({
      what: `mean ${mean} mm, CV ${spread * 100} %`,
      given: massShareByQuadrature(mean, spread, 50.8, 76.2),
      computed: () => gradeMassShare(mean / 1000, spread, 0.0508, 0.0762),
      tolerance: 1e-6,
    })),
  },
  {
    kind: 'library',
    fact: 'mean mass of bulbs that differ in size',
    unit: 'g',
    program: PROGRAM('NORM.DIST as a density of cubes, integrated by Simpson’s rule'),
    points: [
      {
        what: 'mean 70 mm, CV 14 %, shape 430 kg/m3',
        given: meanCubeByQuadrature(70, 0.14) * 430e-6,
        computed: () => meanMassOfDiameter(0.07, 0.14, 430) * 1000,
        tolerance: 0.001,
      },
    ],
  },
  {
    kind: 'published',
    fact: 'mass of a medium tomato from the shape of a large one',
    unit: 'g',
    source: NUTRIENT_DATABASE,
    at: 'household weights (WEIGHT.txt), raw red tomatoes: medium, 2.6 in across, 123 g; large, 3 in, 182 g',
    points: [
      {
        what: '2.6 in across, mass as the cube of the diameter',
        given: 123,
        computed: () => pieceMass(2.6, shapeFactor(182, 3)),
        tolerance: 6.2,
      },
    ],
  },
  {
    kind: 'published',
    fact: 'mass of a large radish from the shape of a medium one',
    unit: 'g',
    source: NUTRIENT_DATABASE,
    at: 'household weights (WEIGHT.txt), raw radishes: medium, 3/4 to 1 in, 4.5 g; large, 1 to 1 1/4 in, 9 g',
    points: [
      {
        what: '1 1/8 in across',
        given: 9,
        computed: () => pieceMass(1.125, shapeFactor(4.5, 0.875)),
        tolerance: 0.75, // half a gram in nine is printed, and the middles of the classes are taken
      },
    ],
  },
  {
    kind: 'published',
    fact: 'mass of heads of cabbage from the shape of a medium one',
    unit: 'g',
    source: NUTRIENT_DATABASE,
    at: 'household weights (WEIGHT.txt), raw cabbage: small, 4.5 in, 714 g; medium, 5.75 in, 908 g; large, 7 in, 1248 g',
    points: [
      {
        what: 'small, 4.5 in across',
        given: 714,
        computed: () => pieceMass(4.5, shapeFactor(908, 5.75)),
        tolerance: 36,
        off: { upTo: 280, why: 'heads grow looser as they swell: their mass rises far more slowly than the cube' },
      },
      {
        what: 'large, 7 in across',
        given: 1248,
        computed: () => pieceMass(7, shapeFactor(908, 5.75)),
        tolerance: 62,
        off: { upTo: 400, why: 'heads grow looser as they swell: their mass rises far more slowly than the cube' },
      },
    ],
  },
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
