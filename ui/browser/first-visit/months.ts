// Twelve months of lows and highs out of what a person pastes: a table with a line a month, or a line of lows and a line of highs,
// with or without names or numbers of months, a year's figure at the end, and heads. What could be meant in two ways is asked for
// rather than guessed. Pure.

export interface MonthMeans {
  readonly low: number;
  readonly high: number;
}

export type MonthsRead =
  | { readonly ok: true; readonly months: readonly MonthMeans[] }
  | { readonly ok: false; readonly why: string };

interface Line {
  /** As it was typed. */
  readonly text: string;
  readonly figures: readonly number[];
}

const MONTHS = 12;
const LOW = /\b(?:t_?min|min(?:imum|ima)?|lows?|lowest|coldest)\b/i;
const HIGH = /\b(?:t_?max|max(?:imum|ima)?|highs?|highest|warmest)\b/i;
/** Of single years rather than of the usual one. */
const RECORD = /record|extreme|absolute/i;
const OF_THE_YEAR = /year|annual|mean|average|total/i;

/** The lows and highs of twelve months, in the unit they were typed in; in a sentence what is missing or unclear otherwise. */
export function readMonths(text: string): MonthsRead {
  const typed = text.replaceAll('\u2212', '-').split(/\r?\n/);
  const commasPart = commasArePartings(typed);
  const lines = typed.map((line): Line => ({ text: line, figures: figuresOf(line, commasPart) }));
  const wide = lines.filter(({ figures }) => figures.length === MONTHS || figures.length === MONTHS + 1);
  if (wide.length >= 2) return acrossLines(wide);
  const tall = lines.filter(({ figures }) => figures.length >= 2 && figures.length < MONTHS);
  if (tall.length === MONTHS + 1 && OF_THE_YEAR.test(tall[MONTHS]?.text ?? '')) tall.pop();
  if (tall.length !== MONTHS) {
    const count = `${tall.length} ${tall.length === 1 ? 'line' : 'lines'}`;
    return refused(
      `Twelve months are wanted, a line each with its low and its high (or a line of twelve lows and one of twelve highs); ${count} could be read.`,
    );
  }
  const head = lines.find(({ text: line }) => LOW.test(line) && HIGH.test(line));
  return downLines(tall, head);
}

function refused(why: string): MonthsRead {
  return { ok: false, why };
}

/** A line of lows and one of highs; the words at their front tell them apart where there are more. */
function acrossLines(wide: readonly Line[]): MonthsRead {
  const named = (kind: RegExp): readonly Line[] => wide.filter(({ text }) => kind.test(text) && !RECORD.test(text));
  const [low, high] = wide.length === 2 ? wide : [only(named(LOW)), only(named(HIGH))];
  if (low === undefined || high === undefined) {
    return refused(
      `${wide.length} lines hold twelve months each, and which are the lows and the highs is not clear: leave those two alone, or write “low” and “high” in front of them.`,
    );
  }
  return { ok: true, months: low.figures.slice(0, MONTHS).map((a, month) => means(a, high.figures[month] ?? a)) };
}

/** A line a month. */
function downLines(tall: readonly Line[], head: Line | undefined): MonthsRead {
  const first = namesOfMonths(tall);
  const [width, ...others] = new Set(tall.map(({ figures }) => figures.length));
  if (width === undefined || others.length > 0) {
    return refused('Some of the twelve lines hold more figures than others: leave each its low and its high.');
  }
  const [low, high] = width - first === 2 ? [first, first + 1] : (headed(head, width) ?? []);
  if (low === undefined || high === undefined) {
    return refused(
      `Each line holds ${width - first} figures, and which are the low and the high is not clear: leave those two alone, or write heads in a line above, such as “low” and “high”.`,
    );
  }
  return { ok: true, months: tall.map(({ figures }) => means(figures[low] ?? 0, figures[high] ?? 0)) };
}

/** How many figures at the front of each line only say which month it is: its year, its number. */
function namesOfMonths(tall: readonly Line[]): number {
  const are = (at: number, named: (figure: number, month: number) => boolean): boolean =>
    tall.every(({ figures }, index) => figures.length > at + 2 && named(figures[at] ?? 0, index + 1));
  const years = are(0, (figure) => figure >= 1000) ? 1 : 0;
  return years + (are(years, (figure, month) => figure === month) ? 1 : 0);
}

/** Which of so many figures the heads call the low and the high. */
function headed(head: Line | undefined, width: number): readonly [number, number] | undefined {
  if (head === undefined) return undefined;
  const parted = [/[\t;]/, /,/, /\s{2,}/, /\s+/]
    .map((by) => head.text.trim().split(by))
    .find((words) => words.length === width || words.length === width + 1);
  // A head before the figures' own stands over the names of months.
  const words = parted?.slice(-width) ?? [];
  const place = (kind: RegExp): number | undefined =>
    only(words.flatMap((word, at) => (kind.test(word) && !RECORD.test(word) ? [at] : [])));
  const [low, high] = [place(LOW), place(HIGH)];
  return low === undefined || high === undefined ? undefined : [low, high];
}

function only<T>(found: readonly T[]): T | undefined {
  return found.length === 1 ? found[0] : undefined;
}

function means(a: number, b: number): MonthMeans {
  return { low: Math.min(a, b), high: Math.max(a, b) };
}

/** Whether commas stand between figures rather than within them: where points stand within, where one figure follows another with
    nothing else between, or where lines would hold a single figure otherwise. */
function commasArePartings(lines: readonly string[]): boolean {
  const having = lines.filter((line) => /\d,\d/.test(line));
  if (having.some((line) => /\d\.\d|\d,-?\d+,/.test(line))) return true;
  return having.some((line) => figuresOf(line, false).length < 2);
}

function figuresOf(line: string, commasPart: boolean): readonly number[] {
  // From 30 to 48, 30-48 and 30 – 48 are two figures, 30 -48 are two of which one is below zero.
  const apart = line.replace(/(\d(?:\s?\u00b0?[CF])?)(?:\s*[\u2013\u2014]\s*|-|\s-\s)(?=-?\d)/gi, '$1 ');
  const found = apart.match(commasPart ? /-?\d+(?:\.\d+)?/g : /-?\d+(?:[.,]\d+)?/g) ?? [];
  return found.map((figure) => Number(figure.replace(',', '.')));
}
