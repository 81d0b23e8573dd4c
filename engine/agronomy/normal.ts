// The normal distribution at near double accuracy. Called by the distributions, seed viability, frost dates and grade
// shares; calls nothing.

const ONE_OVER_SQRT_2PI = 0.3989422804014327;

/** Density of the standard normal distribution at z. */
export function standardNormalPdf(z: number): number {
  return ONE_OVER_SQRT_2PI * Math.exp(-0.5 * z * z);
}

// exp(-y^2 / 2) with y split so that the square is exact: keeps the relative error of far tails small.
function halfSquareExponential(y: number): number {
  const coarse = Math.trunc(y * 16) / 16;
  return Math.exp(-coarse * coarse * 0.5) * Math.exp(-(y - coarse) * (y + coarse) * 0.5);
}

function upperTail(y: number): number {
  if (y <= 5.656854249492381) {
    const top =
      (((((((1.0765576773720192e-8 * y + 0.39894151208813466) * y + 8.883149794388377) * y + 93.50665613217785) * y +
        597.2702763948002) *
        y +
        2494.5375852903726) *
        y +
        6848.190450536283) *
        y +
        11602.65143764735) *
        y +
      9842.714838383978;
    const bottom =
      (((((((y + 22.266688044328117) * y + 235.387901782625) * y + 1519.3775994075547) * y + 6485.558298266761) * y +
        18615.571640885097) *
        y +
        34900.95272114598) *
        y +
        38912.00328609327) *
        y +
      19685.429676859992;
    return halfSquareExponential(y) * (top / bottom);
  }
  if (y > 38.5) return 0;
  const s = 1 / (y * y);
  const top =
    ((((0.023073441764940174 * s + 0.215898534057957) * s + 0.12740116116024736) * s + 0.022235277870649807) * s +
      0.0014216191932278934) *
      s +
    0.000029112874951168793;
  const bottom =
    ((((s + 1.284260096144911) * s + 0.4682382124808651) * s + 0.06598813786892856) * s + 0.0037823963320275824) * s +
    0.00007297515550839662;
  return halfSquareExponential(y) * ((ONE_OVER_SQRT_2PI - s * (top / bottom)) / y);
}

/**
 * Share of the standard normal distribution at or below z, both tails to full relative accuracy.
 * Source: W. J. Cody 1969, "Rational Chebyshev approximations for the error function", Math. Comp. 23:631-638, in the
 * form of Cody 1993 (ACM Algorithm 715, ANORM).
 */
export function standardNormalCdf(z: number): number {
  if (Number.isNaN(z)) return Number.NaN;
  if (Math.abs(z) <= 0.67448975) {
    const s = z * z;
    const top =
      (((0.06568233791820745 * s + 2.2352520354606837) * s + 161.02823106855587) * s + 1067.6894854603709) * s +
      18154.98125334356;
    const bottom =
      (((s + 47.202581904688245) * s + 976.0985517377767) * s + 10260.932208618979) * s + 45507.78933502673;
    return 0.5 + z * (top / bottom);
  }
  return z < 0 ? upperTail(-z) : 1 - upperTail(z);
}

function centralQuantile(q: number): number {
  const r = 0.180625 - q * q;
  return (
    (q *
      (((((((r * 2509.0809287301227 + 33430.57558358813) * r + 67265.7709270087) * r + 45921.95393154987) * r +
        13731.69376550946) *
        r +
        1971.5909503065513) *
        r +
        133.14166789178438) *
        r +
        3.3871328727963665)) /
    (((((((r * 5226.495278852854 + 28729.085735721943) * r + 39307.89580009271) * r + 21213.794301586597) * r +
      5394.196021424751) *
      r +
      687.1870074920579) *
      r +
      42.31333070160091) *
      r +
      1)
  );
}

// Distance from the middle of the point with `tail` beyond it, tail <= 0.075.
function tailQuantile(tail: number): number {
  let r = Math.sqrt(-Math.log(tail));
  if (r <= 5) {
    r -= 1.6;
    return (
      (((((((r * 0.0007745450142783414 + 0.022723844989269184) * r + 0.2417807251774506) * r + 1.2704582524523684) * r +
        3.6478483247632045) *
        r +
        5.769497221460691) *
        r +
        4.630337846156546) *
        r +
        1.4234371107496835) /
      (((((((r * 1.0507500716444169e-9 + 0.0005475938084995345) * r + 0.015198666563616457) * r + 0.14810397642748008) *
        r +
        0.6897673349851) *
        r +
        1.6763848301838038) *
        r +
        2.053191626637759) *
        r +
        1)
    );
  }
  r -= 5;
  return (
    (((((((r * 2.0103343992922881e-7 + 0.000027115555687434876) * r + 0.0012426609473880784) * r +
      0.026532189526576124) *
      r +
      0.29656057182850487) *
      r +
      1.7848265399172913) *
      r +
      5.463784911164114) *
      r +
      6.657904643501103) /
    (((((((r * 2.0442631033899397e-15 + 1.421511758316446e-7) * r + 0.000018463183175100548) * r +
      0.0007868691311456133) *
      r +
      0.014875361290850615) *
      r +
      0.1369298809227358) *
      r +
      0.599832206555888) *
      r +
      1)
  );
}

/**
 * The z with `share` of the standard normal distribution below it, 0 < share < 1; minus or plus infinity at 0 and 1,
 * no answer outside. Source: M. J. Wichura 1988, Algorithm AS 241 (PPND16), Applied Statistics 37:477-484.
 */
export function standardNormalQuantile(share: number): number {
  if (!(share >= 0 && share <= 1)) return Number.NaN;
  if (share === 0) return Number.NEGATIVE_INFINITY;
  if (share === 1) return Number.POSITIVE_INFINITY;
  const q = share - 0.5;
  if (Math.abs(q) <= 0.425) return centralQuantile(q);
  return q < 0 ? -tailQuantile(share) : tailQuantile(1 - share);
}

/** Density at x of the normal distribution with this mean and standard deviation > 0. */
export function normalPdf(x: number, mean: number, deviation: number): number {
  if (!(deviation > 0)) return Number.NaN;
  return standardNormalPdf((x - mean) / deviation) / deviation;
}

/** Share at or below x of the normal distribution with this mean and standard deviation > 0. */
export function normalCdf(x: number, mean: number, deviation: number): number {
  if (!(deviation > 0)) return Number.NaN;
  return standardNormalCdf((x - mean) / deviation);
}

/** The value with `share` (0 < share < 1) of the normal distribution below it. */
export function normalQuantile(share: number, mean: number, deviation: number): number {
  if (!(deviation > 0) || !(share > 0 && share < 1)) return Number.NaN;
  return mean + deviation * standardNormalQuantile(share);
}
