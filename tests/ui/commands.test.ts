// The table of commands: names and keys are not given twice, keys are read as a person reads them, and menus offer what
// applies.

import { beforeEach, expect, test } from 'vitest';
import { message, rowId } from '../../engine/index.ts';
import { matches } from '../../ui/browser/commands/keys.ts';
import { menuItems } from '../../ui/browser/commands/menus.ts';
import { Situation, type Surface } from '../../ui/browser/commands/situation.ts';
import { COMMANDS, commandNamed } from '../../ui/browser/commands/table.ts';
import { goTo } from '../../ui/browser/store/selection.ts';
import { takeWorkbook } from '../../ui/browser/store/workbook.ts';
import { demoBook } from '../browser/workbook-page.ts';

const SURFACES: readonly Surface[] = ['grid', 'field', 'formula line', 'scratch', 'text', 'dialog', 'page'];

const demo = demoBook();
const { workbook } = demo;

beforeEach(() => {
  takeWorkbook(workbook);
  const first = demo.rows('Plantings')[0] ?? -1;
  goTo('plantings', rowId(workbook, 'plantings', first), 'stations');
});

function pressed(key: string, held: readonly ('ctrl' | 'meta' | 'alt' | 'shift')[] = []) {
  return {
    key,
    ctrlKey: held.includes('ctrl'),
    metaKey: held.includes('meta'),
    altKey: held.includes('alt'),
    shiftKey: held.includes('shift'),
  };
}

test('every command has a name and a label of its own', () => {
  const ids = COMMANDS.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  const labels = COMMANDS.map(({ label }) => label);
  expect(new Set(labels).size).toBe(labels.length);
  expect(labels.filter((label) => label === '' || /[.!]$/.test(label))).toEqual([]);
});

test('on no surface do the same keys mean two commands, unless the first applies only at times', () => {
  for (const surface of SURFACES) {
    const always = COMMANDS.filter(({ where, applies }) => (where?.includes(surface) ?? true) && applies === undefined);
    const keys = always.flatMap(({ keys: given = [] }) => given);
    expect(new Set(keys).size, surface).toBe(keys.length);
  }
});

test('keys are matched whole: the key, and what is held with it', () => {
  expect(matches('Ctrl Z', pressed('z', ['ctrl']))).toBe(true);
  expect(matches('Ctrl Z', pressed('z', ['meta']))).toBe(true);
  expect(matches('Ctrl Z', pressed('Z', ['ctrl', 'shift']))).toBe(false);
  expect(matches('Ctrl Shift Z', pressed('Z', ['ctrl', 'shift']))).toBe(true);
  expect(matches('Ctrl Z', pressed('z'))).toBe(false);
  expect(matches('Alt Backspace', pressed('Backspace', ['alt']))).toBe(true);
  expect(matches('Backspace', pressed('Backspace', ['alt']))).toBe(false);
  expect(matches('Shift Space', pressed(' ', ['shift']))).toBe(true);
  expect(matches('=', pressed('=')) && matches('=', pressed('=', ['shift']))).toBe(true);
});

test("a menu offers what applies to the cell in hand, with its keys, and says why the rest can't be", () => {
  const items = menuItems('cell', new Situation('grid')).flat();
  expect(items.find(({ label }) => label === 'Fill down')).toMatchObject({ keys: 'Ctrl D', why: undefined });
  expect(items.find(({ label }) => label === 'Take back to the formula')?.why).toMatch(/Nothing was typed over/);
  expect(items.map(({ label }) => label)).toContain('Change the formula of Stations');
  // The sheet's own formula stands: there is none to take back.
  expect(items.map(({ label }) => label)).not.toContain(commandNamed('template formula').label);
});

test('the rows of a sheet that follows from others are neither added nor removed', () => {
  goTo('seed-order');
  const labels = menuItems('cell', new Situation('grid')).flatMap((set) => set.map(({ label }) => label));
  expect(labels).toContain('Copy');
  expect(labels.filter((label) => /row/.test(label))).toEqual([]);
});

test("a column's menu is about that column, whichever cell is in hand", () => {
  const items = menuItems('column', new Situation('grid', 'margin')).flat();
  expect(items.map(({ label }) => label)).toContain('Change the formula of Margin');
});

test('own rows are offered to come along into the next season only where they can name plantings', () => {
  const offered = (): readonly string[] =>
    menuItems('workbook', new Situation('page'))
      .flat()
      .flatMap(({ label }) =>
        label.startsWith('Next season, with all plantings, their beds and lots') ? [label] : [],
      );
  expect(offered()).toHaveLength(1);
  const column = { group: '', note: '', role: 'entered', formula: '' } as const;
  const other = workbook.branch();
  const done = other.do(
    [
      {
        command: 'put sheet',
        sheet: {
          id: 'looks',
          name: 'Looks',
          question: 'Own sheets',
          about: '',
          rows: { from: 'entry' },
          columns: [{ ...column, id: 'planting', name: 'Planting', type: { type: 'link', sheet: 'plantings' } }],
          checks: [],
          cautions: [],
        },
      },
    ],
    message('trial'),
  );
  expect(done).toMatchObject({ refused: false });
  takeWorkbook(other);
  expect(offered()).toHaveLength(2);
});
