// The demo farm as the first Dibble saved it, in a file of today's kind, for the tests that open one: it names its sheets and leaves
// them to the template.

import { readFileSync } from 'node:fs';
import { earlierReader, readWorkbookFile, writeWorkbookFile } from '../../engine/index.ts';
import { earlierTemplate } from '../../sheets-templates/earlier.ts';
import { templateShelf } from '../../sheets-templates/index.ts';

export async function fileOnEarlierSheets(): Promise<string> {
  const text = readFileSync(new URL('../fixtures/version-1/demo.json', import.meta.url), 'utf8');
  const first = await earlierTemplate('season', 1);
  const reader = await earlierReader({ name: 'season', version: 1 });
  const read = readWorkbookFile(text, templateShelf(first === undefined ? [] : [first]), reader);
  if (!read.ok) throw new Error(read.why);
  return writeWorkbookFile(read.data);
}
