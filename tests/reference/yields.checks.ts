// Yields against published trials: of onions by density, of other crops by the area. Trials weigh fields, paths counted; the library
// is of bed. So a field's density is that of the bed times the share of beds, and so is its yield.

import { gradeMassShare, meanDiameterOfMass } from '../../engine/agronomy/grades.ts';
import { cropYield } from '../../engine/agronomy/yield-density.ts';
import type { Fact, Point, Publication } from './check.ts';
import { BED_SHARE, cropFigure } from './workbook.ts';

const TONNES_A_HECTARE = 10;
const ONION = 'Onion, bulb';
/** The smallest grade of the Size grades sheet, m. */
const SMALLEST = 0.0381;

/** Yield of all plants of a bed, kg/m2, by density. */
function bedYield(crop: string, density: number): number {
  return cropYield(density, cropFigure(crop, 'Isolated plant mass') / 1000, cropFigure(crop, 'Ceiling yield'));
}

/** t/ha of a field in which so many stand on a square metre, paths in. */
function fieldYield(crop: string, density: number): number {
  return TONNES_A_HECTARE * BED_SHARE * bedYield(crop, density / BED_SHARE);
}

const spread = (): number => cropFigure(ONION, 'Diameter spread') / 100;
const shape = (): number => cropFigure(ONION, 'Bulb shape factor') * 1000;

/** Share by mass of bulbs no smaller than a diameter, m. */
function saleable(yieldOfBed: number, density: number, smallest: number): number {
  const mean = meanDiameterOfMass(yieldOfBed / density, spread(), shape());
  return 1 - gradeMassShare(mean, spread(), Number.NEGATIVE_INFINITY, smallest);
}

/** t/ha that sell, of a field of onions. */
function marketableOnions(density: number): number {
  const own = density / BED_SHARE;
  const share = (cropFigure(ONION, 'Marketable share') / 100) * saleable(bedYield(ONION, own), own, SMALLEST);
  return fieldYield(ONION, density) * share;
}

/** Plants on a square metre of field at which most of it sells. */
function bestDensity(): number {
  let [best, most] = [0, 0];
  for (let density = 20; density <= 250; density += 1) {
    const own = marketableOnions(density);
    if (own > most) [best, most] = [density, own];
  }
  return best;
}

const RUMPEL: Publication = {
  author: 'Rumpel, J. & Felczyński, K.',
  year: 'undated, trials of 1991 to 1996',
  title: 'Effects of plant density and cultivar on yield responses in onions (Allium cepa L.) grown from seeds',
  publisher: 'Acta Agrobotanica',
  url: 'https://pbsociety.org.pl/journals/index.php/aa/article/view/2443',
};
const MENEZES: Publication = {
  author: 'Menezes Júnior, F. O. G. & Vieira Neto, J.',
  year: 2012,
  title: 'Produção da cebola em função da densidade de plantas',
  publisher: 'Horticultura Brasileira 30',
  url: 'https://www.scielo.br/scielo.php?script=sci_arttext&pid=S0102-05362012000400028',
};
const TANDOJAM: Publication = {
  author: 'Sind Agriculture University, Tandojam',
  year: 1985,
  title: 'Plant densities of 17, 22 and 33 plants/m2 on the bulb size and yield of onion',
  publisher: 'Pakistan Journal of Agriculture, Agricultural Engineering and Veterinary Sciences 1: 21-24',
  url: 'https://psa.pastic.gov.pk/SearchArticleView.aspx?S_id=770&articledetailId=44862',
};
const MALHEUR: Publication = {
  author: 'Shock, C. C., Feibert, E. B. G., Reitz, S. & others',
  year: 2015,
  title: 'Onion yield and size with plant populations of 222,000 to 593,000 plants per hectare (paper 21163)',
  publisher: 'American Society for Horticultural Science, annual conference',
};
const MOSSORO: Publication = {
  author: 'Revista Brasileira de Engenharia Agrícola e Ambiental',
  year: 2014,
  title: 'Produção de cebola cultivada sob diferentes densidades de plantio',
  publisher: 'SciELO, Campina Grande',
  url: 'https://www.scielo.br/scielo.php?script=sci_arttext&pid=S1415-43662014000700002',
};
const RIO_PARDO: Publication = {
  author: 'Horticultura Brasileira',
  year: 2007,
  title:
    'Produtividade de cultivares de cebola em função do número de mudas por célula de bandeja e espaçamento entre covas',
  publisher: 'SciELO, Brasília',
  url: 'https://www.scielo.br/scielo.php?script=sci_arttext&pid=S0102-05362007000200023',
};

