// Plantings, what may send a crop to seed before it is cut: cold felt once it is large enough, long days, heat. The crop's own
// figures stand in Crops. plantings.ts puts the parts together; everything here needs Climate.

import { BOLTING_DAYS, FREEZE_THAW_DAYS } from '../engine/index.ts';
import { choice, computed, DATE, DAYS, DEGREE_DAYS, group, PLAIN, TEXT } from './authoring.ts';

const CROP = '[Variety].[Crop]';
const MEANS = 'Climate[Day]; Climate[Mean]';

/** Cold felt between two days by the crop's response to it, as the weather outside has to be for it under a cover that adds so much. */
export function coldFelt(gain: string, from = '[Feels cold from]', until = '[Bolts until]'): string {
  const range = ['Bolting cold base', 'Bolting cold best from', 'Bolting cold best to', 'Bolting cold'];
  return `COLDFELT(${from}; ${until}; ${range.map((one) => `${CROP}.[${one}]${gain}`).join('; ')}; ${MEANS})`;
}

/** '12 days', '1 day'. */
function days(of: string): string {
  return `TEXT(${of} / 1 day; "0") & IF(ROUND(${of}; 1 day) = 1 day; " day"; " days")`;
}

const COLD_WHY = `IF(ISBLANK(${CROP}.[Bolting cold days] + ${CROP}.[Bolting cold days most]); IF(ISNUMBER(SEARCH("cold"; ${CROP}.[Bolting trigger])); "how many days of cold send it to seed is not known");
    IF(NOT(ISBLANK([Cold felt])); ${days('[Cold felt]')} & " of full cold after " & IF(ISBLANK(${CROP}.[Bolting size]); "emergence"; ${CROP}.[Bolting size])
    & "; some bolt from about " & TEXT(${CROP}.[Bolting cold days] / 1 day; "0") & ", most from about " & TEXT(${CROP}.[Bolting cold days most] / 1 day; "0")
    & IF([Freeze-thaw days] > 0 days; "; " & ${days('[Freeze-thaw days]')} & " of freezing and thawing"; "")))`;

const LIGHT_WHY = `IF(ISBLANK([Long days from]); "the days stay short enough"; "the days are as long as sends it to seed from " & TEXT([Long days from]; "d mmm") & " on")`;

const HEAT_WHY = `IF(NOT(ISBLANK([Hot days] + ${CROP}.[Bolting heat days])); ${days('[Hot days]')} & " above the mean that sends it to seed, " & TEXT(${CROP}.[Bolting heat days] / 1 day; "0") & " of which are many")`;

