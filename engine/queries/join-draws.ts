// Seasons shared out among workers, and put together as if one had drawn them all.

import type { DrawnWeeks } from './drawn-figures.ts';
import type { Drawn } from './draws.ts';

/** So many seasons in shares, as evenly as can be: from the first up to the last but one of each. */
export function sharesOf(count: number, among: number): readonly (readonly [from: number, until: number])[] {
  const shares = Math.min(count, among);
  return Array.from({ length: shares }, (_, at) => [
    Math.round((at * count) / shares),
    Math.round(((at + 1) * count) / shares),
  ]);
}

/** A share as it is sent to whoever shared them out: the types of figures hold functions and stay behind. */
export function toBeSent({ inputs, figures, weekly }: Drawn): Drawn {
  return {
    inputs,
    figures: figures.map(({ values }) => ({ type: undefined, values })),
    weekly: weekly.map(({ weeks }) => ({ type: undefined, weeks })),
  };
}

/** In the order of the seasons; all parts of one draw, so of the same inputs and figures. */
export function joinDrawn(parts: readonly Drawn[]): Drawn {
  const [first] = parts;
  if (first === undefined || parts.length === 1) return first ?? { inputs: [], figures: [], weekly: [] };
  return {
    inputs: first.inputs.map((input, i) => {
      return { ...input, values: joined(parts.map(({ inputs }) => inputs[i]?.values)) };
    }),
    figures: first.figures.map((figure, i) => {
      return { ...figure, values: joined(parts.map(({ figures }) => figures[i]?.values)) };
    }),
    weekly: first.weekly.map((figure, i) => {
      return { type: figure.type, weeks: joinedWeeks(parts.map((part) => [part.weekly[i], seasonsOf(part)])) };
    }),
  };
}

function seasonsOf({ inputs: [input] }: Drawn): number {
  return input?.values.length ?? 0;
}

function joined(parts: readonly (Float64Array | undefined)[]): Float64Array {
  const all = new Float64Array(parts.reduce((length, part) => length + (part?.length ?? 0), 0));
  let at = 0;
  for (const part of parts) {
    if (part !== undefined) all.set(part, at);
    at += part?.length ?? 0;
  }
  return all;
}

/** A week that one worker's seasons never came to has no figure in any of them. */
function joinedWeeks(parts: readonly (readonly [DrawnWeeks | undefined, number])[]): DrawnWeeks['weeks'] {
  const weeks = new Set(parts.flatMap(([part]) => part?.weeks.map(({ week }) => week) ?? []));
  return [...weeks]
    .sort((a, b) => a - b)
    .map((week) => ({
      week,
      values: joined(
        parts.map(([part, seasons]) => {
          return part?.weeks.find((one) => one.week === week)?.values ?? new Float64Array(seasons).fill(Number.NaN);
        }),
      ),
    }));
}
