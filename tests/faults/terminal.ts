// The terminal at its worst moments: killed while it writes, on a disk that is full, and many of it at once on one file. The file
// must be whole whenever it is looked at, hold everything that was said to be written, and whoever lost must have been told.

import { type ChildProcess, spawn } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { type Random, randomFrom, seedOfRun } from '../differential/random.ts';
import { Folder, runWith } from '../terminal/terminal.ts';
import { Tally, type Trial } from './trial.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** A command that takes longer than so many milliseconds hangs. */
const PATIENCE = 60_000;

interface Writer {
  readonly process: ChildProcess;
  /** Figures that it said were written, the last one last, and what it was refused. */
  readonly written: readonly number[];
  readonly refused: readonly string[];
  /** It has begun its work. */
  readonly ready: Promise<void>;
  /** It has ended; false where it had to be killed for that. */
  readonly ended: Promise<boolean>;
}

function writer(words: readonly string[], shell?: string): Writer {
  const program = [process.execPath, 'ui/run.mjs', 'tests/faults/terminal-writer.ts', ...words];
  const quoted = program.map((word) => `'${word}'`).join(' ');
  const [name = '', ...given] = shell === undefined ? program : ['/bin/bash', '-c', `${shell}; exec ${quoted}`];
  const child = spawn(name, given, { cwd: root, stdio: ['ignore', 'pipe', 'ignore'] });
  const written: number[] = [];
  const refused: string[] = [];
  const ready = new Promise<void>((resolve) => {
    createInterface({ input: child.stdout }).on('line', (line) => {
      if (line === 'ready') resolve();
      else if (line.startsWith('written ')) written.push(Number(line.slice(8)));
      else refused.push(line);
    });
    child.on('close', () => resolve());
  });
  const ended = new Promise<boolean>((resolve) => {
    const patience = setTimeout(() => {
      child.kill('SIGKILL');
      resolve(false);
    }, PATIENCE);
    child.on('close', () => {
      clearTimeout(patience);
      resolve(true);
    });
  });
  return { process: child, written, refused, ready, ended };
}

/** The length of a bed as the file has it; a sentence where the file can't be read. */
async function lengthIn(file: string, row: string): Promise<number | string> {
  const { status, out, err } = await runWith(['table', file, 'Beds', '--json']);
  if (status !== 0 || err !== '') return `the file can't be read: ${err}`;
  const table = JSON.parse(out) as {
    readonly columns: readonly { readonly name: string }[];
    readonly rows: readonly (readonly unknown[])[];
  };
  const at = (name: string): number => table.columns.findIndex((column) => column.name === name);
  return Number(table.rows.find((cells) => cells[at('Bed')] === row)?.[at('Length')]);
}

const pause = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));

async function killedOnce(folder: Folder, file: string, from: number, random: Random): Promise<string | undefined> {
  const journalled = random.chance(0.5);
  const one = writer([file, 'North 1', String(from), '100000', ...(journalled ? ['--journal'] : [])]);
  await one.ready;
  await pause(random.whole(0, 60) + random.next());
  one.process.kill('SIGKILL');
  await one.ended;
  const length = await lengthIn(file, 'North 1');
  if (typeof length === 'string') return length;
  const last = one.written.at(-1);
  if (last !== undefined && length < last) return `${last} was written and ${length} stands there`;
  // The next command takes away what the killed one left, and its lock.
  const next = await runWith(['set', file, 'Beds', 'North 2', 'Length', '7 ft', ...(journalled ? ['--journal'] : [])]);
  if (next.status !== 0) return `the next command is refused: ${next.err}`;
  if (journalled) {
    const undone = await runWith(['undo', file]);
    if (undone.status !== 0) return `the journal does not lead to the file: ${undone.err}`;
    if ((await lengthIn(file, 'North 1')) !== length) return 'taking back the next change changes more';
  }
  const left = readdirSync(folder.path).filter((name) => name.endsWith('.new') || name.endsWith('.lock'));
  return left.length === 0 ? undefined : `left behind: ${left.join(', ')}`;
}

