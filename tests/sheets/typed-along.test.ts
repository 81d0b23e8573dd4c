// What is typed beside the rows of a season: on rows that follow from others, and how far figures may be off. It goes into the next
// season with the rows that it is of; what stays behind is told.

import { describe, expect, it } from 'vitest';
import {
  type Command,
  cellRange,
  cellView,
  columnNamed,
  isoDate,
  message,
  type RowSource,
  rowId,
  rowNamed,
  rows,
  sheetNamed,
  type TypeDeclaration,
  uncertainInputs,
  Workbook,
} from '../../engine/index.ts';
import { type RollOverOptions, rollOver } from '../../sheets-templates/index.ts';
import { wordOf } from '../../sheets-templates/names.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { testWorld } from '../book.ts';
import { garlicAndKale } from './garlic-and-kale.ts';

function run(workbook: Workbook, ...commands: readonly Command[]): void {
  const done = workbook.do(commands, message('trial'));
  if (done.refused) throw new Error(done.why);
}

/** Sheets of one's own, each with a column of texts and one of days. */
function addSheets(workbook: Workbook, sheets: Readonly<Record<string, RowSource>>): void {
  const column = (id: string, name: string, type: TypeDeclaration) =>
    ({ id, name, type, group: '', note: '', role: 'entered', formula: '' }) as const;
  const commands = Object.entries(sheets).map(
    ([name, source]): Command => ({
      command: 'put sheet',
      sheet: {
        id: wordOf(name),
        name,
        question: 'Own sheets',
        about: '',
        rows: source,
        columns: [column('said', 'Said', { type: 'text' }), column('looked-at', 'Looked at', { type: 'date' })],
        checks: [],
        cautions: [],
      },
    }),
  );
  run(workbook, ...commands);
}

const idOf = (workbook: Workbook, sheet: string): string => sheetNamed(workbook, sheet)?.id ?? '';

/** The slot of the row of which the made columns read so. */
function slotOf(workbook: Workbook, sheet: string, named: string): number {
  const view = sheetNamed(workbook, sheet);
  const made = view?.columns.filter(({ role }) => role === 'made') ?? [];
  const found = [...rows(workbook, view?.id ?? '')].find((slot) =>
    made.length === 0 || view?.key !== undefined
      ? slot === rowNamed(workbook, view?.id ?? '', named)
      : made
          .map(({ id }) => cellView(workbook, view?.id ?? '', slot, id).text)
          .join(' ')
          .trim() === named,
  );
  if (found === undefined) throw new Error(`${sheet} has no row ${named}`);
  return found;
}

function columnOf(workbook: Workbook, sheet: string, column: string): string {
  const view = sheetNamed(workbook, sheet);
  return (view === undefined ? undefined : columnNamed(view, column)?.id) ?? '';
}

function type(workbook: Workbook, sheet: string, row: string, column: string, entry: string): void {
  const id = idOf(workbook, sheet);
  const found = rowId(workbook, id, slotOf(workbook, sheet, row));
  run(workbook, { command: 'set cell', sheet: id, row: found, column: columnOf(workbook, sheet, column), entry });
}

function shown(workbook: Workbook, sheet: string, row: string, column: string): string {
  const id = idOf(workbook, sheet);
  return cellView(workbook, id, slotOf(workbook, sheet, row), columnOf(workbook, sheet, column)).text;
}

function next(workbook: Workbook, options: Partial<RollOverOptions> = {}) {
  const rolled = rollOver(workbook, { season: 2028, plan: 'all', ...options });
  if (!rolled.ok) throw new Error(rolled.why);
  const opened = Workbook.open(rolled.data, testWorld(SEASON));
  if (opened === undefined) throw new Error('It does not open.');
  return { book: opened, said: rolled.said, data: rolled.data };
}

const link = (id: string, name: string) => ({ id, name });

