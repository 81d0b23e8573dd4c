// The trials of faults, a line each, in the order of the table.

import { browserEdits } from './browser-edits.ts';
import { browserKills } from './browser-kills.ts';
import { browserStorage } from './browser-storage.ts';
import { browserTabs } from './browser-tabs.ts';
import { csvFiles } from './csv-files.ts';
import { formulas } from './formulas.ts';
import { sessions } from './sessions.ts';
import { fullDisk, killedWriters, manyWriters } from './terminal.ts';
import type { Trial } from './trial.ts';
import { workbookFiles } from './workbook-files.ts';
import { xlsxFiles } from './xlsx-files.ts';

export const TRIALS: readonly Trial[] = [
  workbookFiles,
  csvFiles,
  xlsxFiles,
  formulas,
  sessions,
  killedWriters,
  fullDisk,
  manyWriters,
  browserKills,
  browserTabs,
  browserStorage,
  browserEdits,
];
