// The built-in workbooks that can be started, and the shelf on which workbooks find their templates. Only the season is there from the
// start: the smaller templates are fetched when a workbook of theirs is begun or opened. Called through index.ts.

import type { Template, TemplateShelf } from '../engine/index.ts';
import { SEASON } from './season.ts';

/** A workbook that can be started. */
export interface Offer {
  /** Of its template. */
  readonly name: string;
  /** In a sentence. */
  readonly about: string;
  template(): Promise<Template>;
}

export const OFFERS: readonly Offer[] = [
  {
    name: SEASON.name,
    template: async () => SEASON,
    about: 'A season of a market garden: farm, crops, varieties, seed, beds, plantings and the seed order.',
  },
  {
    name: 'onions',
    template: async () => (await import('./onions.ts')).onions(),
    about: 'Bulb onions alone, from seed to store: varieties by day length, raising, spacing, ways to plant, curing.',
  },
  {
    name: 'seedlings',
    template: async () => (await import('./seedlings.ts')).seedlings(),
    about: 'Plants raised for sale, batch by batch: seed, trays, mix, bench, date of sale and margin.',
  },
];

/** The template of this name as it is today; undefined where none is offered under it. */
export async function todaysTemplate(name: string): Promise<Template | undefined> {
  return OFFERS.find((offer) => offer.name === name)?.template();
}

/** The season, and the templates that a face has fetched: smaller ones as they are today, and earlier versions. */
export function templateShelf(
  earlier: readonly Template[] = [],
  smaller: readonly (Template | undefined)[] = [],
): TemplateShelf {
  return {
    today: (name) => (name === SEASON.name ? SEASON : smaller.find((one) => one?.name === name)),
    earlier: (name, version) => earlier.find((one) => one.name === name && one.version === version),
  };
}
