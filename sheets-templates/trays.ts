// The Trays sheet: the block and cell trays of the propagation house, with the mix and the bench each takes. Read by
// Plantings and Farm.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  AREA,
  choice,
  computed,
  entered,
  group,
  PLAIN,
  quantity,
  SPACING,
  TEXT,
  VOLUME,
  withDefault,
} from './authoring.ts';

export const CELL_VOLUME = quantity('in3', 'mL');

export const traysSheet: SheetDeclaration = {
  id: 'trays',
  name: 'Trays',
  question: 'Raising',
  about:
    'Formats of block and cell trays. Volumes and compaction differ from farm to farm: measure a batch and put in your own.',
  rows: { from: 'entry' },
  key: 'tray',
  columns: [
    ...group(
      'Tray',
      entered('tray', 'Tray', TEXT, { required: true }),
      entered('holds', 'Holds', choice('blocks', 'cells', 'seeds')),
      entered('cells', 'Cells', PLAIN, {
        note: 'Blocks or cells in one tray; seeds where they are sown loose.',
        decimals: 0,
        least: 1,
      }),
      entered('tray-length', 'Tray length', SPACING, { least: 0 }),
      entered('tray-width', 'Tray width', SPACING, { least: 0 }),
      computed('tray-area', 'Tray area', AREA, '[Tray length] * [Tray width]', {
        note: 'Bench it takes.',
        decimals: 2,
      }),
    ),
    ...group(
      'Mix',
      entered('cell-volume', 'Cell volume', CELL_VOLUME, {
        note: 'One block, or one cell filled; of a deep tray what one seed has.',
        decimals: 1,
        least: 0,
      }),
      withDefault('compaction', 'Compaction', PLAIN, 'IF([Holds] = "blocks"; Farm[Mix compaction]; 1)', {
        note: 'Loose mix that presses into one volume of block.',
        decimals: 2,
        least: 1,
        most: 4,
      }),
      computed('mix-per-tray', 'Mix per tray', VOLUME, '[Cells] * [Cell volume] * [Compaction]', {
        note: 'Loose.',
        decimals: 2,
      }),
    ),
    ...group('Sources', entered('source', 'Source', TEXT)),
  ],
  checks: [],
  cautions: [
    'Peat, compost and mineral mixes raise dust: wet the mix before turning it, or wear a mask.',
    'A filled tray is heavy for its size: carry few at a time, close to the body.',
  ],
};

const STANDARD = { 'Tray length': '21 in', 'Tray width': '11 in' };
const GEOMETRY = 'Cubes with 1/8 in between them in a tray 10.5 x 21 in inside, by geometry';
const PRINTED = 'Count as printed for the 11 x 21 in tray; cell volume memory';

/** The usual formats, to start from. */
export const TRAY_ROWS: readonly Readonly<Record<string, string>>[] = [
  { Tray: '3/4 in blocks', Holds: 'blocks', Cells: '288', 'Cell volume': '0.42 in3', ...STANDARD, Source: GEOMETRY },
  { Tray: '1 1/2 in blocks', Holds: 'blocks', Cells: '78', 'Cell volume': '3.375 in3', ...STANDARD, Source: GEOMETRY },
  {
    Tray: '2 in blocks',
    Holds: 'blocks',
    Cells: '50',
    'Cell volume': '8 in3',
    ...STANDARD,
    Source: 'Published count, 5 x 10, no gap',
  },
  { Tray: '3 in blocks', Holds: 'blocks', Cells: '18', 'Cell volume': '27 in3', ...STANDARD, Source: GEOMETRY },
  { Tray: '4 in blocks', Holds: 'blocks', Cells: '10', 'Cell volume': '64 in3', ...STANDARD, Source: GEOMETRY },
  { Tray: '50 cells', Holds: 'cells', Cells: '50', 'Cell volume': '75 mL', ...STANDARD, Source: PRINTED },
  { Tray: '72 cells', Holds: 'cells', Cells: '72', 'Cell volume': '42 mL', ...STANDARD, Source: PRINTED },
  { Tray: '128 cells', Holds: 'cells', Cells: '128', 'Cell volume': '24 mL', ...STANDARD, Source: PRINTED },
  { Tray: '200 cells', Holds: 'cells', Cells: '200', 'Cell volume': '12 mL', ...STANDARD, Source: 'Memory' },
  { Tray: '288 cells', Holds: 'cells', Cells: '288', 'Cell volume': '7 mL', ...STANDARD, Source: 'Memory' },
  {
    Tray: 'Deep tray',
    Holds: 'seeds',
    Cells: '600',
    'Cell volume': '15 mL',
    ...STANDARD,
    Source: 'Seeds sown loose, some four to the square inch, in 2 1/2 in of mix: memory',
  },
];