export const killedWriters: Trial = {
  name: 'killed',
  about: 'terminal killed while it writes',
  full: 300,
  run: async (count, tell) => {
    const tally = new Tally(tell);
    const seed = seedOfRun();
    const folder = new Folder();
    try {
      const file = folder.farm();
      for (let i = 0; i < count; i++) {
        await tally.try(
          `kill ${seed + i}`,
          () => killedOnce(folder, file, (i + 1) * 100_000, randomFrom(seed + i)),
          PATIENCE,
        );
        tally.tell();
      }
    } finally {
      folder.remove();
    }
    return tally.outcome();
  },
};

/** Bash counts the limit in blocks of 1,024 bytes. */
const BLOCK = 1024;

async function writtenToTheFull(folder: Folder, file: string, random: Random): Promise<string | undefined> {
  const before = folder.text('farm.json');
  const blocks = random.whole(0, Math.floor((statSync(file).size - 1) / BLOCK));
  const one = writer([file, 'North 1', '90', '1', ...(random.chance(0.5) ? ['--journal'] : [])], `ulimit -f ${blocks}`);
  if (!(await one.ended)) return 'it never ended';
  const [told, ...more] = one.refused;
  if (one.written.length > 0) return 'it says that it was written';
  if (told === undefined || more.length > 0 || !/^refused 90 2 .+\.$/.test(told))
    return `it says: ${one.refused.join(' | ')}`;
  if (folder.text('farm.json') !== before) return 'the old file has changed';
  const left = folder.names().filter((name) => name.endsWith('.new') || name.endsWith('.lock'));
  return left.length === 0 ? undefined : `left behind: ${left.join(', ')}`;
}

export const fullDisk: Trial = {
  name: 'full',
  about: 'terminal writing where there is no room',
  full: 50,
  run: async (count, tell) => {
    const tally = new Tally(tell);
    const seed = seedOfRun();
    const folder = new Folder();
    try {
      const file = folder.put('farm.json', largeFarm(folder));
      // The program is put together once, while there is room for it.
      await writer([file, 'North 1', '0', '0']).ended;
      for (let i = 0; i < count; i++) {
        await tally.try(`full ${seed + i}`, () => writtenToTheFull(folder, file, randomFrom(seed + i)), PATIENCE);
        tally.tell();
      }
    } finally {
      folder.remove();
    }
    return tally.outcome();
  },
};

/** The small farm with a title of many letters, so that the file is cut at many places. */
function largeFarm(folder: Folder): string {
  folder.farm();
  return folder.text('farm.json').replace('"Small farm"', JSON.stringify('Small farm '.repeat(3000)));
}

const WRITERS = 8;

export const manyWriters: Trial = {
  name: 'writers',
  about: 'changes by eight terminals at once',
  full: 200,
  run: async (count, tell) => {
    const tally = new Tally(tell);
    const folder = new Folder();
    try {
      const file = folder.farm();
      const beds = Array.from({ length: WRITERS }, (_, i) => `Plot ${i}`);
      const rows = folder.put('rows.csv', `Bed,Length (ft)\n${beds.map((bed) => `${bed},1\n`).join('')}`);
      await runWith(['import', file, 'Beds', rows]);
      const each = Math.ceil(count / WRITERS);
      const writers = beds.map((bed) => ({ bed, ...writer([file, bed, '1000', String(each)]) }));
      for (const { bed, written, refused, ended } of writers) {
        if (!(await ended)) tally.hung(bed, 'it never ended');
        tally.tried(written.length + refused.length);
        if (written.length + refused.length < each) tally.crashed(bed, `it ended after ${written.length} changes`);
        const dumb = refused.find((line) => !/^refused \d+ 2 .+\.$/.test(line));
        if (dumb !== undefined) tally.crashed(bed, dumb);
        const length = await lengthIn(file, bed);
        if (length !== (written.at(-1) ?? 1))
          tally.lost(bed, `${written.at(-1)} was written, and ${length} stands there`);
      }
    } finally {
      folder.remove();
    }
    return tally.outcome();
  },
};
