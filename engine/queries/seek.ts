// The value of one input at which a figure reaches a goal: looked for between two ends on a branch, first at even steps, then
// by halving wherever the figure passes the goal. Steps, plateaus, several answers and none are told apart and told plainly.

import type { Workbook } from '../commands/workbook.ts';
import type { Unit } from '../units/unit.ts';
import type { ValueType } from '../values/type.ts';
import { columnOf } from './book.ts';
import { type Figure, numberOf, sayNumber } from './figures.ts';
import { comesInWholes, type Input, putInput, readInput, refuseInput, sayInput } from './inputs.ts';
import { type Tried, turnsIn } from './seek-turns.ts';
import { onTrials, type RunTrial } from './trials.ts';

export interface SeekQuestion {
  readonly input: Input;
  /** The ends between which is looked, canonical. */
  readonly from: number;
  readonly to: number;
  /** The unit in which the input is answered. */
  readonly unit?: Unit | undefined;
  readonly figure: Figure;
  /** What the figure is to be, canonical. */
  readonly goal: number;
  readonly figureName: string;
}

/** Where the figure is at its goal, or passes it in one step. */
export interface SoughtPlace {
  /** The input, canonical; `to` is above `from` where the figure stays at the goal. */
  readonly from: number;
  readonly to: number;
  /** The figure at those ends. Off the goal where it steps over it. */
  readonly figureFrom: number;
  readonly figureTo: number;
  readonly stepsOver: boolean;
}

export type Sought =
  | { readonly answer: 'refused'; readonly says: string }
  | { readonly answer: 'none' | 'one' | 'several'; readonly places: readonly SoughtPlace[]; readonly says: string };

/** Even steps between the ends: a figure that passes the goal and comes back within one of them can be missed. */
export const SEEK_STEPS = 48;
/** Halvings of a step: to about a hundred-millionth of the whole. */
const HALVINGS = 22;
/** A figure this near its goal, by the size of either, is at it. */
const NEAR = 1e-9;
/** A turn this near the goal, by how far the figure goes between the ends, touches it: its place is not known finer. */
const TOUCHING = 1e-7;
/** Decimals with which an answer is tried where those it is usually shown with don't give the goal. */
const EXACTLY = [3, 4, 5, 6, 8, 10];

export function seek(workbook: Workbook, question: SeekQuestion): Sought {
  const why = refuseInput(workbook, question.input);
  if (why !== undefined) return { answer: 'refused', says: why };
  if (!(question.from < question.to))
    return { answer: 'refused', says: 'The lower end must be below the upper one: swap them.' };
  return onTrials(workbook, [question.figure], (run) => soughtBy(run, workbook, question));
}

function soughtBy(run: RunTrial, workbook: Workbook, question: SeekQuestion): Sought {
  const { input, from, to, goal, figureName } = question;
  const column = columnOf(workbook, input.sheet, input.column);
  const inWholes = column !== undefined && comesInWholes(column);
  let type: ValueType | undefined;
  let fault: string | undefined;
  const tryAt = (at: number): Tried => {
    const [found] = run([putInput(workbook, input, { value: at, unit: undefined })]);
    if (found?.type !== undefined) type = found.type;
    const figure = found === undefined ? undefined : numberOf(found);
    if (figure === undefined) fault ??= found?.shown;
    return { at, figure, side: figure === undefined ? undefined : sideOf(figure, goal) };
  };
  const tried = evenly(from, to, inWholes).map(tryAt);
  if (tried.every(({ side }) => side === undefined)) {
    return {
      answer: 'refused',
      says: `${figureName} is no number anywhere between the ends: ${fault ?? 'it is blank'}`,
    };
  }
  const finest = inWholes ? 1 : (to - from) / SEEK_STEPS / 2 ** HALVINGS;
  const words = wordsFor(workbook, question, type, tryAt);
  const { figure: show } = words;
  const touch = TOUCHING * spreadOf(tried);
  const touches = ({ figure }: Tried): boolean =>
    figure !== undefined && (Math.abs(figure - goal) <= touch || show(figure) === show(goal));
  const turns = turnsIn(tried, { finest, inWholes, tryAt, touches });
  const looked = [...tried, ...turns].sort((a, b) => a.at - b.at);
  const all = inWholes ? withWholesBetween(looked, tryAt) : looked;
  const met = placesIn(all, finest, inWholes, tryAt);
  const places = met.length > 0 ? met : nearestAsShown(all, goal, show);
  const answer = places.length === 0 ? 'none' : places.length === 1 ? 'one' : 'several';
  return { answer, places, says: places.length === 0 ? words.none(all) : words.found(places) };
}

