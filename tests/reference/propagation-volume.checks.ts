// Tray counts, cell volumes and mix against printed ones.
import {
  blocksPerTray,
  boxVolume,
  cellCount,
  mixVolume,
  STANDARD_TRAY,
  TRAY_FORMATS,
} from '../../engine/agronomy/propagation-volume.ts';
import type { Check } from './check.ts';

const INCH = 0.0254;
const CUBIC_INCH = INCH ** 3;
const TRAYS = 'Plug tray makers’ sheet, 11 x 21 in trays';

const trays = TRAY_FORMATS.flatMap((format, index): readonly Check[] => [
  {
    source: TRAYS,
    what: `cells of the ${format.name} tray, rows x columns`,
    unit: 'cells',
    published: [50, 72, 128][index] ?? Number.NaN,
    computed: () => cellCount(format),
    tolerance: 0,
    standing: 'common practice',
  },
  {
    source: TRAYS,
    what: `box around a cell of the ${format.name} tray`,
    unit: 'in3',
    published: [7.66, 5.06, 1.9][index] ?? Number.NaN,
    computed: () => boxVolume(format.cellWidth, format.cellWidth, format.cellDepth) / CUBIC_INCH,
    tolerance: 0.005,
    standing: 'common practice',
  },
]);

export const checks: readonly Check[] = [
  ...trays,
  {
    source: 'Soil block makers’ sheet: 50 two-inch blocks in a 10.5 x 21 in tray',
    what: '2 in blocks in a standard tray',
    unit: 'blocks',
    published: 50,
    computed: () => blocksPerTray(STANDARD_TRAY.length, STANDARD_TRAY.width, 2 * INCH, 0),
    tolerance: 0,
    standing: 'common practice',
  },
  ...[
    [2.5, 1 / 2],
    [3, 2 / 3],
  ].map(
    ([compaction = Number.NaN, published = Number.NaN]): Check => ({
      source: 'Growers’ figure: 900 blocks of 3/4 in take 1/2 to 2/3 ft3 of loose mix at compaction 2.5 to 3',
      what: `loose mix for 900 blocks of 3/4 in at compaction ${compaction}`,
      unit: 'ft3',
      published,
      computed: () => mixVolume(900, 0.75 ** 3, compaction) / 1728,
      tolerance: 0.05,
      standing: 'common practice',
    }),
  ),
  {
    source: 'Seed-starting mix sheet: a 12-quart bag makes 100 two-inch blocks',
    what: 'mix for 100 two-inch blocks without pressing, dry quarts of 67.2 in3',
    unit: 'qt',
    published: 12,
    computed: () => mixVolume(100, 8, 1) / 67.2006,
    tolerance: 0.5,
    standing: 'common practice',
  },
];
