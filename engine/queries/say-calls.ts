// What a call comes to in words, for sentences that say why a cell is what it is: the common functions by what they do, some of the
// trade's by their reckoning, all others by their doc line and what goes in. No function's name stands in a sentence.

import { offsetStations, stations } from '../agronomy/spacing.ts';
import { squarenessFactor } from '../agronomy/yield-density.ts';
import type { Signature } from '../language/signature.ts';
import type { Typed } from '../language/typed.ts';
import { MONTHS } from '../values/date-text.ts';
import type { Scalar } from '../values/error.ts';

/** A part of a sentence: 'Stations (300)', and what it is made of. */
export interface SayPart {
  readonly text: string;
  readonly name?: string;
  readonly shown?: string;
  readonly value?: Scalar;
  readonly isShare?: boolean;
  /** What the answer counts: 'places'. */
  readonly noun?: string;
  /** What the function does, a sentence of its own. */
  readonly explained?: string;
  /** Said of several things: held together in brackets where it is part of something else. */
  readonly many?: boolean;
}

/** What goes into a call: undefined was left out. */
type Parts = readonly (SayPart | undefined)[];

const TRADE: readonly Signature['group'][] = [
  'light and climate',
  'seed',
  'stand',
  'space and yield',
  'after harvest',
  'soil and water',
  'records',
];

/** Whether a function is the trade's own, and wants a sentence where it is met. */
export function isOfTheTrade({ group }: Signature): boolean {
  return TRADE.includes(group);
}

/** What totals over rows that meet conditions are called, and the column they are of. */
export function countedNodes({ signature, args }: Extract<Typed, { readonly node: 'call' }>) {
  const says = TOTALS[signature.name];
  const of = args.find((each) => each.node === 'column');
  return says === undefined || of?.node !== 'column' ? undefined : { says, of };
}

/** What counts rows and looks at none of their figures. */
export const COUNTED = 'the count of';

const TOTALS: Readonly<Record<string, string>> = {
  SUMIFS: 'the sum of',
  SUMIF: 'the sum of',
  AVERAGEIFS: 'the average of',
  AVERAGEIF: 'the average of',
  MAXIFS: 'the largest',
  MINIFS: 'the smallest',
  FIRSTIFS: 'the first',
  NAMESIFS: 'the different names in',
  COUNTIFS: COUNTED,
  COUNTIF: COUNTED,
};

/** A call in words, its arguments being so already; undefined among them were left out, and those that say nothing are. */
export function sayCall(signature: Signature, args: Parts): SayPart {
  const own = SAYS[signature.name]?.(args);
  if (own !== undefined) return own;
  const given = saying(args);
  const explained = `${signature.doc.replaceAll('`', '').replace(/\.$/, '')}.`;
  const text = given.length === 0 ? 'worked out' : `worked out from ${listed(given.slice(0, MOST_GIVEN))}`;
  return { text, explained, many: given.length > 1 };
}

/** The parts with something to say, each once. */
export function saying(parts: Parts): readonly SayPart[] {
  const given = parts.filter((each) => each !== undefined).filter(({ text }) => text !== '');
  return given.filter(({ text }, at) => given.findIndex((other) => other.text === text) === at);
}

/** So many inputs of a model stand in its sentence; all of them stand below it. */
const MOST_GIVEN = 4;

const SAYS: Readonly<Record<string, (args: Parts) => SayPart | undefined>> = {
  SUM: (args) => joined('the sum of', args),
  MAX: (args) => joined('the largest of', args, 'and no less than'),
  MIN: (args) => joined('the smallest of', args, 'and no more than'),
  AVERAGE: (args) => joined('the average of', args),
  COUNT: (args) => counted(args, 'known'),
  COUNTA: (args) => counted(args, 'filled in'),
  COUNTBLANK: (args) => counted(args, 'blank'),
  ABS: ([one]) => one,
  N: ([one]) => one,
  ROUND: (args) => after(args, 'rounded'),
  ROUNDUP: (args) => after(args, 'rounded up'),
  CEILING: (args) => after(args, 'rounded up'),
  ROUNDDOWN: (args) => after(args, 'rounded down'),
  FLOOR: (args) => after(args, 'rounded down'),
  MROUND: ([one, step]) => after([one], `rounded to the nearest ${held(step)}`),
  MOD: ([one, by]) => ({ text: `what is left when ${held(one)} is divided by ${held(by)}` }),
  SQRT: ([one]) => ({ text: `the square root of ${held(one)}` }),
  TEXT: ([one]) => one,
  LEFT: ([one, many]) => ({ text: `the first ${many?.text ?? 'letter'}${letters(many)} of ${held(one)}` }),
  FIND: ([what, where]) => ({ text: `the place of ${held(what)} in ${held(where)}` }),
  SEARCH: ([what, where]) => ({ text: `the place of ${held(what)} in ${held(where)}` }),
  DATE: ([year, month, day]) => ({ text: `${dayOfMonth(month, day)} of ${held(year)}` }),
  YEAR: ([date]) => ({ text: `the year of ${held(date)}` }),
  MONTH: ([date]) => ({ text: `the month of ${held(date)}` }),
  DAY: ([date]) => ({ text: `the day of the month of ${held(date)}` }),
  WEEKDAY: ([date]) => ({ text: `the day of the week of ${held(date)}` }),
  ISOWEEKNUM: ([date]) => ({ text: `the number of the week of ${held(date)}` }),
  EDATE: ([from, months]) => ({ text: `${held(from)} and ${held(months)} months` }),
  XLOOKUP: ([key, , result]) => ({ text: `${result?.text ?? ''} for ${held(key)}` }),
  ISBLANK: ([one]) => ({ text: `whether ${held(one)} is blank` }),
  ISNUMBER: ([one]) => ({ text: `whether ${held(one)} is known` }),
  ISERROR: ([one]) => ({ text: `whether ${held(one)} cannot be worked out` }),
  NOT: ([one]) => ({ text: `the opposite of ${held(one)}` }),
  AND: (args) => ({ text: `whether all of these hold: ${listed(saying(args))}`, many: true }),
  OR: (args) => ({ text: `whether one of these holds: ${listed(saying(args))}`, many: true }),
  STATIONS: (args) => placesOn(args, stations, ''),
  OFFSETSTATIONS: (args) => placesOn(args, offsetStations, ', every second row shifted by half a spacing'),
  RECTANGULARITY: ([a, b]) => ({ text: `${held(a)} and ${held(b)}, the longer divided by the shorter` }),
  SQUARENESS: ([shape, loss]) => ({
    text: `what is left where plants stand ${bare(shape)} times as far apart one way as the other${loss === undefined ? '' : ` (${bare(loss)} is lost at eight times)`}`,
    value: factorOf(shape?.value, loss?.value),
    isShare: true,
  }),
  PLANTMASS: ([density, alone, most]) => ({
    text: `what a plant weighs at ${bare(density)} (one with all the room it wants weighs ${bare(alone)}, full ground yields ${bare(most)})`,
  }),
};

