// The act of choosing how much of each planting to grow: bed lengths within beds, hands, bench, stores and demand, for the most margin,
// or for the least hours at the margin there is. Margins and hours are taken to grow with the length, as they nearly do. Faces
// answer it as a branch.

import {
  type Book,
  type Choice,
  type Chosen,
  type Command,
  choose,
  type Limit,
  message,
  rowId,
  rowName,
  rows,
  type Solver,
  settings,
  sheetView,
  showWithUnit,
} from '../../engine/index.ts';
import { type Act, refused, rowAt } from './act.ts';
import { ALL_WITHIN, type KindOfLimit, moreOf, roomOf, type Within } from './choose-limits.ts';

/** A planting may become this many times as long at most, where nothing else holds it back. */
const MOST_TIMES = 3;

const HOUR = 1 / 24;

/** Bed is measured out in whole feet, or in tenths of a metre, rounded down, so that what was within the limits stays so. */
const MEASURES = {
  us: { size: 0.3048, step: 1, unit: 'ft' },
  si: { size: 1, step: 0.1, unit: 'm' },
} as const;

export interface ChooseWish {
  /** The most margin, or the least hours at no less margin than now. */
  readonly goal: 'margin' | 'hours';
  readonly within: readonly Within[];
}

const MOST_MARGIN: ChooseWish = { goal: 'margin', within: ALL_WITHIN };

/** A planting whose length is chosen. */
interface Grown {
  readonly id: string;
  readonly slot: number;
  /** In feet or metres. */
  readonly length: number;
  readonly margin: number;
  readonly hours: number;
  readonly takes: ReadonlyMap<string, number>;
}

/** One amount chosen, for whoever shows more of the answer. */
export interface ChosenLength {
  readonly name: string;
  readonly before: string;
  readonly after: string;
}

export interface ChosenAmounts {
  readonly gain: string;
  readonly lengths: readonly ChosenLength[];
  readonly heldBackBy: readonly { readonly name: string; readonly more: string; readonly worth: string }[];
}

/** The act, with the answer itself. */
export function chooseAmounts(
  book: Book,
  solve: Solver,
  wish: ChooseWish = MOST_MARGIN,
): Act & { readonly chosen?: ChosenAmounts } {
  const isWanted = isAnythingWanted(book);
  const within = wish.within.filter((kind) => kind !== 'demand' || isWanted);
  const room = roomOf(book, within);
  const { grown, taken, standing, now } = plantingsOf(book, room);
  if (grown.length === 0) return refused(NOTHING_TO_CHOOSE[whatLacks(book)]);
  const limits = room.limits.map((limit): KindOfLimit => {
    return { ...limit, most: Math.max(0, limit.most - (taken.get(limit.id) ?? 0)) };
  });
  const choices = [
    ...grown.map((one) => choiceOf(book, one, wish)),
    ...room.sales.map((sale) => (wish.goal === 'margin' ? sale : sold(sale))),
  ];
  const all = limitsOf(limits, now - standing, wish);
  const chosen = choose(choices, all, solve);
  if (chosen === undefined) return refused('No lengths keep within what is to be kept within.');
  const wanted = soldOut(choices.slice(grown.length), chosen).map((product) => {
    const more = choices.map((one) => product.sales.get(one.id) ?? one);
    const worth = (choose(more, all.map(asBalance), solve)?.gain ?? chosen.gain) - chosen.gain;
    return { name: `what is wanted of ${product.name}`, worth };
  });
  return answerOf(book, wish, { chosen, grown, limits, standing, isWanted, wanted });
}

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

