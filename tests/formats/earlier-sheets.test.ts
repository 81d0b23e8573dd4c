// Files of today's kind that were made from earlier versions of the templates, kept as they were written, with a digest a column of
// what they showed then (fixtures/earlier-sheets/values.json). They open over the sheets they were made from with the same
// figures; that newer sheets are there is told, with what would change, before they are taken.

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readWorkbookFile, upgradeTo, Workbook, writeWorkbookFile } from '../../engine/index.ts';
import { earlierTemplate } from '../../sheets-templates/earlier.ts';
import { templateShelf, todaysTemplate } from '../../sheets-templates/index.ts';
import { type Digest, digestOf } from './digest.ts';

const fixture = (name: string): string =>
  readFileSync(new URL(`../fixtures/earlier-sheets/${name}.json`, import.meta.url), 'utf8');
const VALUES = JSON.parse(fixture('values')) as Readonly<Record<string, Digest>>;

/** Columns that show other figures since a function they call was mended: the ends of what is learned lie above nothing. */
const MENDED = / learned (low|high)$/;

function unmended(digest: Digest | undefined): unknown {
  const columns = Object.entries(digest ?? {}).map(([sheet, given]) => {
    return [sheet, Object.fromEntries(Object.entries(given).filter(([column]) => !MENDED.test(column)))] as const;
  });
  return Object.fromEntries(columns);
}

describe.each([
  ['season', 2],
  ['season', 3],
  ['onions', 1],
  ['onions', 2],
])('%s, version %i', (name, version) => {
  async function opened(): Promise<Workbook> {
    const earlier = await earlierTemplate(name, version);
    const templates = templateShelf(earlier === undefined ? [] : [earlier], [await todaysTemplate(name)]);
    const read = readWorkbookFile(fixture(`${name}-${version}`), templates);
    if (!read.ok) throw new Error(read.why);
    let ids = 0;
    const workbook = Workbook.open(read.data, {
      newId: () => `n${++ids}`,
      now: () => ++ids,
      actor: 'tester',
      templates,
    });
    if (workbook === undefined) throw new Error('The template is not known.');
    return workbook;
  }

  test('opens with the figures it had, and is saved as it was', async () => {
    const workbook = await opened();
    expect(workbook.document.template.version).toBe(version);
    expect(unmended(digestOf(workbook))).toEqual(unmended(VALUES[`${name}-${version}`]));
    expect(JSON.parse(writeWorkbookFile(workbook.data()))).toEqual(JSON.parse(fixture(`${name}-${version}`)));
  });

  test('is told what newer sheets would change, and takes them with nothing typed lost', async () => {
    const workbook = await opened();
    const newer = (await todaysTemplate(name))?.version ?? Number.NaN;
    const upgrade = upgradeTo(workbook, newer);
    expect(upgrade?.formulas.length).toBeGreaterThan(0);
    const done = workbook.do([{ command: 'use template', version: newer }], { code: 'upgrade', parts: {} });
    expect(done.refused).toBe(false);
    expect(workbook.data().rows).toEqual((await opened()).data().rows);
    workbook.undo();
    expect(JSON.parse(writeWorkbookFile(workbook.data()))).toEqual(JSON.parse(fixture(`${name}-${version}`)));
  });
});
