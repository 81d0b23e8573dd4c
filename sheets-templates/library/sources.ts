// Where the figures of the crop library come from: one named source per publication, cited once. The family files name
// them beside each figure. A figure not read anywhere says memory or common practice.

/** A publication, or one of the two standings without one. `cite` is what a reader sees. */
export interface Source {
  readonly cite: string;
  /** Whose figure it is where it was taken over from a relative; '' where it is the crop's own. */
  readonly note: string;
}

function source(cite: string): Source {
  return { cite, note: '' };
}

export const MEMORY = source('memory');
export const PRACTICE = source('common practice');

/** A figure taken over from a related crop: recalled for this one. */
export function asFor(crop: string): Source {
  return { cite: MEMORY.cite, note: `as for ${crop}` };
}

/** A figure that two or more sources bound together. */
export function both(...sources: readonly Source[]): Source {
  return source(sources.map(({ cite }) => cite).join('; '));
}

export const FEDERAL_STANDARDS = source(
  'US 7 CFR 201.31, germination standards for vegetable seeds (59 FR 64491, 1994)',
);
export const KNOTT_LIFE = source(
  "Maynard & Hochmuth 1997, Knott's Handbook for Vegetable Growers, 4th ed., as given by Iowa State Univ. Extension",
);
export const HARRINGTON = source(
  'Harrington 2013, Soil temperature conditions for vegetable seed germination, Oregon State Univ. Extension',
);
export const CALIFORNIA_HANDBOOK = source('California Master Gardener Handbook, 2nd ed. (UC ANR 3382), Table 5.2');
export const HARRINGTON_AND_CALIFORNIA = both(HARRINGTON, CALIFORNIA_HANDBOOK);
export const EMERGENCE_FIT = source(
  'least squares on days to emergence of Harrington & Minges 1954, Vegetable seed germination, Calif. Agric. Extension',
);

export const MID_ATLANTIC = source(
  'Ernest, Univ. of Delaware Weekly Crop Update, after Mid-Atlantic Commercial Vegetable Production Recommendations, Table A-4',
);
export const UC_TRANSPLANTS = source('UC ANR Master Gardener transplant chart');
export const CORNELL_IPM = source('Cornell NYS IPM guidelines for vegetables, ch. 9, Table 9.1.1');

export const WINTER_KILL = source('Dawling 2016, winter-kill temperatures of vegetables, observed in US zone 7a');
export const ILLINOIS_FROST = source(
  'Univ. of Illinois Extension 2017, 2021, four hardiness groups and their weeks from the last frost',
);
export const ILLINOIS_GUIDE = source('Univ. of Illinois Extension vegetable guide');
export const KANSAS_BEDS = source('K-State Master Gardeners, plant spacing for intensive beds');
export const CALIFORNIA_GARDEN = source('UC California Garden Web, vegetable spacing');
export const MAINE_CHART = source('Stack, Univ. of Maine Extension, vegetable planting chart');
export const NORTH_DAKOTA = source('North Dakota State Univ. H-912, 2010, days from planting to market');
export const OKLAHOMA = source('Oklahoma State Univ. HLA-6004, days to harvest of warm-season vegetables');

export const NEW_ENGLAND_15 = source('New England Vegetable Management Guide, Table 15, yields and containers');
export const NEW_ENGLAND_16 = source('New England Vegetable Management Guide, Table 16, handling produce');
export const MIDWEST_YIELDS = source('Midwest Vegetable Production Guide 2022, p. 30, expected yields');
export const CANTWELL = source('Cantwell 2001, Properties and recommended conditions for long-term storage, UC Davis');
export const HANDBOOK_66_2002 = source(
  'USDA Agriculture Handbook 66, 2002 draft revision (Gross, Wang & Saltveit, eds.)',
);
export const HANDBOOK_66_1954 = source('USDA Agriculture Handbook 66, 1954');
export const IOWA_STORAGE = source('Iowa State Univ. Extension 2017, home storage requirements');
export const SQUASH_CURING = source('Knapp, Beyond the Root Cellar; Iowa State Univ. Extension, curing winter squash');
export const SMALL_SCALE_CURING = source(
  'Kitinoja & Kader, Small-scale postharvest handling practices (FAO), curing of root, tuber and bulb crops',
);
export const OREGON_ONION_CURING = source(
  'Oregon State Univ. Extension, Sustainable onion production: drying and curing',
);
export const MAW_MULLINIX = source('Maw & Mullinix 2005, Postharvest Biol. Technol. 35: 223-227');
export const MSIKA_JACKSON = source('Msika & Jackson 1997, onion weight loss in warm stores, as quoted');

