// The sentences in which chosen amounts are told: what a branch with them earns beside the plan, by the word that the sheets have for it,
// and what holds them back. Called by choose-amounts.ts.

import { type Book, sheetView, showWithUnit } from '../../engine/index.ts';
import { counted } from './act.ts';
import { MEASURE_NAMES, type Measure } from './choose-plantings.ts';

/** Less than this of money, or of hours, is nothing. */
export const CENT = 0.01;

/** What the amounts come to in a branch in which they stand, and what the plan has. */
export interface ComesTo {
  readonly goal: 'margin' | 'hours';
  readonly measure: Measure;
  readonly before: { readonly earned: number; readonly hours: number };
  readonly after: { readonly earned: number; readonly hours: number };
  /** What would be earned were all to grow evenly with the length; undefined where that was not the goal. */
  readonly reckoned: number | undefined;
  /** Nobody asks for anything, so that prices alone count. */
  readonly atPrices: boolean;
  /** Some plantings go to no outlet and count by their Margin. */
  readonly others: boolean;
}

/** 'a Margin of 6210.09 USD in the branch, where the plan has 5703.79 USD' */
export function gainWords(book: Book, { goal, measure, before, after, reckoned, atPrices, others }: ComesTo): string {
  const say = (value: number): string => money(book, value);
  const name = `${MEASURE_NAMES[measure]}${others ? ' (of what goes to no outlet its Margin)' : ''}`;
  const earned = `${name} of ${say(after.earned)} in the branch, where the plan has ${say(before.earned)}`;
  const prices = atPrices ? ', at the prices of Plantings since Demand is empty' : '';
  if (goal === 'margin') {
    const isEven = reckoned === undefined || Math.abs(reckoned - after.earned) < CENT;
    const evenly = isEven ? '' : `; if all grew evenly with the length it would be ${say(reckoned)}`;
    return `${earned}${prices}${evenly}`;
  }
  const lacks = before.earned - after.earned;
  const missed = lacks < CENT ? '' : `: ${say(lacks)} short of it, since stations are whole and lengths rounded`;
  return `${hoursText(after.hours)} of work on plantings, where the plan has ${hoursText(before.hours)}, with ${earned}${missed}${prices}`;
}

export function hoursText(hours: number): string {
  return `${Number(hours.toFixed(1))} h`;
}

export function money(book: Book, value: number): string {
  const margin = sheetView(book, 'plantings')?.columns.find(({ id }) => id === 'margin')?.type;
  const { currency } = book.document.program;
  return margin === undefined ? String(value) : showWithUnit(value, margin, { currency });
}

/** Limits named of those that hold the choice back. */
const NAMED = 3;

interface Said {
  readonly gain: string;
  readonly changed: number;
  readonly left: number;
  /** Rows that name plantings left out, by the name of their sheet. */
  readonly named: ReadonlyMap<string, number>;
  /** Of those that change, longer than the bed they were in. */
  readonly outgrown: number;
  readonly goal: ComesTo['goal'];
  readonly heldBackBy: readonly { readonly name: string; readonly more: string; readonly worth: string }[];
  /** How many times as long a planting may become. */
  readonly mostTimes: number;
}

/** What was chosen, for what, and what holds it back. */
export function saidOf({ gain, changed, left, named, outgrown, goal, heldBackBy, mostTimes }: Said): string {
  const saves = goal === 'margin' ? 'would gain' : 'would save';
  const limits = heldBackBy.slice(0, NAMED).map(({ name, more, worth }) => `${name} (${more} ${saves} about ${worth})`);
  const held = limits.length === 0 ? '' : ` It is held back by ${limits.join(', ')}.`;
  const room =
    outgrown === 0
      ? ''
      : ` ${outgrown} ${outgrown === 1 ? 'is longer than the bed it had' : 'are longer than the beds they had'}: split them over beds, or let beds be proposed.`;
  const out = `${left} ${left === 1 ? 'is' : 'are'} left out`;
  const naming = [...named].map(([sheet, count]) => `${sheet}: ${counted(count, 'row')}`).join(', ');
  const aside =
    naming === ''
      ? ''
      : ` Plantings left out are still named (${naming}): in the branch those names are kept aside until the plantings are there again, and noted on the cells.`;
  return `${changed} of the plantings ${changed === 1 ? 'changes its' : 'change their'} length and ${out}, for ${gain}. No planting becomes more than ${mostTimes} times as long.${aside}${held}${room}`;
}
