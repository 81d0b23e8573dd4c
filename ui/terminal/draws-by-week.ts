// What drawn seasons say week by week, for `draws --by-week`: the 10, 50 and 90% values, and the chance of running out or over.

import {
  type Chance,
  chanceInWeek,
  type DrawnWeeks,
  type Interval,
  intervalOf,
  isoDate,
  sayNumber,
  unitSymbol,
  type Workbook,
  weekName,
} from '../../engine/index.ts';
import { WEEKLY_CHANCES, type WeeklyChance } from '../../sheets-templates/index.ts';
import { aligned } from './columns.ts';
import { plainData } from './plain-data.ts';
import { onOneLine, refuse } from './world.ts';

interface Week {
  readonly week: number;
  readonly interval: Interval;
  /** That it is as it should be; of figures that don't run out or over undefined. */
  readonly well: Chance | undefined;
}

/** The figures by week that an option names, parted by semicolons, by name or id. */
export function weeklyNamed(text: string | undefined): readonly WeeklyChance[] {
  if (text === undefined) return [];
  return text.split(';').map((part) => {
    const wanted = part.trim().toLowerCase();
    const found = WEEKLY_CHANCES.find(({ id, name }) => id === wanted || name.toLowerCase() === wanted);
    const names = WEEKLY_CHANCES.map(({ name }) => `“${name}”`).join(', ');
    return found ?? refuse(`--by-week knows no “${part.trim()}”: it takes ${names}, several parted by semicolons.`);
  });
}

function weeksOf({ well }: WeeklyChance, { weeks }: DrawnWeeks): readonly Week[] {
  return weeks.flatMap(({ week, values }) => {
    const interval = intervalOf(values);
    const chance = well === undefined ? undefined : chanceInWeek(values, well.value, well.side);
    return interval === undefined ? [] : [{ week, interval, well: chance }];
  });
}

export function weeksAsJson(book: Workbook, asked: WeeklyChance, drawn: DrawnWeeks) {
  const { type } = drawn;
  return {
    figure: asked.name,
    unit: type === undefined ? null : unitSymbol(type),
    weeks: weeksOf(asked, drawn).map(({ week, interval: { count, p10, p50, p90 }, well }) => ({
      week: weekName(week),
      monday: isoDate(week),
      count,
      p10: plainData(book, p10, type),
      p50: plainData(book, p50, type),
      p90: plainData(book, p90, type),
      ...(asked.well === undefined || well === undefined
        ? {}
        : { chance: { of: asked.well.missed, chance: 1 - well.chance, error: well.error } }),
    })),
  };
}

export function weeksInWords(book: Workbook, asked: WeeklyChance, drawn: DrawnWeeks): string {
  const weeks = weeksOf(asked, drawn);
  // Sums that come to nothing leave dust of the size of what was summed.
  const dust = 1e-12 * weeks.reduce((most, { interval: { p90 } }) => Math.max(most, Math.abs(p90)), 0);
  const say = (value: number): string => onOneLine(sayNumber(book, Math.abs(value) <= dust ? 0 : value, drawn.type));
  const missed = asked.well?.missed;
  const rows = weeks.map(({ week, interval: { p10, p50, p90 }, well }) => [
    weekName(week),
    ...[p10, p50, p90].map(say),
    ...(well === undefined ? [] : [percent(1 - well.chance)]),
  ]);
  const head = ['Week', '10%', '50%', '90%', ...(missed === undefined ? [] : [missed])];
  const figures = head.map((_, at) => at).slice(1);
  return rows.length === 0
    ? `\n${asked.name}\n  is no number in any week\n`
    : `\n${asked.name}\n${aligned([head, ...rows], figures)}`;
}

export function percent(share: number): string {
  return `${(share * 100).toFixed(share > 0 && share < 0.01 ? 2 : 0)}%`;
}
