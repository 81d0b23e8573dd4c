// Dimensions: the powers of length, mass, time, temperature and money that a quantity is made of. Plain counts (plants,
// seeds, shares) have none. Used by the checker and the unit table; knows nothing of values or tables.

export interface Dimension {
  readonly length: number;
  readonly mass: number;
  readonly time: number;
  readonly temperature: number;
  readonly money: number;
}

const BASES = ['length', 'mass', 'time', 'temperature', 'money'] as const;

/** A dimension from the powers given; those left out are 0. */
export function dimension(powers: Partial<Dimension>): Dimension {
  return { length: 0, mass: 0, time: 0, temperature: 0, money: 0, ...powers };
}

export const NONE = dimension({});
export const LENGTH = dimension({ length: 1 });
export const AREA = dimension({ length: 2 });
export const VOLUME = dimension({ length: 3 });
export const MASS = dimension({ mass: 1 });
export const TIME = dimension({ time: 1 });
/** A temperature difference; a temperature itself is a type of its own. */
export const WARMTH = dimension({ temperature: 1 });
export const MONEY = dimension({ money: 1 });

function combine(f: (base: keyof Dimension) => number): Dimension {
  return {
    length: f('length'),
    mass: f('mass'),
    time: f('time'),
    temperature: f('temperature'),
    money: f('money'),
  };
}

export function multiplyDimensions(a: Dimension, b: Dimension): Dimension {
  return combine((base) => a[base] + b[base]);
}

export function divideDimensions(a: Dimension, b: Dimension): Dimension {
  return combine((base) => a[base] - b[base]);
}

/** The dimension of a quantity raised to a power; halves and thirds are kept as they are. */
export function powerOfDimension(a: Dimension, exponent: number): Dimension {
  return combine((base) => (a[base] === 0 ? 0 : a[base] * exponent));
}

/** Equal powers; dust from thirds (1e-9) is forgiven. */
export function sameDimension(a: Dimension, b: Dimension): boolean {
  return BASES.every((base) => Math.abs(a[base] - b[base]) < 1e-9);
}

export function isPlain(a: Dimension): boolean {
  return sameDimension(a, NONE);
}

const NAMED: readonly (readonly [Dimension, string])[] = [
  [NONE, 'a plain number'],
  [LENGTH, 'a length'],
  [AREA, 'an area'],
  [VOLUME, 'a volume'],
  [MASS, 'a mass'],
  [TIME, 'a time'],
  [WARMTH, 'a temperature difference'],
  [MONEY, 'an amount of money'],
  [dimension({ mass: 1, length: -2 }), 'a mass per area'],
  [dimension({ mass: 1, length: -1 }), 'a mass per length'],
  [dimension({ length: -2 }), 'a number per area'],
  [dimension({ length: -1 }), 'a number per length'],
  [dimension({ mass: -1 }), 'a number per mass'],
  [dimension({ money: 1, mass: -1 }), 'money per mass'],
  [dimension({ money: 1, length: -2 }), 'money per area'],
  [dimension({ money: 1, time: -1 }), 'money per time'],
  [dimension({ temperature: 1, time: 1 }), 'degree-days'],
  [dimension({ mass: 1, length: -3 }), 'a density'],
];

/** What a grower calls such a quantity: 'a length', 'a mass per area'; others are spelt out by their powers. */
export function nameOfDimension(a: Dimension): string {
  const named = NAMED.find(([known]) => sameDimension(known, a));
  if (named !== undefined) return named[1];
  const powers = BASES.filter((base) => a[base] !== 0).map((base) => (a[base] === 1 ? base : `${base}^${a[base]}`));
  return `a quantity of ${powers.join(' x ')}`;
}
