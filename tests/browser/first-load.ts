// How much JavaScript the built page fetches before it can be used: the script of index.html and all that it imports in turn, but
// not what it fetches later. In bytes as sent, compressed with gzip.

import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';

export interface FirstLoad {
  /** Paths of the files within the folder, in the order in which they are found. */
  readonly files: readonly string[];
  readonly bytes: number;
}

/** Measures a folder that vite built. */
export function measureFirstLoad(folder: string): FirstLoad {
  const page = readFileSync(join(folder, 'index.html'), 'utf8');
  const waiting = [...page.matchAll(/<script[^>]*\ssrc="([^"]+\.js)"/g)].map(([, path = '']) => join(path));
  const files: string[] = [];
  let bytes = 0;
  for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
    if (files.includes(path)) continue;
    files.push(path);
    const text = readFileSync(join(folder, path), 'utf8');
    bytes += gzipSync(text, { level: 9 }).length;
    for (const imported of importsOf(text)) waiting.push(join(dirname(path), imported));
  }
  return { files, bytes };
}

/** What a built module imports at once: `import"./a.js"`, `import{a as b}from"./a.js"`, `export*from"./a.js"`. */
function importsOf(text: string): readonly string[] {
  return [...text.matchAll(/(?:\bfrom|\bimport)\s*["'](\.[^"']+\.js)["']/g)].map(([, path = '']) => path);
}
