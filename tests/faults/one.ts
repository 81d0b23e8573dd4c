// Runs one trial for main.ts and tells it, a line of JSON each, how far it is and what came of it.

import { TRIALS } from './list.ts';

const [name, count] = process.argv.slice(2);
const trial = TRIALS.find((one) => one.name === name);
if (trial === undefined) throw new Error(`There is no trial called ${name}.`);

const tell = (told: object): void => {
  process.stdout.write(`${JSON.stringify(told)}\n`);
};
tell({ outcome: await trial.run(Number(count), (tried) => tell({ tried })) });
