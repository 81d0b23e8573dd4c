// Properties of recalculation under random work: what edits leave behind is, to the last bit, what a fresh workbook made
// from the same entries works out; undo leads back to where one came from; the order of independent edits doesn't matter.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Edit, opened } from '../book.ts';
import { runs } from '../runs.ts';
import { SMALL } from '../workbook/small.ts';
import { acts, perform } from './acts.ts';
import { snapshot } from './snapshot.ts';

describe('after any sequence of 200 random edits, inserts, deletes, formula changes, undos and redos', () => {
  test('the workbook equals one worked out afresh from its entries, bit for bit', () => {
    fc.assert(
      fc.property(fc.array(acts, { minLength: 200, maxLength: 200 }), (sequence) => {
        const workbook = opened(SMALL);
        sequence.forEach((act, step) => {
          perform(workbook, act);
          if (step % 50 === 49) expect(snapshot(workbook)).toEqual(snapshot(workbook.reopened()));
        });
      }),
      { numRuns: runs(12, 500) },
    );
  });

  test('undoing everything leads back to the start, and redoing it to the end', () => {
    fc.assert(
      fc.property(fc.array(acts, { minLength: 60, maxLength: 60 }), (sequence) => {
        const workbook = opened(SMALL);
        const start = snapshot(workbook);
        for (const act of sequence) if (act.act === 'edit') perform(workbook, act);
        const end = snapshot(workbook);
        while (workbook.undo() !== undefined);
        expect(snapshot(workbook)).toEqual(start);
        while (workbook.redo() !== undefined);
        expect(snapshot(workbook)).toEqual(end);
      }),
      { numRuns: runs(15, 500) },
    );
  });
});

test('a refused transaction leaves nothing behind', () => {
  fc.assert(
    fc.property(fc.array(acts, { maxLength: 8 }), (sequence) => {
      const workbook = opened(SMALL);
      const before = snapshot(workbook);
      const edits = sequence.flatMap((act) => (act.act === 'edit' ? act.edit(workbook) : []));
      const bad: Edit = { edit: 'cell', table: 'Plantings', row: 0, column: 'Length', entry: 'banana' };
      expect(workbook.edit([...edits, bad], 'Bad').refused).toBe(true);
      expect(snapshot(workbook)).toEqual(before);
      expect(workbook.undoState()).toEqual({ undo: undefined, redo: undefined });
    }),
    { numRuns: runs(50, 1000) },
  );
});

test('the order of edits to different cells does not matter', () => {
  const cells: readonly Edit[] = [
    { edit: 'cell', table: 'Plantings', row: 0, column: 'Spacing', entry: '6 in' },
    { edit: 'cell', table: 'Plantings', row: 1, column: 'Variety', entry: 'Amber' },
    { edit: 'cell', table: 'Plantings', row: 2, column: 'Length', entry: '7 m' },
    { edit: 'cell', table: 'Varieties', row: 0, column: 'Germination', entry: '61%' },
    { edit: 'cell', table: 'Beds', row: 0, column: 'Length', entry: '33 ft' },
    { edit: 'cell', table: 'Farm', row: 0, column: 'Spare seed', entry: '17%' },
    { edit: 'cell', table: 'Plantings', row: 0, column: 'Stations', entry: '41' },
  ];
  const inOrder = opened(SMALL);
  for (const edit of cells) inOrder.edit([edit], 'One');
  const wanted = snapshot(inOrder);
  fc.assert(
    fc.property(fc.shuffledSubarray([...cells], { minLength: cells.length }), (shuffled) => {
      const workbook = opened(SMALL);
      for (const edit of shuffled) workbook.edit([edit], 'One');
      expect(snapshot(workbook)).toEqual(wanted);
    }),
    { numRuns: runs(50, 1000) },
  );
});
