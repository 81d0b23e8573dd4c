// Batches and lots as functions over their whole columns, worked out again for every row that asked: the area racks take on a
// day, in what order to sell lots, what of them is in store on a day. Conditional totals over sheets by week and pair do it now.

import { type StoredLot, sellingOrder, storeRun } from '../../agronomy/storage.ts';
import { canonicalUnit } from '../../units/arithmetic.ts';
import { AREA, divideDimensions, MASS, NONE, TIME } from '../../units/dimension.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import {
  type Argument,
  columnOf,
  columnOfDates,
  columnOfText,
  date,
  inUnit,
  isList,
  KILOGRAM,
  mass,
  overColumns,
  overMatching,
  PLAIN,
} from '../trade/build.ts';
import { numberOf, numbersOf } from '../trade/over-days.ts';

const LOSS_SOURCE = 'Msika & Jackson 1997, in Rabinowitch & Currah 2002, Allium Crop Science';
const MASS_PER_TIME = divideDimensions(MASS, TIME);
const WEEK = 7;

/** Lots as the selling order wants them, from columns of names, keeping dates and masses; blank rows are left out. */
function lotsOf(names: Argument, until: Argument, masses: Argument): readonly StoredLot[] {
  const ends = numbersOf(until);
  return Array.from(numbersOf(masses), (held, row) => {
    const name = isList(names) ? names[row] : row;
    return { name: String(name ?? ''), storedOn: ends[row] ?? Number.NaN, keepsDays: 0, mass: held };
  });
}

function sellFirst([names, until, masses]: readonly Argument[]): Scalar {
  return sellingOrder(lotsOf(names, until, masses))[0]?.name ?? null;
}

interface Places {
  readonly until: Float64Array | undefined;
  readonly masses: Float64Array | undefined;
  readonly places: ReadonlyMap<string, number>;
}

let placed: Places = { until: undefined, masses: undefined, places: new Map() };

function lotKey(end: number, held: number): string {
  return `${end} ${held}`;
}

/** The place of each keeping date and mass, worked out once for as long as the engine hands over the same columns. */
function placesOf(until: Argument, masses: Argument): Places['places'] {
  const [ends, held] = [numbersOf(until), numbersOf(masses)];
  if (ends !== placed.until || held !== placed.masses) {
    const places = new Map<string, number>();
    for (const [index, lot] of sellingOrder(lotsOf(null, until, masses)).entries()) {
      const key = lotKey(lot.storedOn, lot.mass);
      if (!places.has(key)) places.set(key, index + 1);
    }
    placed = { until: ends, masses: held, places };
  }
  return placed.places;
}

/** 1 is sold first; blank for a lot without mass. */
function rankOf([keeps, held, until, masses]: readonly Argument[]): number {
  return placesOf(until, masses).get(lotKey(numberOf(keeps), numberOf(held))) ?? Number.NaN;
}

interface Held {
  readonly left: number;
  readonly sold: number;
}

const NOTHING: Held = { left: 0, sold: 0 };
/** Weeks that a lot is followed: past two years nothing is in store. */
const LONGEST = 104;

const MOST_KEPT = 5000;
const lotRuns = new Map<string, readonly Held[]>();

/** The run of a lot, kept for as long as lots are few enough. */
function runOf(held: number, loss: number, weekly: number): readonly Held[] {
  const key = `${held} ${loss} ${weekly}`;
  const kept = lotRuns.get(key);
  if (kept !== undefined) return kept;
  if (lotRuns.size >= MOST_KEPT) lotRuns.clear();
  const run = lotRun(held, loss, weekly);
  lotRuns.set(key, run);
  return run;
}

/** A lot week by week from the day it came in, so much of it taken every week from the second on; what is sold is added up. */
function lotRun(held: number, loss: number, weekly: number): readonly Held[] {
  const wanted = Array.from({ length: LONGEST }, (_, week) => (week === 0 || Number.isNaN(weekly) ? 0 : weekly));
  let sold = 0;
  return storeRun([held], wanted, Number.isNaN(loss) ? 0 : loss, WEEK).map((period) => {
    sold += period.sold;
    return { left: period.left, sold };
  });
}

