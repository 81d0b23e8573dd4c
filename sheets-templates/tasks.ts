// The Tasks sheet: every dated job in order, made from Planting jobs, Weekly harvest, Deliveries, Stores by week, Weather by week,
// Weeks, Cover crops, Inputs and Own jobs. What is typed on a job (done, hours, who, note) stays with it when its date moves.

import type { EventDate, SheetDeclaration } from '../engine/index.ts';
import {
  choice,
  computed,
  DATE,
  entered,
  group,
  HOURS,
  LENGTH,
  link,
  MASS,
  made,
  mondayOf,
  PLAIN,
  TEXT,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';
import { JOB_KINDS } from './hands.ts';
import { MOST_WEEDINGS } from './planting-jobs.ts';

const PLANTING_JOB = made('planting-job', 'Planting job');
const PICKING = made('picking', 'Picking');
const DELIVERY = made('delivery', 'Delivery');
const STORE_WEEK = made('store-week', 'Store week');
const WATER_WEEK = made('water-week', 'Water week');
const TENDING_WEEK = made('tending-week', 'Tending week');
const OWN_JOB = made('own-job', 'Own job');
const COVER_CROP = made('cover-crop', 'Cover crop');
const INPUT = made('input', 'Input');

function ofPlanting(column: string, event: string): EventDate {
  return { sheet: 'planting-jobs', column, event, about: PLANTING_JOB };
}

/** The dated jobs, those of one day in this order. */
const DATES: readonly EventDate[] = [
  ofPlanting('clear-on', 'Clear bed'),
  ofPlanting('prepare-on', 'Prepare bed'),
  ofPlanting('sow-on', 'Sow'),
  ofPlanting('pot-on-on', 'Pot on'),
  ofPlanting('harden-on', 'Harden off'),
  ofPlanting('sow-in-the-bed-on', 'Sow in bed'),
  ofPlanting('set-out-on', 'Set out'),
  ofPlanting('cover-on', 'Cover'),
  ofPlanting('cover-off', 'Uncover'),
  ...Array.from({ length: MOST_WEEDINGS }, (_, at) => ofPlanting(`weed-${at + 1}`, 'Weed')),
  ofPlanting('thin-on', 'Thin'),
  ofPlanting('trellis-on', 'Trellis'),
  ofPlanting('prune-on', 'Prune'),
  ofPlanting('stop-watering-on', 'Stop watering'),
  ofPlanting('watch-the-tops-on', 'Watch for tops down'),
  ofPlanting('lift-on', 'Lift and cure'),
  ofPlanting('check-necks-on', 'Check necks'),
  ofPlanting('store-on', 'Clean and store'),
  { sheet: 'weekly-harvest', column: 'pick-on', event: 'Pick', about: PICKING },
  { sheet: 'weekly-harvest', column: 'pack-on', event: 'Wash and pack', about: PICKING },
  { sheet: 'deliveries', column: 'on', event: 'Deliver', about: DELIVERY },
  { sheet: 'stores-by-week', column: 'look-through-on', event: 'Look through store', about: STORE_WEEK },
  { sheet: 'weather-by-week', column: 'water-on', event: 'Water', about: WATER_WEEK },
  { sheet: 'weeks', column: 'tend-on', event: 'Tend the beds', about: TENDING_WEEK },
  { sheet: 'cover-crops', column: 'sown', event: 'Sow cover crop', about: COVER_CROP },
  { sheet: 'cover-crops', column: 'ended', event: 'End cover crop', about: COVER_CROP },
  { sheet: 'inputs', column: 'given-on', event: 'Spread or spray', about: INPUT },
  { sheet: 'own-jobs-by-week', column: 'on', event: 'Own job', about: OWN_JOB },
];

const JOB = '[Planting job]';

function isJob(...jobs: readonly string[]): string {
  return jobs.length === 1 ? `[Job] = "${jobs[0]}"` : `OR(${jobs.map((job) => `[Job] = "${job}"`).join('; ')})`;
}

/** What a planting's job is counted under. */
const KIND_OF_PLANTING = `IF(${isJob('Sow', 'Pot on', 'Harden off')}; "raising"; IF(${isJob('Prepare bed', 'Clear bed')}; "ground"; IF(${isJob('Sow in bed', 'Set out')}; "planting";
        IF(${isJob('Lift and cure')}; "picking"; IF(${isJob('Check necks', 'Clean and store')}; "storing"; "care")))))`;
const KIND_OF_OTHERS = `IF(${isJob('Pick')}; "picking"; IF(${isJob('Wash and pack')}; "packing"; IF(${isJob('Deliver')}; "selling"; IF(${isJob('Water')}; "water"; IF(${isJob('Look through store')}; "storing"; IF(${isJob('Tend the beds')}; "care"; "ground"))))))`;

const SOWN_IN = 'IF([Planting].[Loose]; "plants"; [Planting].[Start])';
const SET_OUT_AS = `IF(AND([Planting].[Start] = "sets"; NOT(ISBLANK([Planting].[Variety].[Crop].[Planted piece]))); [Planting].[Variety].[Crop].[Planted piece] & "s"; "plants")`;
const PICKED_AS = `SWITCH([Planting].[Variety].[Crop].[Harvest unit]; "bunch"; "bunches"; "head"; "heads"; "bulb"; "bulbs"; "pieces")`;

export const tasksSheet: SheetDeclaration = {
  id: 'tasks',
  name: 'Tasks',
  question: 'Work',
  about:
    'Every job of the season by date. Tick what is done, note the hours it took and who did it, or give it another day; late ones stay on the list.',
  rows: { from: 'events', dates: DATES, as: made('due', 'Due'), event: made('job', 'Job') },
  columns: [
    ...group(
      'Job',
      computed(
        'what',
        'What',
        TEXT,
        `IF(${isJob('Own job')}; [Own job].[Name]; IF(NOT(ISBLANK([Cover crop])); [Job] & ": " & [Cover crop].[Name]; IF(NOT(ISBLANK([Input])); [Input].[Input].[Input]; [Job])))`,
      ),
      computed(
        'planting',
        'Planting',
        link('plantings'),
        `IF(NOT(ISBLANK(${JOB})); ${JOB}.[Planting]; IF(NOT(ISBLANK([Picking])); [Picking].[Planting]; [Own job].[Own job].[Planting]))`,
      ),
      computed('crop', 'Crop', TEXT, '[Planting].[Crop]'),
      computed(
        'bed',
        'Bed',
        link('beds'),
        `IF(NOT(ISBLANK([Planting])); [Planting].[Bed]; IF(NOT(ISBLANK([Cover crop])); [Cover crop].[Bed]; IF(NOT(ISBLANK([Input])); [Input].[Bed]; [Own job].[Own job].[Bed])))`,
      ),
      computed(
        'where',
        'Where',
        TEXT,
        `IF(NOT(ISBLANK([Bed])); [Bed].[Bed]; IF(NOT(ISBLANK([Delivery])); [Delivery].[Outlet name]; [Store week].[Store].[Store]))`,
      ),
      computed(
        'kind',
        'Kind',
        choice(...JOB_KINDS),
        `IF(NOT(ISBLANK(${JOB})); ${KIND_OF_PLANTING}; IF(${isJob('Own job')}; [Own job].[Own job].[Kind]; ${KIND_OF_OTHERS}))`,
        {
          note: 'What its hours are counted under.',
        },
      ),
    ),
    ...group(
      'How much',
      computed(
        'pieces',
        'Pieces',
        PLAIN,
        `IF(${isJob('Sow')}; [Planting].[Blocks to start]; IF(${isJob('Set out', 'Sow in bed')}; [Planting].[Stations];
          IF(${isJob('Pick', 'Wash and pack')}; [Picking].[Pieces]; IF(${isJob('Deliver')}; [Delivery].[Items]))))`,
        { note: 'Blocks, places, bunches or heads; of a delivery the kinds of things.', decimals: 0 },
      ),
      computed(
        'pieces-are',
        'Pieces are',
        TEXT,
        `IF(NOT(ISBLANK([Pieces])); IF(${isJob('Sow')}; ${SOWN_IN}; IF(${isJob('Set out')}; ${SET_OUT_AS};
          IF(${isJob('Sow in bed')}; "places"; IF(${isJob('Deliver')}; "kinds"; ${PICKED_AS})))))`,
        { note: 'What is counted.' },
      ),
      computed('trays', 'Trays', PLAIN, `IF(${isJob('Sow')}; [Planting].[Trays])`, { decimals: 0 }),
      computed(
        'weight',
        'Weight',
        MASS,
        `IF(${isJob('Pick', 'Wash and pack')}; [Picking].[Mass]; IF(${isJob('Lift and cure')}; [Planting].[Total yield];
          IF(${isJob('Clean and store')}; [Planting].[Sold weight]; IF(${isJob('Thin')}; [Planting].[Fresh thinnings]; IF(${isJob('Deliver')}; [Delivery].[Load]; IF(NOT(ISBLANK([Input])); [Input].[Amount]; [Store week].[Left]))))))`,
        { decimals: 1 },
      ),
      computed(
        'length',
        'Length',
        LENGTH,
        `IF(AND(NOT(ISBLANK(${JOB})); NOT(${isJob('Sow', 'Pot on', 'Harden off')})); [Planting].[Bed length used])`,
        {
          note: 'Of bed.',
          decimals: 0,
        },
      ),
    ),
    ...group(
      'Hours',
      computed(
        'hours-of-starting',
        'Hours of starting',
        HOURS,
        `IF(${isJob('Prepare bed')}; ${JOB}.[Prepare hours]; IF(${isJob('Clear bed')}; ${JOB}.[Clear hours]; IF(${isJob('Sow')}; [Planting].[Start hours];
          IF(${isJob('Sow in bed', 'Set out')}; [Planting].[Planting hours]; 0 h))))`,
        { decimals: 1 },
      ),
      computed(
        'hours-of-care',
        'Hours of care',
        HOURS,
        `IF(${isJob('Weed')}; ${JOB}.[Weed hours]; IF(${isJob('Cover', 'Uncover')}; ${JOB}.[Cover hours]; IF(${isJob('Thin')}; [Planting].[Thinning hours];
          IF(${isJob('Trellis', 'Prune')}; ${JOB}.[Trellis hours]; 0 h))))`,
        { decimals: 1 },
      ),
      computed(
        'hours-of-harvest',
        'Hours of harvest',
        HOURS,
        `IF(${isJob('Lift and cure')}; [Planting].[Picking hours]; IF(${isJob('Clean and store')}; ${JOB}.[Store hours]; IF(${isJob('Pick')}; [Picking].[Picking hours];
          IF(${isJob('Wash and pack')}; [Picking].[Packing hours]; IF(${isJob('Deliver')}; [Delivery].[Hours]; 0 h)))))`,
        { decimals: 1 },
      ),
      withDefault(
        'hours',
        'Hours',
        HOURS,
        `SUM([Hours of starting]; [Hours of care]; [Hours of harvest]; [Own job].[Hours]; [Input].[Hours]; [Tending week].[Tending]; IF(${isJob('Sow cover crop')}; [Cover crop].[Hours to sow]; [Cover crop].[Hours to end]))`,
        { note: 'Planned, by the rates of work.', decimals: 1, least: 0 },
      ),
    ),
    ...group(
      'Done',
      entered('moved-to', 'Moved to', DATE, { note: 'Another day for this one job.' }),
      entered('who', 'Who', link('hands')),
      entered('done', 'Done', YES_OR_NO),
      entered('done-on', 'Done on', DATE),
      entered('hours-taken', 'Hours taken', HOURS, { decimals: 1, least: 0 }),
      entered('note', 'Note', TEXT),
    ),
    ...group(
      'When',
      computed('on', 'On', DATE, 'IF(ISBLANK([Moved to]); [Due]; [Moved to])'),
      computed('week-starts', 'Week starts', DATE, mondayOf('[On]')),
      computed('week', 'Week', TEXT, 'TEXT(YEAR([Week starts] + 3 days); "0") & "-W" & TEXT(ISOWEEKNUM([On]); "00")', {
        note: 'As ISO 8601 counts weeks.',
      }),
      computed(
        'is-done',
        'Is done',
        YES_OR_NO,
        'OR(IF(ISBLANK([Done]); IF(ISBLANK([Planting].[Carried from]); IF(ISBLANK(Farm[Jobs noted from]); FALSE; [On] < Farm[Jobs noted from]); [On] < Farm[Season starts]); [Done]); NOT(ISBLANK([Done on])))',
      ),
      computed(
        'status',
        'Status',
        choice('done', 'late', 'this week', 'to come'),
        'IF([Is done]; "done"; IF([Week starts] + 6 days < TODAY(); "late"; IF([Week starts] <= TODAY(); "this week"; "to come")))',
        { note: 'Late from the week after its own.' },
      ),
      computed(
        'of-another-season',
        'Of another season',
        YES_OR_NO,
        'OR(AND([On] < Farm[Season starts]; NOT(ISBLANK([Planting].[Carried from]))); AND([On] > Farm[Season ends]; [Planting].[Goes on]))',
      ),
      computed(
        'hours-counted',
        'Hours counted',
        HOURS,
        'IF([Of another season]; 0 h; IF(AND([Is done]; NOT(ISBLANK([Hours taken]))); [Hours taken]; [Hours]))',
        {
          note: 'What it took, once it is done; till then what is planned. Of a planting that stands in two seasons, in the season of its day.',
          decimals: 1,
        },
      ),
      computed('who-name', 'Who name', TEXT, 'IF(ISBLANK([Who]); [Own job].[Own job].[Who].[Name]; [Who].[Name])'),
    ),
  ],
  checks: [
    {
      id: 'moved-before-its-planting',
      name: 'Moved before its planting',
      level: 'error',
      column: 'moved-to',
      says: `IF(AND(NOT(ISBLANK([Moved to])); NOT(ISBLANK([Planting])); NOT(${isJob('Prepare bed', 'Sow', 'Sow in bed', 'Set out')}); [Moved to] < MIN([Planting].[Sown]; [Planting].[Planted out]));
        "This is before the planting is in the ground or the tray (" & TEXT(MIN([Planting].[Sown]; [Planting].[Planted out]); "d mmm") & "): give the job a later day, or move the planting.")`,
    },
    {
      id: 'far-from-the-season',
      name: 'Far from the season',
      level: 'error',
      column: 'on',
      // What stands for years has jobs in seasons to come, as its own dates have it, and had some before this one.
      says: 'IF(OR(AND(NOT([Is done]); [On] < Farm[Season starts] - 52 weeks); AND([On] > Farm[Season ends] + 52 weeks; OR(ISBLANK([Planting]); [Planting].[Planted out] > Farm[Season ends]; [On] > [Planting].[Harvest ends] + 52 weeks))); "This day lies more than a year from the season, so Labour does not count it: look at the date.")',
    },
    {
      id: 'done-before-its-time',
      name: 'Done before its time',
      level: 'note',
      column: 'done-on',
      says: 'IF([Done on] > TODAY(); "Noted as done on a day still to come: look at the date.")',
    },
  ],
  cautions: [
    'Plans bend to weather, soil and people: a wet bed is not worked, and nobody lifts alone what two should lift.',
  ],
};