const OTHER_YEARS =
  'soils and years differ by more than the density does; the library has the yield of a Midwestern guide';

interface Level {
  readonly fact: string;
  readonly source: Publication;
  readonly at: string;
  readonly points: readonly Omit<Point, 'tolerance'>[];
}

/** 27 % either way: what the library itself gives as low and high of its likely yield. */
const levels: readonly Level[] = [
  {
    fact: 'marketable onions of three years in Poland',
    source: RUMPEL,
    at: 'abstract: mean of 1991-93 at 20 and 80 plants/m2',
    points: [
      { what: '20 plants/m2', given: 20.5, computed: () => marketableOnions(20), off: { upTo: 11, why: OTHER_YEARS } },
      { what: '80 plants/m2', given: 32.8, computed: () => marketableOnions(80), off: { upTo: 12, why: OTHER_YEARS } },
    ],
  },
  {
    fact: 'marketable onions of a good year in Poland',
    source: RUMPEL,
    at: 'abstract: 1996 at 40 and 80 plants/m2, beds of 1.35 m with wheel tracks',
    points: [
      { what: '40 plants/m2', given: 48.9, computed: () => marketableOnions(40) },
      { what: '80 plants/m2', given: 59, computed: () => marketableOnions(80) },
    ],
  },
  {
    fact: 'onions of all sizes in southern Brazil',
    source: MENEZES,
    at: 'abstract: total yield at 20 and 60 plants/m2',
    points: [
      { what: '20 plants/m2', given: 33.58, computed: () => fieldYield(ONION, 20) },
      { what: '60 plants/m2', given: 41.92, computed: () => fieldYield(ONION, 60) },
    ],
  },
  {
    fact: 'onions of all sizes in Sindh',
    source: TANDOJAM,
    at: 'abstract: 33 plants/m2',
    points: [
      {
        what: '33 plants/m2',
        given: 28.6,
        computed: () => fieldYield(ONION, 33),
        off: { upTo: 16, why: OTHER_YEARS },
      },
    ],
  },
  {
    fact: 'onions of São Paulo in clumps of two and three',
    source: RIO_PARDO,
    at: 'abstract: 68.9 and 51.7 t/ha by cultivar, whatever the clump; taken at 60 plants/m2',
    points: [{ what: 'mean of two cultivars', given: 60.3, computed: () => fieldYield(ONION, 60) }],
  },
  {
    fact: 'marketable onions of the irrigated north-west',
    source: MALHEUR,
    at: 'abstract: mean out of storage over 22 to 59 plants/m2, Oregon 2011-12',
    points: [
      {
        what: '40 plants/m2',
        given: 119,
        computed: () => marketableOnions(40),
        off: { upTo: 82, why: 'the heaviest crops of the country, long days and furrows full of water' },
      },
    ],
  },
];

const RANGE = 0.27;
/** Yields of whole trials of onions, paths counted and what sells where that was weighed, as each was printed. */
export const onionLevels = levels.map(
  ({ fact, source, at, points }): Extract<Fact, { readonly kind: 'published' }> => ({
    kind: 'published',
    fact,
    unit: 't/ha',
    source,
    at,
    points: points.map((point) => ({ ...point, tolerance: RANGE * point.given })),
  }),
);

/** t/ha of onions of 35 to 50 mm out of the total that was weighed. */
function classTwo(total: number, density: number): number {
  const mean = meanDiameterOfMass(total / TONNES_A_HECTARE / density, spread(), shape());
  return total * gradeMassShare(mean, spread(), 0.035, 0.05);
}