describe('what is typed on rows that follow from others', () => {
  it('goes along on a sheet of one row for each row, with what that row is and moves', () => {
    const workbook = garlicAndKale();
    addSheets(workbook, {
      'Bed book': { from: 'each', sheet: 'beds', as: link('bed', 'Bed'), where: '' },
      'Planting book': {
        from: 'each',
        sheet: 'plantings',
        as: link('planting', 'Planting'),
        where: '',
      },
    });
    type(workbook, 'Bed book', 'B2', 'Said', 'good soil');
    type(workbook, 'Bed book', 'B2', 'Looked at', '2027-03-04');
    for (const planting of ['Garlic', 'Kale']) {
      type(workbook, 'Planting book', planting, 'Said', `of ${planting}`);
      type(workbook, 'Planting book', planting, 'Looked at', '2027-06-01');
    }
    const { book, said } = next(workbook);
    expect(shown(book, 'Bed book', 'B2', 'Said')).toBe('good soil');
    expect(shown(book, 'Bed book', 'B2', 'Looked at')).toBe('4 Mar 2027');
    expect(shown(book, 'Planting book', 'Kale', 'Said')).toBe('of Kale');
    expect(shown(book, 'Planting book', 'Kale', 'Looked at')).toBe('1 Jun 2028');
    // The one that stands keeps its day, the one that is planted anew has it a year on, as their own columns do.
    expect(shown(book, 'Planting book', 'Garlic', 'Looked at')).toBe('1 Jun 2027');
    expect(shown(book, 'Planting book', 'Garlic 2028', 'Said')).toBe('of Garlic');
    expect(shown(book, 'Planting book', 'Garlic 2028', 'Looked at')).toBe('1 Jun 2028');
    expect(said).not.toContain('stays with it');
  });

  it('goes along on pairs of which both come along, pairs of pairs among them, and in columns added to a sheet of the template', () => {
    const workbook = garlicAndKale();
    addSheets(workbook, {
      Fits: {
        from: 'pairs',
        sheets: ['beds', 'plantings'],
        as: [link('bed', 'Bed'), link('planting', 'Planting')],
        where: '',
      },
      'Fits again': {
        from: 'pairs',
        sheets: ['fits', 'beds'],
        as: [link('fit', 'Fit'), link('bed', 'Bed')],
        where: '',
      },
    });
    run(
      workbook,
      { command: 'add column', sheet: 'bed-results', name: 'Said', type: { type: 'text' } },
      { command: 'add column', sheet: 'planting-jobs', name: 'Said', type: { type: 'text' } },
    );
    type(workbook, 'Fits', 'B1 Kale', 'Said', 'yes');
    const again = rowId(workbook, idOf(workbook, 'Fits again'), 1);
    run(workbook, {
      command: 'set cell',
      sheet: idOf(workbook, 'Fits again'),
      row: again,
      column: columnOf(workbook, 'Fits again', 'Said'),
      entry: 'twice',
    });
    type(workbook, 'Planting jobs', 'Kale', 'Said', 'with the red hoe');
    const { book, data } = next(workbook);
    expect(shown(book, 'Fits', 'B1 Kale', 'Said')).toBe('yes');
    expect(shown(book, 'Planting jobs', 'Kale', 'Said')).toBe('with the red hoe');
    expect(Object.keys(data.aside[idOf(workbook, 'Fits again')] ?? {})).toContain(again);
    const none = next(workbook, { plan: 'none' });
    expect(none.said).toContain('What is typed on rows of 2027 alone stays with it (');
    expect(none.said).toContain('Fits: 1 cell');
  });

  it('stays with its week, and with an event whose date is another; both are told', () => {
    const workbook = garlicAndKale();
    addSheets(workbook, {
      'My weeks': {
        from: 'span',
        first: 'Farm[Season starts] - (WEEKDAY(Farm[Season starts]; 2) - 1) * 1 day',
        last: 'Farm[Season ends] + 60 days',
        step: 'week',
        as: link('week', 'Week'),
      },
      'Days of 2027': {
        from: 'span',
        first: 'DATE(2027; 3; 1)',
        last: 'DATE(2027; 3; 7)',
        step: 'day',
        as: link('day', 'Day'),
      },
      'Settings out': {
        from: 'events',
        dates: [{ sheet: 'plantings', column: 'planted-out', event: 'Set out', about: link('planting', 'Planting') }],
        as: link('on', 'On'),
        event: link('event', 'Event'),
      },
    });
    const weeks = idOf(workbook, 'My weeks');
    const said = columnOf(workbook, 'My weeks', 'Said');
    const first = rowId(workbook, weeks, 0);
    const last = [...rows(workbook, weeks)].at(-1) ?? 0;
    const late = rowId(workbook, weeks, last);
    for (const [row, entry] of [
      [first, 'frost'],
      [late, 'snow'],
    ] as const)
      run(workbook, { command: 'set cell', sheet: weeks, row, column: said, entry });
    type(workbook, 'Days of 2027', '3 Mar 2027', 'Said', 'rain');
    const events = idOf(workbook, 'Settings out');
    for (const slot of rows(workbook, events)) {
      const row = rowId(workbook, events, slot);
      run(workbook, {
        command: 'set cell',
        sheet: events,
        row,
        column: columnOf(workbook, 'Settings out', 'Said'),
        entry: row,
      });
    }
    const { book, said: told } = next(workbook);
    const held = (sheet: string): readonly string[] =>
      [...rows(book, sheet)]
        .map((slot) => cellView(book, sheet, slot, columnOf(book, sheetNameOf(book, sheet), 'Said')).text)
        .filter((text) => text !== '');
    expect(late > '2028').toBe(true);
    expect(held('my-weeks')).toEqual(['snow']);
    expect(held('days-of-2027')).toEqual(['rain']);
    // The garlic stands on, at the day on which it was set out.
    expect(held(events).length).toBe(1);
    expect(told).toMatch(
      / What is typed on rows of 2027 alone stays with it \((My weeks|Settings out): \d cells?, (My weeks|Settings out): \d cells?\)\.$/,
    );
    expect(told).toContain('Settings out: 1 cell');
  });
});

