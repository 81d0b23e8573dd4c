// The Crops sheet: what the workbook knows of each vegetable, one row each, filled from library/ in a fresh workbook and
// open to the grower's own figures. The figures and their sources stand in library/; crop-columns-*.ts hold the columns
// group by group, and the formulas that stand in where a figure is left blank.

import type { SheetDeclaration } from '../engine/index.ts';
import { entered, group, TEXT } from './authoring.ts';
import { GROWING_COLUMNS } from './crop-columns-growing.ts';
import { HARVEST_COLUMNS } from './crop-columns-harvest.ts';
import { SEASON_COLUMNS } from './crop-columns-season.ts';
import { SEED_COLUMNS } from './crop-columns-seed.ts';
import { OWN_CROP_COLUMNS } from './own-figures.ts';

export const cropsSheet: SheetDeclaration = {
  id: 'crops',
  name: 'Crops',
  question: 'What',
  about:
    "One row per vegetable: what its seed, space, season, harvest and store need. Every figure is a starting point with its source in the row's Sources; your own records come first.",
  rows: { from: 'entry' },
  key: 'crop',
  columns: [
    ...SEED_COLUMNS,
    ...SEASON_COLUMNS,
    ...GROWING_COLUMNS,
    ...HARVEST_COLUMNS,
    ...OWN_CROP_COLUMNS,
    ...group(
      'Sources',
      entered('ranges', 'Ranges', TEXT, { note: 'Lowest and highest of figures that vary widely.' }),
      entered('doubts', 'Doubts', TEXT, { note: 'Where sources disagree or stop short.' }),
      entered('sources', 'Sources', TEXT, {
        note: 'Where each figure comes from; memory marks a recalled one to check first. A figure without an entry here is worked out from the others.',
      }),
    ),
  ],
  checks: [],
  cautions: [
    'Figures are planning estimates: local extension advice and your own records come first.',
    'Seed sold as treated carries a label with its treatment: wear gloves, keep it from children and animals, never eat or feed it.',
  ],
};
