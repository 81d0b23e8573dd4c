// Blocks that come back in another order: lines go to the rows that they name, or names pass from row to row in one step.

import { expect, test } from 'vitest';
import { cellView, message, rowId, rowName, rows, sheetView, type Workbook } from '../../engine/index.ts';
import { PasteJob } from '../../ui/browser/grid/clipboard/paste-job.ts';
import type { LandingRow } from '../../ui/browser/grid/clipboard/paste-plan.ts';
import { openFarm } from '../document/farm.ts';

const NONE: ReadonlySet<string> = new Set();

/** Lines of a name, or a name and a length, pasted on the first beds and on new rows after them. */
function pasting(farm: Workbook, lines: readonly (readonly string[])[], over: number): PasteJob {
  const view = sheetView(farm, 'beds');
  if (view === undefined) throw new Error('there are no beds');
  const there = [...rows(farm, 'beds')]
    .slice(0, over)
    .map((slot): LandingRow => ({ row: { id: rowId(farm, 'beds', slot), slot } }));
  const fresh = Array.from({ length: lines.length - over }, (_, at): LandingRow => ({ fresh: at }));
  return new PasteJob({
    book: farm,
    sheet: view,
    block: { cells: lines.map((line) => line.map((text) => ({ text }))) },
    repeated: false,
    columns: ['bed', 'length'].flatMap((id) => view.columns.filter((column) => column.id === id)),
    rows: () => [...there, ...fresh],
    keepFormulas: false,
  });
}

function paste(farm: Workbook, job: PasteJob, skipped = NONE): string | undefined {
  const done = farm.do(job.commands(job.plan(), skipped), message('paste cell'));
  return done.refused ? done.why : undefined;
}

function beds(farm: Workbook): readonly string[] {
  return [...rows(farm, 'beds')].map((slot) =>
    `${rowName(farm, 'beds', slot)} ${cellView(farm, 'beds', slot, 'length').entry}`.trim(),
  );
}

function names(farm: Workbook): readonly string[] {
  return [...rows(farm, 'beds')].map((slot) => rowName(farm, 'beds', slot));
}

test('lines that name their rows in another order go each to its own row', () => {
  const farm = openFarm();
  const [first = '', second = '', ...others] = names(farm);
  const [, , ...rest] = beds(farm);
  const job = pasting(
    farm,
    [
      [second, '22'],
      [first.toUpperCase(), '11'],
    ],
    2,
  );
  expect(job.questions(job.plan())).toEqual([
    'Its lines name these rows in another order: each goes to the row that it names, which stays where it is.',
  ]);
  expect(paste(farm, job)).toBeUndefined();
  expect(beds(farm)).toEqual([`${first.toUpperCase()} 11`, `${second} 22`, ...rest]);
  expect(others.length).toBe(rest.length);
});

test('a line that names none of them becomes a row, wherever it stands', () => {
  const farm = openFarm();
  const [first = '', second = ''] = names(farm);
  expect(
    paste(
      farm,
      pasting(
        farm,
        [
          ['Between', '5'],
          [second, '22'],
          [first, '11'],
        ],
        2,
      ),
    ),
  ).toBeUndefined();
  expect(beds(farm)[0]).toBe(`${first} 11`);
  expect(beds(farm)[1]).toBe(`${second} 22`);
  expect(beds(farm).at(-1)).toBe('Between 5');
});

test('lines in the order of their rows are nothing to ask about', () => {
  const farm = openFarm();
  const [first = '', second = ''] = names(farm);
  const job = pasting(
    farm,
    [
      [first, '11'],
      [second, '22'],
    ],
    2,
  );
  expect(job.questions(job.plan())).toEqual([]);
});

test('names alone change places, which is asked about and done in one step', () => {
  const farm = openFarm();
  const before = beds(farm);
  const [first = '', second = ''] = names(farm);
  const planted = cellView(farm, 'plantings', rows(farm, 'plantings')[0] ?? -1, 'bed').text;
  expect([first, second]).toContain(planted);
  const job = pasting(farm, [[second], [first]], 2);
  expect(job.questions(job.plan())).toEqual([
    'Names pass from row to row: what is linked to a row stays with it, whatever it is called then.',
  ]);
  expect(paste(farm, job)).toBeUndefined();
  expect(names(farm).slice(0, 2)).toEqual([second, first]);
  const now = cellView(farm, 'plantings', rows(farm, 'plantings')[0] ?? -1, 'bed').text;
  expect(now).toBe(planted === first ? second : first);
  farm.undo();
  expect(beds(farm)).toEqual(before);
});

test('lines pass their names on where a person wants them where they stand', () => {
  const farm = openFarm();
  const [first = '', second = ''] = names(farm);
  const job = pasting(
    farm,
    [
      [second, '22'],
      [first, '11'],
    ],
    2,
  ).with({ toNamed: false });
  expect(paste(farm, job)).toBeUndefined();
  expect(beds(farm).slice(0, 2)).toEqual([`${second} 22`, `${first} 11`]);
});

test('a name that its row keeps is taken, and so is one whose row is skipped', () => {
  const farm = openFarm();
  const [first = '', second = ''] = names(farm);
  const kept = pasting(farm, [[second]], 1);
  expect(kept.plan().cells[0]).toMatchObject({
    state: 'refused',
    says: `Beds already has a row called “${second}”: choose another name.`,
  });
  const passed = pasting(farm, [[second], [first]], 2);
  expect(paste(farm, passed, new Set(['1 0']))).toMatch(/already has a row called/);
  expect(names(farm).slice(0, 2)).toEqual([first, second]);
});
