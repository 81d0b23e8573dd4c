// What every worker of the tests begins with. One seed for all random work, so that a run of the tests can be repeated: SEED=7 npm test
// tries other cases. And machine code is made later than usual: most of what a file of tests runs is over before it would pay.

import { setFlagsFromString } from 'node:v8';
import fc from 'fast-check';

setFlagsFromString('--interrupt-budget=540000');

fc.configureGlobal({ seed: Number(process.env.SEED ?? 20_270_315) });
