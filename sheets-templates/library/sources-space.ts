// Publications behind the crop library's figures of spacing, days, yields, pieces and pickings: one named source each, cited once. The
// family files name them beside each figure.

import { source } from './source.ts';

export const ANDERSON = source('Anderson & Kiesselbach 1929, Nebraska, Jerusalem artichokes');
export const ATTRA = source('ATTRA, sustainable cut flower production');
export const BED_SHARE_MW = source(
  'Midwest Vegetable Production Guide 2022, p. 30, average, good and excellent; field yield / 0.65, the bed share of a 30-inch bed with a 16-inch path',
);
export const BED_SHARE_NE = source(
  'New England Vegetable Management Guide, Table 15, low, good and excellent; field yield / 0.65, the bed share of a 30-inch bed with a 16-inch path',
);
export const BIERNBAUM = source('Biernbaum, Michigan State Univ., Meet the Brassica brothers');
export const BIRJAND = source(
  'Univ. of Birjand, germination cardinal temperatures of two basil cultivars by non-linear regression',
);
export const BREWSTER_LEEK = source(
  'Brewster 2008, Onions and Other Vegetable Alliums (CABI), p. 324, leeks at 30 to 60 plants per m2',
);
export const CALIFORNIA_GARDEN = source('UC California Garden Web, vegetable spacing');
export const CAROLINA_CUCUMBER = source(
  'NC State Extension AG-552, Commercial production of pickling and slicing cucumbers',
);
export const CORNELL_FAMILIES = source(
  "Cornell Cooperative Extension Chautauqua County 2021, Rotating vegetables by family; names of today's botany",
);
export const EMERY = source('Emery 2021, SARE FNE21-980, ginger 8 inches apart');
export const FELTRIM = source('Feltrim et al. 2003, spacing of pak choi');
export const GASKELL_PEA = source('Gaskell, Univ. of California, edible-pod pea production; field yield / 0.65');
export const HEIDARI = source(
  'Heidari, Kamkar & Sinaki 2014, Advances in Plants & Agricultural Research 1(5): 207-213, germination of fennel',
);
export const IDAHO_SQUASH = source(
  'Strickler, Agenbroad & Laughlin 2008, SARE FW06-042, harvest frequency of summer squash',
);
export const KANSAS_BEDS = source('K-State Master Gardeners, plant spacing for intensive beds');
export const KANSAS_ROWS = source(
  'Marr, Kansas State Univ. MF315, Vegetable garden planting guide, crop expected per 100 feet; times the rows of a 30-inch bed',
);
export const LENDWAY = source(
  'Lendway 2020, 2021, garden harvest tables (gardenR data), pickings weighed in one garden of the northern USA; our least squares',
);
export const LEWIS = source(
  'Lewis et al., Utah State Univ., snapdragons in tunnels and field, Journal of the American Society for Horticultural Science',
);
export const LOCASCIO = source('Locascio & Stall 1994, pepper at 2.6 to 5.4 plants per m2');
export const MAGNESS = source(
  'Magness, Markle & Compton 1971, Food and feed crops of the United States, via Purdue Univ.',
);
export const MAINE_CHART = source('Stack, Univ. of Maine Extension, vegetable planting chart');
export const MAINE_ROWS = source(
  'Stack, Univ. of Maine Extension, vegetable planting chart, yield per 10 feet of row over its distance between rows',
);
export const MEADLEY = source('Meadley & Milbourn 1970, peas at 43 to 172 plants per m2');
export const MEAD_ONIONS = source('Mead 1970, Applied Statistics 19: 64-81, onions at 19 to 335 plants per m2');
export const MILEPOST = source('Milepost 2012, as quoted by Johnson (NC State)');
export const NEW_ENGLAND_15 = source('New England Vegetable Management Guide, Table 15, yields and containers');
export const NEW_MEXICO_KALE = source(
  'Effect of harvest schedule on organic kale grown during the winter in high tunnels, northern New Mexico 2013-15, abstract',
);
export const NORTH_DAKOTA = source('North Dakota State Univ. H-912, 2010, days from planting to market');
export const OKLAHOMA = source('Oklahoma State Univ. HLA-6004, days to harvest of warm-season vegetables');
export const OREGON_GUIDE = source('Oregon State Univ. 2010, Oregon Vegetables production guide');
export const OREGON_LEAVES = source('Oregon State Univ. guide on Chinese cabbage and leafy greens, as posted in 1995');
export const PAPADOPOULOS = source('Papadopoulos & Ormrod, tomatoes at 2.5 to 11.3 plants per m2');
export const PARSNIP_TRIAL = source('J. Hort. Sci. 1966, 41: 371-378, parsnips at 21 to 65 plants per m2');
export const RATKOWSKY_FIT = source(
  'least squares on ln mass of the Purnong onions of Ratkowsky 1983, Nonlinear Regression Modeling, p. 58',
);
export const ROHWER = source('Rohwer & Fritz, Univ. of Minnesota, ASHS 2015, ginger from pieces of 30 to 120 g');
export const RUSSO = source('Russo 2008, hot peppers at 8 to 48 cm in the row');
export const SALTER = source(
  'Salter, Currah & Fellows 1980, J. agric. Sci., carrots at 108 to 1,553 plants per m2, 1 to 36 rows a bed',
);
export const SCAIFE = source('Scaife & Jones 1976, as cited: half of the ceiling at the harvest spacing of lettuce');
export const SLOAN = source(
  'Sloan & Harkness 2008, Journal of Applied Horticulture 10(1): 10.8 to 21.6 stems a zinnia plant',
);
export const SPROUT_TRIAL = source('J. Hort. Sci., Brussels sprouts in three seasons at 2.7 to 4.4 plants per m2');
export const STOFFELLA_CABBAGE = source('Stoffella & Fleming 1990, cabbage at 2.5 to 12.3 plants per m2');
export const STOFFELLA_PEPPER = source('Stoffella & Bryan 1988, pepper to 25.8 plants per m2');
export const SWEET_CORN_DENSITY = source('PMC8492913, Table 2, ear mass of sweet corn at 1.04 and 8.0 plants per m2');
export const TNAU = source('TNAU Agritech portal, harvesting of okra');
export const USDA_WEIGHTS = source('USDA National Nutrient Database SR28, household weights');
export const UTAH_SPINACH = source('Ernst, Drost & Black 2012, Utah State Univ., high tunnel winter spinach');
export const WISCONSIN_PERENNIALS = source('Univ. of Wisconsin Extension, harvest of asparagus and rhubarb');
export const WISCONSIN_TOMATO = source(
  'Hodge, Healy, Emerson & Dawson 2019, Univ. of Wisconsin (eOrganic): marketable yield a plant in the open and in tunnels; times plants of a bed',
);
