// The ways of looking that the sheets come with: each a question with five to a dozen columns that are there, the name of the
// row among them; no sheet that is long lacks one.

import { describe, expect, test } from 'vitest';
import { namingColumns, sheetView, type ViewDeclaration, views } from '../../engine/index.ts';
import { SEASON_SHEETS } from '../../sheets-templates/season.ts';
import { VIEWS } from '../../sheets-templates/views.ts';
import { viewsByGroups } from '../../sheets-templates/views-by-groups.ts';
import { demoBook } from '../browser/workbook-page.ts';

const demo = demoBook();

function sheetOf(id: string) {
  const sheet = sheetView(demo.workbook, id);
  if (sheet === undefined) throw new Error(`There is no sheet ${id}`);
  return sheet;
}

const EACH = Object.entries(VIEWS).flatMap(([sheet, list]) =>
  list.map((view): [string, string, ViewDeclaration] => [sheet, view.name, view]),
);

describe('each view', () => {
  test.each(EACH)('%s: %s', (id, name, { columns = [], id: viewId }) => {
    const sheet = sheetOf(id);
    const known = sheet.columns.map((column) => column.id);
    expect(columns.filter((column) => !known.includes(column))).toEqual([]);
    expect(new Set(columns).size).toBe(columns.length);
    expect(name).toMatch(/\?$/);
    const standing = views(demo.workbook, sheet).find((one) => one.id === viewId);
    expect(standing?.shows.slice(0, standing.inFront)).toEqual(namingColumns(sheet));
    expect(standing?.shows.length).toBeGreaterThanOrEqual(5);
    expect(standing?.shows.length).toBeLessThanOrEqual(12);
  });
});

test('every sheet with more than a dozen columns has views of five to a dozen, and their names are told apart', () => {
  for (const { id, columns, rows } of SEASON_SHEETS) {
    const standing = views(demo.workbook, sheetOf(id));
    const names = standing.map(({ name }) => name.toLowerCase());
    expect(new Set(names).size, id).toBe(names.length);
    expect(names.at(-1)).toBe('everything');
    if (rows.from === 'single' || columns.length <= 12) continue;
    const short = standing.slice(0, -1);
    expect(short.length, id).toBeGreaterThan(1);
    for (const { name, shows } of short) {
      expect(shows.length, `${id}, ${name}`).toBeGreaterThanOrEqual(5);
      expect(shows.length, `${id}, ${name}`).toBeLessThanOrEqual(12);
    }
  }
});

test('a long sheet that nobody wrote views for shows each of its columns in one of them', () => {
  for (const sheet of SEASON_SHEETS.filter(
    ({ id, rows, columns }) => rows.from !== 'single' && columns.length > 12 && VIEWS[id] === undefined,
  )) {
    const shown = new Set(viewsByGroups(sheet).flatMap(({ columns = [] }) => columns));
    expect(
      sheet.columns.filter(({ id }) => id !== sheet.key && !shown.has(id)).map(({ id }) => id),
      sheet.id,
    ).toEqual([]);
  }
});
