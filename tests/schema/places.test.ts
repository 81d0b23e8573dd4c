// Sheets and columns of one's own in a list: one that is moved or taken out leaves the others as they stood.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Command, sheetView, sheetViews, type Workbook } from '../../engine/index.ts';
import { inPlace, type Place, rehung } from '../../engine/schema/places.ts';
import { openFarm } from '../document/farm.ts';
import { runs } from '../runs.ts';

const MESSAGE = { code: 'work', parts: {} };

function act(workbook: Workbook, command: Command): void {
  const done = workbook.do([command], MESSAGE);
  if (done.refused) throw new Error(done.why);
}

/** The own sheets of a farm in their order, told by one letter each. */
class Sheets {
  readonly workbook = openFarm();

  constructor(names: string) {
    for (const name of names) act(this.workbook, { command: 'add sheet', name, about: '', rows: { from: 'entry' } });
  }

  get order(): string {
    return sheetViews(this.workbook)
      .map(({ name }) => name)
      .filter((name) => name.length === 1)
      .join('');
  }

  #id(name: string): string {
    return sheetViews(this.workbook).find((sheet) => sheet.name === name)?.id ?? '';
  }

  /** Behind the one that stands two before. */
  up(name: string): void {
    const sheets = sheetViews(this.workbook);
    const at = sheets.findIndex((sheet) => sheet.name === name);
    act(this.workbook, { command: 'move sheet', sheet: this.#id(name), after: sheets[at - 2]?.id ?? null });
  }

  down(name: string): void {
    const sheets = sheetViews(this.workbook);
    const at = sheets.findIndex((sheet) => sheet.name === name);
    act(this.workbook, { command: 'move sheet', sheet: this.#id(name), after: sheets[at + 1]?.id ?? null });
  }

  remove(name: string): void {
    act(this.workbook, { command: 'remove sheet', sheet: this.#id(name) });
  }
}

describe('sheets', () => {
  test('one goes up or down one by one, and takes no other along', () => {
    const sheets = new Sheets('ABCD');
    sheets.up('C');
    expect(sheets.order).toBe('ACBD');
    sheets.up('C');
    expect(sheets.order).toBe('CABD');
    sheets.down('C');
    sheets.down('C');
    expect(sheets.order).toBe('ABCD');
    for (let step = 0; step < 4; step++) sheets.workbook.undo();
    expect(sheets.order).toBe('ABCD');
    sheets.workbook.redo();
    expect(sheets.order).toBe('ACBD');
  });

  test('with one taken out the rest stay in order and can be moved; brought back it stands where it stood', () => {
    const sheets = new Sheets('ABCDE');
    sheets.remove('A');
    expect(sheets.order).toBe('BCDE');
    sheets.up('E');
    sheets.up('E');
    sheets.up('E');
    expect(sheets.order).toBe('EBCD');
    for (let step = 0; step < 4; step++) sheets.workbook.undo();
    expect(sheets.order).toBe('ABCDE');
  });

  test('others of the template stay where they are, and own ones go in among them', () => {
    const sheets = new Sheets('AB');
    const before = sheetViews(sheets.workbook).map(({ id }) => id);
    for (let step = 0; step < before.length; step++) sheets.up('B');
    const after = sheetViews(sheets.workbook).map(({ id }) => id);
    const b = before.at(-1) ?? '';
    expect(after).toEqual([b, ...before.filter((id) => id !== b)]);
  });
});

test('columns behind those of the sheet go forward one by one, in front of made ones none', () => {
  const workbook = openFarm();
  const columns = (sheet: string): readonly { readonly id: string; readonly name: string }[] =>
    sheetView(workbook, sheet)?.columns ?? [];
  const forward = (sheet: string, name: string): void => {
    const at = columns(sheet).findIndex((column) => column.name === name);
    const after = columns(sheet)[at - 2]?.id ?? null;
    act(workbook, { command: 'move column', sheet, column: columns(sheet)[at]?.id ?? '', after });
  };
  const names = (sheet: string): string =>
    columns(sheet)
      .map(({ name }) => name)
      .filter((name) => /^X\d$|^Row$/.test(name))
      .join(' ');
  const add = (sheet: string, name: string): void =>
    act(workbook, { command: 'add column', sheet, name, type: { type: 'text' } });
  for (const name of ['X1', 'X2', 'X3']) add('plantings', name);
  forward('plantings', 'X3');
  expect(names('plantings')).toBe('X1 X3 X2');
  forward('plantings', 'X1');
  expect(names('plantings')).toBe('X1 X3 X2');
  expect(columns('plantings').at(-1)?.name).not.toBe('X1');
  expect(
    columns('plantings')
      .slice(-2)
      .map(({ name }) => name),
  ).toEqual(['X3', 'X2']);
  act(workbook, {
    command: 'remove column',
    sheet: 'plantings',
    column: columns('plantings').find(({ name }) => name === 'X3')?.id ?? '',
  });
  expect(names('plantings')).toBe('X1 X2');

  const rows = { from: 'each', sheet: 'plantings', as: { id: 'made', name: 'Row' }, where: '' } as const;
  act(workbook, { command: 'add sheet', name: 'Diary', about: '', rows });
  const diary = sheetViews(workbook).at(-1)?.id ?? '';
  for (const name of ['X1', 'X2', 'X3']) add(diary, name);
  forward(diary, 'X2');
  expect(names(diary)).toBe('Row X2 X1 X3');
});

describe('any things, also such as hang on what is gone or on each other', () => {
  const IDS = ['a', 'b', 'c', 'd', 'e', 'f', 'g'];
  const after = fc.constantFrom<string | null | undefined>(undefined, null, 'gone', ...IDS);
  const things = fc
    .tuple(...IDS.map((id) => after.map((hung): Place => ({ id, after: hung === id ? undefined : hung }))))
    .map((places) => inPlace(places));

  test('one moves or goes, and the others stay', () => {
    fc.assert(
      fc.property(
        things,
        fc.constantFrom(...IDS),
        fc.constantFrom<string | null | undefined>(undefined, null, ...IDS),
        (places, moved, to) => {
          fc.pre(to !== moved);
          const changed = rehung(places, moved, to);
          const next = places
            .filter(({ id }) => to !== undefined || id !== moved)
            .map(({ id, after: was }): Place => ({ id, after: changed.has(id) ? changed.get(id) : was }));
          const order = inPlace(next).map(({ id }) => id);
          const others = places.map(({ id }) => id).filter((id) => id !== moved);
          expect(order.filter((id) => id !== moved)).toEqual(others);
          if (to === undefined) expect(order).not.toContain(moved);
          else expect(order.indexOf(moved)).toBe(to === null ? 0 : order.indexOf(to) + 1);
        },
      ),
      { numRuns: runs(300, 20_000) },
    );
  });
});
