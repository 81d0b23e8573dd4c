// Plantings, the dates: sown and planted out, each following from the other, from the date wanted or from the season; the cover
// and the warmth while it is raised; when it is up. planting-stand.ts puts the part in its place.

import {
  choice,
  computed,
  DATE,
  group,
  TEMPERATURE,
  TEXT,
  WARMTH,
  WEEKS,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';
import { UNKNOWN_EMERGENCE } from './planting-ripening.ts';
import { inTheBedFor, SOWN_IN_TIME, upFor } from './planting-window.ts';

const CROP = '[Variety].[Crop]';

/** Over the weather outside, of an unheated house, day and night together (memory: 2 to 5 degC). */
const UNHEATED_GAIN = '3.5 Cdeg';
const WEATHER = 'TEMPERATUREAROUND([Sown] + 21 days; Climate[Day]; Climate[Mean])';

/** Harvested in the second half of the spring and after, a crop belongs to that year's summer; before, to the summer before. */
const BEFORE_HARVEST = '60 days';
/** What is planted in autumn is ripe some nine months on. */
const AUTUMN_TO_HARVEST = '270 days';

/** The summer by the calendar that is nearest to a month after the date typed: what goes in from Christmas on is of the next. */
const NEAREST_SUMMER = `Farm[Summer by the calendar] + ROUND(ROUND(([Date typed] + 30 days - Farm[Summer by the calendar]) / 365.25 days; 0) * 365.25 days; 1 day)`;

/** What happened stands where no date is typed: no proposal moves it. */
function noted(what: string): string {
  return `MINIFS(Records[On]; Records[Planting]; [Planting]; Records[What]; "${what}")`;
}

/** The columns of noted dates where there are no records, by id: blank. */
export const NOTHING_NOTED: Readonly<Record<string, string>> = {
  'sown-as-noted': 'IF(FALSE; Farm[Season starts])',
  'set-out-as-noted': 'IF(FALSE; Farm[Season starts])',
};

export const RECKONED_DATE_COLUMNS = group(
  'Dates reckoned',
  computed('sown-as-noted', 'Sown as noted', DATE, noted('sown'), { note: 'First sowing in Records.' }),
  computed('set-out-as-noted', 'Set out as noted', DATE, noted('set out'), { note: 'First setting out in Records.' }),
  computed(
    'date-typed',
    'Date typed',
    DATE,
    `IF(ISBLANK(TYPED([Planted out])); IF(ISBLANK([Set out as noted]); IF(ISBLANK(TYPED([Sown])); [Sown as noted]; TYPED([Sown])) + [Time raised]; [Set out as noted]); TYPED([Planted out]))`,
    { note: 'In the bed, by what is typed under Planted out or Sown, or noted in Records.' },
  ),
  computed(
    'ripe-by',
    'Ripe by',
    DATE,
    `[Wanted from] - IF(ISBLANK(${CROP}.[Curing days]); 0 days; ${CROP}.[Curing days])`,
    {
      note: 'To be for sale, cured where it is cured, on the date wanted.',
    },
  ),
  computed(
    'belongs-near',
    'Belongs near',
    DATE,
    `IF(NOT(ISBLANK([Date typed])); ${NEAREST_SUMMER}; IF(ISBLANK([Ripe by]); Farm[Middle of summer];
      IF(${CROP}.[Overwinters] = "autumn planted"; [Ripe by] - ${AUTUMN_TO_HARVEST}; MAX([Ripe by] - ${BEFORE_HARVEST}; Farm[Season starts] + 30 days))))`,
    {
      note: 'The summer it belongs to is the nearest to this; of this season, but for what is planted the autumn before.',
    },
  ),
  computed(
    'ripens-by-its-own-date',
    'Ripens by its own date',
    YES_OR_NO,
    `OR([Variety].[Bulb crop]; [Variety].[Comes again in spring]; ${CROP}.[Warmth counts from] <> "start")`,
    {
      note: 'By day length or by the spring, whenever it was planted: an earlier planting makes it larger, not earlier.',
    },
  ),
  computed(
    'in-the-bed-for-it',
    'In the bed for it',
    DATE,
    `IF(AND(NOT(ISBLANK([Ripe by])); NOT([Ripens by its own date])); IF(ISBLANK(Farm[Middle of summer]);
      [Ripe by] - IF([In place]; [Variety].[Days to maturity direct]; [Variety].[Days to maturity]);
      ${inTheBedFor(upFor('[Ripe by] + 1 day'))}))`,
    { note: 'Latest to be ripe by the date wanted.' },
  ),
  computed(
    'only-after-the-heat',
    'Only after the heat',
    YES_OR_NO,
    `AND([Start] <> "sets"; NOT([Ripens by its own date]); [Before the heat] < MAX([Spring start]; Farm[Season starts]; ${SOWN_IN_TIME}); OR(ISBLANK([Before the cold]); [After the heat] <= [Before the cold]))`,
    {
      note: 'In spring there is too little time before the heat, and after it there is enough. What grows from tubers and sets is quick enough (a judgement).',
    },
  ),
  computed(
    'meant-for',
    'Meant for',
    DATE,
    'IF(NOT(ISBLANK([Date typed])); [Date typed]; IF(NOT(ISBLANK([Ripe by])); [In the bed for it]; IF([Only after the heat]; [After the heat])))',
    { note: 'By what is typed, for the date wanted, or for the autumn where spring is too short.' },
  ),
  computed(
    'in-the-bed-from',
    'In the bed from',
    DATE,
    'IF(NOT(ISBLANK([Date typed])); [Date typed]; MAX([Earliest this season]; IF(NOT(ISBLANK([In the bed for it])); MIN([In the bed for it]; [Before the cold]))))',
    {
      note: 'As typed, or for the date wanted, but no earlier than makes sense this season and in time to be ripe before the cold.',
    },
  ),
  computed(
    'dates-from',
    'Dates from',
    TEXT,
    `IF(NOT(ISBLANK(TYPED([Planted out]))); "planted out, as typed"; IF(NOT(ISBLANK([Set out as noted])); "set out, as noted"; IF(NOT(ISBLANK(TYPED([Sown]))); "sown, as typed"; IF(NOT(ISBLANK([Sown as noted])); "sown, as noted";
      IF(ISBLANK([In the bed for it]); IF(NOT(ISBLANK([In the bed from])); "earliest that makes sense");
        IF([In the bed from] > [In the bed for it]; "earliest that makes sense"; IF([In the bed from] < [In the bed for it]; "the cold"; "date wanted")))))))`,
    { note: 'What the dates follow from.' },
  ),
);

export const DATE_COLUMNS = group(
  'Dates',
  withDefault(
    'sown',
    'Sown',
    DATE,
    'IF([From seed]; IF(AND([Raised]; NOT(ISBLANK([Sown as noted]))); [Sown as noted]; [In the bed from] - [Time raised]))',
    {
      note: 'As noted in Records, or from the date in the bed, where you type none.',
    },
  ),
  withDefault('planted-out', 'Planted out', DATE, '[In the bed from]', {
    note: 'In the bed from this day; direct seed from its sowing. Follows from the sowing, from the date wanted, or is the earliest that makes sense.',
  }),
  withDefault(
    'time-raised',
    'Time raised',
    WEEKS,
    `IF([Raised]; IF(ISBLANK(${CROP}.[Weeks in propagation]); 6 weeks; ${CROP}.[Weeks in propagation]); 0 weeks)`,
    {
      note: 'From sowing to planting out; six weeks where the crop has none (a judgement).',
      decimals: 1,
      least: 0,
    },
  ),
  withDefault('cover', 'Cover', choice('none', 'row cover', 'tunnel'), '"none"'),
  withDefault(
    'cover-gain',
    'Cover gain',
    WARMTH,
    'IF([Cover] = "row cover"; 2 Cdeg; IF([Cover] = "tunnel"; 3.5 Cdeg; 0 Cdeg))',
    {
      note: 'How much warmer the day and night together are under it: row cover {4 to 7 °F|2 to 4 °C}, tunnel {4 to 9|2 to 5} (memory).',
      decimals: 1,
    },
  ),
  withDefault('cover-gain-at-night', 'Cover gain at night', WARMTH, 'IF([Cover] = "none"; 0 Cdeg; 1 Cdeg)', {
    note: 'Row cover {0.4 to 3.2 °F|0.2 to 1.8 °C} warmer in two springs of Oregon; on single clear nights it can be colder than outside. Tunnel {0 to 4 °F|0 to 2 °C}.',
    decimals: 1,
  }),
  withDefault(
    'heated-to-germinate',
    'Heated to germinate',
    YES_OR_NO,
    'IF([Raised]; AND([Start] <> "nursery bed"; Farm[Heated to germinate]))',
    {
      note: 'A warm mat, cupboard or room until it is up.',
    },
  ),
  withDefault(
    'germination-temperature',
    'Germination temperature',
    TEMPERATURE,
    `IF([Raised]; IF(AND([Heated to germinate]; NOT(ISBLANK(${CROP}.[Germination best from])));
        ${CROP}.[Germination best from] + (${CROP}.[Germination best to] - ${CROP}.[Germination best from]) / 2; [Raising temperature]))`,
    { note: "Middle of what the crop's seed likes best where heated; else as it is raised.", decimals: 0 },
  ),
  withDefault(
    'nursery-heated',
    'Nursery heated',
    YES_OR_NO,
    'IF([Raised]; AND([Start] <> "nursery bed"; Farm[Nursery heated]))',
    {
      note: 'While the plants grow on.',
    },
  ),
  withDefault(
    'raising-temperature',
    'Raising temperature',
    TEMPERATURE,
    `IF([Raised]; IF(ISBLANK(Farm[Middle of summer]); Farm[Nursery temperature];
        IF([Nursery heated]; MAX(Farm[Nursery temperature]; ${WEATHER}); ${WEATHER} + ${UNHEATED_GAIN})))`,
    {
      note: 'Mean of day and night while it grows on: heated, no cooler than the weather of its third week; unheated, some degrees over it.',
      decimals: 0,
    },
  ),
  computed(
    'emerges-in-the-house',
    'Emerges in the house',
    DATE,
    `IF([Raised]; [Sown] + CEILING(EMERGENCEDAYS(MIN([Germination temperature]; ${CROP}.[Germination best to]; 35 degC);
        ${CROP}.[Emergence base]; ${CROP}.[Emergence thermal time]); 1 day))`,
  ),
  computed(
    'emerges-outdoors',
    'Emerges outdoors',
    DATE,
    `IF([Start] = "direct seed"; WARMTHDATE([Sown]; ${CROP}.[Emergence thermal time]; ${CROP}.[Emergence base] - [Cover gain]; 25 degC; Climate[Day]; Climate[Mean]))`,
    { note: 'Warmth above 25 degC does not hasten it.' },
  ),
  computed(
    'emergence',
    'Emergence',
    DATE,
    `IF([From seed]; IF(ISBLANK(IF([Raised]; [Emerges in the house]; [Emerges outdoors]));
        [Sown] + IF([Raised]; 10 days; ${UNKNOWN_EMERGENCE}); IF([Raised]; [Emerges in the house]; [Emerges outdoors])))`,
    { note: 'Half the seedlings up; outdoors 14 days where the warmth is not known.' },
  ),
);
