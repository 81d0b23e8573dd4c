// Who changed a cell last, told from all that was noted at once: whenever somebody asks, and however many cells wait to be named.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BEFORE_ALL, isLater, type Stamp, Stamps } from '../../engine/document/stamps.ts';
import { cellThing } from '../../engine/document/things.ts';

const ROWS = ['r1', 'r2', 'r3'];
const COLUMNS = ['length', 'rows'];
const stamps = fc.record({ time: fc.integer({ min: 0, max: 9 }), actor: fc.constantFrom('anna', 'bert', 'cleo') });
const notes = fc.record({ row: fc.constantFrom(...ROWS), column: fc.constantFrom(...COLUMNS), stamp: stamps });

function latest(given: readonly Stamp[]): Stamp {
  return given.reduce((last, one) => (isLater(one, last) ? one : last), BEFORE_ALL);
}

test('of any changes the latest of each cell is known, and who else changed its row since', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(notes, fc.boolean()), { maxLength: 40 }), stamps, (work, since) => {
      const known = new Stamps();
      const noted: { readonly row: string; readonly column: string; readonly stamp: Stamp }[] = [];
      for (const [{ row, column, stamp }, isAsked] of work) {
        known.noteCell({ sheet: 'plantings', row, column }, stamp);
        noted.push({ row, column, stamp });
        if (isAsked) known.of(cellThing('plantings', row, column), { sheet: 'plantings', row });
      }
      for (const row of ROWS) {
        const ofRow = noted.filter((one) => one.row === row);
        for (const column of COLUMNS) {
          const ofCell = ofRow.filter((one) => one.column === column).map(({ stamp }) => stamp);
          expect(known.of(cellThing('plantings', row, column), { sheet: 'plantings', row })).toEqual(latest(ofCell));
        }
        const others = ofRow.map(({ stamp }) => stamp).filter(({ actor }) => actor !== since.actor);
        expect(known.isChangedSince('plantings', row, since)).toBe(others.some((one) => isLater(one, since)));
      }
    }),
  );
});

test('what was never told leaves no trace', () => {
  const known = new Stamps();
  known.noteCell({ sheet: 'beds', row: 'r1', column: 'length' }, { time: Number.NEGATIVE_INFINITY, actor: '' });
  expect(known.of(cellThing('beds', 'r1', 'length'), { sheet: 'beds', row: 'r1' })).toBe(BEFORE_ALL);
});

test('a hundred thousand changed cells are all known', () => {
  const known = new Stamps();
  const stampOf = (at: number): Stamp => ({ time: at, actor: 'anna' });
  for (let at = 0; at < 100_000; at++)
    known.noteCell({ sheet: 'beds', row: `r${at % 40_000}`, column: 'length' }, stampOf(at));
  const wrong = Array.from({ length: 40_000 }, (_, row) => {
    const last = row < 20_000 ? row + 80_000 : row + 40_000;
    const { time } = known.of(cellThing('beds', `r${row}`, 'length'), { sheet: 'beds', row: `r${row}` });
    return time === last ? [] : [row];
  }).flat();
  expect(wrong).toEqual([]);
});
