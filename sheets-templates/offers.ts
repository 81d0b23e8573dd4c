// The built-in workbooks that can be started, and the shelf on which workbooks find their templates. Called through index.ts.

import type { Start, Template, TemplateShelf } from '../engine/index.ts';
import { onions } from './onions.ts';
import { SEASON, type SeasonOptions, seasonStart, startOf } from './season.ts';
import { seedlings } from './seedlings.ts';

/** A workbook that can be started. */
export interface Offer {
  /** Of its template. */
  readonly name: string;
  /** In a sentence. */
  readonly about: string;
  template(): Template;
  start(options: SeasonOptions): Start;
}

export const OFFERS: readonly Offer[] = [
  {
    name: SEASON.name,
    template: () => SEASON,
    about: 'A season of a market garden: farm, crops, varieties, seed, beds, plantings and the seed order.',
    start: seasonStart,
  },
  {
    name: 'onions',
    template: onions,
    about: 'Bulb onions alone, from seed to store: varieties by day length, raising, spacing, ways to plant, curing.',
    start: (options) => startOf(onions().sheets, options),
  },
  {
    name: 'seedlings',
    template: seedlings,
    about: 'Plants raised for sale, batch by batch: seed, trays, mix, bench, date of sale and margin.',
    start: (options) => startOf(seedlings().sheets, options),
  },
];

/** The templates as they are today; earlier versions where a face has fetched them. */
export function templateShelf(earlier: readonly Template[] = []): TemplateShelf {
  return {
    today: (name) => OFFERS.find((offer) => offer.name === name)?.template(),
    earlier: (name, version) => earlier.find((one) => one.name === name && one.version === version),
  };
}
