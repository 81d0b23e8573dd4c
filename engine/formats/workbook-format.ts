// The workbook's own file: one JSON document with everything typed and changed.

import { dataOf } from '../document/data.ts';
import type { Format } from './format.ts';
import { writeWorkbookFile } from './workbook-file.ts';

export const WORKBOOK: Format = {
  id: 'workbook',
  name: 'Dibble workbook',
  ending: 'json',
  mediaType: 'application/json',
  holds: 'workbook',
  kind: 'workbook',
  write: ({ document }) => Promise.resolve({ content: writeWorkbookFile(dataOf(document)), notes: [] }),
};
