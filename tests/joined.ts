// mathjs is a thousand small files, and every test file that opens a workbook would load them all. For tests it is joined
// into one file first, kept beside the installed packages under its version.

import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));

/** What stands in for 'mathjs' in tests: the path of the joined file, made where it isn't there yet. */
export function joinedMathjs(): string {
  const manifest: unknown = JSON.parse(readFileSync(`${root}node_modules/mathjs/package.json`, 'utf8'));
  const version =
    typeof manifest === 'object' && manifest !== null && 'version' in manifest ? String(manifest.version) : 'any';
  const file = `${root}node_modules/.cache/dibble-tests/mathjs-${version}.mjs`;
  if (!existsSync(file)) {
    buildSync({
      stdin: { contents: "export * from 'mathjs';", resolveDir: root },
      bundle: true,
      format: 'esm',
      platform: 'node',
      outfile: file,
    });
  }
  return file;
}
