// The act of choosing how much of each planting to grow: bed lengths within beds, hands, bench, stores and demand, for the most margin,
// or for the least hours at the margin there is. All is taken to grow with the length, as it nearly does; lengths near those found are
// tried as they are, and what the lengths chosen come to is what a branch has in which they stand. Faces answer it as a branch.

import {
  type Book,
  type Choice,
  type Chosen,
  choose,
  type Limit,
  message,
  rows,
  type Solver,
  settings,
  type Workbook,
} from '../../engine/index.ts';
import { type Act, refused, rowAt } from './act.ts';
import { type ChosenLength, type Lengths, lengthsOf, MEASURES, measuredOut, SAME } from './choose-lengths.ts';
import { ALL_WITHIN, type KindOfLimit, moreOf, roomOf, type Within } from './choose-limits.ts';
import { namingLeft } from './choose-named.ts';
import { bestNearby } from './choose-nearby.ts';
import {
  choosable,
  earnedIn,
  type Grown,
  goesNowhere,
  hoursIn,
  type Measure,
  plantingsOf,
} from './choose-plantings.ts';
import { isAnythingWanted } from './choose-sales.ts';
import { CENT, type ComesTo, gainWords, hoursText, money, saidOf } from './choose-words.ts';

/** A planting may become this many times as long at most, where nothing else holds it back. */
const MOST_TIMES = 3;

export interface ChooseWish {
  /** The most margin, or the least hours at no less margin than now. */
  readonly goal: 'margin' | 'hours';
  readonly within: readonly Within[];
}

const MOST_MARGIN: ChooseWish = { goal: 'margin', within: ALL_WITHIN };

export interface ChosenAmounts {
  readonly gain: string;
  readonly lengths: readonly ChosenLength[];
  readonly heldBackBy: readonly { readonly name: string; readonly more: string; readonly worth: string }[];
}

/** How often the margin asked for is raised by what its branch lacks, until that has what there is now. */
const ROUNDS = 5;

/** The act, with the answer itself. Nothing of the workbook is changed: lengths are tried on branches of it. */
export function chooseAmounts(
  book: Workbook,
  solve: Solver,
  wish: ChooseWish = MOST_MARGIN,
): Act & { readonly chosen?: ChosenAmounts } {
  const isWanted = isAnythingWanted(book);
  const within = wish.within.filter((kind) => kind !== 'demand' || isWanted);
  const measure: Measure = within.includes('demand') ? 'sales' : 'margin';
  const slots = choosable(book);
  const room = roomOf(book, within, slots);
  const { size } = MEASURES[settings(book).units];
  const { grown, taken } = plantingsOf(book, { room, chosen: slots, measure, size });
  if (grown.length === 0) return refused(NOTHING_TO_CHOOSE[whatLacks(book)]);
  const limits = room.limits.map((limit): KindOfLimit => {
    return { ...limit, most: Math.max(0, limit.most - (taken.get(limit.id) ?? 0)) };
  });
  const question: Question = { book, solve, wish, grown, limits, sales: room.sales, now: 0 };
  const now = earnedAsItIs(question);
  const before: Earned = { earned: earnedIn(book, measure), hours: hoursIn(book) };
  const found = bestOf({ ...question, now }, measure, before);
  if (typeof found === 'string') return refused(found);
  const { raised, lengths, after } = found;
  const all = limitsOf({ ...question, now: now + raised });
  const choices = choicesOf(question);
  const chosen = choose(choices, all, solve);
  if (chosen === undefined) return refused(NONE_WITHIN);
  const wanted = soldOut(choices.slice(grown.length), chosen).map((product) => {
    const more = choices.map((one) => product.sales.get(one.id) ?? one);
    const worth = (choose(more, all.map(asBalance), solve)?.gain ?? chosen.gain) - chosen.gain;
    return { name: `what is wanted of ${product.name}`, worth };
  });
  const comesTo: ComesTo = {
    goal: wish.goal,
    measure,
    before,
    after,
    // Of the sums that the program makes only the difference counts: it knows nothing of what is no choice.
    reckoned: wish.goal === 'margin' ? before.earned + chosen.gain - now : undefined,
    atPrices: measure === 'margin' && !isWanted,
    others: measure === 'sales' && goesNowhere(book),
  };
  return answerOf(question, { chosen, lengths, comesTo, wanted });
}

interface Question {
  readonly book: Workbook;
  readonly solve: Solver;
  readonly wish: ChooseWish;
  readonly grown: readonly Grown[];
  readonly limits: readonly KindOfLimit[];
  readonly sales: readonly Choice[];
  /** For the least hours, what is to be earned again, as the program counts it. */
  readonly now: number;
}

