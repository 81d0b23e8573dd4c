// Random choices from a seed, so that a run can be repeated: the seed is printed with the test, and DIBBLE_SEED sets another.

export interface Random {
  /** From 0 up to, not including, 1. */
  next(): number;
  /** A whole number, both ends included. */
  whole(from: number, to: number): number;
  chance(share: number): boolean;
  pick<T>(list: readonly T[]): T;
}

/** Source: B. Mulvey's splitmix32, the 32-bit form of Steele, Lea and Flood 2014, "Fast splittable pseudorandom number generators". */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  };
  const whole = (from: number, to: number): number => from + Math.floor(next() * (to - from + 1));
  return {
    next,
    whole,
    chance: (share) => next() < share,
    pick: (list) => {
      const picked = list[whole(0, list.length - 1)];
      if (picked === undefined) throw new Error('nothing to pick from');
      return picked;
    },
  };
}

const USUAL = 20_270_315;

/** The seed of this run: the usual one, another by DIBBLE_SEED=77, one never seen by DIBBLE_SEED=new. */
export function seedOfRun(): number {
  const given = process.env.DIBBLE_SEED;
  if (given === 'new') return Math.floor(Math.random() * 2 ** 31) + 1;
  return Number.isInteger(Number(given)) && Number(given) > 0 ? Number(given) : USUAL;
}
