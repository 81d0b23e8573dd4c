// Prints what the built page fetches before it can be used: `npm run first-load`. Not a test.

import { fileURLToPath } from 'node:url';
import { measureFirstLoad } from './first-load.ts';

const { files, bytes } = measureFirstLoad(fileURLToPath(new URL('../../dist/', import.meta.url)));
process.stdout.write(
  `${files.join('\n')}\n${(bytes / 1024).toFixed(1)} KiB of JavaScript, gzipped, in ${files.length} files\n`,
);
