// Publications behind the crop library's figures of warmth, cold, day length and bolting: one named source each, cited once. The
// family files name them beside each figure.

import { source } from './source.ts';

export const ARIZONA_CHILE = source(
  'Soto-Ortiz, Silvertooth & Galadima, Univ. of Arizona, chile phenology (55 and 86 degF)',
);
export const ARIZONA_MELON = source(
  'Soto-Ortiz, Silvertooth & Galadima, Univ. of Arizona, cantaloupe phenology, 15 fields of 2003-06',
);
export const ATHERTON_CARROT = source('Atherton, Craigon & Basher 1990, J. Hort. Sci. 65: 423-429');
export const AZPILICUETA = source('Azpilicueta et al. 2012, Scientia Agricola');
export const BOOIJ_MEURS = source('Booij & Meurs 1993, Scientia Hort. 55: 227-238');
export const BREWSTER = source('Brewster 2008, Onions and Other Vegetable Alliums (CABI), eq. 4.17');
export const CARROT_SEEDLINGS = source('agronomy page on carrot, seedlings after emergence, second-hand');
export const CHUNG = source('Chung 1985, as quoted: 12, 23 and 16 t/ha of broccoli at 2.8, 8.3 and 16.7 plants per m2');
export const CORNELL_IPM = source('Cornell NYS IPM guidelines for vegetables, ch. 9, Table 9.1.1');
export const CURREY = source('Currey 2019, temperature and basil');
export const DAWLING_2012 = source(
  'Dawling 2012, winter hardiness, temperatures at which crops die, observed in US zone 7a',
);
export const DAWLING_ALLIUMS = source(
  'Dawling 2016, alliums: kill temperatures, cold and soil at planting, observed in US zone 7a',
);
export const DELAWARE_BOLTING = source('Johnson, Univ. of Delaware Weekly Crop Update, bolting in spring vegetables');
export const DELAWARE_DEGREE_DAYS = source('Univ. of Delaware 2025, degree-day bases of vegetables');
export const DEL_POZO = source('del Pozo & Gonzalez 2005, Agricultura Tecnica 65: 119-126');
export const ECOCROP_SHALLOT = source('FAO Ecocrop, shallot');
export const FNAM = source('Revista Facultad Nacional de Agronomia Medellin 72(3), 2019, eggplant');
export const GARDEN_SOCIETY = source('gardening society article, nights for setting out, second-hand');
export const GEORGIA_SOIL = source(
  'Univ. of Georgia Extension, Polk County, column of 15 March 2022, soil temperatures for planting',
);
export const GONZALEZ = source('Gonzalez et al. 2004, Agricultura Tecnica 64(4), 12 monthly sowings of spinach');
export const GUTTORMSEN = source('Guttormsen & Moe 1985, Scientia Hort. 25: 217-224');
export const HOLDSWORTH_HEATH = source(
  'Holdsworth & Heath 1950, Studies in the physiology of the onion plant IV, Annals of Botany',
);
export const ILLINOIS_FROST = source(
  'Univ. of Illinois Extension 2017, 2021, four hardiness groups and their weeks from the last frost',
);
export const ILLINOIS_GUIDE = source('Univ. of Illinois Extension vegetable guide');
export const KHOKHAR = source('Khokhar 2019, J. Hort. Sci. Biotechnol. 94: 703-717');
export const KNOTT_GROWTH = source(
  "Maynard & Hochmuth 1997, Knott's Handbook for Vegetable Growers, 4th ed., approximate monthly temperatures for best growth, as printed by UC Santa Cruz, Unit 1.3, App. 5",
);
export const LANCASTER = source('J. Hort. Sci. 1977, 52: 335-346, growth of overwintered onions above 6 C, to 20 C');
export const LEAF_PACE = source(
  'Mead, Curnow & Hasted 2002, Statistical Methods in Agriculture and Experimental Biology, p. 251: 67 and 72 degree-days a leaf in cauliflower',
);
export const LEBOEUF = source('LeBoeuf 2004, Ontario Ministry of Agriculture, chilling of tomato and pepper');
export const MAINE_LATEST = source(
  'Stack, Univ. of Maine Extension, vegetable planting chart, latest dates, against a first frost of 22 September in central Maine',
);
export const MARYLAND_DEGREE_DAYS = source('Univ. of Maryland, Maryland State Climatologist, growing degree-days');
export const MASSEY = source(
  'PhD thesis, Massey Univ. 1988, four broccoli cultivars in six sowings, sown to head maturity',
);
export const MID_ATLANTIC = source(
  'Ernest, Univ. of Delaware Weekly Crop Update, after Mid-Atlantic Commercial Vegetable Production Recommendations, Table A-4',
);
export const MILFORD = source('Milford, Jarvis & Walters 2010, J. agric. Sci., bolting of sugar beet');
export const MINCHIN = source('Minchin & Simon 1973, Journal of Experimental Botany, chilling of cucumber leaves');
export const ONION_DAY_LENGTH = source(
  'Iowa State Univ. Extension and Oregon State Univ. Extension, onion day-length types',
);
export const OREGON_BEANS = source(
  'Oregon State Univ. 1969, Vegetable Digest 18(3), about 50 plantings of bush beans at Corvallis',
);
export const PEET = source('Peet, NC State Univ., Sustainable Practices for Vegetable Production in the South, App. 2');
export const RAMIN_ATHERTON = source(
  'Ramin & Atherton 1991, Manipulation of bolting and flowering in celery II, as quoted',
);
export const RAMIN_JUVENILE = source(
  'Ramin & Atherton 1991, Manipulation of bolting and flowering in celery II: 731 degree-days above 3 C to the end of the juvenile phase, as quoted',
);
export const SIDEMAN = source(
  'Sideman & Beck, Univ. of New Hampshire, ginger sprouted at 24 to 29 C, set out in soil above 18 C',
);
export const SNYDER = source(
  'Snyder & de Melo-Abreu 2005, Frost protection, FAO Environment and Natural Resources 10, ch. 4',
);
export const SOIL_SLIPS = source(
  'web article naming NC State Univ., soil temperature for sweet potato slips, second-hand',
);
export const SUJATHA = source('Agrarforschung Schweiz 2002(5), bolting of bulb fennel');
export const SUKPRAKARN = source('Sukprakarn 1985, PhD thesis, Massey Univ., bolting of leaf lettuce');
export const TAN = source('Tan, Birch, Wearing & Rickert 2000, Scientia Hort. 84: 227-243 and 86: 89-101');
export const TEXAS_ONION = source('Texas Cooperative Extension, onion growing, bolting');
export const UC_TRANSPLANTS = source('UC ANR Master Gardener transplant chart');
export const VILLORDON = source('Villordon et al. 2009, HortTechnology 19: 133');
export const WIEBE = source('Wiebe 1994, in Brewster 2008, Onions and Other Vegetable Alliums');
export const WIEN_WURR = source('Wien & Wurr, in The Physiology of Vegetable Crops, as quoted');
export const WINTER_KILL = source('Dawling 2016, winter-kill temperatures of vegetables, observed in US zone 7a');
export const WURR_1990 = source('Wurr 1990, Acta Hort. 267: 45');
export const WURR_LEEK = source('Wurr et al. 1999, in Brewster 2008, Onions and Other Vegetable Alliums');
export const WURR_PLANTS = source('leek plant-raising at Wellesbourne: effective day-degrees above 4 C, to 23 C');
