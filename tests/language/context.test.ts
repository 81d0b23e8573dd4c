// Sheets and columns found by name: exactly first, then whatever the case of the letters; and the links of a sheet.

import { expect, test } from 'vitest';
import { findColumn, findTable, linksOf, ownTable } from '../../engine/language/context.ts';
import type { TableShape } from '../../engine/language/typed.ts';
import { TEXT, type ValueType } from '../../engine/values/type.ts';
import { contextOf } from './plan.ts';

function sheet(name: string, ...columns: readonly (readonly [string, ValueType | undefined])[]): TableShape {
  return { name, oneRow: false, key: undefined, columns: columns.map(([label, type]) => ({ name: label, type })) };
}

const link = (table: string): ValueType => ({ kind: 'link', table });
const lower = sheet('beds', ['length', TEXT], ['Length', TEXT]);
const upper = sheet('Beds', ['To', link('BEDS')], ['Away', link('Gone')], ['Note', TEXT], ['Later', undefined]);
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
  expect(ownTable(contextOf({ catalog, table: 'Beds' }))).toBe(upper);
  expect(ownTable(contextOf({ catalog, table: 'Gone' }))).toBe(undefined);
  expect(ownTable(contextOf({ catalog, table: undefined }))).toBe(undefined);
});

test('links lead to sheets that are there; a link to one that is gone is left out', () => {
  expect(linksOf(upper, catalog)).toEqual([{ link: 'To', to: lower }]);
  expect(linksOf(lower, catalog)).toEqual([]);
});