const onions: readonly Fact[] = [
  ...onionLevels,
  {
    kind: 'published',
    fact: 'what closer onions yield against wider ones',
    unit: 'times',
    source: RUMPEL,
    at: 'abstract: 32.8 over 20.5 t/ha, and 59.0 over 48.9 t/ha',
    points: [
      {
        what: 'marketable, 80 over 20 plants/m2, three years',
        given: 32.8 / 20.5,
        computed: () => marketableOnions(80) / marketableOnions(20),
        tolerance: 0.2, // plots of onions differ by an eighth
      },
      {
        what: 'marketable, 80 over 40 plants/m2, a good year',
        given: 59 / 48.9,
        computed: () => marketableOnions(80) / marketableOnions(40),
        tolerance: 0.15,
      },
    ],
  },
  {
    kind: 'published',
    fact: 'what 60 onions on a square metre yield against 20',
    unit: 'times',
    source: MENEZES,
    at: 'abstract: 41.92 over 33.58 t/ha',
    points: [
      {
        what: 'total',
        given: 41.92 / 33.58,
        computed: () => fieldYield(ONION, 60) / fieldYield(ONION, 20),
        tolerance: 0.15,
      },
    ],
  },
  {
    kind: 'published',
    fact: 'small onions among those that were weighed',
    unit: 't/ha',
    source: MENEZES,
    at: 'abstract: class 2, 35 to 50 mm: 0.28 t/ha at 20 and 10.92 t/ha at 60 plants/m2',
    points: [
      { what: '33.58 t/ha at 20 plants/m2', given: 0.28, computed: () => classTwo(33.58, 20), tolerance: 0.3 },
      {
        what: '41.92 t/ha at 60 plants/m2',
        given: 10.92,
        computed: () => classTwo(41.92, 60),
        tolerance: 2.2, // a fifth: hand-graded plots
        off: { upTo: 3.5, why: 'their sizes differed by more than the 14 % of the library' },
      },
    ],
  },
  {
    kind: 'published',
    fact: 'density at which most onions sell',
    unit: 'plants/m2',
    source: MOSSORO,
    at: 'abstract: most commercial yield at 161 plants/m2, most in all at 204, of 80 to 240',
    points: [
      {
        what: 'of onions from 1 1/2 in',
        given: 161,
        computed: bestDensity,
        tolerance: 40, // the step between the densities of the trial
        off: { upTo: 60, why: 'the trial sold smaller bulbs than the smallest grade of the workbook' },
      },
    ],
  },
];

const SALTER: Publication = {
  author: 'Salter, P. J., Currah, I. E. & Fellows, J. R.',
  year: 1979,
  title: 'The Effects of Plant Density, Spatial Arrangement and Time of Harvest on Yield and Root Size in Carrots',
  publisher: 'Journal of Agricultural Science, Cambridge 93: 431-440',
};
const ROHWER: Publication = {
  author: 'Rohwer, C. L.',
  year: 2021,
  title: 'Carrot Yield and Shape Altered by Seeding Rate and Raised Beds in Clay-loam Soil',
  publisher: 'HortScience 56: 722',
  url: 'https://journals.ashs.org/hortsci/view/journals/hortsci/56/6/article-p722.xml',
};
const BREWSTER: Publication = {
  author: 'Brewster, J. L.',
  year: 2008,
  title: 'Onions and Other Vegetable Alliums, second edition',
  publisher: 'CABI, Wallingford',
};
const OCONNELL: Publication = {
  author: 'O’Connell, S., Rivard, C., Peet, M. M., Harlow, C. & Louws, F.',
  year: 2012,
  title:
    'High tunnel and field production of organic heirloom tomatoes: yield, fruit quality, disease, and microclimate',
  publisher: 'HortScience 47: 1283-1290',
};
const HILL: Publication = {
  author: 'Hill, D. E.',
  year: 1996,
  title: 'Specialty Melon Trials 1994-1995 (Bulletin 933)',
  publisher: 'Connecticut Agricultural Experiment Station, New Haven',
};
const TNAU: Publication = {
  author: 'Tamil Nadu Agricultural University',
  year: 'undated, the agritech portal',
  title: 'Horticulture: Vegetables: Bhendi (okra), harvesting and yield',
  publisher: 'TNAU Agritech Portal, Coimbatore',
};
const WESTERN_AUSTRALIA: Publication = {
  author: 'Department of Agriculture and Food, Western Australia',
  year: 2015,
  title: 'Growing snow peas and sugar snaps in Western Australia',
  publisher: 'Government of Western Australia, Perth',
};
const NEW_HAMPSHIRE: Publication = {
  author: 'Orde, K. M. & Sideman, R. G.',
  year: 2019,
  title: 'Low tunnel and cultivar effects on day-neutral strawberry in New Hampshire',
  publisher: 'University of New Hampshire, Durham; HortScience',
};

