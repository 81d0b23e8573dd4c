// The spacing that serves best on one bed as functions over the size bands: for the most mass, the most money or the most
// bulbs of one band, and what it gives. The search stands in agronomy/best-spacing.ts; read by trade/index.ts.

import {
  BEST_SPACING_LIMITS,
  type BedCrop,
  bestSpacing,
  candidatesOf,
  type PricedBand,
  type SpacingResult,
  spacingCurve,
} from '../../agronomy/best-spacing.ts';
import { GRADE_LIMITS } from '../../agronomy/grades.ts';
import type { SizeBand } from '../../agronomy/size-bands.ts';
import { SPACING_LIMITS } from '../../agronomy/spacing.ts';
import { PLANT_MASS_LIMITS } from '../../agronomy/yield-density.ts';
import type { Parameter } from '../../language/signature.ts';
import { canonicalUnit } from '../../units/arithmetic.ts';
import { divideDimensions, LENGTH, MASS, MONEY, NONE } from '../../units/dimension.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import {
  type Argument,
  CENTIMETRE,
  columnOf,
  columnOfText,
  FOOT,
  INCH,
  inUnit,
  isList,
  KILOGRAM,
  length,
  MASS_PER_AREA,
  MASS_PER_VOLUME,
  MONEY_UNIT,
  mass,
  OUNCE,
  overColumns,
  PLAIN,
  POUND,
  POUNDS_PER_SQUARE_FOOT,
  plain,
  quantity,
  text,
} from './build.ts';
import { numberOf } from './over-days.ts';
import { columnsRecord, recordOf, recordParameter, scalarRecord } from './records.ts';

/** Spacings tried at most; a finer step is taken for a slip of the pen. */
const MOST_TRIED = 400;
const METRE = canonicalUnit(LENGTH);
const SOURCE = 'Graded yield from a diameter distribution: Chapman 1981, J. Agric. Sci. Camb.; only the spacings tried';

interface Bed {
  readonly closest: number;
  readonly widest: number;
  readonly step: number;
  readonly length: number;
  readonly width: number;
  readonly rows: number;
  readonly plantsPerStation: number;
}

/** A bed and the spacings to try on it. */
const BED = recordOf<Bed>('bed-to-try', 'bed with spacings to try', [
  { name: 'Closest', gives: METRE, us: INCH, from: ({ closest }) => closest },
  { name: 'Widest', gives: METRE, us: INCH, from: ({ widest }) => widest },
  { name: 'Step', gives: METRE, us: INCH, from: ({ step }) => step },
  { name: 'Length', gives: METRE, us: FOOT, from: ({ length: long }) => long },
  { name: 'Width', gives: METRE, us: INCH, from: ({ width }) => width },
  { name: 'Rows', gives: PLAIN, from: ({ rows }) => rows },
  { name: 'Plants a place', gives: PLAIN, from: ({ plantsPerStation }) => plantsPerStation },
]);

interface Stand {
  readonly isolated: number;
  readonly ceiling: number;
  readonly squarenessLoss: number;
  readonly spread: number;
  readonly shape: number;
  readonly sound: number;
}

/** How a crop crowds and how its bulbs differ. */
const STAND = recordOf<Stand>('stand-of-bulbs', 'stand of bulbs', [
  { name: 'Isolated mass', gives: KILOGRAM, us: OUNCE, from: ({ isolated }) => isolated },
  {
    name: 'Ceiling yield',
    gives: canonicalUnit(MASS_PER_AREA),
    us: POUNDS_PER_SQUARE_FOOT,
    from: ({ ceiling }) => ceiling,
  },
  { name: 'Squareness loss', gives: PLAIN, from: ({ squarenessLoss }) => squarenessLoss },
  { name: 'Spread', gives: PLAIN, from: ({ spread }) => spread },
  { name: 'Shape', gives: canonicalUnit(MASS_PER_VOLUME), from: ({ shape }) => shape },
  { name: 'Sound', gives: PLAIN, from: ({ sound }) => sound },
]);

interface Sale {
  readonly price: number;
  readonly costPerStation: number;
}

/** What bulbs fetch and a planting place costs; either may not be known. */
const SALE = recordOf<Sale>('sale-of-bulbs', 'sale of bulbs', [
  { name: 'Price', gives: canonicalUnit(divideDimensions(MONEY, MASS)), from: ({ price }) => price },
  { name: 'Cost of a place', gives: MONEY_UNIT, from: ({ costPerStation }) => costPerStation },
]);

const GRADES: readonly Parameter[] = [
  columnOfText('grades'),
  columnOf('from', LENGTH),
  columnOf('to', LENGTH),
  columnOf('price_shares', NONE),
];

