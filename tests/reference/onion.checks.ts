// Bulbing, leaf growth, harvest and bolting against what papers, extension services and the trade give.

import { bulbing } from '../../engine/agronomy/bulbing.ts';
import { meansFrom } from '../../engine/agronomy/climate.ts';
import { onionDryWeight, onionLeafArea } from '../../engine/agronomy/leaf-growth.ts';
import { dailyFromMonthlyMeans } from '../../engine/agronomy/monthly-means.ts';
import { criticalHoursOfType, DEFAULT_CRITICAL_HOURS } from '../../engine/agronomy/onion-types.ts';
import { topsDownDate } from '../../engine/agronomy/tops-down.ts';
import { civilDay, dayOfYear } from '../../engine/values/civil.ts';
import type { Check } from './check.ts';

const FIRST_DAY = civilDay(2026, 1, 1);
const constant = (mean: number): Float64Array => new Float64Array(365).fill(mean);

const LANCASTER = 'Lancaster, Triggs, de Ruiter & Gandar 1996, Annals of Botany 78:423-430';

const gates: readonly Check[] = [
  {
    source: LANCASTER,
    what: 'degree-days since emergence at the start of bulbing where days are long enough from the first (base 5 C, constant 15 C)',
    unit: 'C d',
    published: 600,
    computed: () => {
      const emergence = civilDay(2026, 4, 20);
      const { starts } = bulbing({
        latitude: 52,
        firstDay: FIRST_DAY,
        means: constant(15),
        emergence,
        criticalHours: 13.75,
      });
      return (starts - emergence + 1) * 10;
    },
    tolerance: 10, // a day's worth
    standing: 'published',
  },
  ...[
    { leafArea: true, what: 'leaf area at emergence', unit: 'cm2', published: 0.5 },
    { leafArea: false, what: 'dry weight at emergence', unit: 'g', published: 0.00227 },
  ].map(
    ({ leafArea, what, unit, published }): Check => ({
      source: 'Brewster 2008, Onions and Other Vegetable Alliums, eq 4.17a and 4.17b',
      what,
      unit,
      published,
      computed: () => (leafArea ? onionLeafArea(0) : onionDryWeight(0)),
      tolerance: 0.00001,
      standing: 'published',
    }),
  ),
];

const BANDS = [
  { type: 'short', from: 10, to: 12, source: 'Iowa State University Extension, long-day-type onion varieties' },
  { type: 'short', from: 11, to: 13, source: 'Oregon State University Extension 2006 (J. Myers)' },
  { type: 'short', from: 12, to: 12, source: 'Texas Cooperative Extension, Horticulture Update 2006 (D. Welsh)' },
  { type: 'intermediate', from: 12, to: 14, source: 'Iowa State University Extension, long-day-type onion varieties' },
  { type: 'intermediate', from: 13, to: 14, source: 'Oregon State University Extension 2006 (J. Myers)' },
  { type: 'long', from: 14, to: 16, source: 'common practice: long-day onions start bulbs at 14 to 16 h' },
];

const bands = BANDS.map(
  ({ type, from, to, source }): Check => ({
    source,
    what: `default critical day length of ${type}-day onions, middle of ${from} to ${to} h`,
    unit: 'h',
    published: (from + to) / 2,
    computed: () => criticalHoursOfType(type),
    tolerance: (to - from) / 2,
    standing: source.startsWith('common practice') ? 'common practice' : 'published',
  }),
);

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

const harvests = (
  [
    ['inland valley, intermediate type', INLAND, DEFAULT_CRITICAL_HOURS.intermediate],
    ['inland valley, 14-hour type', INLAND, 14],
    ['mild coast, intermediate type', COAST, DEFAULT_CRITICAL_HOURS.intermediate],
    ['mild coast, 14-hour type', COAST, 14],
  ] as const
).map(
  ([place, monthly, hours]): Check => ({
    source:
      'common practice: near 38 N, sown after the winter solstice and planted in mid-March, onions come in mostly in July',
    what: `tops down, ${place}, middle of July`,
    unit: 'day of year',
    published: dayOfYear(civilDay(2026, 7, 16)),
    computed: () => harvest(monthly, hours),
    tolerance: 15.5,
    standing: 'common practice',
  }),
);

export const checks: readonly Check[] = [...gates, ...bands, ...harvests];
