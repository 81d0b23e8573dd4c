// Learned figures as functions: the library's figure and the farm's own, weighted, and how the farm's own scatter. The model stands
// in agronomy/learning.ts; read by trade/index.ts.

import { type Learned, learn } from '../../agronomy/learning.ts';
import type { Parameter } from '../../language/signature.ts';
import type { FunctionDefinition } from '../definition.ts';
import { alike, numeric, overMatching, plain, SHARE } from './build.ts';
import { numberOf, numbersOf } from './over-days.ts';

const SOURCE = 'Gelman and others 2013, Bayesian Data Analysis, third edition, sections 2.5 and 2.6';

const RECORDS: readonly Parameter[] = [
  alike('library', 'A'),
  alike('library_low', 'A', { optional: true }),
  alike('library_high', 'A', { optional: true }),
  plain('observations'),
  alike('mean', 'A'),
  alike('deviation', 'A', { optional: true }),
];

function learned(numbers: readonly number[]): Learned | undefined {
  const [figure = Number.NaN, low = Number.NaN, high = Number.NaN, count = Number.NaN, mean = Number.NaN, deviation] =
    numbers;
  return learn({ figure, low, high }, { count, mean, deviation: deviation ?? Number.NaN });
}

type Gives = Parameters<typeof numeric>[0]['gives'];

const LIKE_THE_FIGURE: Gives = { is: 'letter', letter: 'A', among: 'numbers' };

function over(name: string, doc: string, gives: Gives, read: (one: Learned) => number): FunctionDefinition {
  return numeric({ name, group: 'records', parameters: RECORDS, gives, doc, source: SOURCE }, (...numbers) => {
    const one = learned(numbers);
    return one === undefined ? Number.NaN : read(one);
  });
}

const NOTED: Parameter = {
  name: 'values',
  pattern: { is: 'column', of: { is: 'letter', letter: 'A', among: 'numbers' } },
};

export const LEARNING: readonly FunctionDefinition[] = [
  overMatching(
    {
      name: 'SQUARESIFS',
      group: 'records',
      parameters: [alike('around', 'A')],
      result: { is: 'power', letter: 'A', exponent: 2 },
      doc: 'Squares of how far values lie from a figure, added up over the rows that meet the conditions; 0 where none do.',
      source: 'Arithmetic',
    },
    [NOTED],
    ([around = null], [values = []]) =>
      typeof around === 'number'
        ? numbersOf(values).reduce(
            (sum, value) => (Number.isNaN(value) ? sum : sum + (value - numberOf(around)) ** 2),
            0,
          )
        : null,
  ),
  over(
    'LEARNED',
    "A figure out of the library's and the mean of the farm's observations, each weighted by how sure it is.",
    LIKE_THE_FIGURE,
    (one) => one.figure,
  ),
  over(
    'LEARNEDLOW',
    'Low end of a learned figure: nine times in ten the farm’s own lies between it and the high end.',
    LIKE_THE_FIGURE,
    (one) => one.low,
  ),
  over('LEARNEDHIGH', 'High end of a learned figure.', LIKE_THE_FIGURE, (one) => one.high),
  over(
    'LEARNEDWEIGHT',
    "Share of the weight that the farm's observations have in a learned figure.",
    SHARE,
    (one) => one.weight,
  ),
];
