// Streams of chance for drawn seasons: one for each input, by a seed and the input's id, so that what is drawn for one is the
// same whatever other inputs there are. By xoroshiro128+ of pure-rand, on whole numbers alone: the same on any machine.

import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { StreamOf } from '../engine/index.ts';

/** Kept with what was drawn, so that it can be drawn again. */
export const CHANCE = 'xoroshiro128plus';

export function streams(seed: number): StreamOf {
  return (inputId) => {
    const generator = xoroshiro128plus(mixed(seed, inputId));
    // 53 of 64 bits, as many as a double between 0 and 1 holds.
    return () => ((generator.next() >>> 5) * 2 ** 26 + (generator.next() >>> 6)) / 2 ** 53;
  };
}

/** A seed of 32 bits from a seed and a text (Fowler, Noll & Vo, FNV-1a). */
function mixed(seed: number, text: string): number {
  let hash = 0x811c9dc5 ^ seed;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return hash | 0;
}
