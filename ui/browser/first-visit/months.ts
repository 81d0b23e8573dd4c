// Twelve months of lows and highs out of what a person pastes: a table with a line a month, or a line of lows and a line of highs,
// with or without names of months and heads. Says in a sentence what is missing. Pure.

export interface MonthMeans {
  readonly low: number;
  readonly high: number;
}

export type MonthsRead =
  | { readonly ok: true; readonly months: readonly MonthMeans[] }
  | { readonly ok: false; readonly why: string };

const MONTHS = 12;

export function readMonths(text: string): MonthsRead {
  const lines = text
    .split(/\r?\n/)
    .map(figuresOf)
    .filter((figures) => figures.length > 0);
  const wide = lines.filter((figures) => figures.length === MONTHS);
  const tall = lines.filter((figures) => figures.length >= 2 && figures.length < MONTHS);
  const pairs =
    wide.length === 2
      ? (wide[0] ?? []).map((figure, index) => [figure, wide[1]?.[index] ?? figure])
      : tall.length === MONTHS
        ? tall.map((figures) => figures.slice(-2))
        : undefined;
  if (pairs === undefined) {
    return {
      ok: false,
      why: `Twelve months are wanted, a line each with its low and its high (or a line of twelve lows and one of twelve highs); ${tall.length} ${tall.length === 1 ? 'line' : 'lines'} could be read.`,
    };
  }
  const months = pairs.map(([a = 0, b = 0]): MonthMeans => ({ low: Math.min(a, b), high: Math.max(a, b) }));
  return { ok: true, months };
}

/** The figures of a line; a number of the month at its front is taken for one only where two others follow. */
function figuresOf(line: string): readonly number[] {
  const found = line.match(/[-\u2212]?\d+(?:[.,]\d+)?/g) ?? [];
  return found.map((figure) => Number(figure.replace('\u2212', '-').replace(',', '.')));
}
