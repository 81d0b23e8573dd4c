// When onions come in, as growers near 38 N say. What gates, day lengths and bolting are taken from their sources is held by
// tests/agronomy/as-their-sources-say.test.ts.

import { bulbing } from '../../engine/agronomy/bulbing.ts';
import { meansFrom } from '../../engine/agronomy/climate.ts';
import { dailyFromMonthlyMeans } from '../../engine/agronomy/monthly-means.ts';
import { DEFAULT_CRITICAL_HOURS } from '../../engine/agronomy/onion-types.ts';
import { topsDownDate } from '../../engine/agronomy/tops-down.ts';
import { civilDay, dayOfYear } from '../../engine/values/civil.ts';
import type { Fact } from './check.ts';

const FIRST_DAY = civilDay(2026, 1, 1);

// Monthly means (C) of made-up places: a warm inland valley and a mild coast, both near 38 degrees north.
const INLAND = [3, 5, 9, 13, 18, 22.5, 25, 24, 20, 14, 8, 4];
const COAST = [9, 11, 12, 13.5, 15.5, 18, 19, 19.5, 19, 16.5, 12, 9];

function harvest(monthly: readonly number[], criticalHours: number): number {
  const daily = dailyFromMonthlyMeans(monthly);
  const plantedOut = civilDay(2026, 3, 15);
  const means = meansFrom(daily, daily, FIRST_DAY, 365, { plantedOut, mean: 15 });
  const emergence = civilDay(2026, 1, 14);
  const { starts } = bulbing({ latitude: 38, firstDay: FIRST_DAY, means, emergence, criticalHours });
  return dayOfYear(topsDownDate(means, FIRST_DAY, starts));
}

export const facts: readonly Fact[] = [
  {
    kind: 'common practice',
    fact: 'tops of onions down near 38 N',
    unit: 'day of year',
    practice: 'sown after the winter solstice and planted in mid-March, onions come in mostly in July',
    points: (
      [
        ['inland valley, intermediate type', INLAND, DEFAULT_CRITICAL_HOURS.intermediate],
        ['inland valley, 14-hour type', INLAND, 14],
        ['mild coast, intermediate type', COAST, DEFAULT_CRITICAL_HOURS.intermediate],
        ['mild coast, 14-hour type', COAST, 14],
      ] as const
    ).map(([place, monthly, hours]) => ({
      what: `${place}, about the middle of July`,
      given: dayOfYear(civilDay(2026, 7, 16)),
      computed: () => harvest(monthly, hours),
      tolerance: 15.5,
    })),
  },
];
