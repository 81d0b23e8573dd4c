// Operations that no command asks for, on sheets, rows and columns that are there or not: whatever comes, a workbook is to the
// last bit what its file gives, and each is taken back without a trace.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type Content,
  type Operation,
  readWorkbookFile,
  type SheetDeclaration,
  type Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { runs } from '../runs.ts';
import { BEGINNING, everything, openFarm, shelf, VERSION_2 } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };
const idsOf = (sheet: string): readonly string[] => (BEGINNING.rows[sheet] ?? []).map(({ id }) => id);

/** An own sheet of one row, and one of many. */
function own(id: string, from: 'single' | 'entry'): SheetDeclaration {
  const note = { id: 'note', name: 'Note', type: { type: 'text' }, role: 'entered', formula: '', group: '', note: '' };
  const columns = [note] as SheetDeclaration['columns'];
  return { id, name: `Own ${id}`, question: '', about: '', rows: { from }, columns, checks: [], cautions: [] };
}

const sheet = fc.constantFrom('plantings', 'beds', 'farm', 'weeks', 'bed-weeks', 'trays', 'one', 'many', 'nowhere');
const row = fc.constantFrom(
  'only',
  'ghost',
  'ghost-2',
  'tray-72',
  ...idsOf('plantings').slice(0, 2),
  ...idsOf('beds').slice(0, 1),
);
const column = fc.constantFrom('length', 'planting', 'bed', 'remark', 'season', 'note', 'cells', 'nowhere');
const content = fc.constantFrom<Content>(null, 'a text', 3, { number: 2, unit: 'ft' }, { row: 'ghost' }, Number.NaN, {
  number: Number.POSITIVE_INFINITY,
  unit: 'ft',
});
const at = fc.constantFrom('B', 'V', 'c');
const mark = fc.constantFrom<true | undefined>(true, undefined);

const operation: fc.Arbitrary<Operation> = fc.oneof(
  fc.record({ op: fc.constant('cell' as const), sheet, row, column, content }),
  fc.record({ op: fc.constant('insert row' as const), sheet, row, at, broughtBack: mark }),
  fc.record({ op: fc.constant('remove row' as const), sheet, row }),
  fc.record({ op: fc.constant('move row' as const), sheet, row, at }),
  fc.record({ op: fc.constant('keep row' as const), sheet, row, broughtBack: mark }),
  fc.record({
    op: fc.constant('insert rows' as const),
    sheet,
    columns: fc.constant(['note', 'length']),
    rows: fc.array(fc.record({ row, at, cells: fc.array(content, { minLength: 2, maxLength: 2 }) }), { maxLength: 2 }),
  }),
  fc.record({ op: fc.constant('remove rows' as const), sheet, rows: fc.array(row, { maxLength: 3 }) }),
  fc.record({ op: fc.constant('note' as const), sheet, row, column, note: fc.constantFrom('said', null) }),
  fc.constantFrom<Operation>(
    { op: 'add sheet', sheet: own('one', 'single') },
    { op: 'add sheet', sheet: own('many', 'entry') },
    { op: 'remove sheet', sheet: 'one' },
    { op: 'remove sheet', sheet: 'many' },
    { op: 'template', version: 2, rows: 'follow' },
  ),
);

let count = 0;

function receive(workbook: Workbook, one: Operation): void {
  const head = { id: `t${++count}`, actor: 'bert', time: 1e6 + count, source: 'user', message: MESSAGE } as const;
  workbook.receive({ ...head, operations: [one] });
}

function reopened(workbook: Workbook): Workbook {
  const read = readWorkbookFile(writeWorkbookFile(workbook.data()), shelf(VERSION_2));
  if (!read.ok) throw new Error(read.why);
  return openFarm(read.data);
}

test('any operation is taken back without a trace, and what it does is what the file gives', () => {
  fc.assert(
    fc.property(fc.array(operation, { minLength: 1, maxLength: 8 }), (operations) => {
      const workbook = openFarm();
      for (const one of operations) {
        const start = everything(workbook);
        receive(workbook, one);
        const end = everything(workbook);
        expect(everything(reopened(workbook))).toEqual(end);
        workbook.undo();
        expect(everything(workbook)).toEqual(start);
        workbook.redo();
        expect(everything(workbook)).toEqual(end);
      }
    }),
    { numRuns: runs(60, 10_000) },
  );
});
