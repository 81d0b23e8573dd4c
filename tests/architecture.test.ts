// The house keeps its rules: which way imports run, what the engine may touch, what no file may hold. Each rule is
// also tried on made-up files that break it, so that a rule which finds nothing is known to be able to.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import * as rules from './architecture/rules.ts';
import { type Source, sourceOf, sourcesUnder } from './architecture/sources.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const folders = ['engine', 'sheets-templates', 'ui', 'demo', 'tests'].filter((name) => existsSync(join(root, name)));
const settings = readdirSync(root).filter((name) => name.endsWith('.ts'));
const project: readonly Source[] = [
  ...sourcesUnder(root, folders),
  ...settings.map((name) => sourceOf(name, readFileSync(join(root, name), 'utf8'))),
];
const onDisk = (path: string): boolean => existsSync(join(root, path));

/** Made-up files, written as path and text. */
const made = (files: Readonly<Record<string, string>>): readonly Source[] =>
  Object.entries(files).map(([path, text]) => sourceOf(path, text));
const anywhere = (): boolean => true;

test('the project is read', () => {
  const paths = project.map(({ path }) => path);
  expect(paths).toContain('vite.config.ts');
  expect(paths).toContain('engine/values/civil.ts');
  expect(paths).toContain('tests/architecture.test.ts');
});

describe('imports run one way', () => {
  test('in the project', () => expect(rules.oneWay(project, onDisk)).toEqual([]));

  test.each([
    ['engine/units/table.ts', '../values/type.ts', 'engine/values/'],
    ['engine/values/type.ts', '../language/tree.ts', 'engine/language/'],
    ['engine/language/parse.ts', '../agronomy/spacing.ts', 'engine/agronomy/'],
    ['engine/agronomy/spacing.ts', '../language/tree.ts', 'engine/language/'],
    ['engine/agronomy/spacing.ts', '../units/unit.ts', 'engine/units/'],
    ['engine/functions/list.ts', '../calculation/frame.ts', 'engine/calculation/'],
    ['engine/calculation/frame.ts', '../schema/own.ts', 'engine/schema/'],
    ['engine/schema/own.ts', '../document/ids.ts', 'engine/document/'],
    ['engine/document/ids.ts', '../commands/cells.ts', 'engine/commands/'],
    ['engine/commands/cells.ts', '../queries/rows.ts', 'engine/queries/'],
    ['engine/queries/rows.ts', '../formats/csv.ts', 'engine/formats/'],
    ['engine/formats/csv.ts', '../index.ts', 'engine/index.ts'],
    ['engine/index.ts', '../sheets-templates/beds.ts', 'sheets-templates/'],
    ['sheets-templates/beds.ts', '../ui/browser/grid.ts', 'ui/'],
    ['ui/browser/grid.ts', '../../tests/help.ts', 'tests/'],
    ['ui/scratch/room.ts', '../browser/grid.ts', 'ui/'],
    ['sheets-templates/beds.ts', '../ui/scratch/room.ts', 'ui/scratch/'],
    ['engine/queries/rows.ts', '../../ui/scratch/room.ts', 'ui/scratch/'],
  ])('%s may not import %s', (path, written, room) => {
    const [finding, ...more] = rules.oneWay(made({ [path]: `import { x } from '${written}';` }), anywhere);
    expect(finding).toContain(`${path}:1 imports ${written}`);
    expect(finding).toContain(`may not import ${room}`);
    expect(more).toEqual([]);
  });

  test.each([
    "import type { x } from '../document/ids.ts';",
    "export { x } from '../document/ids.ts';",
    "export * from '../document/ids.ts';",
    "const x = await import('../document/ids.ts');",
    "let x: import('../document/ids.ts').Ids;",
  ])('written as %s', (text) => {
    expect(rules.oneWay(made({ 'engine/values/a.ts': text }), anywhere)).toHaveLength(1);
  });

  test('downwards is free, and a file that is not there is found', () => {
    const down = { 'engine/formats/csv.ts': "import { x } from '../values/type.ts';\nimport './inner/part.ts';" };
    expect(rules.oneWay(made(down), anywhere)).toEqual([]);
    const missing = { 'engine/formats/csv.ts': "import { x } from '../values/type';" };
    expect(rules.oneWay(made(missing), (path) => path.endsWith('.ts'))).toEqual([
      'engine/formats/csv.ts:1 imports ../values/type, which is no file',
    ]);
  });
});

describe('no circle between files', () => {
  test('in the project', () => expect(rules.circles(project)).toEqual([]));

  test('a circle of types counts, and is named once', () => {
    const round = made({
      'engine/values/a.ts': "import { b } from './b.ts';",
      'engine/values/b.ts': "import type { C } from './c.ts';",
      'engine/values/c.ts': "import './a.ts';",
      'engine/values/d.ts': "import './a.ts';",
    });
    expect(rules.circles(round)).toEqual([
      'engine/values/a.ts -> engine/values/b.ts -> engine/values/c.ts -> engine/values/a.ts',
    ]);
  });
});

describe('outside the engine only its public face is imported', () => {
  test('in the project', () => expect(rules.publicFace(project)).toEqual([]));

  test('an inner file is found, save from a test', () => {
    const files = made({
      'ui/browser/grid.ts': "import { x } from '../../engine/values/type.ts';",
      'ui/browser/list.ts': "import { x } from '../../engine/index.ts';",
      'tests/values/type.test.ts': "import { x } from '../../engine/values/type.ts';",
    });
    expect(rules.publicFace(files)).toHaveLength(1);
    expect(rules.publicFace(files)[0]).toContain('ui/browser/grid.ts:1');
  });
});