const ACRE_TON = 2.241702;

/** Marketable t/ha of a field by the crop's likely yield. */
function likely(crop: string): number {
  return TONNES_A_HECTARE * BED_SHARE * cropFigure(crop, 'Yield');
}

const others: readonly Fact[] = [
  {
    kind: 'published',
    fact: 'what carrots at 537 on a square metre yield against 108',
    unit: 'times',
    source: SALTER,
    at: 'summary: total root yield not significantly affected by density in three of four experiments',
    points: [
      {
        what: 'no difference',
        given: 1,
        computed: () => bedYield('Carrot', 537) / bedYield('Carrot', 108),
        tolerance: 0.1,
      },
    ],
  },
  {
    kind: 'published',
    fact: 'what twice the seed of carrots adds to the yield',
    unit: 'times',
    source: ROHWER,
    at: 'abstract: high seeding rate no change in total marketable weight',
    points: [
      {
        what: 'twice the usual density',
        given: 1,
        computed: () => {
          const usual = cropFigure('Carrot', 'Usual density');
          return bedYield('Carrot', 2 * usual) / bedYield('Carrot', usual);
        },
        tolerance: 0.1,
      },
    ],
  },
  {
    kind: 'published',
    fact: 'marketable leeks in November',
    unit: 't/ha',
    source: BREWSTER,
    at: 'page 324: best at 50 to 60 plants/m2, 44 t/ha in November',
    points: [
      {
        what: '55 plants/m2',
        given: 44,
        computed: () => (fieldYield('Leek', 55) * cropFigure('Leek', 'Marketable share')) / 100,
        tolerance: 0.25 * 44,
      },
    ],
  },
  {
    kind: 'published',
    fact: 'tomatoes of the field in North Carolina',
    unit: 't/ha',
    source: OCONNELL,
    at: 'abstract: total yield of the field, 100 and 67 t/ha in 2007 and 2008',
    points: [
      {
        what: 'middle of two years, all fruit',
        given: 83.5,
        computed: () => likely('Tomato') / (cropFigure('Tomato', 'Marketable share') / 100),
        tolerance: 16.5,
      },
    ],
  },
  {
    kind: 'published',
    fact: 'melons in Connecticut',
    unit: 't/ha',
    source: HILL,
    at: 'summary: 21.8 and 16.9 tons an acre at Windsor, 13.8 and 10.6 at Mt. Carmel',
    points: [
      {
        what: 'mean of two soils and two years',
        given: ((21.8 + 16.9 + 13.8 + 10.6) / 4) * ACRE_TON,
        computed: () => likely('Melon'),
        tolerance: 12.5, // the sites lie so far from their mean
      },
    ],
  },
  {
    kind: 'published',
    fact: 'watermelons in Connecticut',
    unit: 't/ha',
    source: HILL,
    at: 'summary: 25.6 and 24.6 tons an acre at Windsor, 14.7 and 12.8 at Mt. Carmel',
    points: [
      {
        what: 'mean of two soils and two years',
        given: ((25.6 + 24.6 + 14.7 + 12.8) / 4) * ACRE_TON,
        computed: () => likely('Watermelon'),
        tolerance: 14,
      },
    ],
  },
  {
    kind: 'published',
    fact: 'okra in Tamil Nadu',
    unit: 't/ha',
    source: TNAU,
    at: 'yield: 7.5 to 10 t/ha, hybrids 15 to 22',
    points: [{ what: 'of kinds that breed true', given: 8.75, computed: () => likely('Okra'), tolerance: 3.75 }],
  },
  {
    kind: 'published',
    fact: 'snow peas in Western Australia',
    unit: 't/ha',
    source: WESTERN_AUSTRALIA,
    at: 'yield: 2 to 7 t/ha',
    points: [{ what: 'middle of the range', given: 4.5, computed: () => likely('Pea, snow'), tolerance: 2.5 }],
  },
  {
    kind: 'published',
    fact: 'fruit of a strawberry plant in its first season',
    unit: 'g',
    source: NEW_HAMPSHIRE,
    at: 'abstract: 235 to 498 g a plant in all, by kind and year',
    points: [
      {
        what: 'middle of the range, by the library’s yield and density',
        given: 366,
        computed: () => (1000 * cropFigure('Strawberry', 'Yield')) / cropFigure('Strawberry', 'Usual density'),
        tolerance: 132,
        off: { upTo: 145, why: 'the library plants in matted beds, and looks for less fruit in the first season' },
      },
    ],
  },
];

