// How a season's plan meets chance: what is decided before the season shows how it turns out and so stays as planned, but for dates that
// follow from one typed as a range; and which shares are of things that each come out by themselves. By ids.

import type { AskedWeeks, Chances } from '../engine/index.ts';
import { MONTHS_WARMER } from './climate.ts';

const DECIDED = [
  'start',
  'bed',
  'spreads-over',
  'bed-length-used',
  'rows',
  'in-row-spacing',
  'pattern',
  'time-raised',
  'sown',
  'planted-out',
  'seeds-per-station',
  'blocks-to-start',
  'seeds-needed',
  'sets-or-plants-to-buy',
];

export const SEASON_CHANCES: Chances = {
  plan: ['plantings', 'farm'],
  decided: DECIDED.map((column) => `plantings/${column}`),
  together: ['plantings/sown', 'plantings/planted-out', 'plantings/time-raised'],
  counted: [
    { sheet: 'plantings', share: 'germination', of: 'seeds-needed', isLeft: false },
    { sheet: 'plantings', share: 'field-survival', of: 'plants-standing', isLeft: true },
  ],
  years: {
    days: { sheet: 'climate', date: 'day', columns: ['low', 'high'] },
    months: { sheet: 'monthly-climate', number: 'number', spread: 'year-to-year' },
    own: { sheet: 'frost-years', months: MONTHS_WARMER },
  },
};

/** A figure of every week of which a drawn season says where it runs out or over. */
export interface WeeklyChance extends AskedWeeks {
  /** What is well: the rest of the seasons are `missed`. */
  readonly well?: { readonly side: 'at least' | 'at most'; readonly value: number; readonly missed: string };
}

const NONE_OVER = { side: 'at most', value: 0 } as const;
const NONE_LACKING = { side: 'at least', value: 0 } as const;

export const WEEKLY_CHANCES: readonly WeeklyChance[] = [
  { id: 'harvest', name: 'Harvest', sheet: 'weekly-harvest', date: 'week-starts', column: 'mass' },
  { id: 'pieces', name: 'Pieces', sheet: 'weekly-harvest', date: 'week-starts', column: 'pieces' },
  { id: 'sold', name: 'Sold', sheet: 'supply-against-demand', date: 'week-starts', column: 'sold' },
  {
    id: 'short',
    name: 'Short of demand',
    sheet: 'supply-against-demand',
    date: 'week-starts',
    column: 'short',
    well: { ...NONE_OVER, missed: 'Runs short' },
  },
  { id: 'hours', name: 'Hours', sheet: 'labour', date: 'monday', column: 'hours' },
  {
    id: 'hours-over',
    name: 'Hours above the hands there are',
    sheet: 'labour',
    date: 'monday',
    column: 'over',
    well: { ...NONE_OVER, missed: 'More work than hands' },
  },
  {
    id: 'bed-room',
    name: 'Length free on the fullest bed',
    sheet: 'bed-calendar',
    date: 'week-starts',
    column: 'free',
    fold: 'least',
    well: { ...NONE_LACKING, missed: 'A bed is overfull' },
  },
  {
    id: 'bench-room',
    name: 'Room free on the bench',
    sheet: 'propagation',
    date: 'week-starts',
    column: 'bench-free',
    fold: 'least',
    well: { ...NONE_LACKING, missed: 'The bench is overfull' },
  },
  { id: 'in-store', name: 'In store', sheet: 'stores-by-week', date: 'week-starts', column: 'left' },
  {
    id: 'store-full',
    name: 'Fullest store',
    sheet: 'stores-by-week',
    date: 'week-starts',
    column: 'full',
    fold: 'most',
    well: { side: 'at most', value: 1, missed: 'A store is overfull' },
  },
];
