// Where a script may save to, run once and run again.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { writeWorkbookFile } from '../../engine/index.ts';
import { openWorkbook } from '../../ui/script/index.ts';
import { seasonOf } from '../sheets/season.ts';

let folder: string;
let farm: string;
let out: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'dibble-saving-'));
  [farm, out] = [join(folder, 'farm.json'), join(folder, 'out.json')];
  const season = seasonOf({ Beds: [{ Bed: 'North 1', Length: '30 ft' }] }, {}, { units: 'us' });
  writeFileSync(farm, writeWorkbookFile(season.book.workbook.data()));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('a script that is run again writes over what it wrote once, if it says so', async () => {
  const run = async (over: boolean, length: string) => {
    const farmNow = await openWorkbook(farm);
    farmNow.set('Beds', 'North 1', 'Length', length);
    farmNow.save(out, { over });
  };
  await run(false, '40 ft');
  await expect(run(false, '41 ft')).rejects.toThrow(
    `${out} is there already: name a new file, or pass { over: true } to write over it.`,
  );
  await run(true, '42 ft');
  expect((await openWorkbook(out)).read('Beds', 'North 1', 'Length').shown).toBe('42 ft');
});

test('what was written from here is written again, and not what somebody else changed since', async () => {
  const farmNow = await openWorkbook(farm);
  const branch = farmNow.branch();
  for (const length of ['40 ft', '41 ft']) {
    branch.set('Beds', 'North 1', 'Length', length);
    branch.save(out);
  }
  expect((await openWorkbook(out)).read('Beds', 'North 1', 'Length').shown).toBe('41 ft');
  writeFileSync(out, `${readFileSync(out, 'utf8')}\n`);
  expect(() => branch.save(out)).toThrow('was changed by something else meanwhile');
});

test('a branch goes over the file of its plan only where that is said', async () => {
  const before = readFileSync(farm, 'utf8');
  const branch = (await openWorkbook(farm)).branch();
  branch.set('Beds', 'North 1', 'Length', '40 ft');
  expect(() => branch.save()).toThrow(
    'A branch does not go over the file of its plan: save it under another name, or pass { over: true }.',
  );
  expect(readFileSync(farm, 'utf8')).toBe(before);
  branch.save(farm, { over: true });
  expect((await openWorkbook(farm)).read('Beds', 'North 1', 'Length').shown).toBe('40 ft');
});

test('a name that is near none is told where names are had in a script', async () => {
  const farmNow = await openWorkbook(farm);
  expect(() => farmNow.read('Beds', 'North 1', 'Zzzzqq')).toThrow('columns("Beds") gives its columns.');
  expect(() => farmNow.read('Beds', 'Zzzzqq', 'Length')).toThrow('rows("Beds") gives its rows.');
});
