// The terminal's way in: `npm run --silent dibble -- VERB`. Connects run.ts with the process: its words, streams and clock.

import { createInterface } from 'node:readline';
import { civilDay, loadGeneralUnits } from '../../engine/index.ts';
import { earlierTemplate } from '../../sheets-templates/earlier.ts';
import { templateShelf } from '../../sheets-templates/index.ts';
import { reason } from './disk.ts';
import { run } from './run.ts';
import { onOneLine, type World } from './world.ts';

const now = new Date();

const world: World = {
  out: (content) => process.stdout.write(content),
  warn: (line) => process.stderr.write(`${line}\n`),
  lines: () => createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY }),
  input: async () => {
    const chunks: Buffer[] = [];
    for await (const chunk of process.stdin) chunks.push(Buffer.from(chunk));
    return Buffer.concat(chunks);
  },
  today: civilDay(now.getFullYear(), now.getMonth() + 1, now.getDate()),
  now: () => Date.now(),
  templates: async (wanted) => {
    const earlier = wanted === undefined ? undefined : await earlierTemplate(wanted.name, wanted.version);
    return templateShelf(earlier === undefined ? [] : [earlier]);
  },
};

// Whoever reads the output may stop before its end, and a disk may fill: what was to be read is then not whole.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  world.warn(`Standard output can't be written: ${reason(error)}.`);
  process.exit(2);
});
process.stderr.on('error', () => process.exit(2));

try {
  await loadGeneralUnits();
  process.exitCode = await run(process.argv.slice(2), world);
} catch (thrown) {
  const what = thrown instanceof Error ? thrown.message : String(thrown);
  world.warn(onOneLine(`Dibble itself failed (${what}) and wrote nothing: please report it with your command.`));
  process.exitCode = 3;
}
