// The Planting jobs sheet: the date of every job that a planting asks for, from preparing the bed to clearing it, and the hours of
// each. Dates follow from the planting and can be typed over; Tasks makes a list of them. Reads Plantings, Crops, Farm, Harvest
// and curing, and Stored lots.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  computed,
  DATE,
  group,
  HOURS,
  link,
  made,
  PLAIN,
  TEXT,
  type UngroupedColumn,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';
import { clearingHours } from './planting-work.ts';

const P = '[Planting]';
const CROP = `${P}.[Variety].[Crop]`;
/** Not standing already when the season began. */
const ANEW = `ISBLANK(${P}.[Carried from])`;

/** Most weedings that a planting has a date for. */
export const MOST_WEEDINGS = 6;

function on(id: string, name: string, formula: string, note = ''): UngroupedColumn {
  return withDefault(id, name, DATE, formula, note === '' ? {} : { note });
}

function hours(id: string, name: string, formula: string, note = ''): UngroupedColumn {
  return computed(id, name, HOURS, formula, { note, decimals: 1 });
}

/** Of the planting's own row in a sheet of batches. */
function ofBatch(sheet: string, column: string): string {
  return `MAXIFS('${sheet}'[${column}]; '${sheet}'[Planting]; ${P})`;
}

const STANDS_ON = `${P}.[Variety].[Comes again in spring]`;

const WEEDINGS: readonly UngroupedColumn[] = Array.from({ length: MOST_WEEDINGS }, (_, at) => {
  const time = at + 1;
  // What stands for years is weeded each year, from when it grows again, until it is harvested.
  const year = `IF(${STANDS_ON}; QUOTIENT(${at}; ${CROP}.[Weedings]); 0)`;
  const begins = `IF(${year} = 0; [Care begins]; ${P}.[Growth counts from] - (${CROP}.[Years to first harvest] - ${year}) * 52 weeks)`;
  const day = `${begins} + [First weeding after] + (${at} - ${year} * ${CROP}.[Weedings]) * [Weeks between weedings] * 7 days`;
  return on(`weed-${time}`, `Weed ${time}`, `IF([Weedings] >= ${time}; IF(${day} < [Care ends] - 7 days; ${day}))`);
});

