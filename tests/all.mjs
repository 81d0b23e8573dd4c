// What `npm test` and, with `--whole`, `npm run test:whole` run: types and style on one side, the tests on the other, both at once, since each leaves a core idle for a while.
// The thorough tests are for the whole; alone they have a command of their own, `npm run test:thorough`.
// What follows on the command line goes to vitest. A fault of types or style stops the tests at once and is told last.

import { spawn } from 'node:child_process';

const WHOLE = '--whole';
const checks = [
  ['tsc', '--noEmit'],
  ['biome', 'check', '--error-on-warnings'],
];

/** Ends with the program's status; what it says is kept back where it is to be told in one piece. */
function run([program, ...words], stdio) {
  const child = spawn(program, words, { stdio: ['ignore', stdio, stdio], shell: process.platform === 'win32' });
  const said = [];
  child.stdout?.on('data', (part) => said.push(part));
  child.stderr?.on('data', (part) => said.push(part));
  const ended = new Promise((resolve) => {
    child.on('error', ({ message }) => resolve({ status: 1, said: message }));
    child.on('close', (status) => resolve({ status: status ?? 1, said: Buffer.concat(said).toString() }));
  });
  return { child, ended };
}

const words = process.argv.slice(2);
const asked = words.filter((word) => word !== WHOLE);
const tests = run(['vitest', 'run', ...(words.includes(WHOLE) ? [] : ['--project=!thorough*']), ...asked], 'inherit');

async function checked() {
  for (const check of checks) {
    const { status, said } = await run(check, 'pipe').ended;
    if (status === 0) continue;
    tests.child.kill('SIGINT');
    await tests.ended;
    console.error(`${said}\n${check.join(' ')} found what stands above: the tests were stopped.`);
    return status;
  }
  return 0;
}

const [faults, { status }] = await Promise.all([checked(), tests.ended]);
process.exitCode = faults || status;
