// Exact ratios of whole numbers, so that factors given as decimals (0.3048, 4046.8564224) and their products stay exact
// until one division is made. Used while units are made, never while values are calculated; calls nothing.

export interface Ratio {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

export const WHOLE: Ratio = { numerator: 1n, denominator: 1n };

function reduced(numerator: bigint, denominator: bigint): Ratio {
  let [a, b] = [numerator < 0n ? -numerator : numerator, denominator];
  while (b !== 0n) [a, b] = [b, a % b];
  return a === 0n ? { numerator, denominator } : { numerator: numerator / a, denominator: denominator / a };
}

/** The ratio that a decimal ('0.0254', '5e-7') or a quotient of two decimals ('1/1440') stands for, exactly. */
export function ratio(text: string): Ratio {
  const [over, under] = text.split('/');
  const top = decimal(over ?? '');
  return under === undefined ? top : multiplyRatios(top, invertRatio(decimal(under)));
}

function decimal(text: string): Ratio {
  const [mantissa = '0', exponent = '0'] = text.toLowerCase().split('e');
  const [whole = '0', fraction = ''] = mantissa.split('.');
  const digits = BigInt(whole + fraction);
  const tens = Number(exponent) - fraction.length;
  return tens >= 0 ? reduced(digits * 10n ** BigInt(tens), 1n) : reduced(digits, 10n ** BigInt(-tens));
}

export function multiplyRatios(a: Ratio, b: Ratio): Ratio {
  return reduced(a.numerator * b.numerator, a.denominator * b.denominator);
}

function invertRatio(a: Ratio): Ratio {
  return { numerator: a.denominator, denominator: a.numerator };
}

/** Whole exponents exactly; others through the nearest double. */
export function powerRatio(a: Ratio, exponent: number): Ratio {
  if (exponent < 0) return powerRatio(invertRatio(a), -exponent);
  if (Number.isInteger(exponent)) {
    const times = BigInt(exponent);
    return { numerator: a.numerator ** times, denominator: a.denominator ** times };
  }
  return ratio(String((Number(a.numerator) / Number(a.denominator)) ** exponent));
}

/** Numerator and denominator as doubles: exact up to 2^53 and for powers of ten, else the nearest. */
export function doubles(a: Ratio): { readonly numerator: number; readonly denominator: number } {
  return { numerator: Number(a.numerator), denominator: Number(a.denominator) };
}
