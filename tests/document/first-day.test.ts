// What is typed on rows that follow from weeks, days and months, directly or through others, when the season's first day moves: it
// stays with what its row stands for, and is gone, and kept aside, where that is not there. Checked against a workbook opened afresh.

import { expect, test } from 'vitest';
import { demoFarm } from '../../demo/farm.ts';
import { type Command, type DocumentData, newDocument, rowId, rows, Workbook } from '../../engine/index.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { testWorld } from '../book.ts';

const MESSAGE = { code: 'work', parts: {} };

function opened(data: DocumentData): Workbook {
  const workbook = Workbook.open(data, testWorld(SEASON));
  if (workbook === undefined) throw new Error('The season did not open.');
  return workbook;
}

test('stays with its day, whichever sheets its row went through', () => {
  let made = 0;
  const begun = newDocument(SEASON, demoFarm, () => `r${++made}`);
  if (!begun.ok) throw new Error('The demo did not begin.');
  const workbook = opened(begun.data);
  const run = (...commands: readonly Command[]): void => {
    const done = workbook.do(commands, MESSAGE);
    if (done.refused) throw new Error(done.why);
  };
  // A text typed over what one column of each such sheet gives.
  const columns = new Map(
    workbook.document.program.sheets
      .filter(({ schema }) => !['entry', 'single'].includes(schema.rows.from))
      .flatMap(({ id, columns }) => {
        const text = columns.find(({ role, type }) => role === 'computed' && type?.kind === 'text');
        return text === undefined ? [] : [[id, text.id] as const];
      }),
  );
  expect(columns.size).toBeGreaterThan(20);
  run(
    ...[...columns].flatMap(([sheet, column]) => {
      const there = [...rows(workbook, sheet)];
      const some = there.filter((_, at) => at % Math.ceil(there.length / 2) === 1);
      return some.map((slot): Command => {
        const row = rowId(workbook, sheet, slot);
        return { command: 'set cell', sheet, row, column, entry: `of ${row}` };
      });
    }),
  );
  const remarks = (of: Workbook): string[] =>
    [...columns].flatMap(([sheet, column]) =>
      [...rows(of, sheet)].flatMap((slot) => {
        const found = of.document.program.sheet(sheet)?.column(column);
        const typed = found === undefined ? null : of.document.typedAt(found, slot);
        return typed === null ? [] : [`${sheet}/${rowId(of, sheet, slot)}: ${String(typed)}`];
      }),
    );
  const before = remarks(workbook);
  expect(before.length).toBeGreaterThan(40);
  const begin = (entry: string): void =>
    run({ command: 'set cell', sheet: 'farm', row: 'only', column: 'season-starts', entry });
  begin('2027-01-04');
  const now = remarks(workbook);
  expect(now.filter((remark) => !/^[^/]+\/(.+): of \1$/.test(remark))).toEqual([]);
  expect(now.length).toBeLessThan(before.length);
  expect(now.toSorted()).toEqual(remarks(opened(workbook.data())).toSorted());
  begin('2027-01-01');
  expect(remarks(workbook)).toEqual(before);
});
