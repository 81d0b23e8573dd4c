// `npm run --silent bill`: the bill of materials on standard output.

import { readFileSync } from 'node:fs';
import { billOfMaterials, type LockFile } from './bill-of-materials.ts';

const lock = JSON.parse(readFileSync(new URL('../../package-lock.json', import.meta.url), 'utf8')) as LockFile;
process.stdout.write(`${JSON.stringify(billOfMaterials(lock), null, 2)}\n`);
