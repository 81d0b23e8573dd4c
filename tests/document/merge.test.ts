// Two people's work on copies of one workbook, brought together in either order: the same to the last bit on both sides. The
// later change of a cell stands; a removed row that another changed afterwards is there again, marked.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Command,
  cellView,
  Findings,
  noteOn,
  rowId,
  rows,
  rowWithId,
  type Transaction,
  type Workbook,
} from '../../engine/index.ts';
import { runs } from '../runs.ts';
import { type Chances, chances, commandFor } from './any-command.ts';
import { BEGINNING, BROUGHT_BACK, everything, everythingByAmount, openFarm } from './farm.ts';
import { cell, done, MESSAGE, P1, P2, P3, remote } from './two-people.ts';

/** Both copies with both people's transactions. */
function merged(ofAnna: readonly Transaction[], ofBert: readonly Transaction[], anna: Workbook, bert: Workbook): void {
  for (const one of ofBert) anna.receive(remote(one));
  for (const one of ofAnna) bert.receive(remote(one));
  expect(everythingByAmount(anna)).toEqual(everythingByAmount(bert));
}

describe('two people', () => {
  test('who change one cell: the later change stands', () => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const first = done(anna, cell(P1, 'length', '10 ft'));
    const second = done(bert, cell(P1, 'length', '12 ft'));
    merged([first], [second], anna, bert);
    expect(everything(anna).file).toContain('[12, "ft"]');
  });

  test('at the very same moment: that of the name that sorts later', () => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const work = (entry: string, actor: string): Transaction => ({
      ...done(openFarm(BEGINNING, actor), cell(P1, 'length', entry)),
      time: 5,
    });
    const [first, second] = [work('10 ft', 'anna'), work('12 ft', 'bert')];
    for (const one of [first, second]) anna.receive(remote(one));
    for (const one of [second, first]) bert.receive(remote(one));
    expect(everything(anna)).toEqual(everything(bert));
    expect(everything(anna).file).toContain('[12, "ft"]');
  });

  test('of whom one removes a row that the other changes afterwards: it is there, changed, and marked', () => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const removed = done(anna, { command: 'remove rows', sheet: 'plantings', rows: [P2] });
    const changed = done(bert, cell(P2, 'length', '12 ft'));
    merged([removed], [changed], anna, bert);
    expect(everything(anna).file).toContain('[12, "ft"]');
    const says = new Findings(anna).all().filter(({ sheet }) => sheet === 'plantings');
    expect(says.map(({ rowName, says: said }) => `${rowName}: ${said}`)).toContain(
      'P2: Somebody removed this row while another changed it: keep it, or remove it again.',
    );
    const kept = done(anna, { command: 'keep row', sheet: 'plantings', row: P2 });
    bert.receive(remote(kept));
    expect(everything(anna)).toEqual(everything(bert));
    expect(everything(anna).file).not.toContain('broughtBack');
  });

  test('to keep a row that did not come back is no change, which would bring it back where another takes it out', () => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const kept = done(bert, { command: 'keep row', sheet: 'plantings', row: P2 });
    expect(kept.operations).toEqual([]);
    merged([done(anna, { command: 'remove rows', sheet: 'plantings', rows: [P2] })], [kept], anna, bert);
    expect(rowWithId(anna, 'plantings', P2)).toBeUndefined();
  });

  test('a row that came back is marked again once keeping it, or removing it, is taken back', () => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const removed = done(anna, { command: 'remove rows', sheet: 'plantings', rows: [P2] });
    merged([removed], [done(bert, cell(P2, 'length', '12 ft'))], anna, bert);
    const start = everything(anna).file;
    expect(start).toContain(`"broughtBack": ["${P2}"]`);
    const acts: readonly Command[] = [
      { command: 'keep row', sheet: 'plantings', row: P2 },
      { command: 'remove rows', sheet: 'plantings', rows: [P2] },
      { command: 'remove rows', sheet: 'plantings', rows: [P1, P2] },
    ];
    for (const act of acts) {
      bert.receive(remote(done(anna, act)));
      const end = everything(anna).file;
      expect(end).not.toContain('broughtBack');
      for (const [step, file] of [
        [() => anna.undo(), start],
        [() => anna.redo(), end],
        [() => anna.undo(), start],
      ] as const) {
        const stepped = step();
        if (stepped !== undefined) bert.receive(remote(stepped.transaction));
        expect(everything(anna).file).toBe(file);
        expect(everything(bert)).toEqual(everything(anna));
      }
    }
  });

  test('of whom one takes the removal of a row back that the other changed meanwhile: no one marks it', () => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const removed = done(anna, { command: 'remove rows', sheet: 'plantings', rows: [P1, P2] });
    const back = anna.undo();
    const changed = done(bert, cell(P2, 'length', '12 ft'));
    merged([removed, ...(back === undefined ? [] : [back.transaction])], [changed], anna, bert);
    expect(everything(bert).file).not.toContain('broughtBack');
  });

  test('of whom one removes a row that came back, and the other keeps it afterwards: it stays', () => {
    const [anna, bert] = [openFarm(BROUGHT_BACK, 'anna'), openFarm(BROUGHT_BACK, 'bert')];
    const removed = done(anna, { command: 'remove rows', sheet: 'plantings', rows: [P2] });
    const kept = done(bert, { command: 'keep row', sheet: 'plantings', row: P2 });
    merged([removed], [kept], anna, bert);
    expect(Array.from(rows(anna, 'plantings'), (slot) => rowId(anna, 'plantings', slot))).toContain(P2);
  });

  test.each([
    ['one row', [P2], '12 ft', { number: 12, unit: 'ft' }],
    ['several rows', [P1, P2], '12 ft', { number: 12, unit: 'ft' }],
    ['one row', [P2], '', null],
    ['several rows', [P1, P2], '', null],
  ] as const)(
    'of whom one takes the removal of %s back after the other’s change (%#): the change stays',
    (...given) => {
      const [, gone, entry, content] = given;
      const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
      const removed = done(anna, { command: 'remove rows', sheet: 'plantings', rows: gone });
      merged([removed], [done(bert, cell(P2, 'length', entry))], anna, bert);
      const back = anna.undo();
      if (back !== undefined) bert.receive(remote(back.transaction));
      for (const one of [anna, bert]) {
        expect(one.document.contentOf('plantings', P2, 'length')).toEqual(content);
        // Whoever takes the removal back wants the row.
        expect(everything(one).file).not.toContain('broughtBack');
      }
      expect(everything(anna)).toEqual(everything(bert));
      expect(everything(openFarm(anna.data()))).toEqual(everything(anna));
    },
  );

  test('of whom one removes a row with a note that the other changes: it is there with its note', () => {
    const start = openFarm();
    done(start, { command: 'set note', sheet: 'plantings', row: P2, column: 'length', note: 'by the hedge' });
    const [anna, bert] = [openFarm(start.data(), 'anna'), openFarm(start.data(), 'bert')];
    for (const gone of [[P2], [P2, P3]]) {
      const removed = done(anna, { command: 'remove rows', sheet: 'plantings', rows: gone });
      expect(everything(anna).file).not.toContain('hedge');
      merged([removed], [done(bert, cell(P2, 'length', '12 ft'))], anna, bert);
      expect(noteOn(anna, 'plantings', P2, 'length')).toBe('by the hedge');
      expect(everything(anna).file).toContain('hedge');
      const back = anna.undo();
      if (back !== undefined) bert.receive(remote(back.transaction));
    }
  });

  test('of whom one writes a note on a row that the other’s sheets ship no more: it stays', () => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const note = done(anna, { command: 'set note', sheet: 'trays', row: 'tray-72', column: 'cells', note: 'mine' });
    merged([note], [done(bert, { command: 'use template', version: 2 })], anna, bert);
    expect(bert.document.slotOf('trays', 'tray-72')).toBeDefined();
  });

  test('of whom one removes a row after the other changed it: it stays away, and taken back it has the change', () => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const changed = done(bert, cell(P2, 'length', '12 ft'));
    anna.receive(remote(changed));
    const removed = done(anna, { command: 'remove rows', sheet: 'plantings', rows: [P2] });
    bert.receive(remote(removed));
    expect(everything(anna)).toEqual(everything(bert));
    expect(everything(anna).file).not.toContain(`"${P2}"`);
    const back = anna.undo();
    if (back !== undefined) bert.receive(remote(back.transaction));
    expect(everything(anna)).toEqual(everything(bert));
    expect(everything(bert).file).toContain('[12, "ft"]');
  });

  test('who insert between the same rows: both are there, in the same order on both sides', () => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const insert = (planting: string): Command => ({
      command: 'insert row',
      sheet: 'plantings',
      entries: { planting },
      before: P3,
    });
    merged([done(anna, insert('Of Anna'))], [done(bert, insert('Of Bert'))], anna, bert);
  });

  test('whose rows stand at one place: others go between them and move about, and what was done is taken back', () => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const insert = (planting: string, before: string): Command => {
      return { command: 'insert row', sheet: 'plantings', entries: { planting }, before };
    };
    merged([done(anna, insert('Of Anna', P3))], [done(bert, insert('Of Bert', P3))], anna, bert);
    const names = (): readonly string[] =>
      Array.from(rows(anna, 'plantings'), (slot) => cellView(anna, 'plantings', slot, 'planting').text);
    const idOf = (name: string): string =>
      rowId(anna, 'plantings', rows(anna, 'plantings')[names().indexOf(name)] ?? -1) ?? '';
    const together = names();
    const [first = '', second = ''] = together.slice(2, 4);
    expect([first, second].toSorted()).toEqual(['Of Anna', 'Of Bert']);

    done(anna, insert('Between', idOf(second)));
    expect(names()).toEqual(['P1', 'P2', first, 'Between', second, 'P3']);
    anna.undo();
    expect(names()).toEqual(together);
    done(anna, { command: 'move rows', sheet: 'plantings', rows: [P1], before: idOf(second) });
    expect(names()).toEqual(['P2', first, 'P1', second, 'P3']);
    done(anna, { command: 'move rows', sheet: 'plantings', rows: [idOf(second)], before: idOf(first) });
    expect(names()).toEqual(['P2', second, first, 'P1', 'P3']);
    for (let step = 0; step < 2; step++) anna.undo();
    expect(everything(anna)).toEqual(everything(bert));
  });

  test('of whom one takes out a row that the template of the other stops shipping and ships again: it stays out', () => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const ofAnna = [2, 1].map((version) => done(anna, { command: 'use template', version }));
    const ofBert = [done(bert, { command: 'remove rows', sheet: 'trays', rows: ['tray-72'] })];
    merged(ofAnna, ofBert, anna, bert);
    expect(everything(anna).file).toContain('"removed": { "trays": ["tray-72"] }');
  });

  test('of whom one moves such a row: it stands where it was moved to', () => {
    const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
    const moved = [done(anna, { command: 'move rows', sheet: 'trays', rows: ['tray-72'] })];
    const ofBert = [2, 1].map((version) => done(bert, { command: 'use template', version }));
    merged(moved, ofBert, anna, bert);
    const trays = Array.from(rows(anna, 'trays'), (slot) => cellView(anna, 'trays', slot, 'tray').text);
    expect(trays).toEqual(['128 cells', '72 cells']);
  });

  test('of whom one removes a column that the other typed in: the cells are kept, and there when it is back', () => {
    const start = openFarm();
    done(start, { command: 'add column', sheet: 'plantings', name: 'Weighed', type: { type: 'text' } });
    const base = start.data();
    const column = Object.keys(base.own.plantings?.columns ?? {})[0] ?? '';
    const [anna, bert] = [openFarm(base, 'anna'), openFarm(base, 'bert')];
    const removed = done(anna, { command: 'remove column', sheet: 'plantings', column });
    const typed = done(bert, cell(P1, column, 'a sackful'));
    merged([removed], [typed], anna, bert);
    expect(everything(anna).file).toContain('a sackful');
    const back = anna.undo();
    if (back !== undefined) bert.receive(remote(back.transaction));
    expect(everything(anna)).toEqual(everything(bert));
    expect(anna.document.contentOf('plantings', P1, column)).toBe('a sackful');
    expect(anna.document.program.sheet('plantings')?.column(column)).toBeDefined();
  });
});

