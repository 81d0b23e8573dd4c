// The libraries that formats need, as the page has them: an XLSX file is written in a worker, which goes when it has. Rows are
// read in a worker of their own (importing/).

import type { FormatTools, Spreadsheet } from '../../../engine/index.ts';
import { formatTools } from '../../format-tools.ts';
import { askOnce } from './ask-once.ts';

export const browserTools: FormatTools = { ...formatTools, writeSpreadsheet: writeInWorker };

async function writeInWorker(spreadsheet: Spreadsheet): Promise<Uint8Array> {
  const worker = new Worker(new URL('./xlsx-worker.ts', import.meta.url), { type: 'module' });
  const lost = 'The part that writes XLSX files could not be fetched.';
  const told = await askOnce<Uint8Array | string>(worker, spreadsheet, lost);
  if (typeof told === 'string') throw new Error(told);
  return told;
}
