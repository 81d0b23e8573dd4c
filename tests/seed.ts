// One seed for all random work, so that a run of the tests can be repeated. SEED=7 npm test tries other cases.

import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env.SEED ?? 20_270_315) });