/** The figure of a part whose name would explain nothing to who doesn't know it; else the part. */
function bare(part: SayPart | undefined): string {
  return part?.shown === undefined || part.shown === '' ? held(part) : part.shown;
}

/** Null where the shape isn't known. */
function factorOf(shape: Scalar | undefined, loss: Scalar | undefined): Scalar {
  if (typeof shape !== 'number') return null;
  return typeof loss === 'number' ? squarenessFactor(shape, loss) : squarenessFactor(shape);
}

/** A part where something is said of it: several things in brackets, none as 'nothing'. */
export function held(part: SayPart | undefined): string {
  const { text = '', many = false } = part ?? {};
  if (text === '') return 'nothing';
  return many ? `(${text})` : text;
}

/** 'how many of Weed 1 (3 May) and Weed 2 (blank) are known' */
function counted(args: Parts, what: string): SayPart {
  return { text: `how many of ${listed(saying(args))} are ${what}` };
}

function letters(many: SayPart | undefined): string {
  return many === undefined ? '' : many.value === 1 ? ' letter' : ' letters';
}

/** '1 September', or what makes the day and the month. */
function dayOfMonth(month: SayPart | undefined, day: SayPart | undefined): string {
  const name = typeof month?.value === 'number' ? MONTHS[month.value - 1] : undefined;
  return `${name === undefined ? `day ${held(day)} of month ${held(month)}` : `${held(day)} ${name}`}`;
}

function joined(says: string, args: Parts, limit = ''): SayPart | undefined {
  const given = saying(args).filter(({ value }) => value !== null);
  const [only] = given;
  if (only === undefined) return { text: `${says} nothing yet` };
  if (given.length === 1) return only;
  // MAX(0; x) holds x from below.
  const [end, other] = args.length === 2 && args[0]?.name === undefined ? args : [args[1], args[0]];
  const isEnd = args.length === 2 && limit !== '' && end?.name === undefined && typeof end?.value === 'number';
  if (isEnd && other !== undefined) return { text: `${other.text}, ${limit} ${end.text}`, many: true };
  return { text: `${says} ${listed(given)}`, many: true };
}

function after([one]: Parts, how: string): SayPart {
  return { text: `${one?.text ?? ''}, ${how}`, many: true };
}

type Places = (length: number, spacing: number, rows: number) => number;

/** '50 ft at 8 in is 75 a row, less half a spacing at each end, times 4 rows' */
function placesOn([length, spacing, rows]: Parts, places: Places, how: string): SayPart | undefined {
  const [long, apart, many] = [length?.value, spacing?.value, rows?.value];
  if (typeof long !== 'number' || typeof apart !== 'number' || typeof many !== 'number') return undefined;
  const ofRow = `${length?.shown ?? ''} at ${spacing?.shown ?? ''} is ${stations(long, apart, 1)} a row, less half a spacing at each end`;
  const all = places(long, apart, many);
  return {
    text: `=${ofRow}, times ${many} ${many === 1 ? 'row' : 'rows'}${how}`,
    many: true,
    noun: all === 1 ? 'place' : 'places',
  };
}

/** 'a, b and c'; with semicolons where one of them is said of several things and has a comma of its own. */
export function listed(parts: readonly SayPart[]): string {
  const texts = parts.map(({ text }) => text);
  const last = texts.at(-1) ?? '';
  if (texts.length < 2) return last;
  const loose = parts.some(({ text, many = false }) => many && text.includes(', '));
  return loose ? `${texts.slice(0, -1).join('; ')}; and ${last}` : `${texts.slice(0, -1).join(', ')} and ${last}`;
}
