// The package as others install it: built, put under node_modules of a folder of its own, used there by the example script, the
// program and the type checker.

import { execFileSync, spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'dibble-package-'));
const installed = join(folder, 'node_modules', 'dibble');

function node(...words: string[]): string {
  return execFileSync(process.execPath, words, { cwd: folder, encoding: 'utf8' });
}

beforeAll(() => {
  mkdirSync(join(folder, 'node_modules'));
  node(join(root, 'ui/script/build-package.mjs'), installed);
  node(join(installed, 'dibble.js'), 'new', 'demo', '--out', 'season.json');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('the example opens, edits, asks and saves in ten lines', () => {
  copyFileSync(join(root, 'demo/scripts/spacing.mjs'), join(folder, 'spacing.mjs'));
  expect(readFileSync(join(folder, 'spacing.mjs'), 'utf8').trimEnd().split('\n').length).toBeLessThanOrEqual(10);
  expect(node('spacing.mjs', 'season.json')).toMatch(
    /^Margin: [\d.]+ USD before, [\d.]+ USD with closer onions\.\n\d+ errors to look at\.\n$/,
  );
  const typed = node(join(installed, 'dibble.js'), 'table', 'season.json', 'Plantings', '--json');
  const { columns, rows } = JSON.parse(typed) as { columns: { name: string }[]; rows: unknown[][] };
  const [name, spacing] = ['Planting', 'In-row spacing'].map((one) =>
    columns.findIndex((column) => column.name === one),
  );
  expect(rows.find((row) => row[name ?? 0] === 'Keeper singles')?.[spacing ?? 0]).toBe(5);
});

test('scripts are type-checked against the declarations, and what is refused is one sentence', () => {
  writeFileSync(
    join(folder, 'try.mts'),
    [
      "import { openWorkbook, type Answer, type Value } from 'dibble';",
      "const season = await openWorkbook('season.json');",
      "const answer: Answer = season.ask('SUM(Beds[Length])');",
      "const beds: readonly Readonly<Record<string, Value>>[] = season.rows('Beds');",
      'const copy = season.branch();',
      "copy.add('Beds', { Bed: 'Far', Length: '10 ft' });",
      "const told = [copy.rows('Beds').length - beds.length, season.rows('Beds').length - beds.length, answer.unit];",
      "try { season.set('Beds', 'Nowhere', 'Length', '1 ft'); } catch (thrown) { told.push((thrown as Error).message); }",
      "copy.undo(); told.push(copy.rows('Beds').length - beds.length);",
      'try { copy.save(); } catch (thrown) { told.push((thrown as Error).message); }',
      'console.log(JSON.stringify(told));',
    ].join('\n'),
  );
  symlinkSync(join(root, 'node_modules/@types'), join(folder, 'node_modules/@types'));
  const options = ['--strict', '--module', 'nodenext', '--target', 'es2022', '--types', 'node', '--noEmitOnError'];
  node(join(root, 'node_modules/typescript/bin/tsc'), ...options, 'try.mts');
  const [added, there, unit, refused, undone, unsaved] = JSON.parse(node('try.mjs')) as unknown[];
  expect([added, there, unit, undone]).toEqual([1, 0, 'ft', 0]);
  expect(refused).toMatch(/^season\.json: Beds has no row called “Nowhere”/);
  expect(unsaved).toMatch(/^A branch does not go over the file of its plan/);
});

test('a refusal that a script does not catch is told with a few lines of where, not with the whole program', () => {
  const script =
    "import { openWorkbook } from 'dibble'; (await openWorkbook('season.json')).set('Beds', 'x', 'Lenght', '1 ft');";
  writeFileSync(join(folder, 'misspelt.mjs'), script);
  const { status, stderr } = spawnSync(process.execPath, ['misspelt.mjs'], { cwd: folder, encoding: 'utf8' });
  expect(status).toBe(1);
  expect(stderr).toContain('season.json: Beds has no column called “Lenght”');
  expect(stderr.length).toBeLessThan(2500);
});
