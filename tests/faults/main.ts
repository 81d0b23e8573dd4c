// `npm run faults`: every trial at full length, and their table; `npm run faults -- files csv` runs those two, and
// `--share 0.1` a tenth of each. A trial runs in a process of its own (one.ts), so that one which never ends is told as hung.
// Exit status 1 unless nothing went wrong.

import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { TRIALS } from './list.ts';
import { isClean, type Outcome, type Trial } from './trial.ts';

/** A process that tells nothing for so many milliseconds hangs. */
const SILENCE = 180_000;

const root = fileURLToPath(new URL('../..', import.meta.url));
const words = process.argv.slice(2);
const shareAt = words.indexOf('--share');
const share = shareAt < 0 ? 1 : Number(words[shareAt + 1]);
const wanted = words.filter((_, i) => shareAt < 0 || (i !== shareAt && i !== shareAt + 1));
const unknown = wanted.find((name) => !TRIALS.some((trial) => trial.name === name));
if (unknown !== undefined || !(share > 0)) {
  process.stderr.write(`Say which: ${TRIALS.map(({ name }) => name).join(' ')}, and --share 0.1 for a tenth.\n`);
  process.exit(1);
}

const outcomes: (readonly [Trial, Outcome])[] = [];
for (const trial of TRIALS) {
  if (wanted.length > 0 && !wanted.includes(trial.name)) continue;
  const count = Math.max(1, Math.round(trial.full * share));
  process.stderr.write(`${trial.name}: ${trial.about}, ${count} times\n`);
  const outcome = await inItsOwnProcess(trial, count);
  for (const example of outcome.examples) process.stderr.write(`  ${example}\n`);
  outcomes.push([trial, outcome]);
}
process.stdout.write(table(outcomes));
process.exitCode = outcomes.every(([, outcome]) => isClean(outcome)) ? 0 : 1;

function inItsOwnProcess(trial: Trial, count: number): Promise<Outcome> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'tests/faults/one.ts', trial.name, String(count)], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let tried = 0;
  let outcome: Outcome | undefined;
  let silent = false;
  const wait = (): NodeJS.Timeout =>
    setTimeout(() => {
      silent = true;
      child.kill('SIGKILL');
    }, SILENCE);
  let waiting = wait();
  createInterface({ input: child.stdout }).on('line', (line) => {
    clearTimeout(waiting);
    waiting = wait();
    const told = JSON.parse(line) as { readonly tried: number } | { readonly outcome: Outcome };
    if ('outcome' in told) outcome = told.outcome;
    else tried = told.tried;
  });
  return new Promise((resolve) => {
    child.on('close', (status) => {
      clearTimeout(waiting);
      const nothing = { tried, crashed: 0, hung: 0, lost: 0 };
      const where = `after the first ${tried}`;
      if (outcome !== undefined) resolve(outcome);
      else if (silent) resolve({ ...nothing, hung: 1, examples: [`${where}: never ended`] });
      else resolve({ ...nothing, crashed: 1, examples: [`${where}: the process ended with ${status}`] });
    });
  });
}

function table(rows: readonly (readonly [Trial, Outcome])[]): string {
  const lines = [
    ['', 'tried', 'crashed', 'hung', 'lost'],
    ...rows.map(([{ about }, { tried, crashed, hung, lost }]) => [about, ...[tried, crashed, hung, lost].map(String)]),
  ];
  const widths = [0, 1, 2, 3, 4].map((i) => Math.max(...lines.map((line) => line[i]?.length ?? 0)));
  return lines
    .map((line) =>
      line.map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0))).join('  '),
    )
    .map((line) => `${line.trimEnd()}\n`)
    .join('');
}
