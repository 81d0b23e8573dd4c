// The terminal's way in: `npm run --silent dibble -- VERB`. Connects run.ts with the process: its words, streams and clock.

import { setFlagsFromString } from 'node:v8';
import { isMainThread } from 'node:worker_threads';
import { loadGeneralUnits, loadLeftOut } from '../../engine/index.ts';
import { reason } from './disk.ts';
import { drawnHere, threadsOf } from './draws-beside.ts';
import { processWorld } from './process-world.ts';
import { run } from './run.ts';
import { onOneLine } from './world.ts';

// A command is over before machine code made for its functions would pay: without this a third of its work is making some. The
// flag is the whole process's: a thread that begins later would take back what long work asked for (draws-beside.ts).
if (isMainThread) setFlagsFromString('--interrupt-budget=1000000');

// Where this module itself stands, whatever sources it was joined from.
const { url: program } = import.meta;
const world = { ...processWorld(), threads: threadsOf(program) };

// Whoever reads the output may stop before its end, and a disk may fill: what was to be read is then not whole.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  world.warn(`Standard output can't be written: ${reason(error)}.`);
  process.exit(2);
});
process.stderr.on('error', () => process.exit(2));

try {
  if (!(await drawnHere(world))) {
    await Promise.all([loadGeneralUnits(), loadLeftOut()]);
    process.exitCode = await run(process.argv.slice(2), world);
  }
} catch (thrown) {
  const what = thrown instanceof Error ? thrown.message : String(thrown);
  world.warn(onOneLine(`Dibble itself failed (${what}) and wrote nothing: please report it with your command.`));
  process.exitCode = 3;
}
