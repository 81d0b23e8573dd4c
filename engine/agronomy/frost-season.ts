// Frost where only monthly temperatures are known, and cold below freezing where only the dates of 0 C are: the mean low at
// which frosts end and begin, how many days their dates spread, how the date shifts with each degree. Read by the farm and
// plantings sheets; calls nothing.

import type { ModelSource } from './source.ts';

/** C. Mean daily low, smoothed, on the average date of the last frost of spring, and of the first of autumn. */
export const LOW_AT_LAST_FROST = 5;
export const LOW_AT_FIRST_FROST = 6;

/** Days: standard deviation of the date of the last or first frost from year to year, where a farm has no record. */
export const FROST_DATE_DEVIATION = 12;

/** Days later in autumn, or earlier in spring, that a frost one degree (C) harder comes, where no lows are known. */
export const DAYS_PER_DEGREE = 6;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Frost dates from mean lows',
    gives: 'the average last and first frost where no frost dates are known, and the date at a risk',
    equation: `average last frost: the mean low passes ${LOW_AT_LAST_FROST} C; first: it falls below ${LOW_AT_FIRST_FROST} C; at a risk: ${FROST_DATE_DEVIATION} days x the normal deviate from it`,
    range: 'within about ten days of the station; hollows and slopes differ more. Frost years of your own come first',
    source:
      'set against the average dates and monthly lows of Madison (Wisconsin State Climatology Office 1981-2010: 2 May, 1 October), Ithaca (Northeast Regional Climate Center: 12 May, 1 October), Oxford (Met Office 1991-2020: early April, first half of November); 12 days: NC State Extension, standard deviation at Durham',
    standing: 'common practice',
  },
  {
    model: 'Killing cold',
    gives: 'the date by which a cold below freezing that kills a crop has come, at the risk of frost accepted',
    equation:
      'the mean low has fallen as far below that of the first frost as the killing temperature lies below 0 C; a cover adds its degrees',
    range: `hardened plants; without a climate ${DAYS_PER_DEGREE} days a degree`,
    source:
      'the freeze tables of NOAA shift by 13 to 21 days for each 4 F (2.2 C) in the same way; the 6 days a degree are their mean',
    standing: 'common practice',
  },
];
