// `draws`: the season drawn many times by chance, and what it says of figures, of the season or week by week.

import {
  type AskedWeeks,
  chanceOf,
  type Drawn,
  Draws,
  type Figure,
  type HangsOn,
  hangsOn,
  intervalOf,
  joinDrawn,
  MOST_DRAWS,
  sayNumber,
  sharesOf,
  type UncertainInput,
  uncertainInputs,
  unitSymbol,
  type Workbook,
} from '../../engine/index.ts';
import { SEASON_CHANCES } from '../../sheets-templates/index.ts';
import { CHANCE, streams } from '../chance.ts';
import type { Given } from './arguments.ts';
import { percent, weeklyNamed, weeksAsJson, weeksInWords } from './draws-by-week.ts';
import { plainData } from './plain-data.ts';
import { figureOf, goalOf } from './trials.ts';
import { bytesOf, lookInto, openBytes } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

const USUAL_COUNT = 2000;
/** Inputs named of those on which a figure hangs. */
const NAMED = 5;

/** Seasons between two words of how far it is. */
const AT_ONCE = 25;

/** From so many seasons on others draw a share of them: each opens the workbook first. */
const MANY = 1000;

export async function drawSeasons({ words, values, flags }: Given, world: World): Promise<number> {
  const [file = '', ...formulas] = words;
  const count = wholeOf(values.get('count'), USUAL_COUNT, 'count', MOST_DRAWS);
  const seed = wholeOf(values.get('seed'), 1, 'seed', 2 ** 31 - 1);
  const weekly = weeklyNamed(values.get('by-week'));
  if (formulas.length + weekly.length === 0)
    refuse('Say what to ask of the seasons: a formula, or --by-week and a figure of every week.');
  const figures = formulas.map((formula): Figure => ({ figure: 'formula', formula }));
  const bytes = await bytesOf(file, world);
  const threads = count < MANY ? undefined : world.threads;
  const [[, until] = [0, count], ...shares] = sharesOf(count, threads?.count ?? 1);
  const branch = values.get('branch');
  const order = { file, bytes, branch, asked: { figures, weekly }, seed };
  const elsewhere = shares.flatMap(([from, to]) => threads?.draw({ ...order, from, until: to }) ?? []);
  try {
    const workbook = lookInto(await openBytes(file, bytes, world), file, branch);
    const { inputs, goals } = checked(workbook, file, formulas, values.get('goal'));
    threads?.longWork();
    const draws = new Draws(workbook, { ...order, inputs, from: 0, until, chances: SEASON_CHANCES }, streams(seed));
    const beside = elsewhere.map((share) => share.drawn);
    const drawn = await drawnToTheEnd(draws, until, beside, world, file);
    const told = { workbook, formulas, weekly, count, seed, inputs: inputs.length, goals, drawn };
    world.out(flags.has('json') ? asJson(told) : inWords(told));
    return 0;
  } finally {
    for (const { end } of elsewhere) end();
  }
}

/** All that was drawn, here and beside; says meanwhile how far it is: those beside are about as far. */
async function drawnToTheEnd(
  draws: Draws,
  seasons: number,
  beside: readonly Promise<Drawn>[],
  world: World,
  file: string,
): Promise<Drawn> {
  try {
    while (!draws.isDone) {
      world.progress?.(`Drawing seasons: ${percent(draws.done / seasons)}`);
      const why = draws.step(AT_ONCE);
      if (why !== undefined) refuse(onOneLine(`${file}: ${why}`));
    }
    return joinDrawn([draws.result(), ...(await Promise.all(beside))]);
  } finally {
    world.progress?.(undefined);
  }
}

/** What is uncertain, and the goal as each formula reads it, once all that is asked can be answered. */
function checked(
  workbook: Workbook,
  file: string,
  formulas: readonly string[],
  goal: string | undefined,
): { readonly inputs: readonly UncertainInput[]; readonly goals: readonly (number | undefined)[] } {
  const goals = formulas.map((formula) => {
    const { now } = figureOf(workbook, file, formula);
    const where = formulas.length === 1 ? file : `${file}: ${formula}`;
    return goal === undefined ? undefined : goalOf(workbook, where, goal, now);
  });
  const inputs = uncertainInputs(workbook, SEASON_CHANCES.plan);
  if (inputs.length === 0)
    refuse(`${file}: every figure is known for sure: type some as ranges first, such as 80..90%.`);
  return { inputs, goals };
}