const PARAMETERS: readonly Parameter[] = [
  recordParameter('bed', BED),
  recordParameter('stand', STAND),
  { ...recordParameter('sale', SALE), optional: true },
  ...GRADES,
];

function listOf(argument: Argument): readonly Scalar[] {
  return isList(argument) ? argument : [];
}

function or(argument: Argument, otherwise: number): number {
  return typeof argument === 'number' ? argument : otherwise;
}

/** Bands with their share of the price; one that has none above zero is not sold. */
interface Bands {
  /** What they are, for telling them from others. */
  readonly name: string;
  readonly list: readonly { readonly band: SizeBand; readonly share: number }[];
}

const bandsKept = new WeakMap<readonly Scalar[], { readonly of: readonly Argument[]; readonly bands: Bands }>();

/** The size bands of four columns; the same ones for as long as the engine hands over the same lists. */
function bandsOf(columns: readonly Argument[]): Bands {
  const names = listOf(columns[0]);
  const known = bandsKept.get(names);
  if (known?.of.every((column, k) => column === columns[k]) === true) return known.bands;
  const [, from, to, shares] = columns.map(listOf);
  const list = names.map((name, row) => ({
    share: numberOf(shares?.[row]),
    band: {
      name: String(name ?? '').toLowerCase(),
      from: or(from?.[row], Number.NEGATIVE_INFINITY),
      to: or(to?.[row], Number.POSITIVE_INFINITY),
    },
  }));
  const name = list.map(({ band, share }) => `${band.name} ${band.from} ${band.to} ${share}`).join('|');
  const bands = { name, list };
  bandsKept.set(names, { of: columns, bands });
  return bands;
}

/** Without a price the masses are still told apart. */
function priced({ list }: Bands, price: number): readonly PricedBand[] {
  return list.map(({ band, share }) => (share > 0 ? { ...band, price: price * share } : band));
}

interface Tried {
  readonly from: number;
  readonly by: number;
  readonly count: number;
  readonly rows: number;
}

const MOST_KEPT = 2000;
const curves = new Map<string, readonly SpacingResult[]>();

/** Every spacing tried, kept for the other goals that ask for the same bed. */
function curveOf(key: string, crop: () => BedCrop, tried: Tried): readonly SpacingResult[] {
  const kept = curves.get(key);
  if (kept !== undefined) return kept;
  const spacings = Array.from({ length: tried.count }, (_, index) => tried.from + index * tried.by);
  const curve = spacingCurve(crop(), candidatesOf(spacings, [tried.rows]));
  if (curves.size >= MOST_KEPT) curves.clear();
  curves.set(key, curve);
  return curve;
}

/** The bed worked out at every spacing to try; undefined where something of it is not known. */
export function curveFor(args: readonly Argument[]): readonly SpacingResult[] | undefined {
  const [closest, widest, step, long, width, rows, plants, isolated, ceiling, loss, spread, shape, sound] =
    args.map(numberOf);
  const [price, cost, ...columns] = args.slice(13);
  const from = closest ?? Number.NaN;
  const by = step ?? Number.NaN;
  const count = Math.floor(((widest ?? Number.NaN) - from) / by + 1e-9) + 1;
  if (!(from > 0) || !(by > 0) || !(count >= 1) || count > MOST_TRIED) return undefined;
  const bands = bandsOf(columns);
  const crop = (): BedCrop => ({
    length: long ?? Number.NaN,
    width: width ?? Number.NaN,
    pattern: 'square',
    plantsPerStation: plants ?? Number.NaN,
    isolated: isolated ?? Number.NaN,
    ceiling: ceiling ?? Number.NaN,
    squarenessLoss: loss ?? Number.NaN,
    spread: spread ?? Number.NaN,
    shape: shape ?? Number.NaN,
    sound: sound ?? Number.NaN,
    costPerStation: or(cost, 0),
    bands: priced(bands, or(price, 0)),
  });
  const key = `${args.slice(0, 15).join(' ')} ${bands.name}`;
  return curveOf(key, crop, { from, by, count, rows: rows ?? Number.NaN });
}

interface Best {
  readonly mass: SpacingResult | undefined;
  readonly money: SpacingResult | undefined;
}

const figure = (result: SpacingResult | undefined, of: keyof SpacingResult): number | null => {
  const value = result?.[of];
  return typeof value === 'number' ? value : null;
};