interface Runs {
  readonly of: readonly Float64Array[];
  readonly runs: readonly (readonly Held[])[];
}

let followed: Runs = { of: [], runs: [] };

/** The runs of all lots, worked out once for as long as the engine hands over the same columns. */
function runsOf(masses: Float64Array, losses: Float64Array, taken: Float64Array): Runs['runs'] {
  const of = [masses, losses, taken];
  if (of.some((column, k) => column !== followed.of[k])) {
    const runs = Array.from(masses, (held, row) =>
      Number.isNaN(held) ? [] : runOf(held, losses[row] ?? Number.NaN, (taken[row] ?? Number.NaN) * WEEK),
    );
    followed = { of, runs };
  }
  return followed.runs;
}

function inStore([date, stored, masses, losses, taken]: readonly Argument[], of: keyof Held): number {
  const day = numberOf(date);
  if (Number.isNaN(day)) return Number.NaN;
  const on = numbersOf(stored);
  return runsOf(numbersOf(masses), numbersOf(losses), numbersOf(taken)).reduce((sum, run, row) => {
    const week = Math.floor((day - (on[row] ?? Number.NaN)) / WEEK);
    const held = week >= 0 ? (run[Math.min(week, LONGEST - 1)] ?? NOTHING) : NOTHING;
    return sum + held[of];
  }, 0);
}

/** Area taken on a day by batches that stand from one date up to another. */
function areaOn(day: number, from: Float64Array, until: Float64Array, areas: Float64Array): number {
  return areas.reduce((sum, area, row) => {
    const stands = (from[row] ?? Number.NaN) <= day && (until[row] ?? Number.NaN) > day;
    return stands && !Number.isNaN(area) ? sum + area : sum;
  }, 0);
}

const LOTS = [
  date('date'),
  columnOfDates('stored_on'),
  columnOf('masses', MASS),
  columnOf('monthly_losses', NONE),
  columnOf('taken', MASS_PER_TIME),
];

export const FORMER_STORE_LOTS: readonly FunctionDefinition[] = [
  overColumns(
    {
      name: 'AREAONDAY',
      group: 'after harvest',
      parameters: [date('date'), columnOfDates('from'), columnOfDates('until'), columnOf('areas', AREA)],
      result: inUnit(canonicalUnit(AREA)),
      doc: 'Area taken on a day by batches that stand from their first date up to, not including, their last.',
      source: 'Arithmetic',
    },
    ([day, from, until, areas]) =>
      typeof day === 'number' ? areaOn(day, numbersOf(from), numbersOf(until), numbersOf(areas)) : null,
  ),
  overColumns(
    {
      name: 'SELLRANK',
      group: 'after harvest',
      parameters: [date('keeps_until'), mass('mass'), columnOfDates('all_keep_until'), columnOf('all_masses', MASS)],
      result: inUnit(PLAIN),
      doc: 'Place in the order of selling: 1 has the shortest time left, of equals the larger lot.',
      source: 'Common practice',
    },
    rankOf,
  ),
  overMatching(
    {
      name: 'SELLFIRST',
      group: 'after harvest',
      parameters: [],
      result: { is: 'text' },
      doc: 'Of the lots that meet the conditions the one to sell first: the one with the shortest time left.',
      source: 'Common practice',
    },
    [columnOfText('names'), columnOfDates('keep_until'), columnOf('masses', MASS)],
    (_, columns) => sellFirst(columns),
  ),
  overColumns(
    {
      name: 'INSTORE',
      group: 'after harvest',
      parameters: LOTS,
      result: inUnit(KILOGRAM),
      doc: 'Mass in store on a day: every lot less its monthly loss and what is taken of it, week by week.',
      source: LOSS_SOURCE,
    },
    (args) => inStore(args, 'left'),
  ),
  overColumns(
    {
      name: 'TAKENFROMSTORE',
      group: 'after harvest',
      parameters: LOTS,
      result: inUnit(KILOGRAM),
      doc: 'Mass taken out of store up to a day, as far as the lots went.',
      source: LOSS_SOURCE,
    },
    (args) => inStore(args, 'sold'),
  ),
];