export const BOLTING_COLUMNS = group(
  'Bolting',
  computed('bolts-until', 'Bolts until', DATE, 'IF([Variety].[Bulb crop]; [Bulbing starts]; [Ripe])', {
    note: 'What comes after harms no harvest.',
  }),
  computed(
    'growth-before-planting',
    'Growth before planting',
    DEGREE_DAYS,
    `IF([Raised]; 50% * MAX(0 days; [Planted out] - [Emergence]) *
      IF([Raising temperature] > ${CROP}.[Bolting size warmth base]; [Raising temperature] - ${CROP}.[Bolting size warmth base]; 0 Cdeg); 0 degC day)`,
    { note: 'Half of what the trays give, where plants are crowded and short of light (a judgement).', decimals: 0 },
  ),
  computed(
    'feels-cold-from',
    'Feels cold from',
    DATE,
    `IF(ISBLANK(${CROP}.[Bolting size warmth]); [Up]; WARMTHDATE([Up]; MAX(0 degC day; ${CROP}.[Bolting size warmth] - [Growth before planting]);
      ${CROP}.[Bolting size warmth base] - [Cover gain]; 25 degC - [Cover gain]; ${MEANS}))`,
    { note: 'Large enough to answer to cold.' },
  ),
  computed(
    'cold-felt',
    'Cold felt',
    DAYS,
    `IF([Feels cold from] < [Bolts until]; MIN(${coldFelt('')}; ${coldFelt(' - [Cover gain]')}); 0 days)`,
    {
      note: "Days' worth of the best cold; a cover never adds to it.",
      decimals: 0,
    },
  ),
  computed(
    'freeze-thaw-days',
    'Freeze-thaw days',
    DAYS,
    `IF([Feels cold from] < [Bolts until]; FREEZETHAWDAYS([Feels cold from]; [Bolts until]; [Cover gain at night]; Climate[Day]; Climate[Low]; Climate[High]); 0 days)`,
    { decimals: 0 },
  ),
  computed(
    'long-days-from',
    'Long days from',
    DATE,
    `IF(LONGDAYFROM(Farm[Latitude]; ${CROP}.[Bolting day length]; [Up]) < [Bolts until]; LONGDAYFROM(Farm[Latitude]; ${CROP}.[Bolting day length]; [Up]))`,
    { note: 'Long enough to send it to seed, before it is cut.' },
  ),
  computed('hot-days', 'Hot days', DAYS, `DAYSABOVE([Up]; [Bolts until]; ${CROP}.[Bolting heat]; ${MEANS})`, {
    decimals: 0,
  }),
  computed(
    'cold-step',
    'Cold step',
    PLAIN,
    `IF(NOT(OR(ISBLANK([Cold felt]); ISBLANK(${CROP}.[Bolting cold days])));
      MIN(2; IF(AND(NOT(ISBLANK(${CROP}.[Bolting cold days most])); [Cold felt] >= ${CROP}.[Bolting cold days most]); 2;
      IF([Cold felt] >= ${CROP}.[Bolting cold days]; 1; 0)) + IF([Freeze-thaw days] >= ${FREEZE_THAW_DAYS} days; 1; 0)))`,
    {
      note: `0 to 2; ${FREEZE_THAW_DAYS} days of freezing and thawing add a step. Blank where it is not known how much cold the crop stands.`,
      decimals: 0,
    },
  ),
  computed(
    'light-step',
    'Light step',
    PLAIN,
    `IF(ISBLANK([Long days from]); 0; IF([Long days from] + ${BOLTING_DAYS} days < [Bolts until]; 2; 1))`,
    { note: `2 where long days come more than ${BOLTING_DAYS} days before it is cut.`, decimals: 0 },
  ),
  computed(
    'heat-step',
    'Heat step',
    PLAIN,
    `IF([Hot days] >= ${CROP}.[Bolting heat days]; 2; IF([Hot days] * 2 >= ${CROP}.[Bolting heat days]; 1; 0))`,
    { decimals: 0 },
  ),
  computed(
    'both-step',
    'Both step',
    PLAIN,
    `IF(${CROP}.[Bolting trigger] = "cold and long days"; IF(OR(ISBLANK(${CROP}.[Bolting day length]); [Light step] > 0); [Cold step]; 0);
      ROUNDUP(([Light step] + [Heat step]) / 2; 0))`,
    { note: 'Where it takes long days and cold, or long days and heat.', decimals: 0 },
  ),
  computed(
    'bolting-step',
    'Bolting step',
    PLAIN,
    `IF(AND(NOT(ISBLANK([Bolts until])); NOT(ISBLANK(Farm[Middle of summer])); NOT(ISBLANK(${CROP}.[Bolting trigger])); ${CROP}.[Bolting trigger] <> "none");
      SWITCH(${CROP}.[Bolting trigger]; "cold"; [Cold step]; "long days"; [Light step]; "heat"; [Heat step]; [Both step]))`,
    { decimals: 0 },
  ),
  computed(
    'bolting-risk',
    'Bolting risk',
    choice('low', 'raised', 'high'),
    'IF([Bolting step] >= 2; "high"; IF([Bolting step] >= 1; "raised"; "low"))',
    { note: 'From emergence or planting out to bulbing or harvest; blank where nothing sends the crop to seed.' },
  ),
  computed(
    'bolting-why',
    'Bolting why',
    TEXT,
    `IF(NOT(ISBLANK([Bolting step])); IF([Bolting step] >= 2; "High: "; IF([Bolting step] >= 1; "Raised: "; "Low: ")) &
      SWITCH(${CROP}.[Bolting trigger]; "cold"; [Cold says]; "long days"; [Light says]; "heat"; [Heat says]; [Both say]) & ".")`,
  ),
  computed(
    'both-say',
    'Both say',
    TEXT,
    `IF(${CROP}.[Bolting trigger] = "cold and long days"; IF(ISBLANK(${CROP}.[Bolting day length]); [Cold says]; IF([Light step] = 0; [Light says]; [Cold says] & "; " & [Light says]));
      IF([Light step] = [Heat step]; [Heat says] & "; " & [Light says]; IF([Light step] > [Heat step]; [Light says]; [Heat says])))`,
    { note: 'What tells: of two that each do it, the stronger.' },
  ),
  computed('cold-says', 'Cold says', TEXT, COLD_WHY),
  computed('light-says', 'Light says', TEXT, LIGHT_WHY),
  computed('heat-says', 'Heat says', TEXT, HEAT_WHY),
);
