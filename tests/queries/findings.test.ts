// The list of what needs a look, kept as changes come, against one made afresh.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoFarm } from '../../demo/farm.ts';
import { checksOf, Findings, rowId, rowNamed, rows, tryCheck } from '../../engine/index.ts';
import { SEASON } from '../../sheets-templates/index.ts';
import { started } from '../book.ts';
import { chances, commandFor } from '../document/any-command.ts';
import { openFarm } from '../document/farm.ts';
import { runs } from '../runs.ts';

const MESSAGE = { code: 'work', parts: {} };

test('a list that is kept is the same as one made afresh, whatever is done in between', () => {
  fc.assert(
    fc.property(fc.array(chances, { minLength: 5, maxLength: 30 }), (sequence) => {
      const workbook = openFarm();
      const kept = new Findings(workbook);
      for (const by of sequence) {
        const command = commandFor(workbook, by);
        if (command !== undefined) workbook.do([command], MESSAGE);
        if (by.value % 5 === 0) workbook.undo();
        if (by.value % 3 !== 0) expect(kept.all()).toEqual(new Findings(workbook).all());
      }
      expect(kept.all()).toEqual(new Findings(workbook).all());
    }),
    { numRuns: runs(30, 2000) },
  );
});

test('rows are named as they are now: a new name, another place', () => {
  const opened = started(SEASON, demoFarm);
  if (!opened.ok) throw new Error(opened.problems.join(' '));
  const { workbook } = opened.workbook;
  const kept = new Findings(workbook);
  const named = (sheet: string): readonly string[] =>
    kept.all().flatMap((one) => (one.sheet === sheet ? one.rowName : []));
  expect(named('plantings')).toContain('Basil');
  const row = rowId(workbook, 'plantings', rowNamed(workbook, 'plantings', 'Basil') ?? -1);
  workbook.do([{ command: 'set cell', sheet: 'plantings', row, column: 'planting', entry: 'Pots' }], MESSAGE);
  expect(named('plantings')).toContain('Pots');
  expect(named('plantings')).not.toContain('Basil');
  const places = named('packs').map((name) => Number(name.replace('row ', '')));
  expect(places.length).toBeGreaterThan(0);
  const [first] = rows(workbook, 'packs');
  workbook.do([{ command: 'remove rows', sheet: 'packs', rows: [rowId(workbook, 'packs', first ?? -1)] }], MESSAGE);
  expect(named('packs')).toEqual(places.map((place) => `row ${place - 1}`));
});

test('a condition is no check: it is told how it becomes one, and what is told is one', () => {
  const workbook = openFarm();
  const says = (text: string): string => {
    const tried = tryCheck(workbook, 'beds', text);
    return tried.ok ? tried.inferred : tried.diagnostic.why;
  };
  const why = 'This gives yes or no; a check gives the sentence to be said: write IF([Length] < 20 ft; "...").';
  expect(says('[Length] < 20 ft')).toBe(why);
  expect(says('IF([Length] < 20 ft; "...")')).toBe('text');
  expect(says('[Lenght] < 20 ft')).toContain('Length');
  // One that was kept before, or whose column is another now.
  const check = { id: 'own', name: 'Short', level: 'warning', column: 'length', says: '[Length] < 20 ft' } as const;
  workbook.do([{ command: 'set check', sheet: 'beds', check }], MESSAGE);
  expect(checksOf(workbook, 'beds').find(({ id }) => id === 'own')).toEqual({ ...check, why });
});
