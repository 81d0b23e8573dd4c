// The pictures of rows, in the order in which they stand, and the columns that each needs. A picture is one folder and one
// entry here; its code is fetched when it is first shown.

import { later } from '../page/later.tsx';
import {
  BED,
  BEDS,
  FARM,
  FARM_COLUMN,
  PLANTING,
  PLANTINGS,
  SEED_LOT,
  SEED_LOTS,
  VARIETIES,
  VARIETY,
} from './columns.ts';
import type { Panel, PanelProps } from './panel.ts';

const { spacing, lengthUsed, bedWidth, rows, pattern, perStation, stations, diameter } = PLANTING;
const { mass, yield: marketable, density, seeds, blocks, sets, margin, raised, fromSeed } = PLANTING;
const { bed, plantedOut, bedFree, small, medium, large, extraLarge } = PLANTING;
const { latitude, starts, ends } = FARM_COLUMN;

export const PANELS: readonly Panel[] = [
  {
    name: 'spacing',
    of: PLANTINGS,
    needs: { [PLANTINGS]: [spacing, lengthUsed, bedWidth, rows, pattern, perStation, stations, diameter] },
    inPlaceOfFields: true,
    Show: later<PanelProps>(() => import('./bed-picture/spacing-panel.tsx').then((part) => part.SpacingPanel)),
  },
  {
    name: 'figures',
    of: PLANTINGS,
    needs: {
      [PLANTINGS]: [spacing, stations, density, mass, marketable, blocks, sets, seeds, margin, raised, fromSeed],
    },
    Show: later<PanelProps>(() =>
      import('./planting-figures/planting-figures.tsx').then((part) => part.PlantingFigures),
    ),
  },
  {
    name: 'layout',
    of: PLANTINGS,
    needs: { [PLANTINGS]: [spacing, rows, pattern, perStation, lengthUsed, bedWidth, diameter] },
    Show: later<PanelProps>(() => import('./layout/layout.tsx').then((part) => part.Layout)),
  },
  {
    name: 'curves against spacing',
    of: PLANTINGS,
    needs: { [PLANTINGS]: [spacing, marketable, mass, diameter, stations, seeds, margin] },
    Show: later<PanelProps>(() => import('./spacing-curves/spacing-curves.tsx').then((part) => part.SpacingCurves)),
  },
  {
    name: 'sizes',
    of: PLANTINGS,
    needs: { [PLANTINGS]: [small, medium, large, extraLarge, diameter] },
    Show: later<PanelProps>(() => import('./sizes/sizes.tsx').then((part) => part.Sizes)),
  },
  {
    name: 'day length through the year',
    of: VARIETIES,
    needs: { [VARIETIES]: Object.values(VARIETY), [FARM]: [latitude, starts, ends] },
    Show: later<PanelProps>(() => import('./day-length-year/day-length-year.tsx').then((part) => part.DayLengthYear)),
  },
  {
    name: 'a bed through the season',
    of: BEDS,
    needs: { [BEDS]: [BED.length], [PLANTINGS]: [bed, lengthUsed, plantedOut, bedFree], [FARM]: [starts, ends] },
    Show: later<PanelProps>(() => import('./bed-season/bed-season.tsx').then((part) => part.BedSeason)),
  },
  {
    name: 'germination as a lot ages',
    of: SEED_LOTS,
    needs: { [SEED_LOTS]: Object.values(SEED_LOT) },
    Show: later<PanelProps>(() => import('./seed-ageing/seed-ageing.tsx').then((part) => part.SeedAgeing)),
  },
];
