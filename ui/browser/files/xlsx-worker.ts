// Writes one XLSX file beside the page and gives its bytes; why not, as a text, where it can't be.

import type { Spreadsheet } from '../../../engine/index.ts';
import { formatTools } from '../../format-tools.ts';

addEventListener('message', ({ data }: MessageEvent<Spreadsheet>) => {
  void formatTools.writeSpreadsheet(data).then(
    (bytes) => postMessage(bytes),
    (fault: unknown) => postMessage(fault instanceof Error ? fault.message : String(fault)),
  );
});