interface Told {
  readonly workbook: Workbook;
  readonly formulas: readonly string[];
  readonly weekly: readonly AskedWeeks[];
  readonly count: number;
  readonly seed: number;
  /** How many figures are uncertain. */
  readonly inputs: number;
  /** A formula each; undefined where none was given. */
  readonly goals: readonly (number | undefined)[];
  readonly drawn: Drawn;
}

function answersOf({ formulas, goals, drawn: { figures, inputs } }: Told) {
  return figures.map(({ type, values }, i) => {
    const goal = goals[i];
    return {
      figure: formulas[i] ?? '',
      goal,
      type,
      interval: intervalOf(values),
      chance: goal === undefined ? undefined : chanceOf(values, goal, 'at least'),
      hung: hangsOn(inputs, values, NAMED),
    };
  });
}

function byWeekOf({ weekly, drawn }: Told) {
  return weekly.flatMap((asked, i) => {
    const seasons = drawn.weekly[i];
    return seasons === undefined ? [] : [{ asked, seasons }];
  });
}

function asJson(told: Told): string {
  const { workbook, count, seed, inputs } = told;
  const figures = answersOf(told).map(({ figure, type, interval, chance, hung }) => ({
    figure,
    chance,
    hangsOn: hung?.named ?? [],
    leastShare: hung?.least ?? null,
    unit: type === undefined ? null : unitSymbol(type),
    ...(interval === undefined
      ? {}
      : {
          count: interval.count,
          p10: plainData(workbook, interval.p10, type),
          p50: plainData(workbook, interval.p50, type),
          p90: plainData(workbook, interval.p90, type),
        }),
  }));
  const byWeek = byWeekOf(told).map(({ asked, seasons }) => weeksAsJson(workbook, asked, seasons));
  return `${JSON.stringify({ seasons: count, seed, chance: CHANCE, inputs, figures, ...(byWeek.length === 0 ? {} : { byWeek }) })}\n`;
}

function inWords(told: Told): string {
  const { workbook, count, seed, inputs } = told;
  const lines = [
    `${seasons(count)} drawn from ${inputs} uncertain ${inputs === 1 ? 'figure' : 'figures'}, seed ${seed}\n`,
  ];
  for (const { figure, type, goal, interval, chance, hung } of answersOf(told)) {
    const say = (value: number): string => onOneLine(sayNumber(workbook, value, type));
    lines.push(`\n${figure}\n`);
    if (interval === undefined) {
      lines.push('  is no number in any of them\n');
      continue;
    }
    lines.push(`  10%  ${say(interval.p10)}\n  50%  ${say(interval.p50)}\n  90%  ${say(interval.p90)}\n`);
    if (chance !== undefined && goal !== undefined)
      lines.push(
        `  at least ${say(goal)}: ${percent(chance.chance)} of seasons, give or take ${percent(chance.error)}\n`,
      );
    for (const { name, share } of hung?.named ?? [])
      lines.push(`  hangs on ${onOneLine(name)}: ${percent(share)} of the spread\n`);
    if (hung !== undefined) lines.push(`  ${leftOut(hung, count)}\n`);
  }
  for (const { asked, seasons } of byWeekOf(told)) lines.push(weeksInWords(workbook, asked, seasons));
  return lines.join('');
}

/** Which inputs are not named among those that a figure hangs on. */
function leftOut({ named, more, least }: HangsOn, count: number): string {
  if (named.length === 0) return `hangs on nothing that ${seasons(count)} could tell from chance`;
  const others = more === 0 ? '' : `${more} more ${more === 1 ? 'has' : 'have'} a smaller part; `;
  return `${others}less than ${percent(least)} is left out: ${seasons(count)} can't tell it from chance`;
}

function seasons(count: number): string {
  return count === 1 ? '1 season' : `${count} seasons`;
}

function wholeOf(given: string | undefined, usual: number, option: string, most: number): number {
  if (given === undefined) return usual;
  const number = /^\d+$/.test(given) ? Number(given) : 0;
  return number >= 1 && number <= most ? number : refuse(`--${option} takes a whole number from 1 to ${most}.`);
}
