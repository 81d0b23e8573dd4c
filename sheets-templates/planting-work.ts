// Plantings, the hours each takes, task by task: typical, with the quickest and the slowest of the rates. Rates of a crop stand
// in Crops, general ones on Farm. plantings.ts puts the parts together.

import { computed, group, HOURS, PLAIN, quantity, type UngroupedColumn } from './authoring.ts';

const CROP = '[Variety].[Crop]';

type End = '' | ' low' | ' high';

/** Hours over the ground it takes, at a time by area of the crop; none where the crop has no such task. */
function byArea(column: string, end: End): string {
  return `IF(ISBLANK(${CROP}.[${column}${end}]); 0 h; [Ground area] * ${CROP}.[${column}${end}])`;
}

/** What is counted of a yield: nothing where it is harvested after the last week. */
function counted(mass: string): string {
  return `IF([Harvested later]; 0 kg; ${mass})`;
}

/** The slowest rate gives the most hours. */
function byRate(mass: string, column: string, end: End): string {
  const rate = end === '' ? column : `${column}${end === ' low' ? ' high' : ' low'}`;
  return `IF(ISBLANK(${CROP}.[${rate}]); 0 h; ${mass} / ${CROP}.[${rate}])`;
}

const PICKINGS = `IF([Cut once]; 1; ROUNDUP(IF(ISBLANK(${CROP}.[Days between pickings]); MAX(1; ${CROP}.[Pickings]); [Days picked] / ${CROP}.[Days between pickings]); 0))`;

/** Picking takes as long as its mass, and no less than walking the bed each time. */
function picking(end: End): string {
  return `IF([Finishes] > 0; MAX(${byRate(counted('[Marketable yield]'), 'Picking rate', end)}; [Times picked] * [Bed area] * Farm[Walking a bed over]))`;
}

/** Of the time of making a bed, what clearing takes: 0.75 of 3.1 hours (memory). */
const CLEARING_SHARE = '24%';

/** The hours of clearing the bed of a planting, none of what stands for years; `of` leads to the planting from another sheet. */
export function clearingHours(of = ''): string {
  return `IF(${of}[Variety].[Comes again in spring]; 0 h; ${of}[Bed hours] * ${CLEARING_SHARE})`;
}

const CARE = ['Weeding time', 'Thinning time', 'Trellising time'] as const;

function care(end: End): string {
  return `${CARE.map((one) => byArea(one, end)).join(' + ')} + IF([Cover] = "none"; 0 h; ${byArea('Cover time', end)})`;
}

function afterwards(end: End): string {
  return `${byRate(counted('[Marketable yield]'), 'Packing rate', end)} + ${byRate('[Cured yield]', 'Cleaning rate', end)}`;
}

/** What an hour rate does not change: making the bed, starting, planting, tending; what stood already is but tended and cleared. */
const BEFORE = `IF(ISBLANK([Carried from]); SUM([Bed hours]; [Start hours]; [Planting hours]); ${clearingHours()}); [Tending hours]`;

/** The hours at one end of the rates, by what they are spent on. */
function ends(end: ' low' | ' high', note: string): readonly UngroupedColumn[] {
  const id = end.trim();
  return [
    computed(`care-hours-${id}`, `Care hours${end}`, HOURS, care(end), {
      note: 'Weeding, thinning, trellising, covering.',
      decimals: 1,
    }),
    computed(`picking-hours-${id}`, `Picking hours${end}`, HOURS, picking(end), { decimals: 1 }),
    computed(`after-hours-${id}`, `After hours${end}`, HOURS, afterwards(end), {
      note: 'Washing, packing and cleaning.',
      decimals: 1,
    }),
    computed(
      `hours-${id}`,
      `Hours${end}`,
      HOURS,
      `SUM(${BEFORE}; [Care hours${end}]; [Picking hours${end}]; [After hours${end}])`,
      {
        note,
        decimals: 1,
      },
    ),
  ];
}

