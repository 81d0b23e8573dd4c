// Writes the page's service worker beside the built page: which parts there are, and a name for just this build made of what is
// in them. vite.config.ts calls it.

import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { transform } from 'esbuild';
import type { Plugin } from 'vite';

const WORKER = 'service-worker.js';
/** Read by other programs, and never by the page. */
const NOT_KEPT: readonly string[] = [WORKER, 'bill-of-materials.json'];

export function offlineParts(source: string): Plugin {
  let folder = '';
  let building = false;
  return {
    name: 'offline-parts',
    // What is served from source while it is written has no parts to keep.
    config: (_, { command }) => ({ define: { 'import.meta.env.BUILT': JSON.stringify(command === 'build') } }),
    configResolved: ({ root, build, command }) => {
      building = command === 'build';
      folder = join(root, build.outDir);
      if (build.outDir.startsWith(sep)) folder = build.outDir;
    },
    closeBundle: {
      order: 'post',
      sequential: true,
      handler: async () => {
        if (!building) return;
        const parts = filesIn(folder).filter((part) => !NOT_KEPT.includes(part));
        const sum = createHash('sha256');
        for (const part of parts) sum.update(part).update(readFileSync(join(folder, part)));
        const { code } = await transform(readFileSync(source, 'utf8'), {
          loader: 'ts',
          format: 'iife',
          target: 'es2022',
        });
        const build = JSON.stringify(sum.digest('hex').slice(0, 12));
        const words = `const BUILD = ${build};\nconst PARTS = ${JSON.stringify(parts)};\n`;
        writeFileSync(join(folder, WORKER), words + code);
      },
    },
  };
}

/** Every file of a folder, as addresses within it, in an order that doesn't change. */
function filesIn(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}
