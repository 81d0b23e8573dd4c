// The units that CONVERT of OpenFormula names (ODF 1.3 part 4, 6.16.18), with their factors. Some read otherwise here than in the
// rest of a formula: oz is a fluid ounce there and a weight elsewhere, h a horsepower and an hour; convert.ts takes the one that fits
// its partner. Factors: NIST SP 811 (2008), app. B (u and eV: CODATA 2018); the defined ones are exact. Called by convert.ts alone.

import { AREA, type Dimension, dimension, LENGTH, MASS, TIME, VOLUME, WARMTH } from '../../units/dimension.ts';
import { doubles, multiplyRatios, powerRatio, type Ratio, ratio } from '../../units/ratio.ts';
import { listed } from '../../units/table.ts';
import type { Unit } from '../../units/unit.ts';

/** Names separated by blanks, the factor to m, kg, s and K, and the symbol to show where the house has one of its own. */
type Row = readonly [names: string, factor: string, shown?: string];

interface Group {
  readonly dimension: Dimension;
  /** Rows whose names also take the prefixes from y to Y; the prefix counts as often as the power says. */
  readonly prefixed: readonly Row[];
  readonly power?: number;
  readonly plain: readonly Row[];
}

const PRESSURE = dimension({ mass: 1, length: -1, time: -2 });
const FORCE = dimension({ mass: 1, length: 1, time: -2 });
const ENERGY = dimension({ mass: 1, length: 2, time: -2 });
const POWER = dimension({ mass: 1, length: 2, time: -3 });
const SPEED = dimension({ length: 1, time: -1 });

const GROUPS: readonly Group[] = [
  {
    dimension: LENGTH,
    prefixed: [
      ['m', '1', 'm'],
      ['ang', '1e-10'],
      ['parsec pc', '30856775814913673'],
      ['lightyear ly', '9460730472580800'],
    ],
    plain: [
      ['mi', '1609.344', 'mi'],
      ['Nmi', '1852'],
      ['in', '0.0254', 'in'],
      ['ft', '0.3048', 'ft'],
      ['yd', '0.9144', 'yd'],
      ['Pica', '127/360000'],
      ['ell', '1.143'],
      ['survey_mi', '6336000/3937'],
    ],
  },
  {
    dimension: AREA,
    power: 2,
    prefixed: [
      ['m2 m^2', '1'],
      ['ang2 ang^2', '1e-20'],
      ['ly2 ly^2', '89505421074818927300612528640000'],
    ],
    plain: [
      ['mi2 mi^2', '2589988.110336'],
      ['Nmi2 Nmi^2', '3429904'],
      ['in2 in^2', '0.00064516'],
      ['ft2 ft^2', '0.09290304'],
      ['yd2 yd^2', '0.83612736'],
      ['Pica2 Pica^2', '16129/129600000000'],
      ['uk_acre', '4046.8564224', 'acre'],
      ['us_acre', '62726400000/15499969'],
      ['ar', '100'],
      ['ha', '10000', 'ha'],
      ['Morgen', '2500'],
    ],
  },
  {
    dimension: VOLUME,
    power: 3,
    prefixed: [
      ['m3 m^3', '1'],
      ['ang3 ang^3', '1e-30'],
    ],
    plain: [
      ['mi3 mi^3', '4168181825.440579584'],
      ['Nmi3 Nmi^3', '6352182208'],
      ['in3 in^3', '0.000016387064'],
      ['ft3 ft^3', '0.028316846592'],
      ['yd3 yd^3', '0.764554857984'],
      ['Pica3 Pica^3', '2048383/46656000000000000'],
      ['tsp', '0.00000492892159375', 'tsp'],
      ['tspm', '0.000005'],
      ['tbs', '0.00001478676478125', 'tbsp'],
      ['oz', '0.0000295735295625', 'fl oz'],
      ['cup', '0.0002365882365', 'cup'],
      ['pt us_pt', '0.000473176473', 'pt'],
      ['uk_pt', '0.00056826125'],
      ['qt', '0.000946352946', 'qt'],
      ['uk_qt', '0.0011365225'],
      ['gal', '0.003785411784', 'gal'],
      ['uk_gal', '0.00454609'],
      ['barrel', '0.158987294928'],
      ['bushel', '0.03523907016688', 'bu'],
      ['regton GRT', '2.8316846592'],
      ['MTON', '1.13267386368'],
    ],
  },
  { dimension: VOLUME, prefixed: [['l L lt', '0.001', 'L']], plain: [] },
  {
    dimension: MASS,
    prefixed: [
      ['g', '0.001', 'g'],
      ['u', '1.66053906660e-27'],
    ],
    plain: [
      ['sg', '14.593902937206364'],
      ['lbm', '0.45359237', 'lb'],
      ['ozm', '0.028349523125', 'oz'],
      ['stone', '6.35029318'],
      ['uk_ton LTON brton', '1016.0469088'],
      ['uk_cwt lcwt hweight', '50.80234544'],
      ['cwt shweight', '45.359237', 'cwt'],
      ['ton', '907.18474', 'ton'],
      ['grain', '0.00006479891'],
      ['pweight', '0.00155517384'],
    ],
  },
  {
    dimension: TIME,
    prefixed: [['sec s', '1', 's']],
    plain: [
      ['yr', '31557600'],
      ['day d', '86400', 'day'],
      ['hr', '3600', 'h'],
      ['mn min', '60', 'min'],
    ],
  },
  {
    dimension: PRESSURE,
    prefixed: [
      ['Pa p', '1'],
      ['atm at', '101325'],
      ['mmHg', '133.322387415'],
    ],
    plain: [
      ['psi', '6894.757293168361'],
      ['Torr', '101325/760'],
    ],
  },
  {
    dimension: FORCE,
    prefixed: [
      ['N', '1'],
      ['dyn dy', '0.00001'],
      ['pond', '0.00980665'],
    ],
    plain: [['lbf', '4.4482216152605']],
  },
  {
    dimension: ENERGY,
    prefixed: [
      ['J', '1'],
      ['e', '1e-7'],
      ['c', '4.184'],
      ['cal', '4.1868'],
      ['eV ev', '1.602176634e-19'],
      ['Wh wh', '3600'],
    ],
    plain: [
      ['HPh hh', '2684519.537696173'],
      ['flb', '1.3558179483314004'],
      ['BTU btu', '1055.05585262'],
    ],
  },
  {
    dimension: POWER,
    prefixed: [['W w', '1']],
    plain: [
      ['HP h', '745.6998715822702'],
      ['PS', '735.49875'],
    ],
  },
  {
    dimension: SPEED,
    prefixed: [
      ['m/s m/sec', '1'],
      ['m/h m/hr', '1/3600'],
    ],
    plain: [
      ['mph', '0.44704'],
      ['kn', '1852/3600'],
      ['admkn', '1853.184/3600'],
    ],
  },
];

