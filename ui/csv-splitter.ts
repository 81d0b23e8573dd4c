// Cuts CSV texts into records for the engine, by papaparse. Browser and terminal hand it to the engine's imports.

import Papa from 'papaparse';
import type { CsvSplitter } from '../engine/index.ts';

export const splitCsv: CsvSplitter = (text, delimiter, most = 0) => {
  const { data, errors } = Papa.parse<string[]>(text, { delimiter, newline: '\n', preview: most });
  const broken = errors.flatMap(({ type, row }) => (type === 'Quotes' ? [row ?? 0] : []));
  return { records: data, broken };
};
