// Plan against what happened: Planting results, Crop results and Bed results, and Past results, what earlier seasons gave. Reads
// Records, Plantings, Tasks, Weekly harvest and Climate; Learned reads it.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  computed,
  DATE,
  DAYS,
  DEGREE_DAYS,
  entered,
  group,
  HOURS,
  link,
  MASS,
  made,
  PLAIN,
  quantity,
  SHARE,
  TEXT,
  type UngroupedColumn,
  YES_OR_NO,
  YIELD,
} from './authoring.ts';
import { TIME_BY_AREA } from './work-rates.ts';

const P = '[Planting]';
const RATE = quantity('lb/h', 'kg/h');
const PER_HOUR = quantity('1/h');
const ROW_AN_HOUR = quantity('ft/h', 'm/h');

/** Lines in which an error is found are left out until they are put right. */
function noted(what: string): string {
  return `Records[Counts for]; ${P}; Records[What]; "${what}"`;
}

function sumOf(column: string, what: string): string {
  return `SUM(SUMIFS(Records[${column}]; ${noted(what)}))`;
}

/** Of what was counted out of so many, in one of the two columns; a line without either says nothing of a share. */
function countedOf(column: 'Count' | 'Of', what: string): string {
  return `SUM(SUMIFS(Records[${column}]; ${noted(what)}; Records[Of]; ">0"; Records[Count]; ">=0"))`;
}

/** Counts of the whole planting. */
const OF_ALL = `${noted('stood')}; Records[Of]; "="; Records[Count]; ">=0"`;

function firstOf(what: string): string {
  return `MINIFS(Records[On]; ${noted(what)})`;
}

/** The figures that are learned from, in the order of the sheets that hold them. */
export const OBSERVED = {
  germination: 'Germination',
  survival: 'Field survival',
  yield: 'Yield',
  warmth: 'Warmth to harvest',
  warmthDirect: 'Warmth to harvest direct',
  pickingRate: 'Picking rate',
  packingRate: 'Packing rate',
  weedingTime: 'Weeding time',
  blocksSown: 'Blocks sown',
  plantsSetOut: 'Plants set out',
  rowSown: 'Row sown',
} as const;

/** The column by which every planting counts for the farm's own rates of work. */
export const OF_THE_FARM = 'Whose';
export const FARM_ROWS = '"the farm"';

const CROP_OF = `${P}.[Variety].[Crop]`;

/** Hours noted in Tasks on a job of the planting. */
function taken(job: string): string {
  return `SUM(SUMIFS(Tasks[Hours taken]; Tasks[Planting]; ${P}; Tasks[Job]; "${job}"))`;
}

/** Hours planned, in a column of Tasks, of the jobs whose hours were noted. */
function planned(job: string, column: string): string {
  return `SUM(SUMIFS(Tasks[${column}]; Tasks[Planting]; ${P}; Tasks[Job]; "${job}"; Tasks[Hours taken]; ">0 h"))`;
}

/** The middle of the weeks up to today, so that a week begun counts. */
const EXPECTED_SO_FAR = `SUM(SUMIFS('Weekly harvest'[Mass]; 'Weekly harvest'[Planting]; ${P}; 'Weekly harvest'[Week starts]; "<=" & (TODAY() - 3 days)))`;

