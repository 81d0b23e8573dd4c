// The onions template: bulb onions alone, from seed to store, on the sheets of the season that they need. index.ts offers it.

import { cropsSheet } from './crops.ts';
import { cropId } from './library/library.ts';
import { partOfSeason } from './part-of-season.ts';
import { rowsOfSheets, SEASON, SEASON_SHEETS } from './season.ts';
import { BESIDE_RECORDS, BESIDE_SALES, madeOnce } from './small-template.ts';

const ONION = cropId('Onion, bulb');

/** The template, the same whenever it is asked for. */
export const onions = madeOnce(() => {
  const sheets = partOfSeason(SEASON_SHEETS, {
    sheets: [
      'farm',
      'climate',
      'monthly-climate',
      'frost-years',
      'crops',
      'work-rates',
      'varieties',
      'packs',
      'seed-lots',
      'beds',
      'trays',
      'plantings',
      'raising',
      'sowing-list',
      'propagation',
      'mixes',
      'mix-ingredients',
      'seed-order',
      'plant-order',
      'suppliers',
      'order-lines',
      'size-grades',
      'best-spacing',
      'ways-to-plant',
      'beds-to-try',
      'ways',
      'planting-jobs',
      'weeks',
      'harvest-and-curing',
      'stores',
      'lots-and-stores',
      'storage',
      'trials',
      'trial-fits',
      'bulbing-records',
      'sources',
    ],
    formulas: { ...BESIDE_RECORDS, ...BESIDE_SALES },
    keeps: [
      'plantings/margin',
      'plantings/cured-yield',
      'plantings/bed',
      'propagation/bench-free',
      'sowing-list/mix-volume',
      'mixes/price-of-the-mix',
      'suppliers/to-pay',
      'order-lines/cost',
      'ways-to-plant/margin',
      'planting-jobs/lift-on',
      'harvest-and-curing/racks-that-day',
      'storage/store',
      'trial-fits/isolated-plant-mass',
    ],
  });
  return {
    ...SEASON,
    name: 'onions',
    version: 3,
    sheets,
    rows: {
      ...rowsOfSheets(SEASON.rows, sheets),
      [cropsSheet.id]: (SEASON.rows[cropsSheet.id] ?? []).filter(({ id }) => id === ONION),
    },
  };
});
