// The built-in workbooks by name. The terminal and the browser call this file alone.

import type { Start, Template, TemplateShelf } from '../engine/index.ts';
import { ONIONS } from './onions.ts';
import { SEASON, type SeasonOptions, seasonStart, startOf } from './season.ts';
import { SEEDLINGS } from './seedlings.ts';

export type { Act } from './acts/act.ts';
export { chooseAmounts } from './acts/choose-amounts.ts';
export { laySuccession } from './acts/lay-succession.ts';
export { plantWay } from './acts/plant-way.ts';
export { type BedWish, bedWish, proposeBeds } from './acts/propose-beds.ts';
export { PLANS, type RollOverOptions, rollOver } from './acts/roll-over.ts';
export { isLearned, type LearnedOffer, learnedOffers, takeOver } from './acts/take-over.ts';
export { workOutOrder } from './acts/work-out-order.ts';
export type { NamedRow } from './names.ts';
export { rowsById } from './names.ts';
export { type OrderLine, orderCsv, ordersOf, type SupplierOrder } from './orders.ts';
export { PLAN_BY_WEEK, PLAN_SHEETS, PLAN_TOTALS } from './totals.ts';
export type { SeasonOptions };
export { SEASON, seasonStart };

/** A workbook that can be started. */
export interface Offer {
  readonly template: Template;
  /** In a sentence. */
  readonly about: string;
  start(options: SeasonOptions): Start;
}

export const OFFERS: readonly Offer[] = [
  {
    template: SEASON,
    about: 'A season of a market garden: farm, crops, varieties, seed, beds, plantings and the seed order.',
    start: seasonStart,
  },
  {
    template: ONIONS.template,
    about: 'Bulb onions alone, from seed to store: varieties by day length, raising, spacing, ways to plant, curing.',
    start: (options) => startOf(ONIONS.sheets, options),
  },
  {
    template: SEEDLINGS.template,
    about: 'Plants raised for sale, batch by batch: seed, trays, mix, bench, date of sale and margin.',
    start: (options) => startOf(SEEDLINGS.sheets, options),
  },
];

/** The templates as they are today; earlier versions where a face has fetched them. */
export function templateShelf(earlier: readonly Template[] = []): TemplateShelf {
  return {
    today: (name) => OFFERS.find(({ template }) => template.name === name)?.template,
    earlier: (name, version) => earlier.find((one) => one.name === name && one.version === version),
  };
}
