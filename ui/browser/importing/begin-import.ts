// Begins with a file for a sheet: what reads and takes it is fetched with the first.

import { tell } from '../store/notices.ts';
import { part } from '../store/part.ts';

const importWork = part(() => import('./import-work.ts'));

/** Reads a picked file for a sheet and asks. */
export async function readImport(sheet: string, file: File): Promise<void> {
  const work = await importWork().catch(() => undefined);
  if (work === undefined) tell('The part that reads files could not be fetched: try again.', 'refusal');
  else await work.readImport(sheet, file);
}
