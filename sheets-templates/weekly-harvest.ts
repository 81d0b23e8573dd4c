// The Weekly harvest sheet: what each planting gives week by week, in mass, pieces and hours. Made, a row per planting and week
// of its harvest. Reads Plantings, Crops and Weeks.

import type { SheetDeclaration } from '../engine/index.ts';
import { computed, DATE, DAYS, group, HOURS, link, MASS, made, PLAIN, SHARE, TEXT } from './authoring.ts';
import { pickedBy } from './planting-ripening.ts';

const PLANTING = '[Planting].';

/** Share picked by a time after the first picking; nothing before it. */
function pickedTo(time: string): string {
  return `IF(${time} <= 0 days; 0%; ${pickedBy(time, PLANTING)})`;
}

export const weeklyHarvestSheet: SheetDeclaration = {
  id: 'weekly-harvest',
  name: 'Weekly harvest',
  question: 'Harvest',
  about:
    'What each planting gives in each week of its harvest: mass, pieces, hours of picking and packing. Fruit comes along a curve, salads in cuts, broccoli as a head and side shoots.',
  rows: {
    from: 'pairs',
    sheets: ['plantings', 'weeks'],
    as: [made('planting', 'Planting'), made('week', 'Week')],
    where:
      'AND([Week].[Week] + 7 days > [Planting].[Harvest]; [Week].[Week] <= [Planting].[Harvest ends]; NOT([Planting].[Harvested later]))',
  },
  columns: [
    ...group(
      'Week',
      computed('week-starts', 'Week starts', DATE, '[Week].[Week]'),
      computed('crop', 'Crop', TEXT, '[Planting].[Crop]'),
      computed('variety', 'Variety', link('varieties'), '[Planting].[Variety]'),
      computed('bed', 'Bed', link('beds'), '[Planting].[Bed]'),
      computed('from', 'From', DAYS, 'MAX(0 days; [Week].[Week] - [Planting].[Harvest])', {
        note: 'Since the first picking.',
        decimals: 0,
      }),
      computed('to', 'To', DAYS, 'MIN([Planting].[Days picked]; [Week].[Week] + 7 days - [Planting].[Harvest])', {
        decimals: 0,
      }),
    ),
    ...group(
      'Harvest',
      computed('picked-before', 'Picked before', SHARE, pickedTo('[From]'), { decimals: 1 }),
      computed('picked-by-the-end', 'Picked by the end', SHARE, pickedTo('[To]'), { decimals: 1 }),
      computed('share', 'Share', SHARE, '[Picked by the end] - [Picked before]', {
        note: 'Of a harvest that no cold cuts short.',
        decimals: 1,
      }),
      computed('mass', 'Mass', MASS, '[Share] * [Planting].[Marketable if all is picked] * [Planting].[Finishes]', {
        decimals: 1,
      }),
      computed('picked', 'Picked', MASS, '[Mass] / [Planting].[Marketable share]', {
        note: 'With what is sorted out.',
        decimals: 1,
      }),
      computed('sorted-out', 'Sorted out', MASS, '[Picked] - [Mass]', { note: 'Not fit to sell.', decimals: 1 }),
      computed('pieces', 'Pieces', PLAIN, '[Mass] / [Planting].[Mass of a piece]', { decimals: 0 }),
      computed(
        'picking-hours',
        'Picking hours',
        HOURS,
        '[Mass] / [Planting].[Marketable yield] * [Planting].[Picking hours]',
        { decimals: 1 },
      ),
      computed(
        'packing-hours',
        'Packing hours',
        HOURS,
        '[Mass] / [Planting].[Marketable yield] * [Planting].[Packing hours]',
        { note: 'Washing and packing.', decimals: 1 },
      ),
      computed('hours', 'Hours', HOURS, '[Picking hours] + [Packing hours]', { decimals: 1 }),
    ),
    ...group(
      'Jobs',
      computed(
        'pick-on',
        'Pick on',
        DATE,
        'IF(AND(ISBLANK([Planting].[Cured yield]); [Mass] > 0 kg); MAX([Week starts]; [Planting].[Harvest]))',
        { note: 'From this day on; what is cured is lifted at once instead.' },
      ),
      computed('pack-on', 'Pack on', DATE, 'IF([Packing hours] > 0 h; [Pick on])'),
    ),
  ],
  checks: [],
  cautions: ['An average year spread along an average curve: weather brings weeks forward and puts them off.'],
};