const EXPONENTS: Readonly<Record<string, number>> = {
  Y: 24,
  Z: 21,
  E: 18,
  P: 15,
  T: 12,
  G: 9,
  M: 6,
  k: 3,
  h: 2,
  e: 1,
  da: 1,
  d: -1,
  c: -2,
  m: -3,
  u: -6,
  n: -9,
  p: -12,
  f: -15,
  a: -18,
  z: -21,
  y: -24,
};

/** Temperatures on a scale, by all their names. */
const SCALES: ReadonlyMap<string, Unit> = new Map(
  (
    [
      ['C cel', listed('degC')],
      ['F fah', listed('degF')],
      ['K kel', listed('K')],
      ['Rank', { symbol: 'Rank', dimension: WARMTH, numerator: 5, denominator: 9, offset: 0 }],
      ['Reau', { symbol: 'Reau', dimension: WARMTH, numerator: 5, denominator: 4, offset: 273.15 }],
    ] as const
  ).flatMap(([names, unit]) => names.split(' ').map((name) => [name, unit] as const)),
);

/** What the standard also names and a season's plan has no measure for. */
const OTHER_MEASURES: ReadonlyMap<string, string> = new Map([
  ['T', 'magnetism'],
  ['ga', 'magnetism'],
  ['bit', 'information'],
  ['byte', 'information'],
]);

const TEN = ratio('10');

/** Seconds to days, as often as the dimension has time in it. */
function inDays(size: Ratio, { time }: Dimension): Ratio {
  return multiplyRatios(size, powerRatio(ratio('86400'), -time));
}

function unitOf(symbol: string, size: Ratio, of: Dimension): Unit {
  return { symbol, dimension: of, ...doubles(inDays(size, of)), offset: 0 };
}

const PLAIN_NAMES = new Map<string, Unit>();
const PREFIXED_NAMES = new Map<string, { readonly size: Ratio; readonly group: Group }>();

for (const group of GROUPS) {
  for (const [names, factor, shown] of [...group.prefixed, ...group.plain]) {
    for (const name of names.split(' ')) {
      PLAIN_NAMES.set(name, shown === undefined ? unitOf(name, ratio(factor), group.dimension) : listed(shown));
    }
  }
  for (const [names, factor] of group.prefixed) {
    for (const name of names.split(' ')) PREFIXED_NAMES.set(name, { size: ratio(factor), group });
  }
}

/** A unit by a name of the standard; `scale` says that it is a temperature and no difference. */
export interface NamedUnit {
  readonly unit: Unit;
  readonly scale: boolean;
}

/** The unit of a name of the standard, prefixes from y to Y included; undefined for any other name. */
export function standardUnit(name: string): NamedUnit | undefined {
  const scale = SCALES.get(name);
  if (scale !== undefined) return { unit: scale, scale: true };
  const plain = PLAIN_NAMES.get(name);
  if (plain !== undefined) return { unit: plain, scale: false };
  for (const [prefix, exponent] of Object.entries(EXPONENTS)) {
    const found = name.startsWith(prefix) ? PREFIXED_NAMES.get(name.slice(prefix.length)) : undefined;
    if (found === undefined) continue;
    const size = multiplyRatios(found.size, powerRatio(TEN, exponent * (found.group.power ?? 1)));
    return { unit: unitOf(name, size, found.group.dimension), scale: false };
  }
  return undefined;
}

/** What a name of the standard measures that is not reckoned with here; undefined for all others. */
export function otherMeasure(name: string): string | undefined {
  return OTHER_MEASURES.get(name) ?? OTHER_MEASURES.get(name.replace(/^(?:[kMGTPEZY]i|da|[YZEPTGMkhedcmunpfazy])/, ''));
}