export const plantingJobsSheet: SheetDeclaration = {
  id: 'planting-jobs',
  name: 'Planting jobs',
  question: 'Work',
  about:
    'When each job of each planting falls due. Change a date here to move a job for good; the list of jobs to tick off is Tasks.',
  rows: {
    from: 'each',
    sheet: 'plantings',
    as: made('planting', 'Planting'),
    where: `NOT(ISBLANK(${P}.[Planted out]))`,
  },
  columns: [
    ...group(
      'Planting',
      computed('name', 'Name', TEXT, `${P}.[Planting]`),
      computed('bed', 'Bed', link('beds'), `${P}.[Bed]`),
    ),
    ...group(
      'Start',
      computed(
        'bed-free-before',
        'Bed free before',
        DATE,
        `MAXIFS(Plantings[Bed free]; Plantings[Bed]; ${P}.[Bed]; Plantings[Bed free]; "<=" & ${P}.[Planted out])`,
        { note: 'When what stood there before is gone.' },
      ),
      on(
        'prepare-on',
        'Prepare on',
        `IF(${ANEW}; MIN(${P}.[Planted out]; MAX(${P}.[Planted out] - 7 days; [Bed free before])))`,
        'A week before planting, or when the bed is free (common practice).',
      ),
      on('sow-on', 'Sow on', `IF(AND(${ANEW}; ${P}.[Raised]); ${P}.[Sown])`, 'In blocks or cells.'),
      on(
        'pot-on-on',
        'Pot on on',
        `IF(NOT(ISBLANK(${P}.[Pot on into])); ${P}.[Pot on])`,
        'Into larger blocks, cells or pots.',
      ),
      on('harden-on', 'Harden on', `${P}.[Harden from]`, 'A week before planting out (common practice).'),
      on(
        'sow-in-the-bed-on',
        'Sow in the bed on',
        `IF(AND(${ANEW}; ${P}.[Start] = "direct seed"); ${P}.[Planted out])`,
      ),
      on('set-out-on', 'Set out on', `IF(AND(${ANEW}; ${P}.[Start] <> "direct seed"); ${P}.[Planted out])`),
    ),
    ...group(
      'Care',
      computed('up', 'Up', DATE, `${P}.[Up]`, { note: 'Above the ground, in the bed.' }),
      computed(
        'care-begins',
        'Care begins',
        DATE,
        `IF(AND(NOT(${STANDS_ON}); ${P}.[Growth counts from] > [Up] + 60 days); ${P}.[Growth counts from]; [Up])`,
        { note: 'In spring for what stands one winter.' },
      ),
      computed(
        'care-ends',
        'Care ends',
        DATE,
        `IF(ISBLANK(${P}.[Harvest]); ${P}.[Planted out] + 120 days; ${P}.[Harvest])`,
      ),
      on('cover-on', 'Cover on', `IF(${P}.[Cover] <> "none"; ${P}.[Planted out])`),
      on(
        'cover-off',
        'Cover off',
        `IF(${P}.[Cover] <> "none"; IF(OR(${P}.[Cover] = "tunnel"; ${P}.[Planted out] > ${P}.[Summer]); ${P}.[Harvest ends];
          MIN([Care ends]; MAX(${P}.[Planted out] + 21 days; Farm[Last frost] + 7 days))))`,
        'Three weeks on, and not before frosts are over; tunnels and autumn covers stay (common practice).',
      ),
      withDefault(
        'weedings',
        'Weedings',
        PLAIN,
        `IF(${P}.[Weeding hours] > 0 h; MIN(${MOST_WEEDINGS}; ${CROP}.[Weedings] * IF(${STANDS_ON}; ${CROP}.[Years to first harvest] + 1; 1)); 0)`,
        {
          note: `Up to ${MOST_WEEDINGS}; each year of what stands for years.`,
          decimals: 0,
          least: 0,
          most: MOST_WEEDINGS,
        },
      ),
      withDefault(
        'first-weeding-after',
        'First weeding after',
        { type: 'number', unit: { us: 'day', si: 'day' } },
        'IF([Weedings] > 2; 14 days; 21 days)',
        {
          note: 'Weak competitors early and often: onions kept clean for twelve weeks lose 5 %, for six weeks 75 % (Wicks et al. 1973).',
          decimals: 0,
          least: 0,
        },
      ),
      withDefault(
        'weeks-between-weedings',
        'Weeks between weedings',
        PLAIN,
        `IF(${STANDS_ON}; 6; IF([Weedings] > 2; 2; 3))`,
        {
          decimals: 0,
          least: 1,
          most: 12,
        },
      ),
      ...WEEDINGS,
      computed(
        'weedings-that-come',
        'Weedings that come',
        PLAIN,
        `COUNT(${WEEDINGS.map(({ name }) => `[${name}]`).join('; ')})`,
        { note: 'Before harvest.', decimals: 0 },
      ),
      on(
        'thin-on',
        'Thin on',
        `IF(OR(NOT(ISBLANK(${P}.[Thin to])); ${P}.[Thinning hours] > 0 h); IF(ISBLANK(${P}.[Thinned on]); MIN([Care ends] - 7 days; [Up] + 21 days); ${P}.[Thinned on]))`,
      ),
      computed('pruned', 'Pruned', YES_OR_NO, `AND(${P}.[Trellising hours] > 0 h; ${P}.[Family] = "Solanaceae")`),
      on(
        'trellis-on',
        'Trellis on',
        `IF(${P}.[Trellising hours] > 0 h; ${P}.[Planted out] + 21 days)`,
        'Three weeks after planting (common practice).',
      ),
      on(
        'prune-on',
        'Prune on',
        `IF([Pruned]; ${P}.[Planted out] + 42 days)`,
        'From then on every week or two (common practice).',
      ),
      on(
        'stop-watering-on',
        'Stop watering on',
        `IF(NOT(ISBLANK(${P}.[Cured yield])); ${P}.[Harvest] - 14 days)`,
        'Two weeks before it is lifted, so that skins dry (common practice).',
      ),
      on('watch-the-tops-on', 'Watch the tops on', `IF(${P}.[Variety].[Bulb crop]; ${P}.[Tops down] - 10 days)`),
    ),
    ...group(
      'Harvest',
      on(
        'lift-on',
        'Lift on',
        `IF(NOT(ISBLANK(${P}.[Cured yield])); ${ofBatch('Harvest and curing', 'Brought in')})`,
        'Dry, and straight to the racks.',
      ),
      on(
        'check-necks-on',
        'Check necks on',
        `IF(NOT(ISBLANK(${P}.[Cured yield])); ${ofBatch('Harvest and curing', 'Cured on')})`,
      ),
      on('store-on', 'Store on', `IF(${P}.[Goes into store]; ${ofBatch('Stored lots', 'Stored on')})`),
      on(
        'clear-on',
        'Clear on',
        `IF(NOT(${STANDS_ON}); IF(ISBLANK(${P}.[Bed free]); [Care ends]; ${P}.[Bed free]))`,
        'Not what stands for years.',
      ),
    ),
    ...group(
      'Hours',
      hours('prepare-hours', 'Prepare hours', `${P}.[Bed hours] - [Clear hours]`),
      hours('clear-hours', 'Clear hours', clearingHours(`${P}.`)),
      hours(
        'weed-hours',
        'Weed hours',
        `IF([Weedings that come] > 0; ${P}.[Weeding hours] / [Weedings that come]; 0 h)`,
        'Each time.',
      ),
      hours('cover-hours', 'Cover hours', `${P}.[Cover hours] / 2`, 'On, and again off.'),
      hours('trellis-hours', 'Trellis hours', `${P}.[Trellising hours] / IF([Pruned]; 2; 1)`),
      hours(
        'store-hours',
        'Store hours',
        `SUM(${P}.[Cleaning hours]; IF(ISBLANK(${P}.[Cured yield]); 0 h; ${P}.[Packing hours]))`,
        'Topping, cleaning and sorting what was cured.',
      ),
    ),
  ],
  checks: [
    {
      id: 'thin-clumps',
      name: 'Thin clumps',
      level: 'note',
      column: 'thin-on',
      says: `IF(AND(${P}.[Variety].[Bulb crop]; ${P}.[Raised]; ISBLANK(${P}.[Thin to]); ${P}.[With 4 plants] + ${P}.[With 5 or more] > 25%);
        "More than a quarter of the clumps hold four or more: thin them to three and sell the thinnings fresh (enter 3 under Thin to), or sow fewer.")`,
    },
  ],
  cautions: [
    'Bending, lifting and hoeing for hours hurts: change jobs through the day, keep tools sharp, share heavy loads.',
    'Ladders and step stools at trellises: on firm ground, with someone near.',
  ],
};