const sheetNameOf = (book: Workbook, id: string): string => book.document.program.sheet(id)?.name ?? '';

describe('how far what is typed may be off', () => {
  const range = (book: Workbook, planting: string, column: string) => {
    const found = cellRange(book, 'plantings', slotOf(book, 'Plantings', planting), column);
    return found === undefined ? undefined : [found.low, found.likely, found.high];
  };

  it('is a year on where the day is, and of the new planting beside the one that stands', () => {
    const workbook = garlicAndKale();
    type(workbook, 'Plantings', 'Kale', 'Planted out', '2027-05-12..2027-05-28');
    type(workbook, 'Plantings', 'Garlic', 'Field survival', '80..90%');
    const before = uncertainInputs(workbook, ['plantings']).length;
    const { book } = next(workbook);
    expect(range(book, 'Kale', 'planted-out')?.map((day) => isoDate(day))).toEqual([
      '2028-05-12',
      '2028-05-20',
      '2028-05-28',
    ]);
    expect(range(book, 'Garlic', 'field-survival')).toEqual([0.8, 0.85, 0.9]);
    expect(range(book, 'Garlic 2028', 'field-survival')).toEqual([0.8, 0.85, 0.9]);
    expect(uncertainInputs(book, ['plantings']).length).toBeGreaterThanOrEqual(before);
  });

  it('goes with rows that are left behind, and with a cell that holds something else then', () => {
    const workbook = garlicAndKale();
    type(workbook, 'Plantings', 'Kale', 'Planted out', '2027-05-12..2027-05-28');
    expect(next(workbook, { plan: 'none' }).data.ranges).toBeUndefined();
    const standing = garlicAndKale();
    type(standing, 'Plantings', 'Garlic', 'Planted out', '2027-10-20..2027-11-20');
    run(standing, {
      command: 'insert row',
      sheet: 'records',
      entries: { planting: 'Garlic', on: '2027-11-01', what: 'set out' },
    });
    const { book } = next(standing);
    expect(shown(book, 'Plantings', 'Garlic', 'Planted out')).toBe('1 Nov 2027');
    expect(range(book, 'Garlic', 'planted-out')).toBeUndefined();
  });

  it('is so in the terms of what is sold too, and in a sheet of made rows of one’s own', () => {
    const workbook = garlicAndKale();
    run(workbook, {
      command: 'insert row',
      sheet: 'own-costs',
      entries: { cost: 'Fence', 'first-on': '2027-03-01..2027-03-11' },
    });
    addSheets(workbook, { 'Bed book': { from: 'each', sheet: 'beds', as: link('bed', 'Bed'), where: '' } });
    type(workbook, 'Bed book', 'B1', 'Looked at', '2027-03-01..2027-03-11');
    const { data } = next(workbook);
    const ends = (sheet: string): readonly unknown[] =>
      Object.values(data.ranges?.[sheet] ?? {}).flatMap((cells) => Object.values(cells));
    expect(ends('own-costs')).toEqual([{ low: { date: '2028-03-01' }, high: { date: '2028-03-11' } }]);
    expect(ends(idOf(workbook, 'Bed book'))).toEqual([{ low: { date: '2027-03-01' }, high: { date: '2027-03-11' } }]);
  });
});
