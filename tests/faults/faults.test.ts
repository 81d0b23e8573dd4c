// A small share of every trial of faults that needs no browser; `npm run faults` tries them at full length.

import { expect, test } from 'vitest';
import { csvFiles } from './csv-files.ts';
import { formulas } from './formulas.ts';
import { sessions } from './sessions.ts';
import { fullDisk, killedWriters, manyWriters } from './terminal.ts';
import { isClean, Tally, type Trial } from './trial.ts';
import { workbookFiles } from './workbook-files.ts';
import { xlsxFiles } from './xlsx-files.ts';

const SHARES: readonly (readonly [name: string, trial: Trial, count: number])[] = [
  ['workbook files', workbookFiles, 20],
  ['CSV files', csvFiles, 60],
  ['XLSX files', xlsxFiles, 12],
  ['formulas', formulas, 1500],
  ['sessions', sessions, 3],
  ['killed writers', killedWriters, 1],
  ['a full disk', fullDisk, 1],
  ['many writers', manyWriters, 8],
];

test.each(SHARES)('%s: nothing crashes, hangs or is lost', async (_, trial, count) => {
  const outcome = await trial.run(count);
  expect(outcome.examples).toEqual([]);
  expect(outcome.tried).toBe(count);
  expect(isClean(outcome)).toBe(true);
});

test('what goes wrong is counted', async () => {
  const tally = new Tally();
  await tally.try('a throw', () => {
    throw new Error('thrown');
  });
  await tally.try('a loss', () => 'gone');
  await tally.try(
    'a hang',
    () => {
      const until = process.cpuUsage().user + 20_000;
      while (process.cpuUsage().user < until);
      return undefined;
    },
    10,
  );
  expect(tally.outcome()).toMatchObject({ tried: 3, crashed: 1, hung: 1, lost: 1 });
  expect(tally.outcome().examples.slice(0, 2)).toEqual(['a throw: crashed: thrown', 'a loss: lost: gone']);
});
