// Sheets and columns found by name: exactly first, then whatever the case of the letters; and the links of a sheet.

import { expect, test } from 'vitest';
import { findColumn, findTable, linksOf, ownTable } from '../../engine/language/context.ts';
import type { TableShape } from '../../engine/language/typed.ts';
import { TEXT } from '../../engine/values/type.ts';
import { column, contextOf, link, sheet } from './plan.ts';

const lower: TableShape = {
  ...sheet('beds', [
    { id: 'small', name: 'length', type: TEXT },
    { id: 'capital', name: 'Length', type: TEXT },
  ]),
  id: 'lower',
};
const upper: TableShape = {
  ...sheet('Beds', [
    column('To', { kind: 'link', table: 'lower' }),
    column('Away', link('Gone')),
    column('Note', TEXT),
    column('Later', undefined),
  ]),
  id: 'upper',
};
const catalog = { tables: [lower, upper] };

test.each([
  ['beds', lower],
  ['Beds', upper],
  ['BEDS', lower],
  ['bed', undefined],
  ['', undefined],
])('the sheet %j', (name, found) => {
  expect(findTable(catalog, name)).toBe(found);
});

test.each([
  ['length', lower.columns[0]],
  ['Length', lower.columns[1]],
  ['LENGTH', lower.columns[0]],
  ['lengths', undefined],
])('the column %j', (name, found) => {
  expect(findColumn(lower, name)).toBe(found);
});

test('the sheet a formula stands in, where it stands in one that is there', () => {
  expect(ownTable(contextOf({ catalog, table: 'upper' }))).toBe(upper);
  expect(ownTable(contextOf({ catalog, table: 'Beds' }))).toBe(undefined);
  expect(ownTable(contextOf({ catalog, table: undefined }))).toBe(undefined);
});

test('links lead to sheets that are there; a link to one that is gone is left out', () => {
  expect(linksOf(upper, catalog)).toEqual([{ link: 'To', to: lower }]);
  expect(linksOf(lower, catalog)).toEqual([]);
});