function work(workbook: Workbook, sequence: readonly Chances[]): Transaction[] {
  return sequence.flatMap((by) => {
    const command = commandFor(workbook, by);
    const answer = command === undefined ? undefined : workbook.do([command], MESSAGE);
    return answer === undefined || answer.refused ? [] : [answer.transaction];
  });
}

/** The same with steps back and on, but for other templates, which leave rows that a person changed and changed back. */
function backAndOn(workbook: Workbook, sequence: readonly Chances[]): Transaction[] {
  return sequence.flatMap((by) => {
    const turn = by.what % 10;
    if (turn < 3) return (turn < 2 ? workbook.undo() : workbook.redo())?.transaction ?? [];
    return commandFor(workbook, by)?.command === 'use template' ? [] : work(workbook, [by]);
  });
}

test.each([
  ['any work', work],
  ['any work taken back and done again', backAndOn],
])('%s of two people comes together alike on both sides', (_, does) => {
  const some = fc.array(chances, { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(some, some, fc.boolean(), fc.constantFrom(BEGINNING, BROUGHT_BACK), (one, other, bertFirst, data) => {
      const [anna, bert] = [openFarm(data, 'anna'), openFarm(data, 'bert')];
      const early = bertFirst ? does(bert, other) : [];
      const ofAnna = does(anna, one);
      const ofBert = bertFirst ? early : does(bert, other);
      merged(ofAnna, ofBert, anna, bert);
    }),
    { numRuns: runs(50, 10_000) },
  );
});
