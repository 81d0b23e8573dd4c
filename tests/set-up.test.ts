// The set-up that every command begins with: which Node it takes, that it says nothing where nothing is missing, and
// that a program run through it gets its arguments, its streams and its exit status.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { chromiumPath, headlessChromiumPath, nodeIsNewEnough } from '../ui/set-up.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'dibble-set-up-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (args: readonly string[], input = '') =>
  spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8', input });

// The versions are those that package.json's "engines" and vite's own accept.
test.each([
  ['18.20.4', false],
  ['20.18.3', false],
  ['20.19.0', true],
  ['21.7.3', false],
  ['22.11.0', false],
  ['22.12.0', true],
  ['23.11.0', false],
  ['24.0.0', true],
  ['26.1.0', true],
])('Node %s is new enough: %s', (version, enough) => {
  expect(nodeIsNewEnough(version)).toBe(enough);
});

test('where nothing is missing it says nothing', () => {
  const { stdout, stderr, status } = run(['ui/set-up.mjs', '--with-browser']);
  expect({ stdout, stderr, status }).toEqual({ stdout: '', stderr: '', status: 0 });
});

test('a Chromium that is not there is said in one sentence', () => {
  const { stdout, stderr, status } = spawnSync(process.execPath, ['ui/set-up.mjs', '--with-browser'], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, CHROMIUM_PATH: join(folder, 'no-such-program') },
  });
  expect({ stdout, status }).toEqual({ stdout: '', status: 1 });
  expect(stderr).toMatch(/^The browser tests need Chromium: .*CHROMIUM_PATH.*\.\n$/);
  expect(chromiumPath()).toMatch(/chrom/i);
  expect(headlessChromiumPath()).toMatch(/chrom/i);
});

test('a TypeScript program is run with its arguments, input, file address and exit status, afresh after a change', () => {
  const program = join(folder, 'program.ts');
  const text = (word: string) => `
    const wanted: readonly string[] = process.argv.slice(2);
    for await (const piece of process.stdin) process.stdout.write(String(piece).toUpperCase());
    console.log('${word}', wanted.join('|'), import.meta.url, process.argv[1]);
    process.exitCode = 2;
  `;
  writeFileSync(program, text('first'));
  const first = run(['ui/run.mjs', program, 'two words', '--json'], 'input\n');
  expect(first.stderr).toBe('');
  expect(first.stdout).toBe(`INPUT\nfirst two words|--json file://${program} ${program}\n`);
  expect(first.status).toBe(2);
  writeFileSync(program, text('second'));
  expect(run(['ui/run.mjs', program]).stdout).toMatch(/^second /);
});

test('a program that cannot be read fails with the place of the fault', () => {
  const program = join(folder, 'broken.ts');
  writeFileSync(program, 'const x = ;\n');
  const { stdout, stderr, status } = run(['ui/run.mjs', program]);
  expect({ stdout, status }).toEqual({ stdout: '', status: 1 });
  expect(stderr).toContain('broken.ts:1:10');
});
