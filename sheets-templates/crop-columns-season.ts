// Crops, second part: the cold and heat a crop stands, when it goes out, the warmth it takes to a harvest, and what sends
// it to seed. crops.ts puts the parts together.

import {
  choice,
  DAYS,
  DEGREE_DAYS,
  entered,
  group,
  HOURS,
  TEMPERATURE,
  TEXT,
  WEEKS,
  withDefault,
} from './authoring.ts';

export const HARDINESS = ['tender', 'half-hardy', 'hardy', 'very hardy'] as const;
export const BOLTING_TRIGGERS = [
  'none',
  'cold',
  'cold and long days',
  'long days',
  'heat and long days',
  'heat',
] as const;

/** Killed above -1.5, -5 and -11 degC: frost groups as extension lists draw them. */
const HARDINESS_FROM_LIMIT = `IF(NOT(ISBLANK([Frost limit])); IF([Frost limit] > 29.3 degF; "tender";
  IF([Frost limit] > 23 degF; "half-hardy"; IF([Frost limit] > 12.2 degF; "hardy"; "very hardy"))))`;

/** Common practice in counting back from the first frost: days to harvest, and two weeks for shortening days. */
function countedBack(days: string): string {
  return `[${days}] + 14 days`;
}

function warmth(id: string, name: string, note = '') {
  return entered(id, name, DEGREE_DAYS, { note, decimals: 0, least: 0 });
}

export const SEASON_COLUMNS = [
  ...group(
    'Season',
    entered('frost-limit', 'Frost limit', TEMPERATURE, {
      note: 'Hardened plants without cover are killed at about this.',
    }),
    withDefault('frost-limit-young', 'Frost limit young', TEMPERATURE, 'IF([Hardiness] = "tender"; [Frost limit])', {
      note: 'Young or unhardened plants; tender crops never harden.',
    }),
    withDefault('hardiness', 'Hardiness', choice(...HARDINESS), HARDINESS_FROM_LIMIT, {
      note: 'From the frost limit.',
    }),
    entered('chilling-limit', 'Chilling limit', TEMPERATURE, {
      note: 'Growing plants are hurt below this without any frost.',
    }),
    entered('plant-out-from-last-frost', 'Plant out from last frost', WEEKS, {
      note: 'Earliest, counted from the average last frost; below zero is before it.',
    }),
    entered('sow-outdoors-from-last-frost', 'Sow outdoors from last frost', WEEKS, {
      note: 'Earliest, counted from the average last frost; below zero is before it.',
    }),
    entered('setting-out-minimum', 'Setting out minimum', TEMPERATURE, {
      note: 'Coolest soil, or nights, for setting plants out.',
    }),
    entered('autumn-soil-maximum', 'Autumn soil maximum', TEMPERATURE, {
      note: 'Autumn planting begins once the soil has cooled to this.',
    }),
    withDefault(
      'latest-sowing-before-first-frost',
      'Latest sowing before first frost',
      WEEKS,
      countedBack('Days to maturity direct'),
      {
        note: 'In the bed, counted from the average first frost; days to maturity and two weeks where not known.',
        decimals: 1,
      },
    ),
    withDefault(
      'latest-planting-out-before-first-frost',
      'Latest planting out before first frost',
      WEEKS,
      countedBack('Days to maturity'),
      { note: 'Counted from the average first frost; days to maturity and two weeks where not known.', decimals: 1 },
    ),
  ),
  ...group(
    'Warmth',
    entered('growth-minimum', 'Growth minimum', TEMPERATURE, { note: 'Monthly mean below which it hardly grows.' }),
    entered('growth-best-from', 'Growth best from', TEMPERATURE, { note: 'Monthly means it grows best in.' }),
    entered('growth-best-to', 'Growth best to', TEMPERATURE),
    entered('growth-maximum', 'Growth maximum', TEMPERATURE, {
      note: 'Monthly mean above which it fails, bolts or sets no fruit.',
    }),
    entered('degree-day-base', 'Degree-day base', TEMPERATURE, { note: 'Growth stands still at or below this.' }),
    withDefault('degree-day-ceiling', 'Degree-day ceiling', TEMPERATURE, '[Growth maximum]', {
      note: 'Daily mean above which more warmth does not hasten growth.',
    }),
    warmth('warmth-to-harvest-low', 'Warmth to harvest low'),
    warmth('warmth-to-harvest', 'Warmth to harvest', 'From planting out to first harvest, where it is published.'),
    warmth('warmth-to-harvest-high', 'Warmth to harvest high'),
    warmth('warmth-to-harvest-direct-low', 'Warmth to harvest direct low'),
    warmth(
      'warmth-to-harvest-direct',
      'Warmth to harvest direct',
      'From coming up in the bed to first harvest, where it is published.',
    ),
    warmth('warmth-to-harvest-direct-high', 'Warmth to harvest direct high'),
    withDefault(
      'warmth-counts-from',
      'Warmth counts from',
      choice('start', '12-hour day in spring', 'spring growth'),
      '"start"',
      { note: 'The day the warmth to harvest counts from.' },
    ),
    entered('chill-below', 'Chill below', TEMPERATURE, { note: 'Cold it needs before it bulbs or bears.' }),
    entered('chill-days', 'Chill days', DAYS, { note: 'So many days of it.', decimals: 0, least: 0 }),
  ),
  ...group(
    'Bulbs and bolting',
    entered('critical-day-length', 'Critical day length', HOURS, {
      note: 'Day length that starts bulbs; a variety may have its own.',
      least: 0,
      most: 24,
    }),
    withDefault('bolting-trigger', 'Bolting trigger', choice(...BOLTING_TRIGGERS), '"none"', {
      note: 'What sends it to seed.',
    }),
    entered('bolting-size', 'Bolting size', TEXT, { note: 'Plants smaller than this do not answer to cold.' }),
    entered('bolting-size-warmth', 'Bolting size warmth', DEGREE_DAYS, {
      note: 'From coming up to that size, to 25 degC; blank where seed feels the cold.',
      decimals: 0,
      least: 0,
    }),
    entered('bolting-size-warmth-base', 'Bolting size warmth base', TEMPERATURE),
    entered('bolting-cold-base', 'Bolting cold base', TEMPERATURE, { note: 'Colder than this does nothing.' }),
    entered('bolting-cold-best-from', 'Bolting cold best from', TEMPERATURE, { note: 'The cold that counts in full.' }),
    entered('bolting-cold-best-to', 'Bolting cold best to', TEMPERATURE),
    entered('bolting-cold', 'Bolting cold', TEMPERATURE, { note: 'Warmer than this does nothing.' }),
    entered('bolting-cold-days', 'Bolting cold days', DAYS, {
      note: 'Days of full cold after which some bolt.',
      decimals: 0,
      least: 0,
    }),
    entered('bolting-cold-days-most', 'Bolting cold days most', DAYS, {
      note: 'After which most bolt.',
      decimals: 0,
      least: 0,
    }),
    entered('bolting-day-length', 'Bolting day length', HOURS, {
      note: 'Longer days send it to seed.',
      decimals: 1,
      least: 0,
      most: 24,
    }),
    entered('bolting-heat', 'Bolting heat', TEMPERATURE, { note: 'Daily means above this send it to seed.' }),
    entered('bolting-heat-days', 'Bolting heat days', DAYS, {
      note: 'Days of such heat, or of such long days.',
      decimals: 0,
      least: 0,
    }),
  ),
];