export const FAO_56_STAGES = source('Allen et al. 1998, FAO Irrigation and Drainage Paper 56, Table 11');
export const FAO_56_CRUCIFERS = source('Allen et al. 1998, FAO Irrigation and Drainage Paper 56, Table 11, crucifers');
export const FAO_56 = source('Allen et al. 1998, FAO Irrigation and Drainage Paper 56, Table 12');
export const FAO_56_SMALL_VEGETABLES = source(
  'Allen et al. 1998, FAO Irrigation and Drainage Paper 56, Table 12, group of small vegetables',
);
export const CONNECTICUT_ROTATION = source(
  'Univ. of Connecticut IPM, rotation periods to help control vegetable diseases',
);
export const USDA_NUTRIENTS = source(
  'USDA National Nutrient Database for Standard Reference, edible part: protein / 6.25, phosphorus, potassium',
);
export const USDA_WEIGHTS = source('USDA National Nutrient Database SR28, household weights');
export const KHOKHAR = source('Khokhar 2019, J. Hort. Sci. Biotechnol. 94: 703-717');

export const DELAWARE_BOLTING = source('Johnson, Univ. of Delaware Weekly Crop Update, bolting in spring vegetables');
export const DELAWARE_DEGREE_DAYS = source('Univ. of Delaware 2025, degree-day bases of vegetables');
export const MARYLAND_DEGREE_DAYS = source('Univ. of Maryland, Maryland State Climatologist, growing degree-days');
export const ONION_DAY_LENGTH = source(
  'Iowa State Univ. Extension and Oregon State Univ. Extension, onion day-length types',
);
export const BREWSTER = source('Brewster 2008, Onions and Other Vegetable Alliums (CABI), eq. 4.17');
export const HOLDSWORTH_HEATH = source(
  'Holdsworth & Heath 1950, Studies in the physiology of the onion plant IV, Annals of Botany',
);
export const TEXAS_ONION = source('Texas Cooperative Extension, onion growing, bolting');
export const WURR_LEEK = source('Wurr et al. 1999, in Brewster 2008, Onions and Other Vegetable Alliums');
export const ATHERTON_CARROT = source('Atherton, Craigon & Basher 1990, J. Hort. Sci. 65: 423-429');
export const RAMIN_ATHERTON = source(
  'Ramin & Atherton 1991, Manipulation of bolting and flowering in celery II, as quoted',
);
export const BOOIJ_MEURS = source('Booij & Meurs 1993, Scientia Hort. 55: 227-238');
export const WIEN_WURR = source('Wien & Wurr, in The Physiology of Vegetable Crops, as quoted');
export const DEL_POZO = source('del Pozo & Gonzalez 2005, Agricultura Tecnica 65: 119-126');
export const ECOCROP_SHALLOT = source('FAO Ecocrop, shallot');

export const RATKOWSKY_FIT = source(
  'least squares on ln mass of the Purnong onions of Ratkowsky 1983, Nonlinear Regression Modeling, p. 58',
);

export const ELLIS_ROBERTS_1981 = source('Ellis & Roberts 1981, Seed Sci. Technol. 9: 373-409');
export const KRAAK_VOS = source('Kraak & Vos 1987, Annals of Botany 59: 343-349');
export const ELLIS_HONG_2007 = source('Ellis & Hong 2007, Seed Sci. Technol. 35: 432-444');
export const ELLIS_1989 = source('Ellis, Hong & Roberts 1989, Annals of Botany 63: 601-611');
export const ELLIS_1990 = source('Ellis, Hong, Roberts & Tao 1990, Annals of Botany 65: 493-504');
export const DEMIR_2009 = source('Demir et al. 2009, HortScience 44: 1679-1682');
export const DEMIR_2011 = source('Demir et al. 2011, Seed Sci. Technol. 39: 527-532');
export const KUO_1991 = source('Kuo 1991, Mem. Coll. Agric. 31: 22-29');
export const KRUSE_2005 = source('Kruse, Ghiasi & Schmohl 2005');
export const HONG_1996 = source('Hong, Linington & Ellis 1996, Seed storage behaviour: a compendium, IPGRI');
export const DANIEL_2013 = source('Daniel et al. 2013, Int. J. Vegetable Sci. 19: 324-333');
