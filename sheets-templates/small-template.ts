// What the smaller templates share.

import type { Template } from '../engine/index.ts';
import { NOTHING_NOTED } from './planting-dates.ts';

/** A template that is made when it is first asked for: most people who open a workbook never open one of these. */
export function madeOnce(make: () => Template): () => Template {
  let made: Template | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** Formulas of plantings without records: no date is noted. */
export const BESIDE_RECORDS: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(NOTHING_NOTED).map(([column, formula]) => [`plantings/${column}`, formula]),
);

/** Formulas of plantings without outlets and products. */
export const BESIDE_SALES: Readonly<Record<string, string>> = {
  'plantings/sales-by-outlets': '0 money',
  'plantings/revenue-this-season': '[Revenue] * [Harvest this season]',
};
