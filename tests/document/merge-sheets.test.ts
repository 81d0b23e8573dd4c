// Two people where one takes back a sheet or column that the other works in, moves rows beside those that the other moves, or
// takes newer sheets while the other changes what they change: the same on both sides, whoever hears of what first.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Command,
  cellView,
  type DocumentData,
  rowId,
  rows,
  type Transaction,
  type Workbook,
} from '../../engine/index.ts';
import { runs } from '../runs.ts';
import { type Chances, chances, commandFor } from './any-command.ts';
import { BEGINNING, everything, everythingByAmount, openFarm } from './farm.ts';
import { done, hear, MESSAGE, P1, P2, P3, undone } from './two-people.ts';

function isDone(workbook: Workbook, by: Chances, sheet: string | undefined): readonly Transaction[] {
  const command = commandFor(workbook, by);
  if (command === undefined || (sheet !== undefined && !('sheet' in command && command.sheet === sheet))) return [];
  const answer = workbook.do([command], MESSAGE);
  return answer.refused ? [] : [answer.transaction];
}

/** Anna adds, Bert hears of it and works in it; Anna takes it back before or after hearing of that. */
function takenBack(
  adds: Command,
  work: (bert: Workbook) => readonly Transaction[],
  annaLater: boolean,
  again: boolean,
) {
  const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
  hear(bert, [done(anna, adds)]);
  const early = annaLater ? work(bert) : [];
  const ofAnna = [undone(anna)];
  if (again) {
    const redo = anna.redo();
    if (redo !== undefined) ofAnna.push(redo.transaction);
  }
  const ofBert = annaLater ? early : work(bert);
  hear(anna, ofBert);
  hear(bert, ofAnna);
  return { anna, bert };
}

const ADD_SHEET: Command = { command: 'add sheet', name: 'Hens', about: '', rows: { from: 'entry' } };
const ADD_COLUMN: Command = { command: 'add column', sheet: 'plantings', name: 'Mine', type: { type: 'text' } };

test('a sheet whose adding is taken back while another works in it: alike on both sides', () => {
  const some = fc.array(chances, { minLength: 1, maxLength: 5 });
  fc.assert(
    fc.property(some, fc.boolean(), fc.boolean(), (sequence, annaLater, again) => {
      const work = (bert: Workbook): readonly Transaction[] => {
        const at = bert.document.program.sheets.findIndex(({ name }) => name === 'Hens');
        const id = bert.document.program.sheets[at]?.id;
        return sequence.flatMap((by) => isDone(bert, { ...by, sheet: at }, id));
      };
      const { anna, bert } = takenBack(ADD_SHEET, work, annaLater, again);
      expect(everythingByAmount(anna)).toEqual(everythingByAmount(bert));
      expect(everything(openFarm(anna.data()))).toEqual(everything(anna));
    }),
    { numRuns: runs(60, 5000) },
  );
});

test('a column whose adding is taken back while another works in its sheet: alike on both sides', () => {
  const some = fc.array(chances, { minLength: 1, maxLength: 5 });
  fc.assert(
    fc.property(some, fc.boolean(), fc.boolean(), (sequence, annaLater, again) => {
      const work = (bert: Workbook): readonly Transaction[] => {
        const sheets = bert.document.program.sheets;
        const at = sheets.findIndex(({ id }) => id === 'plantings');
        const columns = sheets[at]?.columns ?? [];
        const column = columns.findIndex(({ name }) => name === 'Mine');
        return sequence.flatMap((by) => isDone(bert, { ...by, sheet: at, column }, 'plantings'));
      };
      const { anna, bert } = takenBack(ADD_COLUMN, work, annaLater, again);
      expect(everythingByAmount(anna)).toEqual(everythingByAmount(bert));
    }),
    { numRuns: runs(60, 5000) },
  );
});

