// What a call comes to in words, for sentences that say why a cell is what it is: the common functions by what they do, some of the
// trade's by their reckoning, all others by their doc line and what goes in.

import { offsetStations, stations } from '../agronomy/spacing.ts';
import type { Signature } from '../language/signature.ts';
import type { Typed } from '../language/typed.ts';
import type { Scalar } from '../values/error.ts';

/** A part of a sentence: 'Stations (300)', and what it is made of. */
export interface SayPart {
  readonly text: string;
  readonly name?: string;
  readonly shown?: string;
  readonly value?: Scalar;
  /** What the answer counts: 'places'. */
  readonly noun?: string;
  /** What the function does, a sentence of its own. */
  readonly explained?: string;
}

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

/** A call in words, its arguments being so already; undefined among them were left out. */
export function sayCall(signature: Signature, args: Parts): SayPart {
  const own = SAYS[signature.name]?.(args);
  if (own !== undefined) return own;
  const given = args.filter((each) => each !== undefined).map(({ text }) => text);
  if (!isOfTheTrade(signature)) {
    return { text: given.length === 0 ? signature.name : `${signature.name} of ${listed(given)}` };
  }
  const explained = `${signature.doc.replaceAll('`', '').replace(/\.$/, '')}.`;
  const text = given.length === 0 ? 'worked out' : `worked out from ${listed(given.slice(0, MOST_GIVEN))}`;
  return { text, explained };
}

/** So many inputs of a model stand in its sentence; all of them stand below it. */
const MOST_GIVEN = 4;

const SAYS: Readonly<Record<string, (args: Parts) => SayPart | undefined>> = {
  SUM: (args) => joined('the sum of', args),
  MAX: (args) => joined('the largest of', args, 'and no less than'),
  MIN: (args) => joined('the smallest of', args, 'and no more than'),
  AVERAGE: (args) => joined('the average of', args),
  ABS: ([one]) => one,
  ROUND: (args) => after(args, 'rounded'),
  ROUNDUP: (args) => after(args, 'rounded up'),
  CEILING: (args) => after(args, 'rounded up'),
  ROUNDDOWN: (args) => after(args, 'rounded down'),
  FLOOR: (args) => after(args, 'rounded down'),
  TEXT: ([one]) => one,
  EDATE: ([from, months]) => ({ text: `${from?.text ?? ''} and ${months?.text ?? ''} months` }),
  XLOOKUP: ([key, , result]) => ({ text: `${result?.text ?? ''} for ${key?.text ?? ''}` }),
  STATIONS: (args) => placesOn(args, stations, ''),
  OFFSETSTATIONS: (args) => placesOn(args, offsetStations, ', every second row shifted by half a spacing'),
  RECTANGULARITY: ([a, b]) => ({ text: `${a?.text ?? ''} and ${b?.text ?? ''}, the longer divided by the shorter` }),
  SQUARENESS: ([shape, loss]) => ({ text: `what is left for a shape of ${shape?.text ?? ''} at ${loss?.text ?? ''}` }),
  PLANTMASS: ([density, alone, most]) => ({
    text: `what a plant weighs at ${density?.text ?? ''}, where one alone would come to ${alone?.text ?? ''} and full ground to ${most?.text ?? ''}`,
  }),
};

function joined(says: string, args: Parts, limit = ''): SayPart | undefined {
  const given = args.filter((each) => each !== undefined && each.value !== null);
  const [only] = given;
  if (given.length === 1 && only !== undefined) return only;
  // MAX(0; x) holds x from below.
  const [end, other] = args.length === 2 && args[0]?.name === undefined ? args : [args[1], args[0]];
  const isEnd = args.length === 2 && limit !== '' && end?.name === undefined && typeof end?.value === 'number';
  if (isEnd && other !== undefined) return { text: `${other.text}, ${limit} ${end.text}` };
  return { text: `${says} ${listed(given.map((each) => each?.text ?? ''))}` };
}

function after([one]: Parts, how: string): SayPart {
  return { text: `${one?.text ?? ''}, ${how}` };
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
    noun: all === 1 ? 'place' : 'places',
  };
}

function listed(texts: readonly string[]): string {
  const last = texts.at(-1) ?? '';
  return texts.length < 2 ? last : `${texts.slice(0, -1).join(', ')} and ${last}`;
}
