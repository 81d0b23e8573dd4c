// What a farm learned: each figure of the library beside the farm's own, weighted by how sure each is, with how many observations
// it rests on and its range. Nothing takes effect until it is taken over (acts/take-over.ts). Reads Planting results, Past results,
// Crops and Varieties.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  computed,
  DEGREE_DAYS,
  group,
  made,
  PLAIN,
  quantity,
  SHARE,
  TEXT,
  type UngroupedColumn,
  YIELD,
} from './authoring.ts';
import { USUAL_RATES } from './farm.ts';
import { FARM_ROWS, OBSERVED, OF_THE_FARM } from './results.ts';
import { TIME_BY_AREA } from './work-rates.ts';

type Type = UngroupedColumn['type'];

interface Figure {
  readonly id: string;
  /** As Planting results and Past results call it. */
  readonly observed: string;
  readonly type: Type;
  readonly decimals: number;
  /** None of it, in its unit. */
  readonly nothing: string;
  /** The library's figure and its ends; '' where no range is known. */
  readonly library: string;
  readonly low: string;
  readonly high: string;
  /** The columns by which observations are found, in each of the two sheets, and this row's value of them. */
  readonly now: string;
  readonly past: string;
  readonly key: string;
  /** No share is more than all. */
  readonly isShare?: true;
}

/** The columns of one figure, from the library's to the learned. */
function learnedColumns(figure: Figure): readonly UngroupedColumn[] {
  const { id, observed, type, decimals, library, low, high, key, isShare } = figure;
  const now = `'Planting results'[${observed}]; 'Planting results'[${figure.now}]; ${key}`;
  const past = `'Past results'[${observed}]; 'Past results'[${figure.past}]; ${key}`;
  const counted = (sheet: string, column: string): string =>
    `COUNTIFS('${sheet}'[${column}]; ${key}; '${sheet}'[${observed}]; ">=" & (${figure.nothing}))`;
  const weighed = `[${observed} in the library]; [${observed} low in the library]; [${observed} high in the library];
    [${observed} observations]; [${observed} noted]; [${observed} scatter]`;
  const one = (
    suffix: string,
    name: string,
    of: Type,
    formula: string,
    note = '',
    digits = decimals,
  ): UngroupedColumn => computed(`${id}${suffix}`, `${observed}${name}`, of, formula, { note, decimals: digits });
  const within = (formula: string): string =>
    isShare === true ? `IF([${observed} observations] > 0; MIN(100%; ${formula}))` : formula;
  return [
    one('-library', ' in the library', type, library),
    one('-library-low', ' low in the library', type, low === '' ? `[${observed} in the library] * 75%` : low),
    one('-library-high', ' high in the library', type, high === '' ? `[${observed} in the library] * 125%` : high),
    one(
      '-observations',
      ' observations',
      PLAIN,
      `${counted('Planting results', figure.now)} + ${counted('Past results', figure.past)}`,
      'Plantings of this and of earlier seasons.',
      0,
    ),
    one(
      '-noted',
      ' noted',
      type,
      `IF([${observed} observations] > 0; SUM(SUMIFS(${now}); SUMIFS(${past})) / [${observed} observations])`,
      'On average.',
    ),
    one(
      '-scatter',
      ' scatter',
      type,
      `IF([${observed} observations] > 1; SQRT((SQUARESIFS([${observed} noted]; ${now}) + SQUARESIFS([${observed} noted]; ${past})) / ([${observed} observations] - 1)); 0 * [${observed} noted])`,
      'Standard deviation from planting to planting.',
    ),
    one('-weight', ' weight', SHARE, `LEARNEDWEIGHT(${weighed})`, "Of the farm's own in the learned figure.", 0),
    one('-learned', ' learned', type, within(`LEARNED(${weighed})`), 'To be taken over, or left.'),
    one('-learned-low', ' learned low', type, `LEARNEDLOW(${weighed})`, 'Nine times in ten it lies above.'),
    one('-learned-high', ' learned high', type, within(`LEARNEDHIGH(${weighed})`), 'Nine times in ten it lies below.'),
  ];
}

