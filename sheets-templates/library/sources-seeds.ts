// Publications behind the crop library's seed, germination and seed-life figures: one named source each, cited once. The
// family files name them beside each figure.

import { source } from './source.ts';

export const CALIFORNIA_HANDBOOK = source('California Master Gardener Handbook, 2nd ed. (UC ANR 3382), Table 5.2');
export const DANIEL_2013 = source('Daniel et al. 2013, Int. J. Vegetable Sci. 19: 324-333');
export const DEMIR_2009 = source('Demir et al. 2009, HortScience 44: 1679-1682');
export const DEMIR_2011 = source('Demir et al. 2011, Seed Sci. Technol. 39: 527-532');
export const ELLIS_1982 = source('Ellis, Osei-Bonsu & Roberts 1982, Annals of Botany 50: 69-82');
export const ELLIS_1989 = source('Ellis, Hong & Roberts 1989, Annals of Botany 63: 601-611');
export const ELLIS_1990 = source('Ellis, Hong, Roberts & Tao 1990, Annals of Botany 65: 493-504');
export const ELLIS_HONG_2007 = source('Ellis & Hong 2007, Seed Sci. Technol. 35: 432-444');
export const ELLIS_ROBERTS_1981 = source('Ellis & Roberts 1981, Seed Sci. Technol. 9: 373-409');
export const EMERGENCE_FIT = source(
  'least squares on days to emergence of Harrington & Minges 1954, Vegetable seed germination, Calif. Agric. Extension',
);
export const FEDERAL_COUNTS = source(
  'US 7 CFR 201.46, Table 1, approximate number of seeds per gram (25 FR 8769, 1960, as amended to 59 FR 64491, 1994)',
);
export const FEDERAL_STANDARDS = source(
  'US 7 CFR 201.31, germination standards for vegetable seeds (59 FR 64491, 1994)',
);
export const HANDBOOK_506 = source(
  'USDA Agriculture Handbook 506, 1978, Table 13, germination of the lots at the start',
);
export const HARRINGTON = source(
  'Harrington 2013, Soil temperature conditions for vegetable seed germination, Oregon State Univ. Extension',
);
export const HARRINGTON_AND_CALIFORNIA = source(
  'Harrington 2013, Soil temperature conditions for vegetable seed germination, Oregon State Univ. Extension; California Master Gardener Handbook, 2nd ed. (UC ANR 3382), Table 5.2',
);
export const HONG_1996 = source('Hong, Linington & Ellis 1996, Seed storage behaviour: a compendium, IPGRI');
export const KEW_SEEDS = source('Royal Botanic Gardens Kew 2019, Seed Information Database, mass of 1,000 seeds');
export const KNOTT_LIFE = source(
  "Maynard & Hochmuth 1997, Knott's Handbook for Vegetable Growers, 4th ed., as given by Iowa State Univ. Extension",
);
export const KRAAK_VOS = source('Kraak & Vos 1987, Annals of Botany 59: 343-349');
export const KRUSE_2005 = source('Kruse, Ghiasi & Schmohl 2005');
export const KUO_1991 = source('Kuo 1991, Mem. Coll. Agric. 31: 22-29');
export const MAIZE_BASE = source('Scientific Reports 10: 18013, 2020, Table 3, base temperature of maize');
export const MERCHANTS = source('counts compiled from several merchants, second-hand');
export const NEW_HAMPSHIRE = source(
  'New Hampshire Admin. Code Agr 2203.01, Table 2200-1, germination standards for vegetable seeds, 2018',
);