describe('two people who move rows', () => {
  const names = (workbook: Workbook): readonly string[] =>
    Array.from(rows(workbook, 'plantings'), (slot) => cellView(workbook, 'plantings', slot, 'planting').text);
  const move = (moved: readonly string[], before?: string): Command => ({
    command: 'move rows',
    sheet: 'plantings',
    rows: moved,
    ...(before === undefined ? {} : { before }),
  });

  test.each<readonly [string, Command, Command, readonly string[]]>([
    ['each the neighbour of the other’s', move([P1]), move([P2], P1), ['P2', 'P3', 'P1']],
    ['to one place', move([P1]), move([P2]), ['P3', 'P1', 'P2']],
    ['one row to two places: the later', move([P1], P3), move([P1]), ['P2', 'P3', 'P1']],
    ['each before the other’s', move([P2], P1), move([P1], P3), ['P2', 'P1', 'P3']],
  ])('%s', (_, first, second, wanted) => {
    for (const annaFirst of [true, false]) {
      const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
      const ofAnna = annaFirst ? [done(anna, first)] : [];
      const ofBert = [done(bert, annaFirst ? second : first)];
      if (!annaFirst) ofAnna.push(done(anna, second));
      hear(anna, ofBert);
      hear(bert, ofAnna);
      expect(names(anna).toSorted()).toEqual(['P1', 'P2', 'P3']);
      expect(everything(anna)).toEqual(everything(bert));
      expect([annaFirst, names(anna)]).toEqual([annaFirst, wanted]);
    }
  });
});

test.each(['plantings', 'trays'])(
  'a row of %s that one takes out and back while another moves it: alike on both sides',
  (sheet) => {
    for (const movedLast of [true, false]) {
      const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
      const row = sheet === 'plantings' ? P1 : 'tray-72';
      const move: Command = { command: 'move rows', sheet, rows: [row] };
      const early = movedLast ? [] : [done(bert, move)];
      const ofAnna = [done(anna, { command: 'remove rows', sheet, rows: [row] }), undone(anna)];
      const ofBert = movedLast ? [done(bert, move)] : early;
      // A copy that was saved and opened before she hears of it.
      const opened = openFarm(anna.data('changes'), 'anna');
      hear(opened, ofBert);
      hear(anna, ofBert);
      hear(bert, ofAnna);
      expect(everything(anna)).toEqual(everything(bert));
      expect(everything(opened)).toEqual(everything(bert));
      const shown = Array.from(rows(anna, sheet), (slot) => rowId(anna, sheet, slot));
      expect([movedLast, shown.at(movedLast ? -1 : 0)]).toEqual([movedLast, row]);
      expect(everything(openFarm(anna.data('changes')))).toEqual(everything(anna));
    }
  },
);

/** Any work, the newer or older template among it. */
function someWork(workbook: Workbook, sequence: readonly Chances[]): readonly Transaction[] {
  return sequence.flatMap((by) => isDone(workbook, by, undefined));
}

const UPGRADE: Command = { command: 'use template', version: 2 };

test('newer sheets that one takes, and takes back, while the other changes anything: alike on both sides', () => {
  const some = fc.array(chances, { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(some, some, fc.nat(3), (before, sequence, how) => {
      const start = openFarm();
      someWork(start, before);
      if (start.document.template.version !== 1) return;
      const data: DocumentData = start.data();
      const [anna, bert] = [openFarm(data, 'anna'), openFarm(data, 'bert')];
      const early = how % 2 === 0 ? someWork(bert, sequence) : [];
      const ofAnna = [done(anna, UPGRADE)];
      if (how > 1) ofAnna.push(undone(anna));
      const ofBert = how % 2 === 0 ? early : someWork(bert, sequence);
      hear(anna, ofBert);
      hear(bert, ofAnna);
      expect(everythingByAmount(anna)).toEqual(everythingByAmount(bert));
      expect(everything(openFarm(anna.data()))).toEqual(everything(anna));
    }),
    { numRuns: runs(60, 5000) },
  );
});
