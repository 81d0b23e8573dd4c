// Trays, cells and mix as the trade counts them.
import {
  blocksPerTray,
  boxVolume,
  cellCount,
  mixVolume,
  STANDARD_TRAY,
  TRAY_FORMATS,
} from '../../engine/agronomy/propagation-volume.ts';
import type { Fact } from './check.ts';

const INCH = 0.0254;
const CUBIC_INCH = INCH ** 3;

export const facts: readonly Fact[] = [
  {
    kind: 'common practice',
    fact: 'cells of plug trays of 11 x 21 in',
    unit: 'cells',
    practice: 'trays are sold by the number of their cells',
    points: TRAY_FORMATS.map((format, index) => ({
      what: `the ${format.name} tray, rows x columns`,
      given: [50, 72, 128][index] ?? Number.NaN,
      computed: () => cellCount(format),
      tolerance: 0,
    })),
  },
  {
    kind: 'arithmetic',
    fact: 'box around a cell',
    unit: 'in3',
    rule: 'width x width x depth',
    points: TRAY_FORMATS.map((format, index) => ({
      what: `the ${format.name} tray`,
      given: [7.66, 5.06, 1.9][index] ?? Number.NaN,
      computed: () => boxVolume(format.cellWidth, format.cellWidth, format.cellDepth) / CUBIC_INCH,
      tolerance: 0.005,
    })),
  },
  {
    kind: 'common practice',
    fact: 'two-inch blocks in a standard tray',
    unit: 'blocks',
    practice: '50 blocks of 2 in to a tray of 10.5 x 21 in',
    points: [
      {
        what: 'blocks side by side',
        given: 50,
        computed: () => blocksPerTray(STANDARD_TRAY.length, STANDARD_TRAY.width, 2 * INCH, 0),
        tolerance: 0,
      },
    ],
  },
  {
    kind: 'common practice',
    fact: 'loose mix for 900 blocks of 3/4 in',
    unit: 'ft3',
    practice: '900 blocks take half to two thirds of a cubic foot',
    points: [
      [2.5, 1 / 2],
      [3, 2 / 3],
    ].map(([compaction = Number.NaN, given = Number.NaN]) => ({
      what: `pressed to 1/${compaction} of its volume`,
      given,
      computed: () => mixVolume(900, 0.75 ** 3, compaction) / 1728,
      tolerance: 0.05,
    })),
  },
  {
    kind: 'common practice',
    fact: 'mix for two-inch blocks',
    unit: 'qt',
    practice: 'a bag of 12 quarts makes a hundred blocks',
    points: [
      {
        what: 'a hundred blocks without pressing, dry quarts of 67.2 in3',
        given: 12,
        computed: () => mixVolume(100, 8, 1) / 67.2006,
        tolerance: 0.5,
      },
    ],
  },
];