export const plantingResultsSheet: SheetDeclaration = {
  id: 'planting-results',
  name: 'Planting results',
  question: 'Records',
  about: 'Every planting that something was noted of: what was planned, what happened, and what is learned from it.',
  rows: {
    from: 'each',
    sheet: 'plantings',
    as: made('planting', 'Planting'),
    where: `COUNTIFS(Records[Planting]; ${P}) + COUNTIFS(Tasks[Planting]; ${P}; Tasks[Hours taken]; ">0 h") > 0`,
  },
  columns: [
    ...group(
      'Dates',
      computed('crop', 'Crop', TEXT, `${P}.[Crop]`),
      computed('variety', 'Variety', TEXT, `${P}.[Variety].[Variety]`),
      computed('bed', 'Bed', TEXT, `${P}.[Bed].[Bed]`),
      computed('sowing-planned', 'Sowing planned', DATE, `${P}.[Sown]`),
      computed('sown-on', 'Sown on', DATE, firstOf('sown')),
      computed('planting-planned', 'Planting planned', DATE, `${P}.[Planted out]`),
      computed(
        'in-the-bed-on',
        'In the bed on',
        DATE,
        `IF(ISBLANK(${firstOf('set out')}); IF(${P}.[Start] = "direct seed"; [Sown on]); ${firstOf('set out')})`,
        { note: 'Set out, or sown in the bed, as noted.' },
      ),
      computed('harvest-planned', 'Harvest planned', DATE, `${P}.[Harvest]`),
      computed('first-picked', 'First picked', DATE, firstOf('picked')),
      computed('days-later', 'Days later', DAYS, '[First picked] - [Harvest planned]', {
        note: 'Than planned; below nothing: earlier.',
        decimals: 0,
      }),
      computed('last-picked', 'Last picked', DATE, `MAXIFS(Records[On]; ${noted('picked')})`),
      computed('over', 'Over', YES_OR_NO, `OR(COUNTIFS(${noted('cleared')}) > 0; ${P}.[Bed free] <= TODAY())`, {
        note: 'Cleared, or past its last day: its yield counts.',
      }),
    ),
    ...group(
      'Stand',
      computed('seeds-counted', 'Seeds counted', PLAIN, countedOf('Of', 'came up'), { decimals: 0 }),
      computed(
        'germination',
        'Germination',
        SHARE,
        `IF([Seeds counted] > 0; MIN(100%; ${countedOf('Count', 'came up')} / [Seeds counted]))`,
        { note: 'Came up of those counted.', decimals: 0 },
      ),
      computed('germination-planned', 'Germination planned', SHARE, `${P}.[Germination]`, { decimals: 0 }),
      computed('plants-counted', 'Plants counted', PLAIN, countedOf('Of', 'stood'), { decimals: 0 }),
      computed(
        'field-survival',
        'Field survival',
        SHARE,
        `IF([Plants counted] > 0; MIN(100%; ${countedOf('Count', 'stood')} / [Plants counted]))`,
        { note: 'Stood of those counted.', decimals: 0 },
      ),
      computed('survival-planned', 'Survival planned', SHARE, `${P}.[Field survival]`, { decimals: 0 }),
      computed(
        'places-standing',
        'Places standing',
        PLAIN,
        `MAXIFS(Records[Count]; ${OF_ALL}; Records[On]; MAXIFS(Records[On]; ${OF_ALL}))`,
        { note: 'By the last count without Of.', decimals: 0 },
      ),
      computed('places-left', 'Places left', SHARE, `[Places standing] / ${P}.[Stations]`, {
        note: 'Of all that were planted; no part of Field survival.',
        decimals: 0,
      }),
    ),
    ...group(
      'Harvest',
      computed('pickings', 'Pickings', PLAIN, `COUNTIFS(${noted('picked')})`, { decimals: 0 }),
      computed(
        'pickings-in-doubt',
        'Pickings in doubt',
        PLAIN,
        `COUNTIFS(Records[Planting]; ${P}; Records[What]; "picked") - [Pickings]`,
        { note: 'Left out for an error in Records: yield and warmth wait until it is put right.', decimals: 0 },
      ),
      computed('picked', 'Picked', MASS, sumOf('Weight', 'picked'), { decimals: 1 }),
      computed('sorted-out', 'Sorted out', MASS, sumOf('Weight', 'sorted out'), { decimals: 1 }),
      computed('expected-so-far', 'Expected so far', MASS, EXPECTED_SO_FAR, { note: 'By today.', decimals: 1 }),
      computed('expected', 'Expected', MASS, `${P}.[Marketable yield]`, { note: 'Of the whole harvest.', decimals: 1 }),
      computed(
        'against-the-plan',
        'Against the plan',
        SHARE,
        'IF([Pickings] > 0; IF([Over]; [Picked] / [Expected]; IF([Expected so far] > 0 kg; [Picked] / [Expected so far])))',
        { note: 'Picked, of what was expected by today.', decimals: 0 },
      ),
      computed(
        'yield',
        'Yield',
        YIELD,
        `IF(AND([Over]; [Picked] > 0 kg; [Pickings in doubt] = 0); [Picked] / ${P}.[Bed area])`,
        {
          note: 'Once it is over.',
          decimals: 2,
        },
      ),
      computed('yield-planned', 'Yield planned', YIELD, `[Expected] / ${P}.[Bed area]`, { decimals: 2 }),
    ),
    ...group(
      'Warmth',
      computed(
        'warmth',
        'Warmth',
        DEGREE_DAYS,
        `IF(AND(NOT(ISBLANK([First picked])); [Pickings in doubt] = 0); WARMTHBETWEEN(${P}.[Growth counts from] + IF(ISBLANK([In the bed on]); 0 days; [In the bed on] - [Planting planned]);
          [First picked]; ${P}.[Growth base]; ${P}.[Growth ceiling]; Climate[Day]; Climate[Mean]))`,
        { note: 'To the first picking, of the year as Climate has it.', decimals: 0 },
      ),
      computed(
        'warmth-to-harvest',
        'Warmth to harvest',
        DEGREE_DAYS,
        `IF(AND(NOT(${P}.[Comes up in the bed]); NOT(${P}.[Ripens by its own date])); [Warmth])`,
        { note: 'From planting out.', decimals: 0 },
      ),
      computed(
        'warmth-to-harvest-direct',
        'Warmth to harvest direct',
        DEGREE_DAYS,
        `IF(AND(${P}.[Comes up in the bed]; NOT(${P}.[Ripens by its own date])); [Warmth])`,
        { note: 'From emergence in the bed.', decimals: 0 },
      ),
      computed('warmth-planned', 'Warmth planned', DEGREE_DAYS, `${P}.[Warmth wanted]`, { decimals: 0 }),
    ),
    ...group(
      'Hours',
      computed('picking-hours', 'Picking hours', HOURS, sumOf('Hours', 'picked'), { note: 'Noted.', decimals: 1 }),
      computed(
        'picking-rate',
        'Picking rate',
        RATE,
        `IF([Picking hours] > 0 h; ${sumOf('Timed', 'picked')} / [Picking hours])`,
        {
          note: 'Of what was timed.',
          decimals: 1,
        },
      ),
      computed('picking-rate-planned', 'Picking rate planned', RATE, `${P}.[Marketable yield] / ${P}.[Picking hours]`, {
        decimals: 1,
      }),
      computed(
        'packing-rate',
        'Packing rate',
        RATE,
        `IF(${taken('Wash and pack')} > 0 h; ${CROP_OF}.[Packing rate] * ${planned('Wash and pack', 'Hours of harvest')} / ${taken('Wash and pack')})`,
        { note: 'Washed and packed, of the jobs of Tasks whose hours were noted.', decimals: 1 },
      ),
      computed(
        'weeding-time',
        'Weeding time',
        TIME_BY_AREA,
        `IF(${planned('Weed', 'Hours of care')} > 0 h; ${CROP_OF}.[Weeding time] * ${taken('Weed')} / ${planned('Weed', 'Hours of care')})`,
        { note: 'Of the whole season, by the weedings whose hours were noted.', decimals: 2 },
      ),
      computed(
        'blocks-sown',
        'Blocks sown',
        PER_HOUR,
        `IF(AND(${taken('Sow')} > 0 h; NOT(${P}.[Loose])); ${P}.[Blocks to start] / ${taken('Sow')})`,
        {
          note: 'Blocks or cells an hour, as noted in Tasks.',
          decimals: 0,
        },
      ),
      computed(
        'plants-set-out',
        'Plants set out',
        PER_HOUR,
        `IF(AND(${taken('Set out')} > 0 h; NOT(${P}.[Loose])); ${P}.[Stations] / ${taken('Set out')})`,
        { note: 'Places an hour, as noted in Tasks.', decimals: 0 },
      ),
      computed(
        'row-sown',
        'Row sown',
        ROW_AN_HOUR,
        `IF(${taken('Sow in bed')} > 0 h; ${P}.[Rows] * ${P}.[Bed length used] / ${taken('Sow in bed')})`,
        {
          note: 'Length of row an hour, as noted in Tasks.',
          decimals: 0,
        },
      ),
      computed('whose', OF_THE_FARM, TEXT, FARM_ROWS, { note: 'Every one counts for the rates of work of Farm.' }),
      computed('hours-of-jobs', 'Hours of jobs', HOURS, `SUM(SUMIFS(Tasks[Hours taken]; Tasks[Planting]; ${P}))`, {
        note: 'Noted in Tasks.',
        decimals: 1,
      }),
      computed(
        'hours-noted',
        'Hours noted',
        HOURS,
        `SUM([Hours of jobs]; SUMIFS(Records[Hours]; Records[Planting]; ${P}))`,
        {
          note: 'In Tasks and in Records: note each hour in one of them.',
          decimals: 1,
        },
      ),
      computed('hours-planned', 'Hours planned', HOURS, `${P}.[Hours]`, { decimals: 1 }),
    ),
  ],
  checks: [
    {
      id: 'far-below-the-plan',
      name: 'Far below the plan',
      level: 'note',
      column: 'against-the-plan',
      says: 'IF(AND([Over]; [Against the plan] < 50%); "Less than half of what was planned was picked: note why, and see Learned before next season.")',
    },
  ],
  cautions: [],
};

