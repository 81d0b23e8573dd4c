// Numbers that look like chance and are the same again for the same seed, so that a search can be repeated. Handed to the
// searches of this folder by whoever starts them; calls nothing.

/**
 * A source of numbers from 0 up to but not 1, by a seed (Marsaglia 2003, Xorshift RNGs, Journal of Statistical Software 8:
 * the 32-bit generator with shifts 13, 17 and 5). Any seed will do; 0 stands for 1.
 */
export function seededNumbers(seed: number): () => number {
  let state = seed | 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}
