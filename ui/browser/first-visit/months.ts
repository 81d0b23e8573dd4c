// Twelve months of lows and highs out of what a person pastes: a table with a line a month, or a line of lows and a line of highs,
// with or without names or numbers of months, from any month on, a year's figure at the end, and heads. What could be meant in two
// ways is asked for rather than guessed. Pure.

import { type FiguresLine, figuresIn, type Scale } from './month-figures.ts';
import { type MonthNames, monthOfLine, monthsFrom, monthsNumbered, monthsOfHead } from './month-order.ts';

export interface MonthMeans {
  readonly low: number;
  readonly high: number;
}

export type MonthsRead =
  | {
      readonly ok: true;
      /** From January. */
      readonly months: readonly MonthMeans[];
      /** That was typed with them; undefined where none was. */
      readonly scale: Scale | undefined;
    }
  | { readonly ok: false; readonly why: string };

/** Lows and highs of the months in the order of the table, or what is missing or unclear. */
type Table = { readonly order: readonly number[]; readonly means: readonly MonthMeans[] } | { readonly why: string };

const MONTHS = 12;
const LOW = /\b(?:t[_-]?min|min(?:imum|ima)?|lo|lows?|lowest|coldest|nights?|night-?time)\b/i;
const HIGH = /\b(?:t[_-]?max|max(?:imum|ima)?|hi|highs?|highest|warmest|day-?time)\b/i;
/** Of single years rather than of the usual one. */
const RECORD = /record|extreme|absolute/i;
/** Of something else than the warmth of the air. */
const OTHER =
  /\b(?:rain(?:fall|y)?|precip(?:itation)?|snow(?:fall)?|humidity|winds?|sun(?:shine|ny)?|soil|hours|days|mm|cm|inch(?:es)?|hpa|mbar)\b|%/i;
const OF_THE_YEAR = /year|annual|mean|average|total/i;

/**
 * The lows and highs of twelve months, in the scale they were typed in; in a sentence what is missing or unclear otherwise.
 * `names` are the months as the workbook's locale has them, beside the English ones.
 */
export function readMonths(text: string, names: MonthNames = []): MonthsRead {
  const { lines, scale, mixed, bracketed } = figuresIn(text);
  if (mixed) return { ok: false, why: 'Some figures are in °C and some in °F: type all of them in one.' };
  if (bracketed) {
    return { ok: false, why: 'Some figures stand in brackets: write a minus in front of those that are below zero.' };
  }
  const wide = lines.filter(({ figures }) => figures.length === MONTHS || figures.length === MONTHS + 1);
  const numbers = wide.find(({ figures }) => monthsNumbered(figures) !== undefined);
  const held = wide.filter((line) => line !== numbers);
  const table = held.length >= 2 ? acrossLines(held, orderAcross(lines, numbers, names)) : downLines(lines, names);
  if ('why' in table) return { ok: false, why: table.why };
  const months = monthsFrom(0).map((month) => table.means[table.order.indexOf(month)] ?? { low: 0, high: 0 });
  return { ok: true, months, scale };
}

/** The months of wide lines: as a head names or numbers them, from January where none does. */
function orderAcross(
  lines: readonly FiguresLine[],
  numbers: FiguresLine | undefined,
  names: MonthNames,
): readonly number[] {
  const named = lines.flatMap(({ text }) => {
    const order = monthsOfHead(text, names);
    return order === undefined ? [] : [order];
  });
  return named[0] ?? monthsNumbered(numbers?.figures ?? []) ?? monthsFrom(0);
}

/** A line of lows and one of highs; the words at their front tell them apart, from each other and from all else. */
function acrossLines(wide: readonly FiguresLine[], order: readonly number[]): Table {
  const meant = wide.filter(({ text }) => !RECORD.test(text) && !OTHER.test(text));
  const named = (kind: RegExp): readonly FiguresLine[] => meant.filter(({ text }) => kind.test(text));
  const lows = named(LOW);
  const highs = named(HIGH);
  const bare = meant.filter(({ text }) => labelOf(text) === '');
  const [low, high] =
    bare.length === 2 && lows.length + highs.length === 0
      ? bare
      : [
          only(lows) ?? (lows.length === 0 ? only(bare) : undefined),
          only(highs) ?? (highs.length === 0 ? only(bare) : undefined),
        ];
  if (low !== undefined && high !== undefined && low !== high) {
    return { order, means: monthsFrom(0).map((at) => means(low.figures[at] ?? 0, high.figures[at] ?? 0)) };
  }
  const called = wide.map(({ text }) => labelOf(text)).filter((label) => label !== '');
  const said = called.length === 0 ? '' : ` (${called.map((label) => `“${label}”`).join(', ')})`;
  return {
    why: `${wide.length} lines hold twelve months each${said}, and which are the lows and the highs is not clear: leave those two alone, or write “low” and “high” in front of them.`,
  };
}

