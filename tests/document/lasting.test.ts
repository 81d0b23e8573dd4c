// Work that once was lost or made a file unopenable: each stays, or is kept aside and said.

import { beforeEach, describe, expect, test } from 'vitest';
import {
  type Command,
  Findings,
  readWorkbookFile,
  type Template,
  Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { BEGINNING, everything, openFarm, shelf, VERSION_1, VERSION_2, world } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };
const [P1 = ''] = (BEGINNING.rows.plantings ?? []).map(({ id }) => id);

let workbook: Workbook;
beforeEach(() => {
  workbook = openFarm();
});

function run(...commands: readonly Command[]): readonly string[] {
  const done = workbook.do(commands, MESSAGE);
  if (done.refused) throw new Error(done.why);
  return done.transaction.operations.flatMap((one) => (one.op === 'add column' ? [one.column.id] : []));
}

function reopened(today: Template = VERSION_2): Workbook {
  const read = readWorkbookFile(writeWorkbookFile(workbook.data()), shelf(today));
  if (!read.ok) throw new Error(read.why);
  const opened = Workbook.open(read.data, world('anna', today));
  if (opened === undefined) throw new Error('no template');
  return opened;
}

const says = (of: Workbook): readonly string[] => new Findings(of).all().map((finding) => finding.says);

test('a typed column of one’s own on rows without names', () => {
  const [column = ''] = run({ command: 'add column', sheet: 'jobs', name: 'Done', type: { type: 'date' } });
  const slot = 0;
  const row = workbook.document.rowIdOf('jobs', slot) ?? '';
  run({ command: 'set cell', sheet: 'jobs', row, column, entry: '2027-02-01' });
  expect(everything(reopened())).toEqual(everything(workbook));
});

describe('a cell typed over a formula that then gives another kind of value', () => {
  test('is kept aside and said, and comes back with the formula', () => {
    const add: Command = { command: 'add formula', sheet: 'plantings', name: 'Own', formula: '[Length] * 2' };
    const [column = ''] = run(add);
    run({ command: 'set cell', sheet: 'plantings', row: P1, column, entry: '77 ft' });
    run({ command: 'set formula', sheet: 'plantings', column, formula: '3 lb' });
    const found = workbook.document.program.sheet('plantings')?.column(column);
    expect(found === undefined ? '' : workbook.document.isTyped(found, 0)).toBe(false);
    expect(says(workbook)).toContainEqual(expect.stringMatching(/77 ft is kept aside/));
    expect(says(reopened())).toContainEqual(expect.stringMatching(/77 ft is kept aside/));
    run({ command: 'set formula', sheet: 'plantings', column, formula: 'DATE(2027; 1; 1)' });
    expect(says(reopened())).toContainEqual(expect.stringMatching(/77 ft is kept aside/));
    run({ command: 'set formula', sheet: 'plantings', column, formula: '[Length] * 3' });
    expect(workbook.document.contentOf('plantings', P1, column)).toEqual({ number: 77, unit: 'ft' });
    expect(everything(reopened())).toEqual(everything(workbook));
  });
});

test('a bad cell flags its row, and the rest of the file opens', () => {
  const text = writeWorkbookFile(workbook.data()).replace('[25, "ft", true]', '[25, "fortnights"]');
  const read = readWorkbookFile(text, shelf(VERSION_2));
  if (!read.ok) throw new Error(read.why);
  workbook = openFarm(read.data);
  expect(new Findings(workbook).all().map((one) => [one.rowName, one.columnName, one.says])).toContainEqual([
    'P2',
    'Length',
    expect.stringMatching(/^25 fortnights is kept aside/),
  ]);
  expect(everything(reopened())).toEqual(everything(workbook));
});

test.each([[1], [2]])(
  'what was said of a row comes back with it, also after the workbook was opened anew (rows: %i)',
  (count) => {
    run(
      { command: 'set cell', sheet: 'plantings', row: P1, column: 'length', entry: '20..30..35 ft' },
      { command: 'set note', sheet: 'plantings', row: P1, column: 'length', note: 'by the hedge' },
    );
    const before = everything(workbook);
    const gone = (BEGINNING.rows.plantings ?? []).slice(0, count).map(({ id }) => id);
    run({ command: 'remove rows', sheet: 'plantings', rows: gone });
    expect(everything(workbook).file).not.toContain('hedge');
    const { history } = workbook;
    const read = readWorkbookFile(writeWorkbookFile(workbook.data()), shelf(VERSION_2));
    if (!read.ok) throw new Error(read.why);
    const again = openFarm(read.data, 'anna', JSON.parse(JSON.stringify(history)));
    for (const one of [workbook, again]) {
      one.undo();
      expect(everything(one)).toEqual(before);
      one.redo();
      expect(everything(one).file).not.toContain('hedge');
      one.undo();
      expect(everything(one)).toEqual(before);
    }
  },
);

describe('a template that was improved', () => {
  test('reaches an old file: new columns, names and formulas are there, and everything typed stays', () => {
    run(
      { command: 'set cell', sheet: 'plantings', row: P1, column: 'length', entry: '41 ft' },
      { command: 'set formula', sheet: 'beds', column: 'free', formula: '[Length] - [Used] - 1 ft' },
      { command: 'set cell', sheet: 'trays', row: 'tray-128', column: 'depth', entry: '3 in' },
      { command: 'add formula', sheet: 'plantings', name: 'Own', formula: '[Spacing] * 2' },
    );
    const before = workbook.document.contentOf('plantings', P1, 'length');
    run({ command: 'use template', version: 2 });
    const { program } = workbook.document;
    expect(program.sheet('beds')?.name).toBe('Garden beds');
    expect(program.sheet('plantings')?.column('spacing')?.name).toBe('In-row spacing');
    expect(program.sheet('plantings')?.column('lost')).toBeDefined();
    expect(workbook.document.contentOf('plantings', P1, 'length')).toEqual(before);
    // Mended: one station more. The person's own formulas stay theirs and follow the new names.
    const stations = program.sheet('plantings')?.column('stations');
    expect(stations?.diagnostic).toBe(undefined);
    expect(program.schema.own.beds?.columns?.free?.formula).toBe('[#beds/length] - [#beds/used] - 1 ft');
    expect(program.sheets.flatMap(({ columns }) => columns.flatMap(({ diagnostic }) => diagnostic ?? []))).toEqual([]);
    // The figures follow the template but where the person had changed them; what has no column more is kept and said.
    expect(workbook.document.contentOf('trays', 'tray-128', 'cells')).toBe(120);
    expect(says(workbook)).toContainEqual(
      'Trays has a column “depth” no more. What was typed there is kept aside: 3 in.',
    );
    expect(everything(reopened())).toEqual(everything(workbook));
    workbook.undo();
    expect(program.sheet('beds')?.name).toBe('Garden beds');
    expect(workbook.document.contentOf('trays', 'tray-128', 'depth')).toEqual({ number: 3, unit: 'in' });
  });

  test('leaves a workbook as it was until its owner takes it', () => {
    const before = everything(workbook);
    expect(everything(reopened(VERSION_2))).toEqual(before);
    expect(everything(reopened(VERSION_1))).toEqual(before);
  });
});
