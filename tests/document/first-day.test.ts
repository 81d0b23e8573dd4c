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
  const sheets = workbook.document.program.sheets
    .filter(({ schema }) => !['entry', 'single'].includes(schema.rows.from))
    .map(({ id }) => id);
  expect(sheets.length).toBeGreaterThan(20);
  run(...sheets.map((sheet): Command => ({ command: 'add column', sheet, name: 'My remark', type: { type: 'text' } })));
  const columns = new Map(
    sheets.map((sheet) => {
      const column = workbook.document.program.sheet(sheet)?.columns.find(({ name }) => name === 'My remark');
      return [sheet, column?.id ?? ''];
    }),
  );
  run(
    ...sheets.flatMap((sheet) => {
      const there = [...rows(workbook, sheet)];
      const some = there.filter((_, at) => at % Math.ceil(there.length / 5) === 1);
      return some.map((slot): Command => {
        const row = rowId(workbook, sheet, slot);
        return { command: 'set cell', sheet, row, column: columns.get(sheet) ?? '', entry: `of ${row}` };
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
  expect(before.length).toBeGreaterThan(80);
  // Three days later, in the year before, and back.
  for (const day of ['2027-01-04', '2026-12-25', '2027-01-01']) {
    run({ command: 'set cell', sheet: 'farm', row: 'only', column: 'season-starts', entry: day });
    const now = remarks(workbook);
    expect(now.filter((remark) => !/^[^/]+\/(.+): of \1$/.test(remark))).toEqual([]);
    if (day !== '2027-01-01') expect(now.toSorted()).toEqual(remarks(opened(workbook.data())).toSorted());
  }
  expect(remarks(workbook)).toEqual(before);
});