/** Whether outlets want anything: an empty Demand says nothing of what could be sold. */
function isAnythingWanted(book: Book): boolean {
  if (sheetView(book, 'supply-against-demand') === undefined) return false;
  return Array.from(rows(book, 'supply-against-demand'), (slot) =>
    rowAt(book, 'supply-against-demand', '', slot).number('wanted'),
  ).some((wanted) => wanted !== undefined && wanted > 0);
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
function limitsOf(limits: readonly KindOfLimit[], earned: number, { goal }: ChooseWish): readonly Limit[] {
  if (goal === 'margin') return limits;
  return [...limits, { id: MARGIN, name: 'the margin there is now', most: -earned, isBalance: true }];
}

/** A sale where hours count: it costs none, and earns its share of the margin. */
function sold(sale: Choice): Choice {
  return { ...sale, gain: 0, takes: new Map([...sale.takes, [MARGIN, -sale.gain]]) };
}

function choiceOf(book: Book, { id, slot, length, margin, hours, takes }: Grown, { goal }: ChooseWish): Choice {
  const each = new Map([...takes].map(([limit, amount]): [string, number] => [limit, amount / length]));
  if (goal === 'hours') each.set(MARGIN, -margin / length);
  return {
    id,
    name: rowName(book, 'plantings', slot),
    gain: (goal === 'margin' ? margin : -hours) / length,
    least: 0,
    most: MOST_TIMES * length,
    takes: each,
  };
}

/** The plantings that can still be chosen, and what the others take of limits. */
function plantingsOf(book: Book, room: ReturnType<typeof roomOf>) {
  const { size } = MEASURES[settings(book).units];
  const noted = notedPlantings(book);
  const { today } = settings(book);
  const grown: Grown[] = [];
  const taken = new Map<string, number>();
  let [standing, now] = [0, 0];
  for (const slot of rows(book, 'plantings')) {
    const id = rowId(book, 'plantings', slot);
    const row = rowAt(book, 'plantings', id, slot);
    const [used, margin] = [row.number('bed-length-used'), row.number('margin')];
    const [from, until] = [row.number('planted-out'), row.number('bed-free')];
    if (used === undefined || margin === undefined || from === undefined || until === undefined || used <= 0) continue;
    const takes = room.takes(slot);
    // Where demand counts, what outlets take is reckoned week by week, and the planting itself only costs.
    const earned = room.isSold(slot) ? -(row.number('costs') ?? 0) : margin;
    now += room.isSold(slot) ? earned + (row.number('sales-by-outlets') ?? 0) : margin;
    // What stands already is no choice any more: it keeps the room and the hours that it has.
    if (noted.has(slot) || Math.min(from, row.number('sown') ?? from) <= today) {
      for (const [limit, amount] of takes) taken.set(limit, (taken.get(limit) ?? 0) + amount);
      standing += earned;
      continue;
    }
    const hours = (row.number('hours') ?? 0) / HOUR;
    grown.push({ id, slot, length: used / size, margin: earned, hours, takes });
  }
  return { grown, taken, standing, now };
}

/** Plantings of which something was noted, by slot. */
function notedPlantings(book: Book): ReadonlySet<number> {
  const named = Array.from(rows(book, 'records'), (slot) => rowAt(book, 'records', '', slot).number('planting'));
  return new Set(named.filter((slot) => slot !== undefined));
}

interface Found {
  readonly chosen: Chosen;
  readonly grown: readonly Grown[];
  readonly limits: readonly KindOfLimit[];
  /** What the plantings that have begun bring. */
  readonly standing: number;
  /** Whether outlets want anything. */
  readonly isWanted: boolean;
  readonly wanted: readonly { readonly name: string; readonly worth: number }[];
}

function answerOf(
  book: Book,
  { goal, within }: ChooseWish,
  { chosen, grown, limits, standing, isWanted, wanted }: Found,
): Act & { chosen: ChosenAmounts } {
  const { size, step, unit } = MEASURES[settings(book).units];
  const left: string[] = [];
  const longer: Command[] = [];
  const lengths: ChosenLength[] = [];
  const outgrown: Command[] = [];
  for (const { id, slot, length } of grown) {
    const steps = Math.floor((chosen.amounts.get(id) ?? 0) / step + 1e-6);
    const amount = Number((steps * step).toFixed(1));
    if (Math.abs(amount - length) < step / 100) continue;
    const before = `${Number(length.toFixed(1))} ${unit}`;
    lengths.push({
      name: rowName(book, 'plantings', slot),
      before,
      after: amount === 0 ? 'none' : `${amount} ${unit}`,
    });
    if (amount === 0) left.push(id);
    else {
      const content = { number: amount, unit };
      const cell = { command: 'put cell', sheet: 'plantings', row: id } as const;
      longer.push({ ...cell, column: 'bed-length-used', content });
      if (amount * size > lengthOfBed(book, slot)) outgrown.push({ ...cell, column: 'bed', content: null });
    }
  }
  // A planting of no length is none.
  const commands: Command[] =
    left.length === 0
      ? [...longer, ...outgrown]
      : [...longer, ...outgrown, { command: 'remove rows', sheet: 'plantings', rows: left }];
  const worthOf = (worth: number): string => (goal === 'margin' ? money(book, worth) : `${hoursText(worth)} of work`);
  const held = chosen.heldBackBy.flatMap(({ limit: { id, name }, worth }) => {
    const kind = limits.find((one) => one.id === id);
    return kind === undefined ? [] : [{ name, more: kind.more, worth }];
  });
  const more = moreOf(book, 'demand');
  const heldBackBy = [...held, ...wanted.map(({ name, worth }) => ({ name, more, worth }))]
    .filter(({ worth }) => worth >= 0.01)
    .sort((one, other) => other.worth - one.worth)
    .map((one) => ({ ...one, worth: worthOf(one.worth) }));
  const byOutlets = within.includes('demand') ? ', by what outlets take' : '';
  const ofWhat = isWanted ? byOutlets : ', at the prices of Plantings since Demand is empty';
  const gain =
    goal === 'margin'
      ? `a margin of about ${money(book, chosen.gain + standing)}${ofWhat}`
      : `about ${hoursText(-chosen.gain)} of work on them`;
  return {
    ok: true,
    commands,
    message: message('choose amounts', { count: lengths.length }),
    said: saidOf({ gain, changed: longer.length, left: left.length, outgrown: outgrown.length, goal, heldBackBy }),
    chosen: { gain, lengths, heldBackBy },
  };
}

/** The length of the bed that a planting has, in metres; without end where none is typed. */
function lengthOfBed(book: Book, planting: number): number {
  const bed = rowAt(book, 'plantings', '', planting).number('bed');
  if (bed === undefined) return Number.POSITIVE_INFINITY;
  return rowAt(book, 'beds', '', bed).number('length') ?? Number.POSITIVE_INFINITY;
}

function hoursText(hours: number): string {
  return `${Number(hours.toFixed(1))} h`;
}

function money(book: Book, value: number): string {
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
  /** Of those that change, longer than the bed they were in. */
  readonly outgrown: number;
  readonly goal: ChooseWish['goal'];
  readonly heldBackBy: ChosenAmounts['heldBackBy'];
}

function saidOf({ gain, changed, left, outgrown, goal, heldBackBy }: Said): string {
  const saves = goal === 'margin' ? 'would gain' : 'would save';
  const limits = heldBackBy.slice(0, NAMED).map(({ name, more, worth }) => `${name} (${more} ${saves} about ${worth})`);
  const held = limits.length === 0 ? '' : ` It is held back by ${limits.join(', ')}.`;
  const room =
    outgrown === 0
      ? ''
      : ` ${outgrown} ${outgrown === 1 ? 'is longer than the bed it had' : 'are longer than the beds they had'}: split them over beds, or let beds be proposed.`;
  const out = `${left} ${left === 1 ? 'is' : 'are'} left out`;
  return `${changed} of the plantings ${changed === 1 ? 'changes its' : 'change their'} length and ${out}, for ${gain}. No planting becomes more than ${MOST_TIMES} times as long.${held}${room}`;
}
