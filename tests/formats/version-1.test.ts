// Files of the first version, kept as they were written: the demo farm, a season edited with own columns, formulas and units,
// and an empty one. They open over the template they were made from with every value that the first Dibble showed
// (fixtures/version-1/values.json, a digest a column of what it worked out); taking today's template loses nothing typed.

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  earlierReader,
  readWorkbookFile,
  type TemplateShelf,
  Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { earlierTemplate } from '../../sheets-templates/earlier.ts';
import { SEASON, templateShelf } from '../../sheets-templates/index.ts';
import { type Digest, digestOf } from './digest.ts';

const fixture = (name: string): string =>
  readFileSync(new URL(`../fixtures/version-1/${name}.json`, import.meta.url), 'utf8');
const VALUES = JSON.parse(fixture('values')) as Readonly<Record<string, Digest>>;
const FILES = ['demo', 'edited-season', 'empty-season'];
const first = await earlierTemplate('season', 1);
const TEMPLATES: TemplateShelf = templateShelf(first === undefined ? [] : [first]);
const reader = await earlierReader({ name: 'season', version: 1 });

let ids = 0;
const WORLD = { newId: () => `n${++ids}`, now: () => ++ids, actor: 'tester', templates: TEMPLATES };

function open(text: string): Workbook {
  const read = readWorkbookFile(text, TEMPLATES, reader);
  if (!read.ok) throw new Error(read.why);
  expect(read.notes).toEqual([]);
  const workbook = Workbook.open(read.data, WORLD);
  if (workbook === undefined) throw new Error('no template');
  return workbook;
}

test('what reads such a file is fetched for it alone, and without it the file is not half read', async () => {
  expect(await earlierReader({ name: 'season', version: 2 })).toBeUndefined();
  expect(await earlierReader(undefined)).toBeUndefined();
  expect(readWorkbookFile(fixture('demo'), TEMPLATES)).toEqual({ ok: false, why: expect.stringMatching(/try again/) });
});

/** Everything typed, where it stands or is kept aside: 'sheet row column' and the content. */
function typed(workbook: Workbook): ReadonlySet<string> {
  const { document } = workbook;
  const found = new Set<string>();
  for (const sheet of document.program.sheets) {
    for (const slot of document.frame.rows(sheet.table)) {
      const row = document.rowIdOf(sheet.id, slot) ?? '';
      for (const column of sheet.columns) {
        const content = column.role === 'made' ? null : document.typedAt(column, slot);
        if (content !== null) found.add(JSON.stringify([sheet.id, row, column.id, content]));
      }
    }
  }
  for (const sheet of document.shelf.sheets())
    for (const row of document.shelf.rows(sheet))
      for (const [column, content] of document.shelf.cells(sheet, row))
        found.add(JSON.stringify([sheet, row, column, content]));
  return found;
}

/** What a person typed or changed: not what the template ships. */
function own(workbook: Workbook): readonly string[] {
  const { rows, aside } = workbook.data();
  const list: string[] = [];
  for (const [sheet, given] of Object.entries(rows)) {
    for (const { id, cells } of given)
      for (const [column, content] of Object.entries(cells))
        if (content !== null) list.push(JSON.stringify([sheet, id, column, content]));
  }
  for (const [sheet, byRow] of Object.entries(aside))
    for (const [row, cells] of Object.entries(byRow))
      for (const [column, content] of Object.entries(cells)) list.push(JSON.stringify([sheet, row, column, content]));
  return list;
}

describe.each(FILES)('%s', (name) => {
  test('opens with every value it had', () => {
    expect(digestOf(open(fixture(name)))).toEqual(VALUES[name]);
  });

  test('is a file of today when it is saved, small, and opens to the same again', () => {
    const before = open(fixture(name));
    const text = writeWorkbookFile(before.data());
    expect(text).toContain('"version": 2');
    expect(text.length).toBeLessThan(100_000);
    const after = open(text);
    expect(writeWorkbookFile(after.data())).toBe(text);
    expect(digestOf(after)).toEqual(VALUES[name]);
  });

  test('keeps everything typed when today’s template is taken, and is as before when that is taken back', () => {
    const workbook = open(fixture(name));
    const before = writeWorkbookFile(workbook.data());
    const wanted = own(workbook);
    const done = workbook.do([{ command: 'use template', version: SEASON.version }], { code: 'upgrade', parts: {} });
    expect(done.refused).toBe(false);
    const kept = typed(workbook);
    expect(wanted.filter((one) => !kept.has(one))).toEqual([]);
    workbook.undo();
    expect(writeWorkbookFile(workbook.data())).toBe(before);
    expect(digestOf(workbook)).toEqual(VALUES[name]);
  });
});

test('every formula of an earlier template still checks', () => {
  const workbook = open(fixture('empty-season'));
  const broken = workbook.document.program.sheets.flatMap(({ name, columns, checks }) => [
    ...columns.flatMap((column) => (column.diagnostic === undefined ? [] : [`${name} / ${column.name}`])),
    ...checks.flatMap(({ check, diagnostic }) => (diagnostic === undefined ? [] : [`${name}: ${check.name}`])),
  ]);
  expect(broken).toEqual([]);
});
