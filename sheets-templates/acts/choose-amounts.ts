// The act of choosing how much of each planting to grow: bed lengths within the beds there are week by week and the hands there
// are, for the most margin. Margins and hours are taken to grow with the length, as they nearly do. Faces answer it as a branch.

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
  showDate,
  showWithUnit,
} from '../../engine/index.ts';
import { type Act, refused, rowAt } from './act.ts';

/** A planting may become this many times as long at most, where nothing else holds it back. */
const MOST_TIMES = 3;

/** Bed is counted in feet and work in hours, so that one more of either is what a grower would add. */
const FOOT = 0.3048;
const HOUR = 1 / 24;

interface Grown {
  readonly id: string;
  /** In feet. */
  readonly length: number;
}

/** The act, with the answer itself for whoever shows more of it. */
export function chooseAmounts(book: Book, solve: Solver): Act & { readonly chosen?: Chosen } {
  // Bed is measured out in whole feet, rounded down, so that what was within the limits stays so.
  const grown: Grown[] = [];
  const choices: Choice[] = [];
  const hours = hoursByWeek(book);
  const noted = notedPlantings(book);
  const { today } = settings(book);
  const taken = new Map<string, number>();
  for (const slot of rows(book, 'plantings')) {
    const id = rowId(book, 'plantings', slot);
    const row = rowAt(book, 'plantings', id, slot);
    const [metres, margin] = [row.number('bed-length-used'), row.number('margin')];
    const [from, until] = [row.number('planted-out'), row.number('bed-free')];
    if (metres === undefined || margin === undefined || from === undefined || until === undefined || metres <= 0)
      continue;
    const length = metres / FOOT;
    const ofPlanting = hours.byPlanting.get(slot) ?? new Map<number, number>();
    const takes = new Map([
      ...weeksOf(book, from, until).map((week): [string, number] => [`beds ${week}`, 1]),
      ...[...ofPlanting].map(([week, amount]): [string, number] => [`hours ${week}`, amount / HOUR / length]),
    ]);
    // What stands already is no choice any more: it keeps the room and the hours that it has.
    if (noted.has(slot) || Math.min(from, row.number('sown') ?? from) <= today) {
      for (const [limit, each] of takes) taken.set(limit, (taken.get(limit) ?? 0) + each * length);
      continue;
    }
    grown.push({ id, length });
    choices.push({
      id,
      name: rowName(book, 'plantings', slot),
      gain: margin / length,
      least: 0,
      most: MOST_TIMES * length,
      takes,
    });
  }
  if (choices.length === 0)
    return refused(
      'There is no planting to choose: each has begun already, or has no bed length, dates and margin yet. Fill those in first.',
    );
  const limits = limitsOf(book, hours.others).map((limit): Limit => {
    return { ...limit, most: Math.max(0, limit.most - (taken.get(limit.id) ?? 0)) };
  });
  const chosen = choose(choices, limits, solve);
  if (chosen === undefined) return refused('No lengths keep within the beds and the hands there are.');
  const left: string[] = [];
  const longer = grown.flatMap(({ id, length }): Command[] => {
    const amount = Math.floor((chosen.amounts.get(id) ?? 0) + 1e-6);
    if (amount === 0) {
      left.push(id);
      return [];
    }
    if (Math.abs(amount - length) < 0.01) return [];
    const content = { number: amount, unit: 'ft' };
    return [{ command: 'put cell', sheet: 'plantings', row: id, column: 'bed-length-used', content }];
  });
  // A planting of no length is none.
  const commands: Command[] =
    left.length === 0 ? longer : [...longer, { command: 'remove rows', sheet: 'plantings', rows: left }];
  const count = longer.length + left.length;
  return {
    ok: true,
    commands,
    message: message('choose amounts', { count }),
    said: saidOf(book, chosen, longer.length, left.length),
    chosen,
  };
}

/** Plantings of which something was noted, by slot. */
function notedPlantings(book: Book): ReadonlySet<number> {
  const named = Array.from(rows(book, 'records'), (slot) => rowAt(book, 'records', '', slot).number('planting'));
  return new Set(named.filter((slot) => slot !== undefined));
}

function weeksOf(book: Book, from: number, until: number): readonly number[] {
  return mondays(book).filter((monday) => monday + 7 > from && monday < until);
}

function mondays(book: Book): readonly number[] {
  return Array.from(rows(book, 'weeks'), (slot) => rowAt(book, 'weeks', '', slot).number('week') ?? 0);
}

/** Hours of each planting by week, and of everything else. */
function hoursByWeek(book: Book) {
  const byPlanting = new Map<number, Map<number, number>>();
  const others = new Map<number, number>();
  for (const slot of rows(book, 'tasks')) {
    const row = rowAt(book, 'tasks', '', slot);
    const [week, amount, planting] = [row.number('week-starts'), row.number('hours-counted'), row.number('planting')];
    if (week === undefined || amount === undefined) continue;
    if (planting === undefined) others.set(week, (others.get(week) ?? 0) + amount);
    else {
      const known = byPlanting.get(planting) ?? new Map<number, number>();
      byPlanting.set(planting, known);
      known.set(week, (known.get(week) ?? 0) + amount);
    }
  }
  return { byPlanting, others };
}

/** All bed length in every week, and the hours of the week that other work leaves; a week without hands named has no limit. */
function limitsOf(book: Book, others: ReadonlyMap<number, number>): readonly Limit[] {
  const beds = Array.from(rows(book, 'beds'), (slot) => rowAt(book, 'beds', '', slot).number('length') ?? 0);
  const length = beds.reduce((sum, one) => sum + one, 0);
  const ofBeds = mondays(book).map(
    (week): Limit => ({ id: `beds ${week}`, name: `the beds in the week of ${showDate(week)}`, most: length / FOOT }),
  );
  const ofHands = Array.from(rows(book, 'labour'), (slot): Limit | undefined => {
    const row = rowAt(book, 'labour', '', slot);
    const [week, available] = [row.number('monday'), row.number('available')];
    if (week === undefined || available === undefined) return undefined;
    const most = Math.max(0, available - (others.get(week) ?? 0)) / HOUR;
    return { id: `hours ${week}`, name: `the hands in the week of ${showDate(week)}`, most };
  }).filter((limit) => limit !== undefined);
  return [...ofBeds, ...ofHands];
}

/** Limits named of those that hold the choice back. */
const NAMED = 3;

function saidOf(book: Book, { gain, heldBackBy }: Chosen, changed: number, left: number): string {
  const margin = sheetView(book, 'plantings')?.columns.find(({ id }) => id === 'margin')?.type;
  const money = (value: number): string =>
    margin === undefined ? String(value) : showWithUnit(value, margin, { currency: book.document.program.currency });
  const limits = heldBackBy.slice(0, NAMED).map(({ limit, worth }) => {
    const more = limit.id.startsWith('beds') ? 'a foot more' : 'an hour more';
    return `${limit.name} (${more} would gain about ${money(worth)})`;
  });
  const held = limits.length === 0 ? '' : ` It is held back by ${limits.join(', ')}.`;
  return `${changed} of the plantings change their length and ${left} are left out, for a margin of about ${money(gain)}. No planting becomes more than ${MOST_TIMES} times as long, since what can be sold is not reckoned.${held}`;
}
