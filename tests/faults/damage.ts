// Damage to texts, bytes and plain data, made by chance: what disks, editors, other programs and people with bad intent do to
// files. Trials of files call it.

import type { Random } from '../differential/random.ts';

export type Way = readonly (string | number)[];

/** Every place in plain data, as the way to it; the whole first. */
export function waysIn(value: unknown, way: Way = []): Way[] {
  if (typeof value !== 'object' || value === null) return [way];
  const inside = Object.entries(value).flatMap(([key, one]) =>
    waysIn(one, [...way, Array.isArray(value) ? Number(key) : key]),
  );
  return [way, ...inside];
}

/** A copy in which `change` has had what stands at the way; undefined takes it out. */
export function changedAt(value: unknown, way: Way, change: (old: unknown) => unknown): unknown {
  const [step, ...rest] = way;
  if (step === undefined) return change(value);
  if (Array.isArray(value)) {
    return value.flatMap((one: unknown, at) => {
      const next = at === step ? changedAt(one, rest, change) : one;
      return next === undefined ? [] : [next];
    });
  }
  const entries = Object.entries(Object(value)).map(([key, one]): [string, unknown] => [
    key,
    key === step ? changedAt(one, rest, change) : one,
  ]);
  return Object.fromEntries(entries.filter(([, one]) => one !== undefined));
}

/** One to eight bytes changed, put in, taken out or moved. */
export function damagedBytes(bytes: Uint8Array, random: Random): Uint8Array {
  let damaged = [bytes];
  for (let turn = random.whole(1, 8); turn > 0; turn--) {
    const whole = Buffer.concat(damaged);
    const at = random.whole(0, whole.length);
    const byte = Uint8Array.of(random.whole(0, 255));
    const length = random.whole(1, random.chance(0.1) ? 400 : 4);
    const [before, behind] = [whole.subarray(0, at), whole.subarray(at)];
    damaged = random.pick([
      () => [before, byte, behind.subarray(1)],
      () => [before, byte, behind],
      () => [before, behind.subarray(length)],
      () => [before, whole.subarray(0, length), behind],
      () => [before, Uint8Array.of((behind[0] ?? 0) ^ (1 << random.whole(0, 7))), behind.subarray(1)],
    ])();
  }
  return new Uint8Array(Buffer.concat(damaged));
}

/** Names that mean something to programs, and others that no one would choose. */
export const HOSTILE_NAMES: readonly string[] = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  'length',
  '',
  ' ',
  'a b',
  '../../x',
  '<img src=x onerror=alert(1)>',
  '=1+1',
  '\u0000',
  '\u202egnp.exe',
  '\ud800',
  'x'.repeat(10_000),
];

export const HOSTILE_NUMBERS: readonly number[] = [
  0,
  -0,
  1,
  -1,
  0.1,
  1e308,
  -1e308,
  5e-324,
  2 ** 53 + 2,
  1e21,
  -2_147_483_649,
  4_294_967_296,
];

/** What stands where something else should. */
export function oddValue(random: Random): unknown {
  return random.pick<() => unknown>([
    () => null,
    () => true,
    () => random.pick(HOSTILE_NUMBERS),
    () => random.pick(HOSTILE_NAMES),
    () => [],
    () => ({}),
    () => [random.pick(HOSTILE_NUMBERS), random.pick(['in', 'ft', 'lb', 'nosuch', 'm^400', '1/h', ''])],
    () => [1, 'in', 'ft', 'more'],
    () => ({ date: random.pick(['2027-03-15', '2027-02-30', '0000-00-00', '99999-01-01']) }),
    () => ({ row: random.pick(['r1', 'nowhere', ...HOSTILE_NAMES]) }),
    () => ({ [random.pick(HOSTILE_NAMES)]: 1 }),
    () => 'entry',
  ])();
}