/** Which spacing gives most, and what it gives. */
const BEST = recordOf<Best>('best-spacings', 'choice of spacings', [
  { name: 'For most mass', gives: METRE, us: INCH, from: ({ mass }) => figure(mass, 'spacing') },
  { name: 'Mass there', gives: KILOGRAM, us: POUND, from: ({ mass }) => figure(mass, 'marketableMass') },
  { name: 'Plant there', gives: KILOGRAM, us: OUNCE, from: ({ mass }) => figure(mass, 'meanMass') },
  { name: 'Places there', gives: PLAIN, from: ({ mass }) => figure(mass, 'stations') },
  { name: 'For most money', gives: METRE, us: INCH, from: ({ money }) => figure(money, 'spacing') },
  { name: 'Money there', gives: MONEY_UNIT, from: ({ money }) => figure(money, 'money') },
]);

export const BEST_SPACING: readonly FunctionDefinition[] = [
  scalarRecord(
    {
      name: 'BEDTOTRY',
      group: 'space and yield',
      parameters: [
        length('closest'),
        length('widest'),
        length('step'),
        length('bed_length'),
        length('bed_width'),
        plain('rows', { limit: SPACING_LIMITS.rows }),
        plain('plants_per_station', { limit: BEST_SPACING_LIMITS.plantsPerStation }),
      ],
      doc: 'A bed with its rows, and the in-row spacings to try on it, from `closest` to `widest`.',
      source: SOURCE,
    },
    BED,
    (args) => {
      const [closest, widest, step, long, width, rows, plantsPerStation] = args.map(numberOf);
      return {
        closest: closest ?? Number.NaN,
        widest: widest ?? Number.NaN,
        step: step ?? Number.NaN,
        length: long ?? Number.NaN,
        width: width ?? Number.NaN,
        rows: rows ?? Number.NaN,
        plantsPerStation: plantsPerStation ?? Number.NaN,
      };
    },
  ),
  scalarRecord(
    {
      name: 'BULBSTAND',
      group: 'space and yield',
      parameters: [
        mass('isolated_mass', { limit: PLANT_MASS_LIMITS.isolated }),
        quantity('ceiling_yield', MASS_PER_AREA, { limit: PLANT_MASS_LIMITS.ceiling }),
        plain('squareness_loss'),
        plain('spread', { limit: GRADE_LIMITS.spread }),
        quantity('shape', MASS_PER_VOLUME),
        plain('sound_share', { limit: BEST_SPACING_LIMITS.sound }),
      ],
      doc: 'How a crop of bulbs crowds (mass of a plant on its own, ceiling of the yield, loss where rows stand far apart) and how its bulbs differ.',
      source: SOURCE,
    },
    STAND,
    (args) => {
      const [isolated, ceiling, squarenessLoss, spread, shape, sound] = args.map(numberOf);
      return {
        isolated: isolated ?? Number.NaN,
        ceiling: ceiling ?? Number.NaN,
        squarenessLoss: squarenessLoss ?? Number.NaN,
        spread: spread ?? Number.NaN,
        shape: shape ?? Number.NaN,
        sound: sound ?? Number.NaN,
      };
    },
  ),
  scalarRecord(
    {
      name: 'BULBSALE',
      group: 'space and yield',
      parameters: [
        quantity('price', divideDimensions(MONEY, MASS), { optional: true }),
        quantity('cost_per_station', MONEY, { optional: true }),
      ],
      doc: 'What bulbs fetch and a planting place costs; what is not known may be left out.',
      source: SOURCE,
    },
    SALE,
    (args) => {
      const [price, costPerStation] = args.map(numberOf);
      return { price: price ?? Number.NaN, costPerStation: costPerStation ?? Number.NaN };
    },
    'given',
  ),
  columnsRecord(
    {
      name: 'BESTSPACINGS',
      group: 'space and yield',
      parameters: PARAMETERS,
      doc: 'The in-row spacing, of those tried, with the most mass for sale and with the most money, and what they give.',
      source: SOURCE,
    },
    BEST,
    (args) => {
      const curve = curveFor(args);
      if (curve === undefined) return undefined;
      const hasPrice = typeof args[13] === 'number';
      return {
        mass: bestSpacing(curve, { most: 'mass' }),
        money: hasPrice ? bestSpacing(curve, { most: 'money' }) : undefined,
      };
    },
  ),
  overColumns(
    {
      name: 'SPACINGFOR',
      group: 'space and yield',
      parameters: [text('grade'), ...PARAMETERS],
      result: inUnit(CENTIMETRE),
      doc: 'The in-row spacing, of those tried, with the most bulbs of the grade named.',
      source: SOURCE,
    },
    ([grade, ...args]) => {
      const curve = typeof grade === 'string' ? curveFor(args) : undefined;
      if (curve === undefined || typeof grade !== 'string') return null;
      return bestSpacing(curve, { most: 'bulbs', band: grade.toLowerCase() })?.spacing ?? null;
    },
  ),
];
