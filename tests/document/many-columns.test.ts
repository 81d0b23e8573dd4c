// Columns and sheets of one's own that come together: they are compiled once, and all that is refused, kept and shown is what it
// would be had the program been in line before each of them.

import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { type Command, Workbook } from '../../engine/index.ts';
import { runs } from '../runs.ts';
import { BEGINNING, everything, shelf, VERSION_2 } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };

/** Two of these give the same ids. */
function counted(): Workbook {
  let count = 0;
  const workbook = Workbook.open(BEGINNING, {
    newId: () => `own-${++count}`,
    now: () => 1,
    actor: 'anna',
    templates: shelf(VERSION_2),
  });
  if (workbook === undefined) throw new Error('its template is not known');
  return workbook;
}

const NAMES = ['First', 'Second', 'Third', 'Length', 'first'];
const FORMULAS = [
  '[Length] * 2',
  '[First] + [Length]',
  '[First] * 2',
  '[Second] & "x"',
  '[Third]',
  'SUM(Plantings[First])',
  'COUNTIFS(Plantings[Second]; [Second])',
  '[Bed].[First]',
  '[Bed]',
  "SUM('Own beds'[Length])",
  'ROWS(Owned)',
  '[Length] +',
];

const name = fc.constantFrom(...NAMES);
const sheet = fc.constantFrom('plantings', 'beds', 'weeks', 'nowhere', 'owned');
const formula = fc.constantFrom(...FORMULAS);
// Where ids are counted, the first of a transaction is its own.
const column = fc.nat({ max: 5 }).map((nth) => `own-${nth + 2}`);

const command: fc.Arbitrary<Command> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ command: fc.constant('add formula' as const), sheet, name, formula }) },
  {
    weight: 2,
    arbitrary: fc.record({
      command: fc.constant('add column' as const),
      sheet,
      name,
      type: fc.constantFrom(
        { type: 'text' } as const,
        { type: 'number', unit: { us: 'ft', si: 'm' } } as const,
        { type: 'link', sheet: 'beds' } as const,
        { type: 'link', sheet: 'owned' } as const,
      ),
    }),
  },
  fc.constantFrom<Command>(
    {
      command: 'add sheet',
      name: 'Own beds',
      about: '',
      rows: { from: 'each', sheet: 'beds', as: { id: 'bed', name: 'Bed' }, where: '' },
    },
    { command: 'add sheet', name: 'Owned', about: '', rows: { from: 'entry' } },
    {
      command: 'put sheet',
      sheet: {
        id: 'owned',
        name: 'Owned',
        question: '',
        about: '',
        rows: { from: 'entry' },
        key: 'what',
        columns: [
          { id: 'what', name: 'What', type: { type: 'text' }, group: '', note: '', role: 'entered', formula: '' },
          {
            id: 'whole',
            name: 'Whole',
            type: { type: 'text' },
            group: '',
            note: '',
            role: 'computed',
            formula: 'SUM(Plantings[First])',
            inferred: true,
          },
        ],
        checks: [],
        cautions: [],
      },
    },
  ),
  fc.record({ command: fc.constant('rename column' as const), sheet, column, name }),
  fc.record({ command: fc.constant('set formula' as const), sheet, column, formula }),
  fc.record({ command: fc.constant('remove column' as const), sheet, column }),
);

/** Changes nothing, and is carried out on a program that is in line with all before it. */
const IN_LINE: Command = { command: 'set title', title: BEGINNING.title };

test('what comes together is refused, kept and shown as when each comes into a program that has the others', () => {
  fc.assert(
    fc.property(fc.array(command, { minLength: 1, maxLength: 8 }), (commands) => {
      const [together, inTurn] = [counted(), counted()];
      // All but those that are refused, so that a refusal does not hide what comes behind it.
      let wished = commands;
      for (;;) {
        const one = together.do(wished, MESSAGE);
        const other = inTurn.do(
          wished.flatMap((each) => [each, IN_LINE]),
          MESSAGE,
        );
        expect(everything(together)).toEqual(everything(inTurn));
        if (!one.refused) {
          expect(other).toMatchObject({ refused: false, transaction: { operations: one.transaction.operations } });
          break;
        }
        expect(other).toEqual({ ...one, index: one.index * 2 });
        wished = wished.toSpliced(one.index, 1);
      }
      together.undo();
      inTurn.undo();
      expect(everything(together)).toEqual(everything(inTurn));
    }),
    { numRuns: runs(60, 3000) },
  );
});

test('a hundred columns are compiled once', () => {
  const workbook = counted();
  const taken = vi.spyOn(workbook.document, 'use');
  const done = workbook.do(
    Array.from({ length: 100 }, (_, i): Command => {
      const formula = i === 0 ? '[Length] * 2' : `[Own ${i - 1}] + [Length]`;
      return { command: 'add formula', sheet: 'plantings', name: `Own ${i}`, formula };
    }),
    MESSAGE,
  );
  expect(done.refused).toBe(false);
  expect(taken).toHaveBeenCalledTimes(1);
  expect(workbook.document.program.sheet('plantings')?.columns.at(-1)).toMatchObject({
    name: 'Own 99',
    type: { kind: 'number' },
  });
});
