// The libraries that formats need, each fetched when it is first used: CSV by papaparse, XLSX by ui/xlsx. The terminal and the
// page's worker hand them to the engine.

import type { FormatTools } from '../engine/index.ts';
import { splitCsv } from './csv-splitter.ts';

export const formatTools: FormatTools = {
  splitCsv,
  writeSpreadsheet: (spreadsheet) => import('./xlsx/write.ts').then((part) => part.writeSpreadsheet(spreadsheet)),
  readSpreadsheet: (bytes, pick) => import('./xlsx/read.ts').then((part) => part.readSpreadsheet(bytes, pick)),
};
