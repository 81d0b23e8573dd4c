import { spawnSync } from 'node:child_process';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Folder } from './terminal.ts';

const root = new URL('../..', import.meta.url);

/** The program as the README starts it. */
const STARTED_BY_NPM = ['npm', 'run', '--silent', 'dibble', '--'];
/** What npm starts, which spares a second each time. */
const ITSELF = [process.execPath, 'ui/run.mjs', 'ui/terminal/main.ts'];

function dibble(words: readonly string[], input = '', start: readonly string[] = ITSELF) {
  const [program = '', ...first] = start;
  const { status, stdout, stderr } = spawnSync(program, [...first, ...words], { cwd: root, input, encoding: 'utf8' });
  return { status, out: stdout, err: stderr };
}

let folder: Folder;
beforeAll(() => {
  folder = new Folder();
});
afterAll(() => folder.remove());

describe('the program itself', () => {
  test('a fresh season takes rows from files and gives a seed order', () => {
    const file = folder.file('f.json');
    expect(dibble(['new', 'season', '--out', file], '', STARTED_BY_NPM)).toMatchObject({ status: 0, err: '' });
    const varieties = folder.put('varieties.csv', 'variety;crop;germination (%)\nRed Test;"Onion, bulb";80\n');
    expect(dibble(['import', file, 'Varieties', varieties])).toMatchObject({ status: 0, err: '' });
    const plantings = folder.put(
      'plantings.csv',
      'Planting,Variety,Start,Bed length used (m),Rows,In-row spacing (cm),Seeds per station\nFirst,Red Test,blocks,10,4,20,4\n',
    );
    expect(dibble(['import', file, 'Plantings', plantings])).toMatchObject({ status: 0, err: '' });
    const order = JSON.parse(dibble(['table', file, 'Seed order', '--json']).out);
    const at = (name: string): unknown =>
      order.rows[0][order.columns.findIndex((column: { readonly name: string }) => column.name === name)];
    expect(order.rows).toHaveLength(1);
    expect([at('Variety'), at('Seeds on hand')]).toEqual(['Red Test', 0]);
    // 4 rows x 10 m / 20 cm = 200 stations of 4 seeds, and 10 % spare at least.
    expect(Number(at('Seeds needed'))).toBeGreaterThanOrEqual(880);
  });

  test('seasons shared among threads are those that one draws alone, of a branch too', async () => {
    const file = folder.file('f.json');
    await folder.run(['branch', file, 'Longer']);
    const longer = ['set', file, 'Plantings', 'First', 'Bed length used', '20 m', '--branch', 'Longer'];
    expect(await folder.run(longer)).toMatchObject({ status: 0 });
    const figure = 'SUM(Plantings[Marketable yield])';
    const words = ['draws', file, figure, '--count', '1000', '--branch', 'Longer', '--json'];
    const alone = await folder.run(words);
    expect(JSON.parse(alone.out).figures[0].count).toBe(1000);
    expect(dibble(words)).toEqual(alone);
  });

  test('lines of formulas are answered line by line', () => {
    const input = Array.from({ length: 500 }, (_, n) => `${n} in * 2`).join('\n');
    const { status, out } = dibble(['eval', '-', '--json'], `${input}\n`);
    const values = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line).value);
    expect([status, values]).toEqual([0, Array.from({ length: 500 }, (_, n) => n * 2)]);
  });

  test('bad input: one line on standard error, status 2, nothing on standard output', () => {
    expect(dibble(['eval', '1 lb + 2 in'], '', STARTED_BY_NPM)).toEqual({
      status: 2,
      out: '',
      err: "1 lb is a mass (lb), 2 in is a length (in): they can't be added.\n",
    });
  });

  const file = () => folder.file('whole.json');
  test('the demo farm is written to a file', () => {
    expect(dibble(['new', 'demo', '--out', file()])).toMatchObject({ status: 0, err: '' });
  });

  test.each([
    ['| head -c 20 > /dev/null', 'the reader of the output has gone'],
    ['> /dev/full', 'the disk is full; make room'],
  ])('output that can’t be written, %s: one line and status 2', (where, why) => {
    const program = `'${process.execPath}' ui/run.mjs ui/terminal/main.ts table '${file()}' Crops --csv`;
    const { stdout, stderr } = spawnSync('/bin/bash', ['-c', `(${program}; echo "status $?" >&2) ${where}`], {
      cwd: root,
      encoding: 'utf8',
    });
    expect(stderr).toBe(`Standard output can't be written: ${why}.\nstatus 2\n`);
    expect(stdout).toBe('');
  });
});
