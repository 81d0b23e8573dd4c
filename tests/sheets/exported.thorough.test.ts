// Every sheet of the demo as a CSV file, taken in again unchanged: nothing changes, whatever units and locale it is written in.

import { expect, test } from 'vitest';
import { demoFarm } from '../../demo/farm.ts';
import { parseCsv, writeCsv } from '../../engine/formats/csv.ts';
import {
  cellView,
  exportCsv,
  importCsv,
  message,
  newDocument,
  rows,
  sheetViews,
  Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { writingOf } from '../../ui/browser/store/writing.ts';
import { splitCsv } from '../../ui/csv-splitter.ts';

let ids = 0;
const newId = (): string => `r${++ids}`;

function demo(units: 'us' | 'si', locale: string | null): Workbook {
  const made = newDocument(SEASON, demoFarm, newId);
  if (!made.ok) throw new Error(made.problems.join(' '));
  const templates = { today: () => SEASON, earlier: () => undefined };
  const workbook = Workbook.open(made.data, { newId, now: () => 0, actor: 'a', templates, writings: writingOf });
  if (workbook === undefined) throw new Error('The template is not on the shelf.');
  workbook.do(
    [
      { command: 'set units', units },
      { command: 'set locale', locale },
    ],
    message('type cell'),
  );
  return workbook;
}

test.each([
  ['us', null],
  ['si', 'de-DE'],
] as const)('in units %s and locale %s', (units, locale) => {
  const workbook = demo(units, locale);
  const before = writeWorkbookFile(workbook.data());
  for (const { id, columns } of sheetViews(workbook)) {
    const takesNothing = columns.every(({ role }) => role !== 'entered' && role !== 'default');
    if (takesNothing || rows(workbook, id).length === 0) continue;
    const read = importCsv(workbook, id, exportCsv(workbook, id), splitCsv);
    const counts = read.ok ? { added: read.added, updated: read.updated, unchanged: read.unchanged } : read.why;
    expect(counts, id).toEqual({ added: 0, updated: 0, unchanged: rows(workbook, id).length });
  }
  expect(writeWorkbookFile(workbook.data())).toBe(before);
});

test('a note on one of several jobs of a day comes to that one', () => {
  const workbook = demo('us', null);
  const parsed = parseCsv(exportCsv(workbook, 'tasks'), ',', splitCsv);
  if (!parsed.ok) throw new Error(parsed.why);
  const [head = [], ...jobs] = parsed.records.map(({ fields }) => fields);
  const day = jobs.filter(([due, job]) => due === '2027-02-08' && job === 'Sow');
  expect(day.length).toBeGreaterThan(1);
  const [, second = []] = day;
  const about = second[head.indexOf('Planting job')];
  const noted = second.map((field, i) => (head[i] === 'Note' ? 'by the door' : field));
  const text = writeCsv([head, ...jobs.map((job) => (job === second ? noted : job))]);
  const read = importCsv(workbook, 'tasks', text, splitCsv);
  expect(read).toMatchObject({ ok: true, updated: 1, added: 0 });
  const holding = Array.from(rows(workbook, 'tasks'), (row) => row).filter(
    (row) => cellView(workbook, 'tasks', row, 'note').text === 'by the door',
  );
  expect(holding.map((row) => cellView(workbook, 'tasks', row, 'planting-job').text)).toEqual([about]);
});

test('a file that does not say which of them is meant is told which column says it', () => {
  const workbook = demo('us', null);
  const read = importCsv(workbook, 'tasks', 'Due,Job,Note\r\n2027-02-08,Sow,by the door\r\n', splitCsv);
  expect(read).toMatchObject({
    ok: false,
    why: 'Line 2: Tasks has several rows “8 Feb 2027 / Sow”: add the column Planting job, which says which of them is meant.',
  });
});
