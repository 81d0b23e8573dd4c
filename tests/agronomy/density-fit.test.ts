// Fits of spacing trials: exact data come back, weights count as repeats, errors agree with an independent estimate, and
// trials that cannot give a curve say why.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FitForm, fitDensity, fitFaultSentence, type TrialRow } from '../../engine/agronomy/density-fit.ts';
import { generalPlantMass, plantMass } from '../../engine/agronomy/yield-density.ts';
import { numberOf, readTable, textOf } from '../reference/table.ts';

const TRIAL: readonly TrialRow[] = [
  { density: 20, mass: 0.26 },
  { density: 30, mass: 0.2 },
  { density: 40, mass: 0.19 },
  { density: 60, mass: 0.13 },
  { density: 90, mass: 0.1 },
  { density: 140, mass: 0.066 },
];

describe('fitDensity', () => {
  it('finds the figures that made exact data, in any units', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 3000, noNaN: true }),
        fc.double({ min: 2, max: 50, noNaN: true }),
        (isolated, crowding) => {
          const ceiling = isolated * crowding;
          const rows = [10, 20, 40, 80, 160].map((density) => ({
            density,
            mass: plantMass(density, isolated, ceiling),
          }));
          const fit = fitDensity(rows);
          expect(fit.isolated / isolated).toBeCloseTo(1, 6);
          expect(fit.ceiling / ceiling).toBeCloseTo(1, 6);
          expect(fit.residualSd).toBeLessThan(1e-6);
        },
      ),
    );
  });

  it('finds theta of exact data', () => {
    for (const theta of [0.7, 0.9, 1, 1.2]) {
      const rows = [15, 25, 40, 70, 110, 180].map((density) => ({
        density,
        mass: generalPlantMass(density, 3, 0.15, theta),
      }));
      const fit = fitDensity(rows, 'general');
      expect(fit.shape).toBeCloseTo(theta, 5);
      expect(fit.a).toBeCloseTo(3, 4);
    }
  });

  it('leaves no slope of the sum of squares at its answer', () => {
    const fit = fitDensity(TRIAL);
    const sum = (a: number, b: number): number =>
      TRIAL.reduce((total, row) => total + (Math.log(row.mass) + Math.log(a + b * row.density)) ** 2, 0);
    expect(sum(fit.a, fit.b)).toBeCloseTo(fit.sumOfSquares, 12);
    for (const step of [0.999, 1.001]) {
      expect(sum(fit.a * step, fit.b)).toBeGreaterThan(fit.sumOfSquares);
      expect(sum(fit.a, fit.b * step)).toBeGreaterThan(fit.sumOfSquares);
    }
  });

  it('gives the standard errors of the two-by-two inverse', () => {
    const fit = fitDensity(TRIAL);
    let aa = 0;
    let ab = 0;
    let bb = 0;
    for (const { density } of TRIAL) {
      const bracket = fit.a + fit.b * density;
      aa += 1 / bracket ** 2;
      ab += density / bracket ** 2;
      bb += density ** 2 / bracket ** 2;
    }
    const determinant = aa * bb - ab * ab;
    const variance = fit.sumOfSquares / (TRIAL.length - 2);
    expect(fit.aError).toBeCloseTo(Math.sqrt((variance * bb) / determinant), 10);
    expect(fit.bError).toBeCloseTo(Math.sqrt((variance * aa) / determinant), 12);
    expect(fit.isolatedError / fit.isolated).toBeCloseTo(fit.aError / fit.a, 12);
    expect(fit.ceilingError / fit.ceiling).toBeCloseTo(fit.bError / fit.b, 12);
  });

  it('counts a weight of two as the plot twice', () => {
    const [first, ...rest] = TRIAL;
    if (first === undefined) throw new Error('the trial is empty');
    const weighted = fitDensity([{ ...first, weight: 2 }, ...rest]);
    const repeated = fitDensity([first, first, ...rest]);
    expect(weighted.a).toBeCloseTo(repeated.a, 10);
    expect(weighted.b).toBeCloseTo(repeated.b, 10);
    expect(weighted.sumOfSquares).toBeCloseTo(repeated.sumOfSquares, 12);
  });

  it('leaves out plots with a blank and does not mind their order', () => {
    const fit = fitDensity(TRIAL);
    const blanks = fitDensity(
      [...TRIAL, { density: Number.NaN, mass: 0.1 }, { density: 50, mass: Number.NaN }].reverse(),
    );
    expect(blanks.rows).toBe(TRIAL.length);
    expect(blanks.a).toBeCloseTo(fit.a, 10);
  });

  it('draws the curve over the densities tried and no further', () => {
    const fit = fitDensity(TRIAL);
    expect(fit.curve.at(0)?.density).toBe(20);
    expect(fit.curve.at(-1)?.density).toBe(140);
    for (const point of fit.curve) {
      expect(point.mass).toBeCloseTo(plantMass(point.density, fit.isolated, fit.ceiling), 10);
      expect(point.yield).toBeCloseTo(point.mass * point.density, 12);
    }
  });

  it('never fits worse with a third parameter', () => {
    const plain = fitDensity(TRIAL).sumOfSquares;
    for (const form of ['general', 'quadratic', 'power'] satisfies FitForm[]) {
      expect(fitDensity(TRIAL, form).sumOfSquares).toBeLessThanOrEqual(plain + 1e-12);
    }
  });

  it('says why a trial gives no curve', () => {
    const faults = [
      fitDensity(TRIAL.slice(0, 2)),
      fitDensity(TRIAL.slice(0, 3), 'general'),
      fitDensity([1, 2, 3].map((mass) => ({ density: 30, mass }))),
      fitDensity([...TRIAL, { density: 0, mass: 0.2 }]),
      fitDensity([...TRIAL, { density: 50, mass: 0.2, weight: 0 }]),
    ];
    expect(faults.map((fit) => fit.fault)).toEqual([
      'too few rows',
      'too few rows',
      'too few densities',
      'not above zero',
      'not above zero',
    ]);
    for (const fit of faults) {
      expect(fit.a).toBeNaN();
      expect(fit.isolated).toBeNaN();
      expect(fit.curve).toEqual([]);
      if (fit.fault !== undefined) expect(fitFaultSentence(fit.fault)).toMatch(/\.$/);
    }
  });

  it.each([
    ['too few rows', 'A curve needs at least three weighed plots (four for the general form). Add plots to the trial.'],
    ['too few densities', 'All plots stand at nearly the same spacing. Add plots planted closer or wider.'],
    ['not above zero', 'A density, mass or weight is zero or below. Correct that plot or leave it blank.'],
    [
      'no curve found',
      'No curve of this form follows these plots. Check for a mistyped weight, or use the two-number form.',
    ],
  ] as const)('says of %s what to do', (fault, sentence) => {
    expect(fitFaultSentence(fault)).toBe(sentence);
  });

  it.each([
    [{ density: 0, mass: 0.2 }],
    [{ density: -5, mass: 0.2 }],
    [{ density: 50, mass: 0 }],
    [{ density: 50, mass: -0.2 }],
    [{ density: 50, mass: 0.2, weight: -1 }],
  ])('refuses a trial with the plot %o', (plot) => {
    expect(fitDensity([...TRIAL, plot]).fault).toBe('not above zero');
  });

  it('leaves out a plot whose weight is blank', () => {
    const blank = fitDensity([...TRIAL, { density: 50, mass: 9, weight: Number.NaN }]);
    expect(blank.rows).toBe(TRIAL.length);
    expect(blank.a).toBeCloseTo(fitDensity(TRIAL).a, 12);
  });

  it('needs two densities for two figures, three for three', () => {
    const at = (...densities: number[]): TrialRow[] => densities.map((d, i) => ({ density: d, mass: 4 / d + i / 100 }));
    // At two densities the curve runs through the geometric mean of each.
    const two = fitDensity(at(20, 20, 80));
    expect(two.fault).toBeUndefined();
    expect(plantMass(20, two.isolated, two.ceiling)).toBeCloseTo(Math.sqrt(0.2 * 0.21), 8);
    expect(plantMass(80, two.isolated, two.ceiling)).toBeCloseTo(0.07, 8);
    expect(fitDensity(at(20, 20, 80, 80), 'quadratic').fault).toBe('too few densities');
    expect(fitDensity(at(20, 40, 80, 80), 'quadratic').fault).toBeUndefined();
    expect(fitDensity(at(20, 40, 80), 'quadratic').fault).toBe('too few rows');
  });

  it('has no isolated mass where the line starts below nought, and no ceiling where mass rises with density', () => {
    const trial = (a: number, b: number): TrialRow[] =>
      [20, 40, 60, 80].map((d) => ({ density: d, mass: 1 / (a + b * d) }));
    const below = fitDensity(trial(-1, 0.1));
    expect(below.a).toBeCloseTo(-1, 8);
    expect([below.isolated, below.isolatedError]).toEqual([Number.NaN, Number.NaN]);
    expect(below.ceiling).toBeCloseTo(10, 6);
    const rising = fitDensity(trial(10, -0.1));
    expect(rising.isolated).toBeCloseTo(0.1, 8);
    expect([rising.ceiling, rising.ceilingError]).toEqual([Number.NaN, Number.NaN]);
  });

  it('gives the general form its isolated mass, a to the power -1/theta, without an error or a ceiling', () => {
    // 16^-0.5 = 0.25: a plant on its own weighs 16.
    const rows = [15, 25, 40, 70, 110, 180].map((d) => ({ density: d, mass: generalPlantMass(d, 0.25, 0.01, 0.5) }));
    const fit = fitDensity(rows, 'general');
    expect(fit.isolated).toBeCloseTo(16, 4);
    expect([fit.isolatedError, fit.ceiling, fit.ceilingError]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
  });

  it('finds the third figure of exact data in the forms of Holliday and of Farazdaghi and Harris', () => {
    const densities = [15, 25, 40, 70, 110, 180];
    const holliday = fitDensity(
      densities.map((d) => ({ density: d, mass: 1 / (3 + 0.1 * d + 0.0005 * d * d) })),
      'quadratic',
    );
    [holliday.a / 3, holliday.b / 0.1, holliday.shape / 0.0005].forEach((ratio) => {
      expect(ratio).toBeCloseTo(1, 6);
    });
    expect([holliday.ceiling, holliday.ceilingError]).toEqual([Number.NaN, Number.NaN]);
    const power = fitDensity(
      densities.map((d) => ({ density: d, mass: 1 / (3 + 0.05 * d ** 1.3) })),
      'power',
    );
    [power.a / 3, power.b / 0.05, power.shape / 1.3].forEach((ratio) => {
      expect(ratio).toBeCloseTo(1, 6);
    });
  });

  it('finds no power curve in plots that grow heavier the closer they stand', () => {
    const rising = [10, 20, 40, 80].map((d) => ({ density: d, mass: d / 100 }));
    const fit = fitDensity(rising, 'power');
    expect([fit.fault, fit.rows, fit.a, fit.curve]).toEqual(['no curve found', 4, Number.NaN, []]);
  });

  it('finds no general curve where theta runs out to nothing', () => {
    const fit = fitDensity(
      [10, 20, 40, 80].map((density) => ({ density, mass: density / 100 })),
      'general',
    );
    expect([fit.fault, fit.a, fit.curve]).toEqual(['no curve found', Number.NaN, []]);
  });

  it('answers either with finite figures or with a fault, whatever is typed', () => {
    const plot = fc.record({
      density: fc.double({ min: 1, max: 400, noNaN: true }),
      mass: fc.double({ min: 1e-3, max: 3, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(plot, { maxLength: 8 }),
        fc.constantFrom<FitForm>('reciprocal', 'general', 'quadratic', 'power'),
        (rows, form) => {
          const fit = fitDensity(rows, form);
          if (fit.fault === undefined) expect(Number.isFinite(fit.a) && Number.isFinite(fit.b)).toBe(true);
          else expect(fit.a).toBeNaN();
        },
      ),
    );
  });

  it('finds the least squares that a search along one ratio finds', () => {
    for (const trial of ['Purnong Landing', 'Virginia', 'Mead variety 1']) {
      const rows = readTable('onion-density-trials')
        .filter((row) => textOf(row, 'trial') === trial)
        .map((row) => ({ density: numberOf(row, 'density'), mass: numberOf(row, 'mass_g') }));
      const fit = fitDensity(rows);
      const ratio = fit.a / fit.b;
      expect(leastSquaresAt(rows, ratio)).toBeCloseTo(fit.sumOfSquares, 10);
      expect(goldenSection((k) => leastSquaresAt(rows, k), ratio / 10, ratio * 10) / ratio).toBeCloseTo(1, 5);
    }
  });
});

/** Sum of squares of ln(mass) for 1/w = b (k + density), with ln b at its best for this k, which is a mean. */
function leastSquaresAt(rows: readonly TrialRow[], k: number): number {
  const logs = rows.map((row) => Math.log(row.mass) + Math.log(k + row.density));
  const mean = logs.reduce((sum, value) => sum + value, 0) / logs.length;
  return logs.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}

function goldenSection(height: (x: number) => number, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  while (high - low > 1e-9 * high) {
    const left = high - golden * (high - low);
    const right = low + golden * (high - low);
    if (height(left) < height(right)) high = right;
    else low = left;
  }
  return (low + high) / 2;
}
