// Ids of a template are for ever: what files were made from once is in today's template too, or known by name as gone, so that
// nobody's cells are kept aside by accident.

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SEASON } from '../../sheets-templates/index.ts';
import { onions } from '../../sheets-templates/onions.ts';
import { seedlings } from '../../sheets-templates/seedlings.ts';

interface Archived {
  readonly name: string;
  readonly version: number;
  readonly sheets: readonly { readonly id: string; readonly columns: readonly { readonly id: string }[] }[];
  readonly rows: Readonly<Record<string, readonly { readonly id: string }[]>>;
}

/** Left out on purpose, and why. Cells typed there are kept aside and shown. */
const GONE: ReadonlyMap<string, string> = new Map([
  ['farm/weeding', 'one rate for all crops; each crop has its own weedings now'],
  ['farm/harvest-work', 'one rate for all crops; each crop has its own rates of picking, washing and packing now'],
  ['crops/latest-sowing-in', 'no formula read it; the latest date follows from warmth and days'],
  ['crops/day-length-response', 'no formula read it'],
  ['plantings/field-hours', 'hours are told by task now'],
  ['storage/taken-each-week', 'what is taken follows from demand now'],
  ['store-by-week/taken', 'what is taken follows from demand now'],
]);

const TODAY = [SEASON, onions(), seedlings()];

const folder = new URL('../../sheets-templates/archive/', import.meta.url);

describe.each(readdirSync(folder))('%s', (file) => {
  const archived = JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as Archived;
  const template = TODAY.find(({ name }) => name === archived.name) ?? SEASON;
  const today = new Map(template.sheets.map((sheet) => [sheet.id, new Set(sheet.columns.map(({ id }) => id))]));

  it('has sheets and columns that are there today', () => {
    const missing = archived.sheets.flatMap((sheet) =>
      today.has(sheet.id)
        ? sheet.columns.map(({ id }) => id).flatMap((id) => (today.get(sheet.id)?.has(id) ? [] : [`${sheet.id}/${id}`]))
        : [sheet.id],
    );
    expect(missing.filter((place) => !GONE.has(place))).toEqual([]);
  });

  it('has nothing on the list of what is gone that is there after all', () => {
    const back = [...GONE.keys()].filter((place) => {
      const [sheet = '', column = ''] = place.split('/');
      return today.get(sheet)?.has(column) === true;
    });
    expect(back).toEqual([]);
  });

  it('shipped rows that are shipped today', () => {
    const missing = Object.entries(archived.rows).flatMap(([sheet, rows]) => {
      const shipped = new Set((template.rows[sheet] ?? []).map(({ id }) => id));
      return rows.flatMap(({ id }) => (shipped.has(id) ? [] : [`${sheet}/${id}`]));
    });
    expect(missing.filter((place) => !GONE.has(place))).toEqual([]);
  });
});