describe('the engine stands alone', () => {
  test('in the project', () => expect(rules.engineStandsAlone(project)).toEqual([]));

  test.each([
    ['engine/values/a.ts', "import { create } from 'mathjs';", 1],
    ['engine/units/a.ts', "import { create } from 'mathjs';", 1],
    ['engine/units/general-units.ts', "import { create } from 'mathjs';", 0],
    ['engine/units/a.ts', "import Papa from 'papaparse';", 1],
    ['engine/formats/a.ts', "import Papa from 'papaparse';", 1],
    ['engine/formats/a.ts', "import { readFileSync } from 'node:fs';", 1],
    ['engine/units/a.ts', "import { create } from 'mathjs-like';", 1],
    ['engine/formats/a.ts', "import crops from '../../demo/crops.json';", 1],
  ])('%s: %s', (path, text, findings) => {
    expect(rules.engineStandsAlone(made({ [path]: text }))).toHaveLength(findings);
  });
});

describe('another spreadsheet engine runs on scratch papers alone', () => {
  test('in the project', () => expect(rules.scratchAlone(project)).toEqual([]));

  test.each([
    ['ui/scratch/room.ts', 0],
    ['tests/differential/a.test.ts', 0],
    ['ui/browser/grid.ts', 1],
    ['engine/values/a.ts', 1],
    ['sheets-templates/beds.ts', 1],
  ])('%s', (path, findings) => {
    expect(rules.scratchAlone(made({ [path]: "import { HyperFormula } from 'hyperformula';" }))).toHaveLength(findings);
  });
});

describe('the engine reads no screen, file, clock or chance', () => {
  test('in the project', () => expect(rules.engineIsPure(project)).toEqual([]));

  test.each([
    ['const now = Date.now();', 1],
    ['const now = new Date(2027, 1, 1);', 1],
    ['const x = Math.random();', 1],
    ['setTimeout(() => {}, 1);', 1],
    ['const title = document.title;', 1],
    ['const home = process.env.HOME;', 1],
    ["const f = globalThis['fetch'];", 1],
    ['console.log(1);', 1],
    ['const name = { Date: 1 }.Date;', 0],
    ['export function read(document: string) { return document.length; }', 0],
    ['const { history } = workbook; history.push(1);', 0],
    ['interface Row { readonly Date: number }', 0],
    ['const text = "new Date() and Math.random()"; // Date.now()', 0],
  ])('%s', (text, findings) => {
    expect(rules.engineIsPure(made({ 'engine/values/a.ts': text }))).toHaveLength(findings);
  });
});

describe('types are honest and no code is made from text', () => {
  test('in the project', () => expect(rules.honestTypes(project)).toEqual([]));

  test.each([
    ['let x: any;', 1],
    ['const x = y as any;', 1],
    ['function f(list: any[]) {}', 1],
    ['const x = list[0]!;', 1],
    ['const x = y as unknown as Row;', 1],
    ['const x = (y as unknown) as Row;', 1],
    ["eval('1 + 1');", 1],
    ["const f = new Function('return 1');", 1],
    ["const f = Function('return 1');", 1],
    ['element.innerHTML = name;', 1],
    ["element.insertAdjacentHTML('beforeend', name);", 1],
    ['// @ts-ignore\nconst x = 1;', 1],
    ['const any = !wrong; const text = "as any"; const x: unknown = y as Row;', 0],
  ])('%s', (text, findings) => {
    expect(rules.honestTypes(made({ 'ui/browser/a.ts': text }))).toHaveLength(findings);
  });
});

test('markup made from text is found in a part of the page too', () => {
  const files = made({ 'ui/browser/a.tsx': 'const part = <p dangerouslySetInnerHTML={given} />;' });
  expect(rules.honestTypes(files)).toEqual(['ui/browser/a.tsx:1 has markup made from text, dangerouslySetInnerHTML']);
});

describe('every engine file begins with a comment', () => {
  test('in the project', () => expect(rules.opensWithComment(project)).toEqual([]));

  test('one that does not is found', () => {
    const files = made({
      'engine/values/a.ts': 'const x = 1; // a comment',
      'engine/values/b.ts': '// What it holds.\n',
    });
    expect(rules.opensWithComment(files)).toEqual([
      'engine/values/a.ts does not begin with a comment that says what it holds',
    ]);
  });
});

describe('no file is too long to read', () => {
  test('in the project', () => {
    const long = rules.longerThan(300, project);
    if (long.length > 0) console.info(`Long, though allowed:\n${long.join('\n')}`);
    expect(rules.longerThan(600, project)).toEqual([]);
  });

  test('600 lines pass and 601 do not', () => {
    const files = made({ 'ui/a.ts': '\n'.repeat(600), 'ui/b.ts': '\n'.repeat(601) });
    expect(rules.longerThan(600, files)).toEqual(['ui/b.ts has 601 lines, more than 600']);
  });
});

describe('no test is left out', () => {
  test('in the project', () => expect(rules.noTestLeftOut(project)).toEqual([]));

  test.each([
    ["test.skip('x', () => {});", 1],
    ["it.only('x', () => {});", 1],
    ["describe.todo('x');", 1],
    ["describe.concurrent.skip('x', () => {});", 1],
    ["test.each([1]).only('x', () => {});", 1],
    ["test.skipIf(true)('x', () => {});", 1],
    ["xit('x', () => {});", 1],
    ["test('x', () => { list.skip(2); });", 0],
  ])('%s', (text, findings) => {
    expect(rules.noTestLeftOut(made({ 'tests/a.test.ts': text }))).toHaveLength(findings);
  });
});
