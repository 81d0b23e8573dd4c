// What is said of a word after a number that is no unit. Called by the checker, and by whoever hands the parser its unit
// words, so that both say the same.

import type { Vocabulary } from '../units/vocabulary.ts';

export interface UnknownUnit {
  readonly why: string;
  readonly fix?: string;
}

/** Why the word is no unit here, and the nearest one where one is near. */
export function unknownUnit(symbol: string, vocabulary: Vocabulary): UnknownUnit {
  const nearest = vocabulary.nearest(symbol);
  const why =
    vocabulary.refusal(symbol) ??
    (nearest === undefined
      ? `${symbol} is not a unit that Dibble knows.`
      : `${symbol} is not a unit that Dibble knows; the nearest is ${nearest}.`);
  return nearest === undefined ? { why } : { why, fix: nearest };
}