/** Sums over the plantings of a crop, or a bed, that something was noted of. */
function gathered(column: string, name: string): readonly UngroupedColumn[] {
  const of = (figure: string): string =>
    `SUM(SUMIFS('Planting results'[${figure}]; 'Planting results'[${column}]; ${name}))`;
  return [
    computed('plantings', 'Plantings', PLAIN, `COUNTIFS('Planting results'[${column}]; ${name})`, {
      note: 'That something was noted of.',
      decimals: 0,
    }),
    computed('expected', 'Expected', MASS, of('Expected'), { note: 'Of the whole harvest.', decimals: 0 }),
    computed('expected-so-far', 'Expected so far', MASS, of('Expected so far'), { decimals: 0 }),
    computed('picked', 'Picked', MASS, of('Picked'), { decimals: 0 }),
    computed('sorted-out', 'Sorted out', MASS, of('Sorted out'), { decimals: 0 }),
    computed(
      'against-the-plan',
      'Against the plan',
      SHARE,
      'IF([Expected so far] > 0 kg; [Picked] / [Expected so far])',
      {
        note: 'By today.',
        decimals: 0,
      },
    ),
    computed('hours-noted', 'Hours noted', HOURS, of('Hours noted'), { decimals: 0 }),
    computed('hours-planned', 'Hours planned', HOURS, of('Hours planned'), { decimals: 0 }),
    computed(
      'days-later',
      'Days later',
      DAYS,
      `IF(COUNTIFS('Planting results'[${column}]; ${name}; 'Planting results'[Pickings]; ">0") > 0;
        ${of('Days later')} / COUNTIFS('Planting results'[${column}]; ${name}; 'Planting results'[Pickings]; ">0"))`,
      { note: 'Of the first pickings, on average.', decimals: 0 },
    ),
  ];
}

