// Beds worked out at every spacing to try, kept for the goals that ask for the same bed: most of what a season asks of a bed it
// has asked before. Called by best-spacing.ts and by what it was before (former/best-spacing.ts).

import {
  type BedCrop,
  bestSpacing,
  candidatesOf,
  type Goal,
  type PricedBand,
  type SpacingResult,
  spacingCurve,
} from '../../agronomy/best-spacing.ts';
import type { SizeBand } from '../../agronomy/size-bands.ts';
import type { Scalar } from '../../values/error.ts';
import { type Argument, isList } from './build.ts';
import { numberOf } from './over-days.ts';

/** Spacings tried at most; a finer step is taken for a slip of the pen. */
const MOST_TRIED = 400;

function listOf(argument: Argument): readonly Scalar[] {
  return isList(argument) ? argument : [];
}

function or(argument: Argument, otherwise: number): number {
  return typeof argument === 'number' ? argument : otherwise;
}

/** Bands with their share of the price; one that has none above zero is not sold. */
interface Bands {
  /** What they are, for telling them from others. */
  readonly name: string;
  readonly list: readonly { readonly band: SizeBand; readonly share: number }[];
}

const bandsKept = new WeakMap<readonly Scalar[], { readonly of: readonly Argument[]; readonly bands: Bands }>();

/** The size bands of four columns; the same ones for as long as the engine hands over the same lists. */
function bandsOf(args: readonly Argument[], first: number): Bands {
  const names = listOf(args[first]);
  const known = bandsKept.get(names);
  if (known?.of.every((column, k) => column === args[first + k]) === true) return known.bands;
  const columns = args.slice(first);
  const [, from, to, shares] = columns.map(listOf);
  const list = names.map((name, row) => ({
    share: numberOf(shares?.[row]),
    band: {
      name: String(name ?? '').toLowerCase(),
      from: or(from?.[row], Number.NEGATIVE_INFINITY),
      to: or(to?.[row], Number.POSITIVE_INFINITY),
    },
  }));
  const name = list.map(({ band, share }) => `${band.name} ${band.from} ${band.to} ${share}`).join('|');
  const bands = { name, list };
  bandsKept.set(names, { of: columns, bands });
  return bands;
}

/** Without a price the masses are still told apart. */
function priced({ list }: Bands, price: number): readonly PricedBand[] {
  return list.map(({ band, share }) => (share > 0 ? { ...band, price: price * share } : band));
}

/** What is told of the spacing that serves best. */
export type BestFigures = Pick<SpacingResult, 'spacing' | 'marketableMass' | 'meanMass' | 'stations' | 'money'>;

/**
 * What serves best for each goal on one bed, of every spacing that was tried. The spacings themselves, with their bands, are not kept:
 * they are some forty kilobytes a bed, and thousands of beds are kept.
 */
export class TriedBed {
  readonly #best: ReadonlyMap<string, BestFigures | undefined>;

  constructor(results: readonly SpacingResult[]) {
    const bands = results[0]?.bands ?? [];
    const goals: readonly Goal[] = [
      { most: 'mass' },
      { most: 'money' },
      ...bands.map(({ name }): Goal => ({ most: 'bulbs', band: name })),
    ];
    this.#best = new Map(goals.map((goal) => [nameOf(goal), figuresOf(bestSpacing(results, goal))]));
  }

  /** Undefined where no spacing has an answer. */
  best(goal: Goal): BestFigures | undefined {
    return this.#best.get(nameOf(goal));
  }
}

const nameOf = (goal: Goal): string => (goal.most === 'bulbs' ? `of ${goal.band}` : goal.most);

function figuresOf(result: SpacingResult | undefined): BestFigures | undefined {
  if (result === undefined) return undefined;
  const { spacing, marketableMass, meanMass, stations, money } = result;
  return { spacing, marketableMass, meanMass, stations, money };
}

/** The numbers that a bed is told by, in the order of the arguments; columns of the size bands follow. */
const [CLOSEST, WIDEST, STEP, LENGTH, WIDTH, ROWS, PLANTS] = [0, 1, 2, 3, 4, 5, 6];
const [ISOLATED, CEILING, LOSS, SPREAD, SHAPE, SOUND] = [7, 8, 9, 10, 11, 12];
export const PRICE = 13;
const COST = 14;
const NUMBERS = 15;

function at(numbers: Float64Array, k: number): number {
  return numbers[k] ?? Number.NaN;
}

function cropOf(numbers: Float64Array, bands: Bands): BedCrop {
  const [price, cost] = [at(numbers, PRICE), at(numbers, COST)];
  return {
    length: at(numbers, LENGTH),
    width: at(numbers, WIDTH),
    pattern: 'square',
    plantsPerStation: at(numbers, PLANTS),
    isolated: at(numbers, ISOLATED),
    ceiling: at(numbers, CEILING),
    squarenessLoss: at(numbers, LOSS),
    spread: at(numbers, SPREAD),
    shape: at(numbers, SHAPE),
    sound: at(numbers, SOUND),
    costPerStation: Number.isNaN(cost) ? 0 : cost,
    bands: priced(bands, Number.isNaN(price) ? 0 : price),
  };
}

interface KeptBed {
  readonly numbers: Float64Array;
  readonly bands: string;
  readonly bed: TriedBed;
}

/** How many beds are kept; a power of two. Each has one place, where the last such bed stands. */
const PLACES = 2048;
const kept = new Map<number, KeptBed>();
const asked = new Float64Array(NUMBERS);
const bits = new Int32Array(asked.buffer);

function placeOfAsked(): number {
  let hash = 0;
  for (let k = 0; k < bits.length; k++) {
    hash = Math.imul(hash ^ (bits[k] ?? 0), 0x9e3779b1);
    hash ^= hash >>> 15;
  }
  return hash & (PLACES - 1);
}

function isAsked({ numbers }: KeptBed): boolean {
  for (let k = 0; k < NUMBERS; k++) if (!Object.is(numbers[k], asked[k])) return false;
  return true;
}

/** The bed of the arguments from `first` on, at every spacing to try; undefined where the spacings make no sense. */
export function bedFor(args: readonly Argument[], first = 0): TriedBed | undefined {
  for (let k = 0; k < NUMBERS; k++) asked[k] = numberOf(args[first + k]);
  const [from, by] = [at(asked, CLOSEST), at(asked, STEP)];
  const count = Math.floor((at(asked, WIDEST) - from) / by + 1e-9) + 1;
  if (!(from > 0) || !(by > 0) || !(count >= 1) || count > MOST_TRIED) return undefined;
  const bands = bandsOf(args, first + NUMBERS);
  const place = placeOfAsked();
  const known = kept.get(place);
  if (known !== undefined && known.bands === bands.name && isAsked(known)) return known.bed;
  const spacings = Array.from({ length: count }, (_, index) => from + index * by);
  const bed = new TriedBed(spacingCurve(cropOf(asked, bands), candidatesOf(spacings, [at(asked, ROWS)])));
  kept.set(place, { numbers: asked.slice(), bands: bands.name, bed });
  return bed;
}
