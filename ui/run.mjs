// Runs a TypeScript program of this project in plain Node: `node ui/run.mjs ui/terminal/main.ts ARGUMENTS`. It joins
// the program's source files into one module, keeps that under node_modules/.cache, and reuses it until a source file
// changes; loading one module takes a fifth of the time that loading the sources and mathjs's 1,000 files takes, and
// the code runs as written, which the benchmark needs. It calls set-up.mjs first, and esbuild when something changed.

import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { withOwnAddress } from './own-address.mjs';
import { setUpPackages } from './set-up.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const sourceFolders = ['engine', 'sheets-templates', 'ui', 'demo', 'tests'];
const cache = join(root, 'node_modules', '.cache', 'dibble');

/** Lets a source file that reads files beside itself find them from inside the joined module. */
const ownAddress = {
  name: 'own-address',
  setup(build) {
    build.onLoad({ filter: /\.ts$/ }, ({ path }) => {
      if (path.includes('node_modules')) return undefined;
      const text = readFileSync(path, 'utf8');
      return text.includes('import.meta.') ? { loader: 'ts', contents: withOwnAddress(text, path) } : undefined;
    });
  },
};

setUpPackages();
const [entry, ...rest] = process.argv.slice(2);
if (entry === undefined) {
  process.stderr.write('Say which program to run: node ui/run.mjs ui/terminal/main.ts\n');
  process.exit(1);
}
const program = resolve(root, entry);
const joined = await joinedModule(program).catch(() => process.exit(1)); // esbuild has said why
process.argv = [process.execPath, program, ...rest];
await import(pathToFileURL(joined).href);

async function joinedModule(path) {
  const name = `${createHash('sha256').update(path).digest('hex').slice(0, 8)}-`;
  const file = join(cache, `${name}${fingerprint(path)}.mjs`);
  if (existsSync(file)) return file;
  mkdirSync(cache, { recursive: true });
  const { build } = await import('esbuild');
  const unfinished = `${file}.${process.pid}`;
  await build({
    entryPoints: [path],
    outfile: unfinished,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'error',
    // Packages written for require() need one inside an ES module.
    banner: {
      js: "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);",
    },
    // The builder of the page and the browser's driver find files beside their own: they are loaded as they stand.
    external: ['vite', 'playwright-core'],
    plugins: [ownAddress],
  });
  renameSync(unfinished, file);
  // Modules of earlier sources go, but not while a program that began a moment ago may still be loading one.
  const tenMinutesAgo = Date.now() - 600_000;
  for (const old of readdirSync(cache).filter((item) => item.startsWith(name))) {
    const made = statSync(join(cache, old), { throwIfNoEntry: false });
    if (made !== undefined && made.mtimeMs < tenMinutesAgo) rmSync(join(cache, old), { force: true });
  }
  return file;
}

/** Changes whenever the program, a source file or an installed package does. */
function fingerprint(program) {
  const hash = createHash('sha256');
  const note = (path) => {
    const found = statSync(path, { throwIfNoEntry: false });
    if (found !== undefined) hash.update(`${path} ${found.mtimeMs} ${found.size}\n`);
  };
  const walk = (folder) => {
    if (!existsSync(folder)) return;
    for (const item of readdirSync(folder, { withFileTypes: true })) {
      const path = join(folder, item.name);
      if (item.isDirectory()) walk(path);
      else if (/\.(ts|tsx|mjs|json|csv)$/.test(item.name)) note(path);
    }
  };
  note(program);
  for (const folder of sourceFolders) walk(join(root, folder));
  hash.update(readFileSync(join(root, 'package-lock.json')));
  return hash.digest('hex').slice(0, 16);
}
