// Angles, in radians, and hyperbolic functions. Read by standard/index.ts.

import { failure, finite, makers, needed, numbers, plain, takes } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';

const make = makers('mathematics');

const OUT_OF_RANGE = failure('number', 'Outside the numbers that have an answer here: check what goes in.');
const BY_ZERO = failure('divide', 'Divided by 0: check what goes in.');

const ONE_PLAIN = takes(needed('number', plain));

function plainFunction(
  name: string,
  doc: string,
  section: string,
  compute: (x: number) => number,
  undefinedMeans = OUT_OF_RANGE,
): FunctionDefinition {
  return make.numeric(name, doc, section, ONE_PLAIN, plain, compute, undefinedMeans);
}

/** Between 0 and pi; by the reciprocal, so that large numbers keep their digits. */
function arcCotangent(x: number): number {
  if (x === 0) return Math.PI / 2;
  return x > 0 ? Math.atan(1 / x) : Math.PI + Math.atan(1 / x);
}

export const TRIGONOMETRY: readonly FunctionDefinition[] = [
  plainFunction('DEGREES', 'An angle in radians as degrees.', '6.16.25', (x) => (x * 180) / Math.PI),
  plainFunction('RADIANS', 'An angle in degrees as radians.', '6.16.49', (x) => (x * Math.PI) / 180),
  plainFunction('SIN', 'Sine of an angle in radians.', '6.16.55', Math.sin),
  plainFunction('COS', 'Cosine of an angle in radians.', '6.16.19', Math.cos),
  plainFunction('TAN', 'Tangent of an angle in radians.', '6.16.69', Math.tan),
  plainFunction('COT', 'Cotangent of an angle in radians.', '6.16.21', (x) => finite(1 / Math.tan(x)), BY_ZERO),
  plainFunction('ASIN', 'The angle in radians whose sine this is.', '6.16.7', Math.asin),
  plainFunction('ACOS', 'The angle in radians whose cosine this is.', '6.16.3', Math.acos),
  plainFunction('ATAN', 'The angle in radians whose tangent this is.', '6.16.9', Math.atan),
  plainFunction('ACOT', 'The angle in radians, 0 to pi, whose cotangent this is.', '6.16.5', arcCotangent),
  make.numeric(
    'ATAN2',
    'The angle in radians from the x axis to the point (x; y).',
    '6.16.10',
    takes(needed('x', numbers('A')), needed('y', numbers('A'))),
    plain,
    // Nought has no sign here: -0 is on the upper side as 0 is.
    (x, y) => (x === 0 && y === 0 ? Number.NaN : Math.atan2(y + 0, x)),
    BY_ZERO,
  ),
  plainFunction('SINH', 'Hyperbolic sine.', '6.16.56', (x) => finite(Math.sinh(x))),
  plainFunction('COSH', 'Hyperbolic cosine.', '6.16.20', (x) => finite(Math.cosh(x))),
  plainFunction('TANH', 'Hyperbolic tangent.', '6.16.70', Math.tanh),
  plainFunction('COTH', 'Hyperbolic cotangent.', '6.16.22', (x) => finite(1 / Math.tanh(x)), BY_ZERO),
  plainFunction('ASINH', 'The number whose hyperbolic sine this is.', '6.16.8', Math.asinh),
  plainFunction('ACOSH', 'The number from 0 on whose hyperbolic cosine this is.', '6.16.4', Math.acosh),
  plainFunction('ATANH', 'The number whose hyperbolic tangent this is.', '6.16.11', (x) => finite(Math.atanh(x))),
  plainFunction('ACOTH', 'The number whose hyperbolic cotangent this is.', '6.16.6', (x) => finite(Math.atanh(1 / x))),
];
