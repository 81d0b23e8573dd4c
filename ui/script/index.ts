// Dibble for scripts: `import { openWorkbook } from 'dibble'`. Opens a workbook file, reads and edits it by the names that people
// know, asks formulas and saves it. What is refused throws an Error whose message is the sentence.

import { loadGeneralUnits, loadLeftOut } from '../../engine/index.ts';
import { readPlain } from '../terminal/disk.ts';
import { processWorld } from '../terminal/process-world.ts';
import { openWorkbook as openFile } from '../terminal/workbook-files.ts';
import { FileWorkbook } from './file-workbook.ts';
import type { OpenWorkbook } from './open-workbook.ts';

export type * from './open-workbook.ts';

/** Opens a workbook file, worked out. */
export async function openWorkbook(path: string): Promise<OpenWorkbook> {
  await Promise.all([loadGeneralUnits(), loadLeftOut()]);
  const notes: string[] = [];
  const world = { ...processWorld(), warn: (line: string): void => void notes.push(line) };
  // Read before it is opened: what is saved later goes over just this.
  const read = readPlain(path);
  const workbook = await openFile(path, world);
  return new FileWorkbook(workbook, path, read, notes);
}
