// Plantings, last part: what of each falls into this season, by which the plan's totals go. What stands over the season's end is
// harvested in two seasons or in the next one, and no season counts what another does. plantings.ts puts the parts together.

import { computed, group, HOURS, MASS, MONEY, PLAIN, SHARE, YES_OR_NO } from './authoring.ts';
import { pickedBy } from './planting-ripening.ts';
import { clearingHours } from './planting-work.ts';

const LAST = 'Farm[Season ends]';
const FIRST = 'Farm[Season starts]';
const CARRIED = 'NOT(ISBLANK([Carried from]))';

const PICKED_IN_ALL = '(1 - [Window lost])';
const PICKED_BY_ITS_END = `IF([Harvest ends] <= ${LAST}; ${PICKED_IN_ALL}; IF([Harvest] > ${LAST}; 0%; ${pickedBy(`(${LAST} + 1 day - [Harvest])`)}))`;
const PICKED_BEFORE_IT = `IF(AND(${CARRIED}; [Harvest] < ${FIRST}); ${pickedBy(`MIN([Days picked]; ${FIRST} - [Harvest])`)}; 0%)`;

export const SEASON_COLUMNS = group(
  'This season',
  computed(
    'goes-on',
    'Goes on',
    YES_OR_NO,
    `AND([Planted out] <= ${LAST}; [Bed free] > ${LAST}; OR([Bed free] > ${LAST} + 1 day; [Variety].[Comes again in spring]))`,
    { note: 'Still in the ground when the next season begins.' },
  ),
  computed(
    'harvest-this-season',
    'Harvest this season',
    SHARE,
    `IF(ISBLANK([Harvest]); 100%; (${PICKED_BY_ITS_END} - ${PICKED_BEFORE_IT}) / ${PICKED_IN_ALL})`,
    {
      note: 'Part picked within the season, in the course of Weekly harvest: totals count it, and the rest in the season in which it is picked.',
      decimals: 0,
    },
  ),
  computed('yield-this-season', 'Yield this season', MASS, '[Marketable yield] * [Harvest this season]', {
    decimals: 1,
  }),
  computed('pieces-this-season', 'Pieces this season', PLAIN, '[Pieces] * [Harvest this season]', {
    decimals: 0,
  }),
  computed(
    'revenue-this-season',
    'Revenue this season',
    MONEY,
    `IF(AND([Harvest this season] < 100%; ISBLANK([Price]); ISBLANK([Price each]); ISBLANK([Fresh price]));
      SUMIFS('Lots by week'[Money]; 'Lots by week'[Planting]; [Planting]; 'Lots by week'[Week starts]; ">=" & (${FIRST} - 3 days); 'Lots by week'[Week starts]; "<=" & (${LAST} - 3 days));
      [Revenue] * [Harvest this season])`,
    { decimals: 2 },
  ),
  computed(
    'hours-this-season',
    'Hours this season',
    HOURS,
    `SUM([Hours]; ([Harvest this season] - 100%) * SUM([Picking hours]; [Packing hours]; [Cleaning hours];
      IF(NOT([Variety].[Comes again in spring]); [Weeding hours] + [Thinning hours] + [Trellising hours] + [Cover hours]));
      IF([Goes on]; 0 h - ${clearingHours()}
        - [Tending a day] * MAX(0 days; MIN([Bed free]; Farm[Weeks until]) - ${LAST} - 1 day)))`,
    {
      note: 'Harvest and care by the part of the harvest, tending by days, clearing once its bed is free.',
      decimals: 1,
    },
  ),
  computed(
    'costs-this-season',
    'Costs this season',
    MONEY,
    'SUM([Costs]; ([Hours this season] - [Hours]) * Farm[Wage])',
    { note: 'Seed and mix in the season of planting.', decimals: 2 },
  ),
  computed('margin-this-season', 'Margin this season', MONEY, '[Revenue this season] - [Costs this season]', {
    decimals: 2,
  }),
);
