// Any sheet on paper: its columns under their questions, a table each, the row's name at the front of every one. Pure.

import { type Book, type ColumnView, cellView, rowName, rows, type SheetView } from '../../../engine/index.ts';
import { groupsOf, isFigure } from '../store/sheets.ts';
import { endsAfter } from '../store/shown.ts';
import { farmName, type Paper, type PaperTable } from './paper.ts';

export function sheetOnPaper(book: Book, sheet: SheetView): Paper {
  const slots = Array.from(rows(book, sheet.id));
  const shown = sheet.columns.filter(({ id, role }) => id !== sheet.key && role !== 'made');
  const named = !sheet.oneRow;
  const tables = groupsOf(shown).flatMap(({ name, within }): readonly PaperTable[] => {
    const columns = within.filter(({ id }) => slots.some((slot) => cellView(book, sheet.id, slot, id).figure !== ''));
    if (columns.length === 0) return [];
    if (!named) {
      const only = slots[0] ?? -1;
      return [
        {
          heading: name,
          columns: [
            { name: 'What', figure: false },
            { name: 'Entry', figure: false },
          ],
          rows: columns.map((column) => [column.name, onPaper(book, sheet, only, column)]),
          boxes: false,
        },
      ];
    }
    return [
      {
        heading: name,
        columns: [
          { name: sheet.columns.find(({ id }) => id === sheet.key)?.name ?? sheet.name, figure: false },
          ...columns.map((column) => ({
            name: column.unit === '' ? column.name : `${column.name}, ${column.unit}`,
            figure: isFigure(column),
          })),
        ],
        rows: slots.map((slot) => [
          rowName(book, sheet.id, slot),
          ...columns.map(({ id }) => onPaper(book, sheet, slot, { id, unit: '' })),
        ]),
        boxes: false,
      },
    ];
  });
  return { title: sheet.name, farm: farmName(book), says: sheet.about, tables };
}

/** A cell as it stands on paper, with the ends of a figure that has them. */
function onPaper(
  book: Book,
  { id: sheet }: SheetView,
  row: number,
  { id, unit }: Pick<ColumnView, 'id' | 'unit'>,
): string {
  const { text, ends } = cellView(book, sheet, row, id);
  return withUnit(text, unit) + endsAfter(ends);
}

function withUnit(text: string, unit: string): string {
  return text === '' || unit === '' || /[^\d.,\s-]$/.test(text) ? text : `${text} ${unit}`;
}