/** Where the figure comes so near that it reads as the goal does: goals are typed as figures are shown, which is rounded. */
function nearestAsShown(
  tried: readonly Tried[],
  goal: number,
  show: (figure: number) => string,
): readonly SoughtPlace[] {
  const { nearest } = nearestOf(tried, goal);
  return show(nearest.figure) === show(goal) ? [placeOf(nearest, nearest, false)] : [];
}

/** How far the figure goes. */
function spreadOf(tried: readonly Tried[]): number {
  const figures = tried.flatMap(({ figure }) => figure ?? []);
  return Math.max(...figures) - Math.min(...figures);
}

/** The figures there are, and which of them is the nearest to the goal. */
function nearestOf(tried: readonly Tried[], goal: number) {
  const known = tried.flatMap(({ at, figure, side }) => (figure === undefined ? [] : [{ at, figure, side }]));
  const nearest = known.reduce((a, b) => (Math.abs(b.figure - goal) < Math.abs(a.figure - goal) ? b : a));
  return { known, nearest };
}

function sideOf(figure: number, goal: number): number {
  const dust = NEAR * Math.max(Math.abs(figure), Math.abs(goal));
  return Math.abs(figure - goal) <= dust ? 0 : figure < goal ? -1 : 1;
}

function evenly(from: number, to: number, whole: boolean): readonly number[] {
  const steps = whole ? Math.min(SEEK_STEPS, Math.round(to - from)) : SEEK_STEPS;
  const values = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);
  return whole ? [...new Set(values.map(Math.round))] : values;
}

/** Whole values tried between neighbours that are both at the goal, at most. */
const MOST_BETWEEN = 400;

/** A stretch of days or counts at the goal is told as one where every one of them was tried, or where they are more than can be. */
function withWholesBetween(tried: readonly Tried[], tryAt: (at: number) => Tried): readonly Tried[] {
  let left = MOST_BETWEEN;
  return tried.flatMap((point, i) => {
    const next = tried[i + 1];
    const between = next === undefined || point.side !== 0 || next.side !== 0 ? 0 : next.at - point.at - 1;
    if (between <= 0 || between > left) return [point];
    left -= between;
    return [point, ...Array.from({ length: between }, (_, at) => tryAt(point.at + at + 1))];
  });
}

function placesIn(
  tried: readonly Tried[],
  finest: number,
  whole: boolean,
  tryAt: (at: number) => Tried,
): readonly SoughtPlace[] {
  /** The two neighbours, as near as can be, between which `holds` ends. */
  const edge = (low: Tried, high: Tried, holds: (side: number | undefined) => boolean): readonly [Tried, Tried] => {
    let [a, b] = [low, high];
    while (b.at - a.at > finest) {
      const middle = whole ? Math.round((a.at + b.at) / 2) : (a.at + b.at) / 2;
      if (middle <= a.at || middle >= b.at) break;
      const next = tryAt(middle);
      if (holds(next.side)) a = next;
      else b = next;
    }
    return [a, b];
  };
  const spread = spreadOf(tried);
  const places: SoughtPlace[] = [];
  /** Where a stretch at the goal began, while it lasts. */
  let began: Tried | undefined;
  const close = (last: Tried): void => {
    if (began !== undefined) places.push(placeOf(began, last, false));
    began = undefined;
  };
  tried.forEach((point, i) => {
    const before = tried[i - 1];
    if (before === undefined || before.side === undefined || point.side === undefined) {
      if (point.side === 0 && began === undefined) began = point;
      else if (point.side === undefined && before !== undefined) close(before);
      return;
    }
    if (before.side === point.side) return;
    if (before.side === 0) {
      close(edge(before, point, (side) => side === 0)[0]);
      return;
    }
    const [last, first] = edge(before, point, (side) => side === before.side);
    if (first.side === 0) {
      began = first;
      if (point.side !== 0) close(edge(first, point, (side) => side === 0)[0]);
      return;
    }
    if (first.side !== undefined) places.push(crossing(last, first, spread));
  });
  const end = tried.at(-1);
  if (end !== undefined) close(end);
  return places;
}