const ABOUT =
  "Each is the average of the library's figure and the farm's own, weighted by how sure each is (normal mean with a normal prior: Gelman and others 2013, Bayesian Data Analysis, sections 2.5 and 2.6; ends on the logarithmic scale). Nothing changes until you take a figure over.";

const VARIETY = '[Variety]';
const OF_VARIETY = { now: 'Variety', past: 'Variety name', key: `${VARIETY}.[Variety]` };

export const learnedVarietiesSheet: SheetDeclaration = {
  id: 'learned-varieties',
  name: 'Learned of varieties',
  question: 'Records',
  about: `What the records say of each variety: germination and warmth to harvest. ${ABOUT}`,
  rows: {
    from: 'each',
    sheet: 'varieties',
    as: made('variety', 'Variety'),
    where: `COUNTIFS('Planting results'[Variety]; ${VARIETY}.[Variety]) + COUNTIFS('Past results'[Variety name]; ${VARIETY}.[Variety]) > 0`,
  },
  columns: [
    ...group(
      'Germination',
      computed('crop', 'Crop', TEXT, `${VARIETY}.[Crop].[Crop]`),
      ...learnedColumns({
        id: 'germination',
        observed: OBSERVED.germination,
        type: SHARE,
        nothing: '0%',
        decimals: 0,
        library: `${VARIETY}.[Germination of the crop]`,
        low: `${VARIETY}.[Crop].[Typical germination low]`,
        high: `${VARIETY}.[Crop].[Typical germination high]`,
        isShare: true,
        ...OF_VARIETY,
      }),
    ),
    ...group(
      'Warmth from planting out',
      ...learnedColumns({
        id: 'warmth-to-harvest',
        observed: OBSERVED.warmth,
        type: DEGREE_DAYS,
        nothing: '0 degC day',
        decimals: 0,
        library: `${VARIETY}.[Warmth by the library]`,
        low: `${VARIETY}.[Warmth by the library] * ${VARIETY}.[Early share]`,
        high: `${VARIETY}.[Warmth by the library] * ${VARIETY}.[Late share]`,
        ...OF_VARIETY,
      }),
    ),
    ...group(
      'Warmth from emergence',
      ...learnedColumns({
        id: 'warmth-to-harvest-direct',
        observed: OBSERVED.warmthDirect,
        type: DEGREE_DAYS,
        nothing: '0 degC day',
        decimals: 0,
        library: `${VARIETY}.[Warmth direct by the library]`,
        low: `${VARIETY}.[Warmth direct by the library] * ${VARIETY}.[Early share direct]`,
        high: `${VARIETY}.[Warmth direct by the library] * ${VARIETY}.[Late share direct]`,
        ...OF_VARIETY,
      }),
    ),
  ],
  checks: [],
  cautions: [],
};

const CROP = '[Crop]';
const OF_CROP = { now: 'Crop', past: 'Crop', key: `${CROP}.[Crop]` };