const FLORIDA: Publication = {
  author: 'Horticultural Sciences Department, University of Florida, Institute of Food and Agricultural Sciences',
  year: 'undated, the table of SP 103',
  title: 'Vegetable Planting Guide (Florida Vegetable Gardening Guide)',
  publisher: 'Florida Cooperative Extension Service, Gainesville; reprinted at growables.com',
  url: 'https://growables.com/informationVeg/VegPlantingGuide.htm',
};

interface Row {
  readonly crop: string;
  /** lb of 10 ft of row, rows so many inches apart. */
  readonly pounds: number;
  readonly apart: number;
  readonly off?: { readonly upTo: number; readonly why: string };
}

const HOME_GARDENS = 'home gardens, in which it is planted wider and picked less';
const ROWS: readonly Row[] = [
  { crop: 'Bean, snap bush', pounds: 4.5, apart: 18 },
  { crop: 'Bean, snap pole', pounds: 8, apart: 36, off: { upTo: 0.8, why: HOME_GARDENS } },
  { crop: 'Beet', pounds: 7.5, apart: 12 },
  { crop: 'Broccoli', pounds: 5, apart: 24 },
  {
    crop: 'Brussels sprouts',
    pounds: 10,
    apart: 24,
    off: { upTo: 1.1, why: 'the library has the yield of fields in New England' },
  },
  { crop: 'Cabbage', pounds: 12, apart: 24, off: { upTo: 2.5, why: HOME_GARDENS } },
  { crop: 'Melon', pounds: 15, apart: 60, off: { upTo: 2.7, why: HOME_GARDENS } },
  { crop: 'Carrot', pounds: 10, apart: 10 },
  { crop: 'Cauliflower', pounds: 8, apart: 24 },
];

const POUND = 0.45359237;
const FOOT = 0.3048;

const gardens = ROWS.map(({ crop, pounds, apart, off }): Fact => {
  const given = (pounds * POUND) / (10 * FOOT * (apart / 12) * FOOT);
  return {
    kind: 'published',
    fact: `${crop.toLowerCase()} from ten feet of row in Florida`,
    unit: 'kg/m2',
    source: FLORIDA,
    at: 'yield per 10 ft in pounds, and spacing of rows',
    points: [
      {
        what: `${pounds} lb, rows ${apart} in apart`,
        given,
        computed: () => cropFigure(crop, 'Yield'),
        tolerance: 0.3 * given, // one figure for a state and all kinds
        ...(off === undefined ? {} : { off }),
      },
    ],
  };
});

export const facts: readonly Fact[] = [...onions, ...others, ...gardens];