/** What plantings earn and how long they are worked on. */
type Earned = ComesTo['before'];

/** What the lengths there are earn as the program counts it: with what it takes of them to be sold. */
function earnedAsItIs({ solve, grown, limits, sales }: Question): number {
  const asTheyAre = grown.map((one) => ({ ...choiceOf(one, 'margin'), least: one.length, most: one.length }));
  const balances = limits.filter(({ within }) => within === 'demand').map(asBalance);
  const plain = grown.reduce((sum, { earns }) => sum + earns, 0);
  return choose([...asTheyAre, ...sales], balances, solve)?.gain ?? plain;
}

/**
 * The lengths that gain most, and what their branch has. For the least hours, where stations are whole and lengths rounded, the branch
 * may earn less than was asked for: more is asked for then. What is found is rounded, so that lengths near it may do better. A sentence
 * where there are none.
 */
function bestOf(question: Question, measure: Measure, before: Earned) {
  const { book, solve, wish, now } = question;
  let refusedWhy = NONE_WITHIN;
  const tried = (amounts: readonly number[]): Earned | undefined =>
    book.onBranch((branch) => {
      const done = branch.do(lengthsOf(book, question.grown, amounts).commands, message('trial'));
      if (!done.refused) return { earned: earnedIn(branch, measure), hours: hoursIn(branch) };
      refusedWhy = done.why;
      return undefined;
    });
  let raised = 0;
  let best: { raised: number; amounts: readonly number[]; comesTo: Earned; order: readonly number[] } | undefined;
  for (let round = 0; round < ROUNDS; round++) {
    const limits = limitsOf({ ...question, now: now + raised }).map(asBalance);
    const chosen = choose(choicesOf(question), limits, solve);
    if (chosen === undefined) break;
    const amounts = measuredOut(book, question.grown, chosen);
    const comesTo = tried(amounts);
    if (comesTo === undefined) break;
    if (best === undefined || comesTo.earned > best.comesTo.earned)
      best = { raised, amounts, comesTo, order: mostLost(question, chosen, amounts) };
    const lacks = before.earned - comesTo.earned;
    if (wish.goal === 'margin' || lacks < CENT) break;
    raised += lacks;
  }
  if (best === undefined) return refusedWhy;
  const near = bestNearby({
    ...best,
    most: question.grown.map(({ length }) => MOST_TIMES * length),
    step: MEASURES[settings(book).units].step,
    fits: (amounts) => keepsWithin(question, amounts),
    tried,
    isBetter: (one, other) => isBetter(wish.goal, before.earned, one, other),
  });
  return { raised: best.raised, lengths: lengthsOf(book, question.grown, near.amounts), after: near.comesTo };
}

/** More earned; or where the least hours count, fewer of them for what is earned now, which comes first. */
function isBetter(goal: ChooseWish['goal'], now: number, one: Earned, other: Earned): boolean {
  if (goal === 'margin') return one.earned > other.earned + CENT;
  const [lacks, lacked] = [now - one.earned >= CENT, now - other.earned >= CENT];
  if (lacked) return !lacks || one.earned > other.earned + CENT;
  return !lacks && one.hours < other.hours - CENT;
}

/** The places of plantings, those first that lost most of their length as it was rounded. */
function mostLost({ grown }: Question, { amounts }: Chosen, measured: readonly number[]): readonly number[] {
  const lost = grown.map(({ id }, i) => (amounts.get(id) ?? 0) - (measured[i] ?? 0));
  return [...grown.keys()].sort((a, b) => (lost[b] ?? 0) - (lost[a] ?? 0));
}

/** Whether lengths keep within beds, hands, bench and stores; what is not wanted of them is not sold, and holds nothing back. */
function keepsWithin({ grown, limits }: Question, amounts: readonly number[]): boolean {
  return limits.every(({ id, most, within }) => {
    if (within === 'demand') return true;
    const taken = grown.reduce((sum, one, i) => sum + ((one.takes.get(id) ?? 0) * (amounts[i] ?? 0)) / one.length, 0);
    return taken <= most + SAME * Math.max(1, most);
  });
}

function choicesOf({ grown, sales, wish: { goal } }: Question): readonly Choice[] {
  return [...grown.map((one) => choiceOf(one, goal)), ...sales.map((sale) => (goal === 'margin' ? sale : sold(sale)))];
}

const NONE_WITHIN = 'No lengths keep within what is to be kept within.';

