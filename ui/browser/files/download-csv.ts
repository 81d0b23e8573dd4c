// Hands a sheet to the person as a CSV file, as the terminal exports it. A sheet's head and the phone call it.

import { exportCsv } from '../../../engine/index.ts';
import { tell } from '../messages.ts';
import { workbook } from '../state.ts';
import { download, fileName } from '../working-copy/open.ts';

export function downloadCsv(table: string): void {
  const name = `${fileName(table)}.csv`;
  download(exportCsv(workbook(), table), name, 'text/csv;charset=utf-8');
  tell(`Downloaded ${name}.`);
}
