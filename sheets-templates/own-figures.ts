// A farm's own figures in Crops and Varieties: what Learned offered and was taken over, and what the formulas there make of it. The
// library's figures stay as they are beside them. crops.ts and varieties.ts put them in their places.

import { DEGREE_DAYS, entered, group, quantity, SHARE, YIELD } from './authoring.ts';

/** The figure that counts: the farm's own where one was taken over, else the library's. */
export function ownFirst(own: string, library: string): string {
  return `IF(ISBLANK([${own}]); ${library}; [${own}])`;
}

const TAKEN = "Taken over from Learned, or typed; counts before the library's.";

export const OWN_CROP_COLUMNS = group(
  'Own figures',
  entered('own-yield', 'Own yield', YIELD, { note: TAKEN, decimals: 2, least: 0 }),
  entered('own-field-survival', 'Own field survival', SHARE, { note: TAKEN, decimals: 0, least: 1, most: 100 }),
  entered('own-picking-rate', 'Own picking rate', quantity('lb/h', 'kg/h'), { note: TAKEN, decimals: 1, least: 0 }),
  entered('own-packing-rate', 'Own packing rate', quantity('lb/h', 'kg/h'), { note: TAKEN, decimals: 1, least: 0 }),
  entered('own-weeding-time', 'Own weeding time', quantity('min/ft2', 'min/m2'), {
    note: TAKEN,
    decimals: 2,
    least: 0,
  }),
);

export const OWN_VARIETY_COLUMNS = group(
  'Own figures',
  entered('own-germination', 'Own germination', SHARE, { note: TAKEN, decimals: 0, least: 1, most: 100 }),
  entered('own-warmth-to-harvest', 'Own warmth to harvest', DEGREE_DAYS, { note: TAKEN, decimals: 0, least: 0 }),
  entered('own-warmth-to-harvest-direct', 'Own warmth to harvest direct', DEGREE_DAYS, {
    note: TAKEN,
    decimals: 0,
    least: 0,
  }),
);
