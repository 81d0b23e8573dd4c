// Who changed what last is kept in files: a copy that was saved and opened again between two people's changes comes to the
// same as one that stayed open, whoever's change arrives first.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changedData, LATEST, stampsIn } from '../../engine/document/changed-data.ts';
import { BEFORE_ALL, Stamps } from '../../engine/document/stamps.ts';
import { cellThing, rowPlaceThing } from '../../engine/document/things.ts';
import {
  type DocumentData,
  readWorkbookFile,
  type Transaction,
  type Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { runs } from '../runs.ts';
import { type Chances, chances, commandFor } from './any-command.ts';
import { BEGINNING, everything, everythingByAmount, openFarm, shelf, VERSION_2 } from './farm.ts';
import { cell, done, MESSAGE, P1, P2, P3, remote } from './two-people.ts';

/** What a file of it gives, which written again is the same file. */
function saved(workbook: Workbook): DocumentData {
  const text = writeWorkbookFile(workbook.data('changes'));
  const read = readWorkbookFile(text, shelf(VERSION_2));
  if (!read.ok) throw new Error(read.why);
  expect(read.notes).toEqual([]);
  expect(writeWorkbookFile(read.data)).toBe(text);
  return read.data;
}

/** Saved, and opened by the same person again. */
function reopened(workbook: Workbook, actor: string): Workbook {
  return openFarm(saved(workbook), actor);
}

describe('once a copy was saved and opened', () => {
  test.each([
    ['an earlier change of a cell that arrives late gives way', 'bert', '10 ft', [10, 'ft']],
    ['a later one stands', 'anna', '12 ft', [12, 'ft']],
  ])('%s', (_, first, entry, [number, unit]) => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const inOrder = first === 'anna' ? [anna, bert] : [bert, anna];
    const entryOf = (one: Workbook): string => (one === anna ? '10 ft' : '12 ft');
    const [early, late] = inOrder.map((one) => done(one, cell(P1, 'length', entryOf(one))));
    if (early === undefined || late === undefined) throw new Error('both changed it');
    expect(entryOf(inOrder[1] ?? anna)).toBe(entry);
    const copies = inOrder.map((one) => reopened(one, one === anna ? 'anna' : 'bert'));
    for (const [i, one] of copies.entries()) {
      one.receive(remote(i === 0 ? late : early));
      expect(one.document.contentOf('plantings', P1, 'length')).toEqual({ number, unit });
    }
  });

  test('a shipped row that one took out and another changes afterwards is back, marked', () => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const removed = done(anna, { command: 'remove rows', sheet: 'trays', rows: ['tray-72'] });
    const changed = done(bert, { command: 'set cell', sheet: 'trays', row: 'tray-72', column: 'cells', entry: '70' });
    const again = reopened(anna, 'anna');
    again.receive(remote(changed));
    bert.receive(remote(removed));
    expect(everything(again)).toEqual(everything(bert));
    expect(everything(again).file).toContain('"broughtBack": ["tray-72"]');
  });

  test('a row that one moved stands where the later of two moves put it', () => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const early = done(bert, { command: 'move rows', sheet: 'plantings', rows: [P1], before: P3 });
    const late = done(anna, { command: 'move rows', sheet: 'plantings', rows: [P1] });
    const again = reopened(anna, 'anna');
    again.receive(remote(early));
    bert.receive(remote(late));
    expect(everything(again)).toEqual(everything(bert));
  });

  test('what a person does then counts as later than all before, where the clock was set back too', () => {
    const ahead = { ...done(openFarm(BEGINNING, 'bert'), cell(P2, 'length', '9 ft')), time: 5_000_000 };
    const anna = openFarm(BEGINNING, 'anna');
    anna.receive(remote(ahead));
    expect(done(reopened(anna, 'anna'), cell(P2, 'length', '8 ft')).time).toBeGreaterThan(5_000_000);
  });

  test('its file says nothing of when new rows came, but for the time of the latest change', () => {
    const workbook = openFarm();
    const rows = Array.from({ length: 500 }, (_, i) => ({ row: `new-${i}`, cells: [`New ${i}`] }));
    done(workbook, { command: 'put rows', sheet: 'plantings', columns: ['planting'], rows });
    done(workbook, { command: 'insert row', sheet: 'plantings', entries: { planting: 'One more' } });
    expect(workbook.data('changes').changed).toMatchObject({ by: [], cells: {}, others: [] });
    const text = writeWorkbookFile(workbook.data('changes'));
    expect(text.length - writeWorkbookFile(workbook.data()).length).toBeLessThan(120);
  });
});

test('a workbook that nobody changed says nothing of changes', () => {
  expect(openFarm().data('changes')).not.toHaveProperty('changed');
});

test('whatever was changed by whomever is known again from what is kept of it', () => {
  const stamp = fc.record({ time: fc.integer({ min: 0, max: LATEST }), actor: fc.string({ minLength: 1 }) });
  const place = fc.record({
    sheet: fc.constantFrom('a', 'b c'),
    row: fc.stringMatching(/^[a-z(),:~.]{1,5}$/),
    column: fc.constantFrom('x', 'y', 'z'),
  });
  fc.assert(
    fc.property(fc.array(fc.tuple(place, fc.boolean(), stamp)), (changes) => {
      const stamps = new Stamps();
      const things = changes.map(([{ sheet, row, column }, isCell, at]) => {
        const thing = isCell ? cellThing(sheet, row, column) : rowPlaceThing(sheet, row);
        stamps.noteKept(thing, at);
        return { thing, sheet, row };
      });
      const kept = changedData(stamps, () => true);
      const again = stampsIn(JSON.parse(JSON.stringify(kept)) as typeof kept);
      for (const { thing, sheet, row } of things)
        expect(again.of(thing, { sheet, row })).toEqual(stamps.of(thing, { sheet, row }));
      expect(changedData(again, () => true)).toEqual(kept);
      expect(again.of(cellThing('a', 'nowhere', 'x'))).toBe(BEFORE_ALL);
    }),
  );
});

/** But for rows that go: a file forgets those, and what waited for them. */
function work(workbook: Workbook, by: Chances): readonly Transaction[] {
  const command = commandFor(workbook, by);
  if (command === undefined || command.command === 'remove rows') return [];
  const answer = workbook.do([command], MESSAGE);
  return answer.refused ? [] : [answer.transaction];
}

test('any work of two people comes together alike, whatever was saved and opened in between', () => {
  // Of few rows and columns, so that they meet.
  const few = chances.map((by) => ({ ...by, sheet: by.sheet % 3, row: by.row % 2, column: by.column % 4 }));
  const some = fc.array(fc.tuple(few, fc.boolean(), fc.boolean()), { minLength: 2, maxLength: 16 });
  fc.assert(
    fc.property(some, fc.boolean(), (sequence, annaSaves) => {
      let [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
      const [ofAnna, ofBert]: [Transaction[], Transaction[]] = [[], []];
      for (const [by, isAnna, saves] of sequence) {
        if (isAnna) ofAnna.push(...work(anna, by));
        else ofBert.push(...work(bert, by));
        if (saves && annaSaves) anna = reopened(anna, 'anna');
        else if (saves) bert = reopened(bert, 'bert');
      }
      for (const [i, one] of ofBert.entries()) {
        anna.receive(remote(one));
        if (i === 0) anna = reopened(anna, 'anna');
      }
      for (const one of ofAnna) bert.receive(remote(one));
      expect(everythingByAmount(anna)).toEqual(everythingByAmount(bert));
    }),
    { numRuns: runs(40, 3000) },
  );
});
