// The pictures of the farm, in the order of their questions, and the columns that each can't do without. A picture is one folder and
// one entry here; its code is fetched when it is first shown, and a workbook without one of its columns has no such picture.

import type { ComponentType } from 'preact';
import type { Book } from '../../../engine/index.ts';
import { later } from '../page/later.tsx';
import { PLANTING, PLANTINGS } from '../panels/columns.ts';
import { hasColumns, type Needs } from './kit/ask.ts';

export interface Picture {
  /** Stands in addresses and tests. */
  readonly id: string;
  readonly name: string;
  /** What it answers, as a person asks it. */
  readonly question: string;
  /** It is there where a workbook has all columns of any of these. */
  readonly needs: readonly Needs[];
  readonly Show: ComponentType<object>;
}

const BEDS: Needs = {
  beds: ['length'],
  [PLANTINGS]: [PLANTING.bed, PLANTING.lengthUsed, PLANTING.plantedOut, PLANTING.bedFree],
};

export const PICTURES: readonly Picture[] = [
  {
    id: 'calendar',
    name: 'Calendar of beds',
    question: 'What stands where, and when?',
    needs: [BEDS],
    Show: later(() => import('./season-calendar/calendar-picture.tsx').then((part) => part.CalendarPicture)),
  },
  {
    id: 'map',
    name: 'Map of beds',
    question: 'How does the farm look in a week?',
    needs: [BEDS],
    Show: later(() => import('./bed-map/bed-map-picture.tsx').then((part) => part.BedMapPicture)),
  },
  {
    id: 'room',
    name: 'Room and hands',
    question: 'Is there room for it, and are there hands?',
    needs: [
      { [PLANTINGS]: ['bench-area', 'on-bench-from', 'on-bench-until'] },
      { 'harvest-and-curing': ['rack-area', 'brought-in', 'cured-on'] },
      { 'stores-by-week': ['store', 'week-starts', 'left', 'room'] },
      { labour: ['monday', 'hours'] },
    ],
    Show: later(() => import('./room/room-picture.tsx').then((part) => part.RoomPicture)),
  },
  {
    id: 'supply',
    name: 'Supply and demand',
    question: 'Is there enough of each, and when?',
    needs: [{ 'supply-against-demand': ['product', 'week-starts', 'from-the-field', 'from-store', 'wanted'] }],
    Show: later(() => import('./supply/supply-picture.tsx').then((part) => part.SupplyPicture)),
  },
  {
    id: 'money',
    name: 'Money',
    question: 'What comes in, what goes out, and when?',
    needs: [{ months: ['month', 'sales', 'costs', 'in-the-till'] }],
    Show: later(() => import('./money/money-picture.tsx').then((part) => part.MoneyPicture)),
  },
  {
    id: 'sure',
    name: 'How sure',
    question: 'What is likely, and between which ends?',
    needs: [{ [PLANTINGS]: ['marketable-yield', 'marketable-yield-low', 'marketable-yield-high'] }],
    Show: later(() => import('./intervals/intervals-picture.tsx').then((part) => part.IntervalsPicture)),
  },
  {
    id: 'spacing',
    name: 'Spacing',
    question: 'How close: yield, sizes and money?',
    needs: [{ [PLANTINGS]: [PLANTING.spacing, PLANTING.yield, PLANTING.mass, PLANTING.stations] }],
    Show: later(() => import('./spacing/spacing-picture.tsx').then((part) => part.SpacingPicture)),
  },
  {
    id: 'blocks',
    name: 'Plants in a block',
    question: 'How many plants come up in each?',
    needs: [
      { [PLANTINGS]: ['empty-stations', 'with-1-plant', 'with-5-or-more', 'seeds-per-station', 'plants-per-station'] },
    ],
    Show: later(() => import('./blocks/blocks-picture.tsx').then((part) => part.BlocksPicture)),
  },
  {
    id: 'viability',
    name: 'Seed with age',
    question: 'How long does which seed stay good?',
    needs: [{ 'seed-lots': ['sowing-date', 'germination-at-sowing', 'standard', 'ages-from', 'variety'] }],
    Show: later(() => import('./viability/viability-picture.tsx').then((part) => part.ViabilityPicture)),
  },
  {
    id: 'frost',
    name: 'Frost',
    question: 'How likely is a frost on which day?',
    needs: [{ climate: ['day', 'spring-frost-to-come', 'autumn-frost-come'] }],
    Show: later(() => import('./frost/frost-picture.tsx').then((part) => part.FrostPicture)),
  },
  {
    id: 'climate',
    name: 'Climate',
    question: 'How warm is it, and what grows then?',
    needs: [{ climate: ['day', 'low', 'high', 'mean'] }],
    Show: later(() => import('./climate/climate-picture.tsx').then((part) => part.ClimatePicture)),
  },
];

/** Those that a workbook has the columns for. */
export function picturesOf(book: Book): readonly Picture[] {
  return PICTURES.filter(({ needs }) => needs.some((each) => hasColumns(book, each)));
}
