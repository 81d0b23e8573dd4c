// The libraries that formats need, as the page has them: an XLSX file is written in a worker, which goes when it has. Rows are
// read in a worker of their own (importing/).

import type { FormatTools, Spreadsheet } from '../../../engine/index.ts';
import { formatTools } from '../../format-tools.ts';

export const browserTools: FormatTools = { ...formatTools, writeSpreadsheet: writeInWorker };

function writeInWorker(spreadsheet: Spreadsheet): Promise<Uint8Array> {
  const worker = new Worker(new URL('./xlsx-worker.ts', import.meta.url), { type: 'module' });
  return new Promise<Uint8Array>((resolve, reject) => {
    worker.addEventListener('message', ({ data }: MessageEvent<Uint8Array | string>) => {
      if (typeof data === 'string') reject(new Error(data));
      else resolve(data);
    });
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      reject(new Error('The part that writes XLSX files could not be fetched.'));
    });
    worker.postMessage(spreadsheet);
  }).finally(() => worker.terminate());
}
