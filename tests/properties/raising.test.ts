// Laws of raising on any farm: as many blocks are started as there are places, what the weeks sow is what the plantings sow, the
// bench of a week is what stands on it, and a bed over its length is said.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { runs } from '../runs.ts';
import { errorsOf, type Season, seasonOf } from '../sheets/season.ts';

const CROPS = ['Onion, bulb', 'Lettuce, head', 'Tomato', 'Cabbage', 'Beet'] as const;
const STARTS = ['blocks', 'cells', 'deep tray', 'nursery bed'] as const;

const planting = fc.record({
  crop: fc.constantFrom(...CROPS),
  start: fc.constantFrom(...STARTS),
  bed: fc.integer({ min: 1, max: 3 }),
  feet: fc.integer({ min: 2, max: 60 }),
  inches: fc.integer({ min: 3, max: 20 }),
  seeds: fc.integer({ min: 1, max: 5 }),
  sown: fc.integer({ min: 0, max: 150 }),
  weeks: fc.integer({ min: 2, max: 12 }),
  potted: fc.boolean(),
});

const day = (after: number): string => new Date(Date.UTC(2027, 0, 10 + after)).toISOString().slice(0, 10);

function farm(plantings: readonly (typeof planting extends fc.Arbitrary<infer P> ? P : never)[]): Season {
  return seasonOf(
    {
      Varieties: CROPS.map((crop) => ({ Variety: crop, Crop: crop })),
      Beds: [1, 2, 3].map((n) => ({ Bed: `B${n}`, Length: '50 ft' })),
      Plantings: plantings.map(({ crop, start, bed, feet, inches, seeds, sown, weeks, potted }, k) => ({
        Planting: `P${k}`,
        Variety: crop,
        Start: start,
        Bed: `B${bed}`,
        'Bed length used': `${feet} ft`,
        'In-row spacing': `${inches} in`,
        'Seeds per station': String(seeds),
        Sown: day(sown),
        'Planted out': day(sown + 7 * weeks),
        ...(potted && weeks > 4 ? { 'Pot on into': '50 cells', 'Pot on': day(sown + 21) } : {}),
      })),
    },
    { 'Bench area': '60 ft2' },
  );
}

test('blocks cover the places, weeks sum to plantings, benches to trays, and full beds are said', () => {
  fc.assert(
    fc.property(fc.array(planting, { minLength: 1, maxLength: 8 }), (plantings) => {
      const season = farm(plantings);
      expect(errorsOf(season.book)).toEqual([]);
      const of = (name: string, column: string): number => season.number('Raising', name, column) ?? 0;
      const date = (name: string, column: string): number =>
        Number(season.value('Raising', name, column) ?? Number.NaN);
      const names = plantings.map((_, k) => `P${k}`);
      for (const name of names) {
        const blocks = season.number('Plantings', name, 'Blocks to start');
        if (blocks !== undefined)
          expect(blocks).toBeGreaterThanOrEqual(season.number('Plantings', name, 'Stations') ?? 0);
        const [used, length] = [season.number('Plantings', name, 'Bed in use') ?? 0, 50];
        if (used > length + 0.01) expect(season.says('Plantings', name).length).toBeGreaterThan(0);
      }
      const weeks = [...season.book.rows('Propagation')];
      const read = (row: number, column: string): number => season.book.cell('Propagation', row, column).number ?? 0;
      for (const column of ['Trays', 'Blocks', 'Seeds']) {
        const all = names.reduce((sum, name) => sum + of(name, column), 0);
        expect(weeks.reduce((sum, row) => sum + read(row, column), 0)).toBeCloseTo(all, 6);
      }
      for (const row of weeks) {
        const middle = Number(season.book.value('Propagation', row, 'Middle'));
        const stands = names.reduce((sum, name) => {
          const potted = season.value('Raising', name, 'Pot on') !== null;
          const isOn = date(name, 'On bench from') <= middle && middle < date(name, 'On bench until');
          const area = potted && middle >= date(name, 'Pot on') ? of(name, 'Area potted on') : of(name, 'Area');
          return isOn ? sum + area : sum;
        }, 0);
        expect(read(row, 'Bench used')).toBeCloseTo(stands, 6);
      }
    }),
    { numRuns: runs(3, 60) },
  );
});
