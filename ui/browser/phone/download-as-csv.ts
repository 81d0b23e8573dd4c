// A sheet handed to the person as the one kind of table that any phone opens. What is done with a sheet on the phone calls it.

import { formatOfId } from '../../../engine/index.ts';
import { downloadSheet } from '../files/download-sheets.ts';

/** A sheet as CSV. */
export function downloadAsCsv(sheet: string): void {
  const csv = formatOfId('csv');
  if (csv !== undefined) void downloadSheet(csv, sheet);
}
