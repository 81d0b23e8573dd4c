// Reads one XLSX file into scratch papers beside the page.

import { readPapers } from './xlsx-papers.ts';

addEventListener('message', ({ data }: MessageEvent<Uint8Array>) => {
  void readPapers(data).then((read) => postMessage(read));
});
