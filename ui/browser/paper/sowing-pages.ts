// The sowing list on paper, a table a month, with boxes to tick. Pure.

import type { Book } from '../../../engine/index.ts';
import { askRows, hasColumns, type Needs } from '../pictures/kit/ask.ts';
import { dayWords, monthWords } from '../store/day-words.ts';
import { grouped } from '../store/grouped.ts';
import { counted, farmName, figures, type Paper, type PaperTable, unbroken, unbrokenIfShort, words } from './paper.ts';

export const SOWING_NEEDS: Needs = { 'sowing-list': ['on', 'job', 'planting', 'variety', 'pieces', 'seeds', 'trays'] };

const COLUMNS = [
  ...words('On', 'Job', 'Variety', 'Planting', 'Seed lot'),
  ...figures('Pieces', 'Seeds each', 'Seeds', 'Trays'),
  ...words('Tray', 'Bed', 'Notes'),
];

/** Undefined where the workbook has no sowing list. */
export function sowingOnPaper(book: Book): Paper | undefined {
  if (!hasColumns(book, SOWING_NEEDS)) return undefined;
  const rows = askRows(book, 'sowing-list')
    .filter((row) => row.figure('on') !== undefined && !row.yes('done'))
    .toSorted((a, b) => (a.figure('on') ?? 0) - (b.figure('on') ?? 0));
  const tables = [...grouped(rows, (row) => monthWords(book, row.figure('on') ?? 0))].map(
    ([heading, within]): PaperTable => ({
      heading,
      boxes: true,
      columns: COLUMNS,
      rows: within.map((row) => [
        unbroken(dayWords(book, row.figure('on') ?? 0)),
        row.text('job'),
        row.text('variety'),
        row.text('planting'),
        row.text('seed-lot'),
        row.text('pieces'),
        row.text('seeds-each'),
        row.text('seeds'),
        row.text('trays'),
        unbrokenIfShort(row.text('tray')),
        row.text('bed'),
        row.text('note'),
      ]),
    }),
  );
  const says =
    rows.length === 0
      ? 'Nothing is left to sow.'
      : `${counted(rows.length, 'sowing or potting on', 'sowings and pottings on')}.`;
  return { title: 'Sowing list', farm: farmName(book), says, tables };
}
