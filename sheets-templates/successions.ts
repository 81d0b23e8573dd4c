// The Successions sheet: one row for a crop that is wanted week after week. The act that lays it (acts/lay-succession.ts) makes
// its plantings; this sheet says what they come to, and when the row has changed since. Reads Crops, Varieties, Plantings.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  choice,
  computed,
  DATE,
  DAYS,
  entered,
  group,
  LENGTH,
  link,
  MASS,
  PLAIN,
  SPACING,
  TEXT,
  withDefault,
} from './authoring.ts';
import { START_METHODS } from './crop-columns-seed.ts';

const CROP = '[Variety].[Crop]';

function over(what: 'MINIFS' | 'MAXIFS' | 'SUMIFS', column: string): string {
  return `${what}(Plantings[${column}]; Plantings[Succession]; [Succession])`;
}

export const successionsSheet: SheetDeclaration = {
  id: 'successions',
  name: 'Successions',
  question: 'When and how close',
  about:
    'One row for a crop wanted again and again: from when until when, and how much a week or how long a bed each time. Lay it, and its plantings come so that the harvests follow each other evenly; change it, lay it again, and those not yet sown and not changed by you follow.',
  rows: { from: 'entry' },
  key: 'succession',
  columns: [
    ...group(
      'What',
      entered('succession', 'Succession', TEXT, { required: true }),
      entered('variety', 'Variety', link('varieties'), { required: true }),
      computed('crop', 'Crop', TEXT, `${CROP}.[Crop]`),
    ),
    ...group(
      'Wanted',
      entered('from', 'From', DATE, { note: 'First harvest.' }),
      entered('to', 'To', DATE, { note: 'Last planting to begin to be harvested.' }),
      entered('a-week', 'A week', MASS, {
        note: 'For sale in a week; 60 heads or 40 bunches go to Pieces a week.',
        decimals: 1,
        least: 0,
        orElse: 'pieces-a-week',
      }),
      entered('pieces-a-week', 'Pieces a week', PLAIN, { decimals: 0, least: 0 }),
      entered('bed-length-each', 'Bed length each', LENGTH, { note: 'Instead of an amount.', least: 0 }),
      withDefault(
        'every',
        'Every',
        DAYS,
        `MIN(28 days; MAX(7 days; FLOOR(IF(NOT(ISBLANK(${CROP}.[Harvest curve middle])); ${CROP}.[Harvest window] / 2;
          IF(ISBLANK(${CROP}.[Second cut share]); ${CROP}.[Harvest window]; ${CROP}.[Days between pickings])); 7 days)))`,
        {
          note: 'Between the first harvests of two plantings: as long as one is cut, half as long where it is picked along a curve, in whole weeks up to four (a judgement).',
          decimals: 0,
          least: 1,
          most: 182,
        },
      ),
    ),
    ...group(
      'How',
      entered('start', 'Start', choice(...START_METHODS), { note: 'Blank: as the crop is usually started.' }),
      entered('cover', 'Cover', choice('none', 'row cover', 'tunnel'), { note: 'Of all of them.' }),
      entered('in-row-spacing', 'In-row spacing', SPACING, { note: 'Blank: as usual.', decimals: 2, least: 0 }),
      entered('rows', 'Rows', PLAIN, { note: 'Blank: as usual.', decimals: 0, least: 1, most: 100 }),
      entered('seeds-per-station', 'Seeds per station', PLAIN, {
        note: 'Blank: as usual.',
        decimals: 1,
        least: 0.1,
        most: 100,
      }),
    ),
    ...group(
      'Laid',
      computed('plantings', 'Plantings', PLAIN, 'COUNTIFS(Plantings[Succession]; [Succession])', { decimals: 0 }),
      computed('first-sown', 'First sown', DATE, over('MINIFS', 'Sown')),
      computed('last-sown', 'Last sown', DATE, over('MAXIFS', 'Sown')),
      computed('first-harvest', 'First harvest', DATE, over('MINIFS', 'Harvest')),
      computed('last-harvest', 'Last harvest', DATE, over('MAXIFS', 'Harvest ends')),
      computed('expected', 'Expected', MASS, over('SUMIFS', 'Expected'), { note: 'For sale, of all.', decimals: 0 }),
      computed('expected-pieces', 'Expected pieces', PLAIN, over('SUMIFS', 'Expected pieces'), { decimals: 0 }),
      computed('bed-length', 'Bed length', LENGTH, over('SUMIFS', 'Bed length used'), { note: 'Of all.', decimals: 0 }),
      computed(
        'as-it-stands',
        'As it stands',
        TEXT,
        `[Variety] & "; " & TEXT([From]; "yyyy-mm-dd") & " to " & TEXT([To]; "yyyy-mm-dd") & " every " & TEXT([Every] / 1 day; "0") & " d; " & [A week] / 1 kg & "; " & [Pieces a week] & "; " & [Bed length each] / 1 m
          & "; " & [Start] & "; " & [Cover] & "; " & [In-row spacing] / 1 m & "; " & [Rows] & "; " & [Seeds per station] & "."`,
        { note: 'All that the plantings follow from, in metres and kilograms.' },
      ),
      entered('laid-as', 'Laid as', TEXT, {
        note: 'What it was when its plantings were laid; written when you lay it.',
      }),
      entered('not-laid', 'Not laid', TEXT, {
        note: 'Harvests wanted that cannot be had, and why; written when you lay it.',
      }),
    ),
  ],
  checks: [
    {
      id: 'dates-in-order',
      name: 'Dates in order',
      level: 'error',
      column: 'to',
      says: 'IF([To] < [From]; "The last harvest is before the first: look at both dates.")',
    },
    {
      id: 'longer-than-the-season',
      name: 'Longer than the season',
      level: 'error',
      column: 'to',
      says: `IF([To] - [From] > Farm[Season ends] - Farm[Season starts]; "Longer than a season: end it by " & TEXT([From] + (Farm[Season ends] - Farm[Season starts]); "d mmm yyyy") & ", and lay the rest in next season's workbook.")`,
    },
    {
      id: 'no-amount',
      name: 'No amount',
      level: 'note',
      column: 'a-week',
      says: 'IF(AND(ISBLANK([A week]); ISBLANK([Pieces a week]); ISBLANK([Bed length each])); "Enter how much a week, or how long a bed each time.")',
    },
    {
      id: 'ripens-by-its-own-date',
      name: 'Ripens by its own date',
      level: 'warning',
      column: 'variety',
      says: `IF(OR([Variety].[Bulb crop]; [Variety].[Comes again in spring]; ${CROP}.[Warmth counts from] <> "start");
        [Crop] & " is ripe by day length or in its spring, whenever it was planted: enter one planting with the amount wanted instead.")`,
    },
    {
      id: 'changed-since',
      name: 'Changed since',
      level: 'warning',
      column: 'laid-as',
      says: 'IF(AND([Plantings] > 0; [Laid as] <> [As it stands]); "Changed since its plantings were laid: lay it again.")',
    },
    {
      id: 'not-all-laid',
      name: 'Not all laid',
      level: 'note',
      column: 'not-laid',
      says: '[Not laid]',
    },
  ],
  cautions: ['Even harvests are those of an average year: sow a little more often than you need.'],
};
