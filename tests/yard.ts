// A workbook of a few beds in the onions template, as a file's text: for tests and trials of keeping, which open the page again and
// again and need a workbook, not a whole farm.

import { writeWorkbookFile } from '../engine/index.ts';
import { templateShelf } from '../sheets-templates/index.ts';
import { onions } from '../sheets-templates/onions.ts';
import { startOf } from '../sheets-templates/season.ts';
import { started } from './book.ts';

const BEDS = ['A', 'B', 'C', 'D', 'E', 'F'].map((letter) => ({ Bed: `Row ${letter}`, Field: 'Yard', Length: '50 ft' }));

/** Where its template is found. */
export const YARD_TEMPLATES = templateShelf([], [onions()]);

export function yardText(): string {
  const start = startOf(onions().sheets, { title: 'Yard', season: 2027, today: 20_774, rows: { Beds: BEDS } });
  const small = started(onions(), start);
  if (!small.ok) throw new Error(small.problems.join(' '));
  return writeWorkbookFile(small.workbook.workbook.data());
}
