// The benchmark's floor, a program written by hand, works out the same season as the template's formulas: before and after each kind of
// edit. What it is timed against is worth something only so long as this holds.

import { expect, test } from 'vitest';
import { copiedBook } from './season/copies.ts';
import { EDITS, edit } from './season/edits.ts';
import { differences } from './season/floor/agree.ts';
import { seasonFloor } from './season/floor/floor.ts';

test('the floor and the season of copied plantings hold the same figures, after edits too', () => {
  const { workbook } = copiedBook(44);
  const floor = seasonFloor(workbook);
  floor.all();
  expect(differences(workbook, floor)).toEqual([]);
  for (const kind of EDITS) {
    for (const { command, onFloor } of kind.edits(workbook, kind.name === 'climate edit' ? 2 : 20)) {
      edit(workbook, command);
      onFloor(floor);
    }
    expect(differences(workbook, floor), kind.name).toEqual([]);
  }
  const yields = floor.plantings.get('marketable-yield');
  if (yields !== undefined) yields[3] = (yields[3] ?? 0) * (1 + 1e-6);
  expect(differences(workbook, floor)).toEqual([expect.stringContaining('plantings/marketable-yield in 1 rows')]);
});
