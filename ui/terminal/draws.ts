// `draws`: the season drawn many times by chance, and what it says of figures, of the season or week by week.

import {
  chanceOf,
  Draws,
  type Figure,
  figureIn,
  intervalOf,
  isError,
  MOST_DRAWS,
  numberOf,
  sayNumber,
  shareOfSpread,
  uncertainInputs,
  unitSymbol,
} from '../../engine/index.ts';
import { SEASON_CHANCES } from '../../sheets-templates/index.ts';
import { CHANCE, streams } from '../chance.ts';
import type { Given } from './arguments.ts';
import { inUnit, percent, weeklyNamed, weeksAsJson, weeksInWords } from './draws-by-week.ts';
import { openWorkbook } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

const USUAL_COUNT = 2000;
/** Inputs named of those on which a figure hangs. */
const NAMED = 5;

export async function drawSeasons({ words, values, flags }: Given, world: World): Promise<number> {
  const [file = '', ...formulas] = words;
  const count = wholeOf(values.get('count'), USUAL_COUNT, 'count', MOST_DRAWS);
  const seed = wholeOf(values.get('seed'), 1, 'seed', 2 ** 31 - 1);
  const weekly = weeklyNamed(values.get('by-week'));
  if (formulas.length + weekly.length === 0)
    refuse('Say what to ask of the seasons: a formula, or --by-week and a figure of every week.');
  const workbook = await openWorkbook(file, world);
  const figures = formulas.map((formula): Figure => ({ figure: 'formula', formula }));
  for (const figure of figures) {
    const now = figureIn(workbook, figure);
    if (isError(now.value) && now.type === undefined) refuse(onOneLine(`${file}: ${now.value.why}`));
  }
  const inputs = uncertainInputs(workbook, SEASON_CHANCES.plan);
  if (inputs.length === 0)
    refuse(`${file}: every figure is known for sure: type some as ranges first, such as 80..90%.`);
  const goalText = values.get('goal');
  const goal =
    goalText === undefined ? undefined : numberOf(figureIn(workbook, { figure: 'formula', formula: goalText }));
  if (goalText !== undefined && goal === undefined)
    refuse(`${file}: the goal “${goalText}” is no number or amount, such as 120 lb.`);
  const order = { inputs, asked: { figures, weekly }, from: 0, until: count, chances: SEASON_CHANCES };
  const draws = new Draws(workbook, order, streams(seed));
  const why = draws.step(count);
  if (why !== undefined) refuse(onOneLine(`${file}: ${why}`));
  const { inputs: drawn, figures: found, weekly: weeks } = draws.result();
  const byWeek = weekly.flatMap((asked, i) => {
    const seasons = weeks[i];
    return seasons === undefined ? [] : [{ asked, seasons }];
  });
  const answers = found.map(({ type, values: seasons }, i) => ({
    figure: formulas[i] ?? '',
    type,
    interval: intervalOf(seasons),
    chance: goal === undefined ? undefined : chanceOf(seasons, goal, 'at least'),
    hangsOn: drawn
      .map((input) => ({ name: input.name, share: shareOfSpread(input.values, seasons) }))
      .sort((a, b) => b.share - a.share)
      .slice(0, NAMED)
      .filter(({ share }) => share > 0.005),
  }));
  if (flags.has('json')) {
    const data = answers.map(({ type, interval, ...rest }) => ({
      ...rest,
      unit: type === undefined ? null : unitSymbol(type),
      ...(interval === undefined
        ? {}
        : {
            count: interval.count,
            p10: inUnit(type, interval.p10),
            p50: inUnit(type, interval.p50),
            p90: inUnit(type, interval.p90),
          }),
    }));
    world.out(
      `${JSON.stringify({ seasons: count, seed, chance: CHANCE, inputs: inputs.length, figures: data, ...(byWeek.length === 0 ? {} : { byWeek: byWeek.map(({ asked, seasons }) => weeksAsJson(asked, seasons)) }) })}\n`,
    );
    return 0;
  }
  world.out(
    `${count} seasons drawn from ${inputs.length} uncertain ${inputs.length === 1 ? 'figure' : 'figures'}, seed ${seed}\n`,
  );
  for (const { figure, type, interval, chance, hangsOn } of answers) {
    const say = (value: number): string => onOneLine(sayNumber(workbook, value, type));
    world.out(`\n${figure}\n`);
    if (interval === undefined) {
      world.out('  is no number in any of them\n');
      continue;
    }
    world.out(`  10%  ${say(interval.p10)}\n  50%  ${say(interval.p50)}\n  90%  ${say(interval.p90)}\n`);
    if (chance !== undefined)
      world.out(
        `  at least ${goalText}: ${percent(chance.chance)} of seasons, give or take ${percent(chance.error)}\n`,
      );
    for (const { name, share } of hangsOn)
      world.out(`  hangs on ${onOneLine(name)}: ${percent(share)} of the spread\n`);
  }
  for (const { asked, seasons } of byWeek) world.out(weeksInWords(workbook, asked, seasons));
  return 0;
}

function wholeOf(given: string | undefined, usual: number, option: string, most: number): number {
  if (given === undefined) return usual;
  const number = /^\d+$/.test(given) ? Number(given) : 0;
  return number >= 1 && number <= most ? number : refuse(`--${option} takes a whole number from 1 to ${most}.`);
}