export const cropResultsSheet: SheetDeclaration = {
  id: 'crop-results',
  name: 'Crop results',
  question: 'Records',
  about: 'Plan against what happened, crop by crop.',
  rows: {
    from: 'each',
    sheet: 'crops',
    as: made('crop', 'Crop'),
    where: `COUNTIFS('Planting results'[Crop]; [Crop].[Crop]) > 0`,
  },
  columns: group('This season', ...gathered('Crop', '[Crop].[Crop]')),
  checks: [],
  cautions: [],
};

export const bedResultsSheet: SheetDeclaration = {
  id: 'bed-results',
  name: 'Bed results',
  question: 'Records',
  about: 'Plan against what happened, bed by bed.',
  rows: {
    from: 'each',
    sheet: 'beds',
    as: made('bed', 'Bed'),
    where: `COUNTIFS('Planting results'[Bed]; [Bed].[Bed]) > 0`,
  },
  columns: group('This season', ...gathered('Bed', '[Bed].[Bed]')),
  checks: [],
  cautions: [],
};

export const pastResultsSheet: SheetDeclaration = {
  id: 'past-results',
  name: 'Past results',
  question: 'Records',
  about: 'What earlier seasons gave, a line a planting; roll over adds the season that ends. Learned counts them too.',
  rows: { from: 'entry' },
  columns: [
    ...group(
      'Which',
      entered('season', 'Season', PLAIN, { decimals: 0, required: true }),
      entered('planting', 'Planting', TEXT),
      entered('variety', 'Variety', link('varieties'), { required: true }),
      computed('variety-name', 'Variety name', TEXT, '[Variety].[Variety]'),
      computed('crop', 'Crop', TEXT, '[Variety].[Crop].[Crop]'),
    ),
    ...group(
      'What it gave',
      entered('germination', 'Germination', SHARE, { decimals: 0, least: 0, most: 100 }),
      entered('field-survival', 'Field survival', SHARE, { decimals: 0, least: 0, most: 100 }),
      entered('yield', 'Yield', YIELD, { decimals: 2, least: 0 }),
      entered('warmth-to-harvest', 'Warmth to harvest', DEGREE_DAYS, { decimals: 0, least: 0 }),
      entered('warmth-to-harvest-direct', 'Warmth to harvest direct', DEGREE_DAYS, { decimals: 0, least: 0 }),
      entered('picking-rate', 'Picking rate', RATE, { decimals: 1, least: 0 }),
      entered('packing-rate', 'Packing rate', RATE, { decimals: 1, least: 0 }),
      entered('weeding-time', 'Weeding time', TIME_BY_AREA, { decimals: 2, least: 0 }),
      entered('blocks-sown', 'Blocks sown', PER_HOUR, { note: 'An hour.', decimals: 0, least: 0 }),
      entered('plants-set-out', 'Plants set out', PER_HOUR, { note: 'An hour.', decimals: 0, least: 0 }),
      entered('row-sown', 'Row sown', ROW_AN_HOUR, { note: 'An hour.', decimals: 0, least: 0 }),
      computed('whose', OF_THE_FARM, TEXT, FARM_ROWS, { note: 'Every one counts for the rates of work of Farm.' }),
      entered('note', 'Note', TEXT),
    ),
  ],
  checks: [],
  cautions: [],
};
