// The spacing that serves best on one bed as functions over the size bands: for the most mass, the most money or the most
// bulbs of one band, and what it gives. The search stands in agronomy/best-spacing.ts, the beds it was made for in tried-beds.ts;
// read by trade/index.ts.

import { BEST_SPACING_LIMITS } from '../../agronomy/best-spacing.ts';
import { GRADE_LIMITS } from '../../agronomy/grades.ts';
import { SPACING_LIMITS } from '../../agronomy/spacing.ts';
import { PLANT_MASS_LIMITS } from '../../agronomy/yield-density.ts';
import type { Parameter } from '../../language/signature.ts';
import { canonicalUnit } from '../../units/arithmetic.ts';
import { divideDimensions, LENGTH, MASS, MONEY, NONE } from '../../units/dimension.ts';
import type { FunctionDefinition } from '../definition.ts';
import {
  CENTIMETRE,
  columnOf,
  columnOfText,
  FOOT,
  INCH,
  inUnit,
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
import { type BestFigures, bedFor, PRICE } from './tried-beds.ts';

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

interface Best {
  readonly mass: BestFigures | undefined;
  readonly money: BestFigures | undefined;
}

const figure = (result: BestFigures | undefined, of: keyof BestFigures): number | null => result?.[of] ?? null;

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
      const bed = bedFor(args);
      if (bed === undefined) return undefined;
      const hasPrice = typeof args[PRICE] === 'number';
      return { mass: bed.best({ most: 'mass' }), money: hasPrice ? bed.best({ most: 'money' }) : undefined };
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
    (args) => {
      const [grade] = args;
      if (typeof grade !== 'string') return null;
      return bedFor(args, 1)?.best({ most: 'bulbs', band: grade.toLowerCase() })?.spacing ?? null;
    },
  ),
];
