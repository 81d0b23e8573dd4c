// Blocks in trays, trays, mix and bench.
import { describe, expect, it } from 'vitest';
import {
  benchArea,
  benchUse,
  blocksPerTray,
  boxVolume,
  containersFor,
  measuredCompaction,
  mixParts,
  mixVolume,
  STANDARD_TRAY,
  taperedVolume,
} from '../../engine/agronomy/propagation-volume.ts';

const INCH = 0.0254;
const NONE = Number.NaN;

describe('blocks in a tray', () => {
  it('fit as drawn, with and without a gap', () => {
    const count = (block: number, gap: number): number =>
      blocksPerTray(STANDARD_TRAY.length, STANDARD_TRAY.width, block * INCH, gap * INCH);
    expect([0.75, 1.5, 2, 3, 4].map((block) => count(block, 0))).toEqual([392, 98, 50, 21, 10]);
    expect([0.75, 1.5, 2, 3, 4].map((block) => count(block, 0.125))).toEqual([288, 78, 45, 18, 10]);
    expect(blocksPerTray(0.01, 0.5, 0.05, 0)).toBe(0);
    expect(blocksPerTray(0.5, 0.3, 0, 0)).toBeNaN();
    expect(blocksPerTray(0.5, 0.3, 0.05, -0.01)).toBeNaN();
  });

  it('take whole trays', () => {
    expect(containersFor(0, 50)).toBe(0);
    expect(containersFor(50, 50)).toBe(1);
    expect(containersFor(51, 50)).toBe(2);
    expect(containersFor(10, 0)).toBeNaN();
  });
});

describe('mix', () => {
  it('shrinks as it is pressed, and the measured compaction gives it back', () => {
    const each = boxVolume(0.05, 0.05, 0.05);
    const loose = mixVolume(400, each, 2.2);
    expect(loose).toBeCloseTo(0.11, 12);
    expect(measuredCompaction(loose, 400, each)).toBeCloseTo(2.2, 12);
    expect(mixVolume(400, each, 0.5)).toBeNaN();
    expect(measuredCompaction(0, 400, each)).toBeNaN();
  });

  it('parts as the recipe does', () => {
    const recipe = [
      { name: 'peat', parts: 30 },
      { name: 'sand', parts: 20 },
      { name: 'compost', parts: 20 },
      { name: 'soil', parts: 10 },
    ];
    const parts = mixParts(0.4, recipe);
    expect(parts.map((part) => part.volume)).toEqual(
      [0.15, 0.1, 0.1, 0.05].map((volume) => expect.closeTo(volume, 12)),
    );
    expect(mixParts(0.4, [{ name: 'peat', parts: 0 }])[0]?.volume).toBeNaN();
  });

  it('fills a tapered cell with less than its box', () => {
    expect(taperedVolume(2, 2, 3)).toBeCloseTo(12, 12);
    expect(taperedVolume(2, 0, 3)).toBeCloseTo(4, 12);
    expect(taperedVolume(-1, 2, 3)).toBeNaN();
  });
});

describe('bench', () => {
  it('is tray after tray', () => {
    expect(benchArea(10, 0.54, 0.28)).toBeCloseTo(1.512, 10);
    expect(benchArea(10, 0, 0.28)).toBeNaN();
  });

  it('counts each batch in the weeks it stands', () => {
    const batches = [
      { from: 0, until: 14, area: 1 },
      { from: 10, until: 21, area: 0.5 },
    ];
    expect(benchUse(batches, 0, 7, 4)).toEqual([1, 1.5, 0.5, 0]);
  });
});

describe('at the edges', () => {
  it.each([
    ['no blocks on a tray without length', () => blocksPerTray(0, 0.3, 0.05, 0), 0],
    ['no blocks on a tray without width', () => blocksPerTray(0.5, 0, 0.05, 0), 0],
    ['blocks on a tray of negative length', () => blocksPerTray(-0.5, 0.3, 0.05, 0), NONE],
    ['blocks on a tray of negative width', () => blocksPerTray(0.5, -0.3, 0.05, 0), NONE],
    ['trays for less than nothing', () => containersFor(-1, 50), NONE],
    ['trays that hold less than nothing', () => containersFor(10, -50), NONE],
    ['a box of whole sides', () => boxVolume(2, 3, 4), 24],
    ['a box without width', () => boxVolume(0, 3, 4), 0],
    ['a box without breadth', () => boxVolume(2, 0, 4), 0],
    ['a box without depth', () => boxVolume(2, 3, 0), 0],
    ['a box of negative width', () => boxVolume(-2, 3, 4), NONE],
    ['a box of negative breadth', () => boxVolume(2, -3, 4), NONE],
    ['a box of negative depth', () => boxVolume(2, 3, -4), NONE],
    ['a box of two negative sides', () => boxVolume(-2, -3, 4), NONE],
    ['a pyramid on its point', () => taperedVolume(0, 3, 2), 6],
    ['a cell without depth', () => taperedVolume(2, 1, 0), 0],
    ['a cell of negative bottom', () => taperedVolume(2, -1, 3), NONE],
    ['a cell of negative depth', () => taperedVolume(2, 1, -3), NONE],
    ['mix for no blocks', () => mixVolume(0, 0.001, 2), 0],
    ['mix for blocks of nothing', () => mixVolume(100, 0, 2), 0],
    ['mix filled without pressing', () => mixVolume(8, 0.5, 1), 4],
    ['mix for less than no blocks', () => mixVolume(-100, 0.001, 2), NONE],
    ['mix for blocks of less than nothing', () => mixVolume(100, -0.001, 2), NONE],
    ['mix for both', () => mixVolume(-100, -0.001, 2), NONE],
    ['compaction of no blocks', () => measuredCompaction(1, 0, 0.001), NONE],
    ['compaction of less than no blocks', () => measuredCompaction(1, -100, 0.001), NONE],
    ['compaction of blocks of nothing', () => measuredCompaction(1, 100, 0), NONE],
    ['compaction of blocks of less than nothing', () => measuredCompaction(1, 100, -0.001), NONE],
    ['bench for no trays', () => benchArea(0, 0.5, 0.3), 0],
    ['bench for less than no trays', () => benchArea(-1, 0.5, 0.3), NONE],
    ['bench for trays of negative length', () => benchArea(1, -0.5, 0.3), NONE],
    ['bench for trays without width', () => benchArea(1, 0.5, 0), NONE],
    ['bench for trays of negative width', () => benchArea(1, 0.5, -0.3), NONE],
  ])('%s', (_, answer, expected) => {
    expect(answer()).toBe(expected);
  });

  it('no part of a mix without parts has a volume', () => {
    expect(mixParts(0, [{ name: 'peat', parts: 0 }])).toEqual([{ name: 'peat', volume: NONE }]);
    expect(mixParts(1, [{ name: 'peat', parts: -2 }])).toEqual([{ name: 'peat', volume: NONE }]);
    expect(
      mixParts(1, [
        { name: 'peat', parts: 3 },
        { name: 'sand', parts: -3 },
      ]).map((part) => part.volume),
    ).toEqual([NONE, NONE]);
  });

  it('a batch takes no bench in a week that ends as it comes, nor in one that begins as it goes', () => {
    expect(benchUse([{ from: 7, until: 14, area: 2 }], 0, 7, 3)).toEqual([0, 2, 0]);
    expect(benchUse([], 0, 7, 2)).toEqual([0, 0]);
  });
});
