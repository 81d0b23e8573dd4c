// Builds the package that installs as `dibble`: `npm run package`, then `npm install ./package` elsewhere. One bundled program,
// one bundled module with its declarations, nothing else to fetch. `node ui/script/build-package.mjs FOLDER` builds it there.

import { execFileSync } from 'node:child_process';
import { chmodSync, copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = resolve(process.argv[2] ?? join(root, 'package'));
const { name, version, description, license, engines } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));

// Packages written for require() need one inside an ES module.
const requires =
  "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);";

rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
for (const [entry, file, first] of [
  ['ui/terminal/main.ts', 'dibble.js', `#!/usr/bin/env node\n${requires}`],
  ['ui/script/index.ts', 'index.js', requires],
]) {
  await build({
    entryPoints: [join(root, entry)],
    outfile: join(folder, file),
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    minifySyntax: true,
    minifyWhitespace: true,
    // Node prints the line of the program from which something was thrown that nobody caught.
    lineLimit: 120,
    legalComments: 'linked',
    logLevel: 'error',
    banner: { js: first },
  });
}
chmodSync(join(folder, 'dibble.js'), 0o755);

// The way in names no type but those of one file, which imports nothing: the two are all the declarations there are.
const declarations = mkdtempSync(join(folder, 'types-'));
execFileSync(
  process.execPath,
  [
    join(root, 'node_modules/typescript/bin/tsc'),
    ...['--project', join(root, 'tsconfig.package.json'), '--outDir', declarations],
  ],
  { stdio: ['ignore', 'inherit', 'inherit'] },
);
for (const file of ['index.d.ts', 'open-workbook.d.ts']) {
  const text = readFileSync(join(declarations, 'ui/script', file), 'utf8');
  writeFileSync(join(folder, file), text.replaceAll("./open-workbook.ts'", "./open-workbook.js'"));
}
rmSync(declarations, { recursive: true });

copyFileSync(join(root, 'LICENSE'), join(folder, 'LICENSE'));
writeFileSync(
  join(folder, 'package.json'),
  `${JSON.stringify(
    {
      name,
      version,
      description,
      license,
      type: 'module',
      engines,
      bin: { dibble: './dibble.js' },
      exports: { '.': { types: './index.d.ts', default: './index.js' } },
    },
    undefined,
    2,
  )}\n`,
);