/** What a line of figures is called: its letters, without the scale. */
function labelOf(text: string): string {
  return (text.replace(/°[CF]?/g, ' ').match(/\p{L}[\p{L}\p{M}_-]*/gu) ?? []).join(' ');
}

/** A line a month. */
function downLines(lines: readonly FiguresLine[], names: MonthNames): Table {
  const tall = linesOfMonths(lines, names);
  if (tall.length !== MONTHS) {
    const count = `${tall.length} ${tall.length === 1 ? 'line' : 'lines'}`;
    return {
      why: `Twelve months are wanted, a line each with its low and its high (or a line of twelve lows and one of twelve highs); ${count} could be read.`,
    };
  }
  const [width, ...others] = new Set(tall.map(({ figures }) => figures.length));
  if (width === undefined || others.length > 0) {
    return { why: 'Some of the twelve lines hold more figures than others: leave each its low and its high.' };
  }
  const { front, numbered } = namesOfMonths(tall);
  const order = orderDown(tall, numbered, names);
  if (order === undefined) {
    return { why: 'Which line is which month is not clear: begin all twelve with their months, or none of them.' };
  }
  const places = headed(lines.slice(0, lines.indexOf(tall[0] ?? { text: '', figures: [] })), width, front);
  if (places === undefined) {
    return {
      why: `Each line holds ${width - front} figures, and which are the low and the high is not clear: leave those two alone, or write heads in a line above, such as “low” and “high”.`,
    };
  }
  const [low, high] = places;
  return { order, means: tall.map(({ figures }) => means(figures[low] ?? 0, figures[high] ?? 0)) };
}

/** The lines that have a month's figures: those that name the twelve months, else all of two figures and more but the year's. */
function linesOfMonths(lines: readonly FiguresLine[], names: MonthNames): readonly FiguresLine[] {
  const tall = lines.filter(({ figures }) => figures.length >= 2 && figures.length < MONTHS);
  const named = tall.filter(({ text }) => monthOfLine(text, names) !== undefined);
  if (named.length === MONTHS) return named;
  const hasYear = tall.length === MONTHS + 1 && OF_THE_YEAR.test(tall[MONTHS]?.text ?? '');
  return hasYear ? tall.slice(0, MONTHS) : tall;
}

/** The months of twelve lines: as they name or number them, from January where they do neither; undefined where that is not clear. */
function orderDown(
  tall: readonly FiguresLine[],
  numbered: readonly number[] | undefined,
  names: MonthNames,
): readonly number[] | undefined {
  const named = tall.map(({ text }) => monthOfLine(text, names));
  const order = named.flatMap((month) => month ?? []);
  if (new Set(order).size === MONTHS) return order;
  const usual = numbered ?? monthsFrom(0);
  return named.every((month, at) => month === undefined || month === usual[at]) ? usual : undefined;
}

/** How many figures at the front of each line only say which month it is, its year and its number, and the months so numbered. */
function namesOfMonths(tall: readonly FiguresLine[]): {
  readonly front: number;
  readonly numbered: readonly number[] | undefined;
} {
  const spare = (at: number): boolean => tall.every(({ figures }) => figures.length > at + 2);
  const years = spare(0) && tall.every(({ figures }) => (figures[0] ?? 0) >= 1000) ? 1 : 0;
  const numbered = spare(years) ? monthsNumbered(tall.map(({ figures }) => figures[years] ?? 0)) : undefined;
  return { front: years + (numbered === undefined ? 0 : 1), numbered };
}

/** Which of so many figures are the low and the high: as heads above call them, or the two there are where heads don't say otherwise. */
function headed(above: readonly FiguresLine[], width: number, front: number): readonly [number, number] | undefined {
  const called = (word: string, kind: RegExp): boolean => kind.test(word) && !RECORD.test(word) && !OTHER.test(word);
  const heads = above.map(({ text }) => headsOf(text, width));
  for (const words of heads) {
    const place = (kind: RegExp): number | undefined =>
      only(words.flatMap((word, at) => (called(word, kind) ? [at] : [])));
    const [low, high] = [place(LOW), place(HIGH)];
    if (low !== undefined && high !== undefined) return [low, high];
  }
  const sayOther = heads.some((words) =>
    words.some((word) => [LOW, HIGH, RECORD, OTHER].some((kind) => kind.test(word))),
  );
  return width - front === 2 && !sayOther ? [front, front + 1] : undefined;
}

/** The heads of so many figures; none where the line is no such heads. */
function headsOf(text: string, width: number): readonly string[] {
  const parted = [/[\t;]/, /,/, /\s{2,}/, /\s+/]
    .map((by) => text.trim().split(by))
    .find((words) => words.length === width || words.length === width + 1);
  // A head before the figures' own stands over the names of months.
  return parted?.slice(-width) ?? [];
}

function only<T>(found: readonly T[]): T | undefined {
  return found.length === 1 ? found[0] : undefined;
}

function means(a: number, b: number): MonthMeans {
  return { low: Math.min(a, b), high: Math.max(a, b) };
}
