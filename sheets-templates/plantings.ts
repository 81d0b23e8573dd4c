// The Plantings sheet, the heart of the workbook: each planting from seed to money. Its columns follow the work: what and
// where, stand, raising, space and yield, sizes, harvest, money, and what to watch. The parts stand in files of their own.

import type { SheetDeclaration } from '../engine/index.ts';
import { BOLTING_COLUMNS } from './planting-bolting.ts';
import { PLANTING_CHECKS } from './planting-checks.ts';
import { RECKONED_DATE_COLUMNS } from './planting-dates.ts';
import { HARVEST_COLUMNS } from './planting-harvest.ts';
import { MONEY_COLUMNS } from './planting-money.ts';
import { RIPENING_COLUMNS } from './planting-ripening.ts';
import { SEASON_COLUMNS } from './planting-season.ts';
import { SPACE_COLUMNS } from './planting-space.ts';
import { STAND_COLUMNS } from './planting-stand.ts';
import { WANTED_LENGTH_COLUMNS } from './planting-wanted.ts';
import { WINDOW_COLUMNS } from './planting-window.ts';
import { WORK_COLUMNS } from './planting-work.ts';

export const plantingsSheet: SheetDeclaration = {
  id: 'plantings',
  name: 'Plantings',
  question: 'When and how close',
  about:
    'One row a planting. Enter the variety, how it starts, the bed, the spacing and the dates; stand, seed, yield, harvest and money follow.',
  rows: { from: 'entry' },
  key: 'planting',
  columns: [
    ...STAND_COLUMNS,
    ...RECKONED_DATE_COLUMNS,
    ...WINDOW_COLUMNS,
    ...WANTED_LENGTH_COLUMNS,
    ...SPACE_COLUMNS,
    ...RIPENING_COLUMNS,
    ...HARVEST_COLUMNS,
    ...BOLTING_COLUMNS,
    ...WORK_COLUMNS,
    ...MONEY_COLUMNS,
    ...SEASON_COLUMNS,
  ],
  checks: PLANTING_CHECKS,
  cautions: [
    'Figures are planning estimates: local extension advice and your own records come first.',
    'Treated seed: wear gloves and keep it apart. Dry bulbs and mixes raise dust: wear a mask.',
    'Full trays, crates and sacks are heavy: lift with a straight back, share the load.',
    'Bulbs with thick or bolted necks, soft spots or mould do not store: sell them fresh or leave them out.',
  ],
};
