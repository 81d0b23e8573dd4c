// The world of a Node process: its streams, its clock, and the templates it can fetch. The terminal's way in and scripts that
// open workbooks use it.

import { createInterface } from 'node:readline';
import { civilDay } from '../../engine/index.ts';
import { earlierTemplate } from '../../sheets-templates/earlier.ts';
import { templateShelf, todaysTemplate } from '../../sheets-templates/index.ts';
import type { World } from './world.ts';

export function processWorld(): World {
  const now = new Date();
  return {
    out: (content) => process.stdout.write(content),
    warn: (line) => process.stderr.write(`${line}\n`),
    // Back to the first column, and what stood there is wiped out.
    ...(process.stderr.isTTY ? { progress: (line = '') => void process.stderr.write(`\r${line}\x1b[K`) } : {}),
    lines: () => createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY }),
    input: async () => {
      const chunks: Buffer[] = [];
      for await (const chunk of process.stdin) chunks.push(Buffer.from(chunk));
      return Buffer.concat(chunks);
    },
    today: civilDay(now.getFullYear(), now.getMonth() + 1, now.getDate()),
    now: () => Date.now(),
    templates: async (wanted) => {
      if (wanted === undefined) return templateShelf();
      const earlier = await earlierTemplate(wanted.name, wanted.version);
      return templateShelf(earlier === undefined ? [] : [earlier], [await todaysTemplate(wanted.name)]);
    },
  };
}
