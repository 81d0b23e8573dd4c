// The pictures of rows and the cards name columns by id: each is there in the season's sheets, and a workbook without one has no
// such picture.

import { expect, test } from 'vitest';
import { sheetView } from '../../engine/index.ts';
import { PANELS } from '../../ui/browser/panels/list.ts';
import { hasNeeds } from '../../ui/browser/panels/panel.ts';
import { TELLING } from '../../ui/browser/phone/card-summary.ts';
import { columnOf } from '../../ui/browser/store/sheets.ts';
import { opened } from '../book.ts';
import { demoBook } from '../browser/workbook-page.ts';

const { workbook } = demoBook();

/** Those of the columns that the demo farm lacks. */
function missing(columns: Readonly<Record<string, readonly string[]>>): readonly string[] {
  return Object.entries(columns).flatMap(([sheet, ids]) => {
    const view = sheetView(workbook, sheet);
    return ids.filter((id) => columnOf(view, id) === undefined).map((id) => `${sheet} / ${id}`);
  });
}

test('every column that a picture needs is there', () => {
  expect(PANELS.flatMap(({ needs }) => missing(needs))).toEqual([]);
  expect(PANELS.every((panel) => hasNeeds(workbook, panel))).toBe(true);
});

test('a picture needs a column of the sheet whose rows it shows', () => {
  for (const { name, of, needs } of PANELS) expect(needs[of]?.length, name).toBeGreaterThan(0);
});

test('every column that tells a card from others is there', () => {
  expect(missing(TELLING)).toEqual([]);
});

test('a workbook without these sheets has no pictures', () => {
  const { workbook: other } = opened({
    title: 'Other',
    units: 'si',
    currency: 'EUR',
    today: 0,
    sheets: [
      {
        name: 'Beds',
        question: '',
        about: '',
        rows: { from: 'entry' },
        key: 'Bed',
        columns: [
          { name: 'Bed', type: { type: 'text' }, group: '', note: '', role: 'entered', formula: '', required: true },
        ],
        checks: [],
        cautions: [],
      },
    ],
    rows: {},
  });
  expect(PANELS.filter((panel) => hasNeeds(other, panel))).toEqual([]);
});