function placeOf(from: Tried, to: Tried, stepsOver: boolean): SoughtPlace {
  return { from: from.at, to: to.at, figureFrom: from.figure ?? 0, figureTo: to.figure ?? 0, stepsOver };
}

/**
 * Two values next to each other on either side of the goal: a smooth figure is at it, another steps over it. What is much is
 * measured by how far the figure goes between the ends, since its own size is none about a goal of 0.
 */
function crossing(last: Tried, first: Tried, spread: number): SoughtPlace {
  const [a, b] = [last.figure ?? 0, first.figure ?? 0];
  const isStep = Math.abs(b - a) > 1e-5 * spread;
  return isStep ? placeOf(last, first, true) : placeOf(first, first, false);
}

/** The sentences of an answer. */
function wordsFor(
  workbook: Workbook,
  question: SeekQuestion,
  type: ValueType | undefined,
  tryAt: (at: number) => Tried,
) {
  const { input, figureName, goal, unit, from, to } = question;
  const at = (value: number): string => sayInput(workbook, input, { value, unit });
  const figure = (value: number): string => sayNumber(workbook, value, type);
  /** Whether the figure is at the goal, as far as it is shown, once this is typed. */
  const holds = (text: string): boolean => {
    const read = readInput(workbook, input, text);
    const [typed] = read.ok ? read.values : [];
    const is = typed === undefined ? undefined : tryAt(typed.value).figure;
    return is !== undefined && figure(is) === figure(goal);
  };
  /** With as many decimals as it takes to be typed again; as it is usually shown where none are enough. */
  const exactly = (value: number): string => {
    const usual = at(value);
    const finer = EXACTLY.map((decimals) => sayInput(workbook, input, { value, unit }, decimals));
    return [usual, ...finer].find(holds) ?? usual;
  };
  const one = (place: SoughtPlace): string => {
    if (place.stepsOver) {
      return `steps over ${figure(goal)} at ${at(place.to)}, from ${figure(place.figureFrom)} to ${figure(place.figureTo)}`;
    }
    const [first, last] = [at(place.from), at(place.to)];
    if (place.from === place.to) return `is ${figure(goal)} at ${exactly(place.from)}`;
    return first === last ? `is ${figure(goal)} at ${first}` : `is ${figure(goal)} from ${first} to ${last}`;
  };
  return {
    figure,
    found: (places: readonly SoughtPlace[]): string => {
      if (places.length === 1) return `${figureName} ${places.map(one).join('')}.`;
      return `${figureName} gets there in ${places.length} places: it ${places.map(one).join('; it ')}.`;
    },
    none: (tried: readonly Tried[]): string => {
      const { known, nearest } = nearestOf(tried, goal);
      const figures = known.map((one) => one.figure);
      const [least, most] = [Math.min(...figures), Math.max(...figures)];
      const stays = least === most ? `stays at ${figure(least)}` : `stays between ${figure(least)} and ${figure(most)}`;
      const closest = least === most ? '' : ` It comes nearest at ${at(nearest.at)}, with ${figure(nearest.figure)}.`;
      return `From ${at(from)} to ${at(to)}, ${figureName} ${stays} and never reaches ${figure(goal)}.${closest}`;
    },
  };
}