const NOTHING_TO_CHOOSE = {
  plantings: 'There are no plantings yet: enter some in Plantings first.',
  price:
    'No planting has a price yet, so none has a margin to choose by: enter a Price or a Price each in Plantings first.',
  rest: 'There is no planting to choose: each has begun already, or has no bed length, dates and margin yet. Fill those in first.',
} as const;

function whatLacks(book: Book): keyof typeof NOTHING_TO_CHOOSE {
  const plantings = Array.from(rows(book, 'plantings'), (slot) => rowAt(book, 'plantings', '', slot));
  if (plantings.length === 0) return 'plantings';
  return plantings.every((row) => row.number('price') === undefined && row.number('price-each') === undefined)
    ? 'price'
    : 'rest';
}

/** Products of which more demand is priced: each takes a program of its own. */
const MOST_PRICED = 6;

/** The products of which all that is wanted is sold, the dearest first, with their sales were one unit more wanted over the season. */
function soldOut(sales: readonly Choice[], { amounts }: Chosen) {
  const products = new Map<string, Choice[]>();
  for (const sale of sales) products.set(sale.name, [...(products.get(sale.name) ?? []), sale]);
  return [...products]
    .filter(([, ofProduct]) => ofProduct.every(({ id, most }) => (amounts.get(id) ?? 0) >= most * (1 - 1e-7)))
    .map(([name, ofProduct]) => {
      const wider = ofProduct.map((sale): [string, Choice] => {
        return [sale.id, { ...sale, most: sale.most + 1 / ofProduct.length }];
      });
      return { name, sales: new Map(wider), brings: ofProduct.reduce((sum, { gain, most }) => sum + gain * most, 0) };
    })
    .sort((a, b) => b.brings - a.brings)
    .slice(0, MOST_PRICED);
}

function asBalance(limit: Limit): Limit {
  return { ...limit, isBalance: true };
}

const MARGIN = 'margin';

/** For the least hours, what is earned now is to be earned again. */
function limitsOf({ limits, now, wish: { goal } }: Question): readonly Limit[] {
  if (goal === 'margin') return limits;
  return [...limits, { id: MARGIN, name: 'the margin there is now', most: -now, isBalance: true }];
}

/** A sale where hours count: it costs none, and earns its share of the margin. */
function sold(sale: Choice): Choice {
  return { ...sale, gain: 0, takes: new Map([...sale.takes, [MARGIN, -sale.gain]]) };
}

/** A planting by the unit of its length; nobody reads its name. */
function choiceOf({ id, length, earns, hours, takes }: Grown, goal: ChooseWish['goal']): Choice {
  const each = new Map([...takes].map(([limit, amount]): [string, number] => [limit, amount / length]));
  if (goal === 'hours') each.set(MARGIN, -earns / length);
  const gain = (goal === 'margin' ? earns : -hours) / length;
  return { id, name: id, gain, least: 0, most: MOST_TIMES * length, takes: each };
}

interface Found {
  readonly chosen: Chosen;
  readonly lengths: Lengths;
  readonly comesTo: ComesTo;
  readonly wanted: readonly { readonly name: string; readonly worth: number }[];
}

function answerOf(
  { book, wish: { goal }, limits }: Question,
  { chosen, lengths, comesTo, wanted }: Found,
): Act & { chosen: ChosenAmounts } {
  const worthOf = (worth: number): string => (goal === 'margin' ? money(book, worth) : `${hoursText(worth)} of work`);
  const held = chosen.heldBackBy.flatMap(({ limit: { id, name }, worth }) => {
    const kind = limits.find((one) => one.id === id);
    return kind === undefined ? [] : [{ name, more: kind.more, worth }];
  });
  const more = moreOf(book, 'demand');
  const heldBackBy = [...held, ...wanted.map(({ name, worth }) => ({ name, more, worth }))]
    .filter(({ worth }) => worth >= CENT)
    .sort((one, other) => other.worth - one.worth)
    .map((one) => ({ ...one, worth: worthOf(one.worth) }));
  const gain = gainWords(book, comesTo);
  const { left, outgrown } = lengths;
  const changed = lengths.chosen.length - left.length;
  const named = namingLeft(book, left);
  return {
    ok: true,
    commands: [...named.notes, ...lengths.commands],
    message: message('choose amounts', { count: lengths.chosen.length }),
    said: saidOf({
      gain,
      changed,
      left: left.length,
      named: named.rows,
      outgrown,
      goal,
      heldBackBy,
      mostTimes: MOST_TIMES,
    }),
    chosen: { gain, lengths: lengths.chosen, heldBackBy },
  };
}
