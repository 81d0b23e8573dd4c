// Joins test files and the engine they test into modules that plain Node loads: one for each test file, and what they
// share once.

import { existsSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { withOwnAddress } from '../../ui/own-address.mjs';

const standIn = fileURLToPath(new URL('./stand-in.mjs', import.meta.url));

/**
 * Lets a source file that reads files beside itself find them from inside a joined module. Every mutant's place counts how
 * often each test passes it, which makes the engine several times slower; once that is known, no more is counted.
 */
const asRun = (counting) => ({
  name: 'as-run',
  setup({ onLoad }) {
    onLoad({ filter: /\.ts$/ }, ({ path }) => {
      const contents = withOwnAddress(readFileSync(path, 'utf8'), path).replace(
        /^(\s*stryCov_\w+ = )cover;$/m,
        counting ? '$&' : '$1function () {};',
      );
      return { loader: 'ts', contents };
    });
  },
});

/**
 * The joined module of each test file (its path from the working folder), under `folder`; joined once for a folder. Of two
 * processes that join at the same time one keeps the other's work.
 */
export async function joinTests(files, folder, counting) {
  if (!existsSync(folder)) {
    const unfinished = `${folder}-${process.pid}`;
    await build({
      absWorkingDir: process.cwd(),
      entryPoints: files.map((file) => ({ in: file, out: file })),
      outdir: unfinished,
      outExtension: { '.js': '.mjs' },
      bundle: true,
      splitting: true,
      format: 'esm',
      platform: 'node',
      packages: 'external',
      alias: { vitest: standIn },
      plugins: [asRun(counting)],
      logLevel: 'error',
    });
    try {
      renameSync(unfinished, folder);
    } catch (error) {
      if (!existsSync(folder)) throw error;
      rmSync(unfinished, { recursive: true });
    }
  }
  return new Map(files.map((file) => [resolve(file), join(resolve(folder), `${file}.mjs`)]));
}