export const learnedCropsSheet: SheetDeclaration = {
  id: 'learned-crops',
  name: 'Learned of crops',
  question: 'Records',
  about: `What the records say of each crop: yield, plants that stand, and how fast it is picked, packed and weeded. ${ABOUT}`,
  rows: {
    from: 'each',
    sheet: 'crops',
    as: made('crop', 'Crop'),
    where: `COUNTIFS('Planting results'[Crop]; ${CROP}.[Crop]) + COUNTIFS('Past results'[Crop]; ${CROP}.[Crop]) > 0`,
  },
  columns: [
    ...group(
      'Yield',
      ...learnedColumns({
        id: 'yield',
        observed: OBSERVED.yield,
        type: YIELD,
        nothing: '0 kg/m2',
        decimals: 2,
        library: `${CROP}.[Yield]`,
        low: `${CROP}.[Yield low]`,
        high: `${CROP}.[Yield high]`,
        ...OF_CROP,
      }),
    ),
    ...group(
      'Plants that stand',
      ...learnedColumns({
        id: 'field-survival',
        observed: OBSERVED.survival,
        type: SHARE,
        nothing: '0%',
        decimals: 0,
        library: `IF(${CROP}.[Usual start] = "direct seed"; 85%; 97%)`,
        low: `IF(${CROP}.[Usual start] = "direct seed"; 70%; 92%)`,
        high: '100%',
        isShare: true,
        ...OF_CROP,
      }),
    ),
    ...group(
      'Picking',
      ...learnedColumns({
        id: 'picking-rate',
        observed: OBSERVED.pickingRate,
        type: quantity('lb/h', 'kg/h'),
        nothing: '0 kg/h',
        decimals: 1,
        library: `${CROP}.[Picking rate by the library]`,
        low: `${CROP}.[Picking rate low]`,
        high: `${CROP}.[Picking rate high]`,
        ...OF_CROP,
      }),
    ),
    ...group(
      'Washing and packing',
      ...learnedColumns({
        id: 'packing-rate',
        observed: OBSERVED.packingRate,
        type: quantity('lb/h', 'kg/h'),
        nothing: '0 kg/h',
        decimals: 1,
        library: `${CROP}.[Packing rate by the library]`,
        low: `${CROP}.[Packing rate low]`,
        high: `${CROP}.[Packing rate high]`,
        ...OF_CROP,
      }),
    ),
    ...group(
      'Weeding',
      ...learnedColumns({
        id: 'weeding-time',
        observed: OBSERVED.weedingTime,
        type: TIME_BY_AREA,
        nothing: '0 min/m2',
        decimals: 2,
        library: `${CROP}.[Weeding time by the library]`,
        low: `${CROP}.[Weeding time low]`,
        high: `${CROP}.[Weeding time high]`,
        ...OF_CROP,
      }),
    ),
  ],
  checks: [],
  cautions: [],
};

const OF_FARM = { now: OF_THE_FARM, past: OF_THE_FARM, key: `[${OF_THE_FARM}]`, low: '', high: '' };

export const learnedWorkSheet: SheetDeclaration = {
  id: 'learned-work',
  name: 'Learned of work',
  question: 'Records',
  about: `What the hours noted in Tasks say of the farm's own rates of work: sowing, setting out, sowing in the bed. ${ABOUT}`,
  rows: {
    from: 'each',
    sheet: 'farm',
    as: made('farm', 'Farm row'),
    where: `COUNTIFS('Planting results'[${OF_THE_FARM}]; ${FARM_ROWS}) + COUNTIFS('Past results'[${OF_THE_FARM}]; ${FARM_ROWS}) > 0`,
  },
  columns: [
    ...group(
      'Blocks and trays sown',
      computed('whose', OF_THE_FARM, TEXT, FARM_ROWS, { note: 'Whose plantings count.' }),
      ...learnedColumns({
        id: 'blocks-sown',
        observed: OBSERVED.blocksSown,
        type: quantity('1/h'),
        nothing: '0 / 1 h',
        decimals: 0,
        library: USUAL_RATES.blocks,
        ...OF_FARM,
      }),
    ),
    ...group(
      'Plants set out',
      ...learnedColumns({
        id: 'plants-set-out',
        observed: OBSERVED.plantsSetOut,
        type: quantity('1/h'),
        nothing: '0 / 1 h',
        decimals: 0,
        library: USUAL_RATES.plants,
        ...OF_FARM,
      }),
    ),
    ...group(
      'Row sown',
      ...learnedColumns({
        id: 'row-sown',
        observed: OBSERVED.rowSown,
        type: quantity('ft/h', 'm/h'),
        nothing: '0 m/h',
        decimals: 0,
        library: USUAL_RATES.row,
        ...OF_FARM,
      }),
    ),
  ],
  checks: [],
  cautions: [],
};
