// Publications behind the crop library's figures of storage, curing, nutrients and water: one named source each, cited once. The
// family files name them beside each figure.

import { source } from './source.ts';

export const CANTWELL = source('Cantwell 2001, Properties and recommended conditions for long-term storage, UC Davis');
export const CANTWELL_HERBS = source('Cantwell & Reid, UC Davis Postharvest Center, fresh culinary herbs');
export const CONNECTICUT_ROTATION = source(
  'Univ. of Connecticut IPM, rotation periods to help control vegetable diseases',
);
export const DAVIS_STORE = source('UC Davis Postharvest Center, produce facts');
export const DELAWARE_ROOTS = source(
  'Johnson, Univ. of Delaware Weekly Crop Update, harvest and post-harvest handling of fall root crops',
);
export const FAO_56 = source('Allen et al. 1998, FAO Irrigation and Drainage Paper 56, Table 12');
export const FAO_56_CRUCIFERS = source('Allen et al. 1998, FAO Irrigation and Drainage Paper 56, Table 11, crucifers');
export const FAO_56_SMALL_VEGETABLES = source(
  'Allen et al. 1998, FAO Irrigation and Drainage Paper 56, Table 12, group of small vegetables',
);
export const FAO_56_STAGES = source('Allen et al. 1998, FAO Irrigation and Drainage Paper 56, Table 11');
export const HANDBOOK_66_1954 = source('USDA Agriculture Handbook 66, 1954');
export const HANDBOOK_66_2002 = source(
  'USDA Agriculture Handbook 66, 2002 draft revision (Gross, Wang & Saltveit, eds.)',
);
export const HAWAII_NAPA = source('extension leaflet on Chinese cabbage, Hawaii, storage');
export const IOWA_STORAGE = source('Iowa State Univ. Extension 2017, home storage requirements');
export const KRAWIEC = source('Krawiec 2002, Folia Horticulturae 14(1), losses of onion sets in store');
export const LANG_CAMERON = source('Lange & Cameron 1994, HortScience 29: 102-103, as quoted');
export const LUO = source('Luo, in USDA Agriculture Handbook 66, 2016, bok choy');
export const MAW_MULLINIX = source('Maw & Mullinix 2005, Postharvest Biol. Technol. 35: 223-227');
export const NEW_ENGLAND_16 = source('New England Vegetable Management Guide, Table 16, handling produce');
export const OREGON_ONION_CURING = source(
  'Oregon State Univ. Extension, Sustainable onion production: drying and curing',
);
export const SMALL_SCALE_CURING = source(
  'Kitinoja & Kader, Small-scale postharvest handling practices (FAO), curing of root, tuber and bulb crops',
);
export const SQUASH_CURING = source('Knapp, Beyond the Root Cellar; Iowa State Univ. Extension, curing winter squash');
export const STORAGE_SHEET = source('optimal storage fact sheet, second-hand');
export const UMASS_STORE = source(
  'UMass Extension Vegetable Program, optimal storage conditions and ethylene sensitivity of fall storage crops',
);
export const USDA_LEGACY = source(
  'USDA National Nutrient Database for Standard Reference, Legacy Release 2018: protein / 6.25, phosphorus, potassium',
);
export const USDA_NUTRIENTS = source(
  'USDA National Nutrient Database for Standard Reference, edible part: protein / 6.25, phosphorus, potassium',
);
export const UTAH_ROOTS = source('Utah State Univ. Extension vegetable guide, root crops, harvest and storage');