export const WORK_COLUMNS = group(
  'Work',
  computed(
    'bed-hours',
    'Bed hours',
    HOURS,
    `[Ground area] * Farm[Bed making] * IF([Variety].[Comes again in spring]; 1 - ${CLEARING_SHARE}; 1)`,
    {
      note: 'Clearing, compost, loosening, raking and drip line; what stands for years is not cleared.',
      decimals: 1,
    },
  ),
  computed(
    'start-hours',
    'Start hours',
    HOURS,
    'IF([Raised]; IF([Loose]; [Seeds needed] / Farm[Seeds sown loose]; [Blocks to start] / Farm[Blocks made and sown]))',
    {
      note: 'Blocks or trays made and sown.',
      decimals: 1,
    },
  ),
  computed(
    'planting-hours',
    'Planting hours',
    HOURS,
    `IF([Start] = "direct seed"; [Rows] * [Bed length used] / Farm[Row sown];
      [Stations] / Farm[Plants set out] + IF([Loose]; [Stations] * [Seeds per station] / Farm[Plants lifted and parted]; 0 h))`,
    { note: 'Setting out, lifting and parting loose plants first; or sowing in the bed.', decimals: 1 },
  ),
  computed(
    'tending-hours',
    'Tending hours',
    HOURS,
    'IF(ISBLANK([Bed free] - [Planted out]); 0 h; [Ground area] * Farm[Tending a week] * MAX(0 days; MIN([Bed free]; Farm[Weeks until]) - IF(ISBLANK([Carried from]); [Planted out]; Farm[Season starts])) / 7 days)',
    { note: 'Watering, feeding, looking for pests, while the crop stands, in the weeks of Weeks.', decimals: 1 },
  ),
  computed(
    'tending-a-day',
    'Tending a day',
    quantity('min/day'),
    'IF(ISBLANK([Bed free] - [Planted out]); 0 min/day; [Ground area] * Farm[Tending a week] / 7 days)',
    { note: 'While it stands.', decimals: 1 },
  ),
  computed('tending-not-yet', 'Tending not yet', HOURS, '[Tending a day] * ([Planted out] - Farm[Season starts])', {
    note: 'Had it stood since the season began, until it was put in: for the weeks of Weeks.',
    decimals: 1,
  }),
  computed('tending-no-more', 'Tending no more', HOURS, '[Tending a day] * ([Bed free] - Farm[Season starts])', {
    note: 'Had it stood since the season began, until it is cleared: for the weeks of Weeks.',
    decimals: 1,
  }),
  computed('weeding-hours', 'Weeding hours', HOURS, byArea('Weeding time', ''), { decimals: 1 }),
  computed('thinning-hours', 'Thinning hours', HOURS, byArea('Thinning time', ''), { decimals: 1 }),
  computed('trellising-hours', 'Trellising hours', HOURS, byArea('Trellising time', ''), {
    note: 'Stakes, nets, strings and pruning.',
    decimals: 1,
  }),
  computed('cover-hours', 'Cover hours', HOURS, `IF([Cover] = "none"; 0 h; ${byArea('Cover time', '')})`, {
    decimals: 1,
  }),
  computed('times-picked', 'Times picked', PLAIN, `IF([Finishes] > 0; IF([Harvested later]; 0; ${PICKINGS}))`, {
    decimals: 0,
  }),
  computed('picking-hours', 'Picking hours', HOURS, picking(''), {
    note: 'By mass, and no less than walking the bed each time.',
    decimals: 1,
  }),
  computed('packing-hours', 'Packing hours', HOURS, byRate(counted('[Marketable yield]'), 'Packing rate', ''), {
    note: 'Washing and packing.',
    decimals: 1,
  }),
  computed('cleaning-hours', 'Cleaning hours', HOURS, byRate('[Cured yield]', 'Cleaning rate', ''), {
    note: 'Topping, cleaning and sorting what was cured.',
    decimals: 1,
  }),
  computed(
    'hours',
    'Hours',
    HOURS,
    `SUM(${BEFORE}; [Weeding hours] + [Thinning hours] + [Trellising hours] + [Cover hours]; [Picking hours]; [Packing hours]; [Cleaning hours])`,
    {
      range: { low: 'hours-low', high: 'hours-high' },
      note: 'Nearly every rate is recalled, not read: time your own.',
      decimals: 1,
    },
  ),
  ...ends(' low', 'At the quickest rates.'),
  ...ends(' high', 'At the slowest rates.'),
  computed(
    'harvest-a-picking-hour',
    'Harvest a picking hour',
    quantity('lb/h', 'kg/h'),
    'IF([Picking hours] > 0 h; [Marketable yield] / [Picking hours])',
    {
      decimals: 1,
    },
  ),
);
