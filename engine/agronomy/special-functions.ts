// The special functions under the distributions: log-gamma and log-beta, and the two terms of Loader's saddle-point
// expansion. Called by the distribution files beside it; calls nothing. No recursion, no allocation.

const LN_SQRT_2PI = 0.9189385332046728;

// What Stirling's formula leaves out of ln n! for n = 1 to 15, worked out to 60 digits and rounded.
const STIRLING_ERROR_OF_WHOLE = Float64Array.of(
  Number.NaN,
  0.08106146679532726,
  0.0413406959554093,
  0.02767792568499834,
  0.020790672103765093,
  0.01664469118982119,
  0.013876128823070748,
  0.01189670994589177,
  0.010411265261972096,
  0.009255462182712733,
  0.00833056343336287,
  0.00757367548795184,
  0.00694284010720953,
  0.006408994188004207,
  0.005951370112758848,
  0.005554733551962801,
);

function stirlingSeries(x: number): number {
  const inverseSquare = 1 / (x * x);
  return (
    (1 / 12 -
      (1 / 360 -
        (1 / 1260 - (1 / 1680 - (1 / 1188 - (691 / 360360) * inverseSquare) * inverseSquare) * inverseSquare) *
          inverseSquare) *
        inverseSquare) /
    x
  );
}

/**
 * Natural logarithm of the gamma function for x > 0, absolute error about 1e-15 of its size; elsewhere no answer.
 * Stirling's series from 15 up, the recurrence x gamma(x) = gamma(x + 1) below.
 */
export function logGamma(x: number): number {
  if (!(x > 0)) return Number.NaN;
  if (x === 1 || x === 2) return 0;
  let shifted = x;
  let product = 1;
  while (shifted < 15) {
    product *= shifted;
    shifted += 1;
  }
  const stirling = (shifted - 0.5) * Math.log(shifted) - shifted + LN_SQRT_2PI + stirlingSeries(shifted);
  return product === 1 ? stirling : stirling - Math.log(product);
}

/** What stirlingError loses from n to n + 1, n from 0.5 up: atanh(z) / z - 1 at z = 1 / (2n + 1), as its series. */
function stirlingStep(n: number): number {
  const square = 1 / (2 * n + 1) ** 2;
  let term = square;
  let sum = term / 3;
  for (let odd = 5; odd < 200; odd += 2) {
    term *= square;
    const next = sum + term / odd;
    if (next === sum) return sum;
    sum = next;
  }
  return sum;
}

/** ln n! less Stirling's (n + 1/2) ln n - n + ln sqrt(2 pi), for n > 0. Source: C. Loader 2000, "Fast and Accurate Computation of Binomial Probabilities". */
export function stirlingError(n: number): number {
  if (n > 15) return stirlingSeries(n);
  const whole = STIRLING_ERROR_OF_WHOLE[n];
  if (whole !== undefined) return whole;
  if (n < 0.5) return logGammaOnePlus(n) - (n + 0.5) * Math.log(n) + n - LN_SQRT_2PI;
  let shifted = n;
  let steps = 0;
  for (; shifted <= 15; shifted += 1) steps += stirlingStep(shifted);
  return steps + stirlingSeries(shifted);
}

/**
 * Deviance x ln(x / mean) + mean - x without the loss of digits where x is close to the mean.
 * Source: C. Loader 2000, as stirlingError.
 */
export function deviance(x: number, mean: number): number {
  const difference = x - mean;
  if (Math.abs(difference) < 0.1 * (x + mean)) {
    const v = difference / (x + mean);
    let sum = difference * v;
    let term = 2 * x * v;
    const square = v * v;
    for (let odd = 3; odd < 2000; odd += 2) {
      term *= square;
      const next = sum + term / odd;
      if (next === sum) return sum;
      sum = next;
    }
    return sum;
  }
  return x * Math.log(x / mean) - difference;
}

/** Natural logarithm of the beta function, a and b > 0. Source: the split by size of Didonato & Morris 1992, ACM TOMS 18:360-373. */
export function logBeta(a: number, b: number): number {
  const small = Math.min(a, b);
  const large = Math.max(a, b);
  const sum = small + large;
  if (small >= 10) {
    return (
      LN_SQRT_2PI -
      0.5 * Math.log(large) +
      (stirlingSeries(small) + stirlingSeries(large) - stirlingSeries(sum)) +
      (small - 0.5) * Math.log(small / sum) +
      large * Math.log1p(-small / sum)
    );
  }
  // Below, logGamma gives no answer where one of the two is not above zero.
  if (large >= 10) {
    return (
      logGamma(small) +
      (stirlingSeries(large) - stirlingSeries(sum)) +
      small -
      small * Math.log(sum) +
      (large - 0.5) * Math.log1p(-small / sum)
    );
  }
  return logGamma(small) + (logGamma(large) - logGamma(sum));
}

/** What the zeta function has above 1 at 2, 3 ... 31: the powers of 2 to 29 added, the rest by the formula of Euler and Maclaurin. */
const ZETA_ABOVE_1 = Float64Array.from({ length: 30 }, (_, index) => {
  const k = index + 2;
  const last = 30;
  let sum = 0;
  for (let n = last - 1; n >= 2; n -= 1) sum += n ** -k;
  const end = last ** -k;
  const correction =
    k / (12 * last) -
    (k * (k + 1) * (k + 2)) / (720 * last ** 3) +
    (k * (k + 1) * (k + 2) * (k + 3) * (k + 4)) / (30240 * last ** 5) -
    (k * (k + 1) * (k + 2) * (k + 3) * (k + 4) * (k + 5) * (k + 6)) / (1209600 * last ** 7);
  return sum + end * (last / (k - 1) + 0.5 + correction);
});

const ONE_LESS_EULER = 0.42278433509846713;

/**
 * ln gamma(1 + x) for x from -0.5 to 0.5, to full relative accuracy near 0. Source: Abramowitz & Stegun 1964, Handbook of
 * Mathematical Functions, 6.1.33.
 */
export function logGammaOnePlus(x: number): number {
  let sum = 0;
  for (let index = ZETA_ABOVE_1.length - 1; index >= 0; index -= 1) {
    const k = index + 2;
    const term = (ZETA_ABOVE_1[index] ?? 0) / k;
    sum = (k % 2 === 0 ? term : -term) + sum * x;
  }
  return x * ONE_LESS_EULER - Math.log1p(x) + x * x * sum;
}
