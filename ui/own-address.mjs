// Files that are joined into one module still read what lies beside them: every import.meta of a source file is written
// out as that file's own address. Used where sources are joined: run.mjs and the mutation tests.

import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

/** The text of the file at `path` with import.meta.url, .dirname and .filename written out. */
export function withOwnAddress(text, path) {
  const own = {
    url: JSON.stringify(pathToFileURL(path).href),
    dirname: JSON.stringify(resolve(path, '..')),
    filename: JSON.stringify(path),
  };
  return text.replace(/import\.meta\.(url|dirname|filename)/g, (_, word) => own[word]);
}
