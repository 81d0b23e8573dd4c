// Commands about rows, columns and the sheet as a whole. Entries of the table.

import { FORMATS, takesStation } from '../../../engine/index.ts';
import { beginColumn } from '../dialogs/new-column-state.ts';
import { pickFile, TABLE_FILES } from '../files/pick.ts';
import { beginLine } from '../formula-line/draft.ts';
import { readImport } from '../importing/begin-import.ts';
import { formulaTried } from '../own/own-open.ts';
import { hasFormula, isTyped } from '../store/sheets.ts';
import { takeTemplateFormula } from './cells.ts';
import { removeColumn } from './columns.ts';
import type { PageCommand } from './command.ts';
import { withPart } from './fetched.ts';
import { duplicateRow, removeRows } from './rows.ts';
import type { Situation } from './situation.ts';

const isEntered = ({ sheet }: Situation): boolean => sheet?.entered === true;

export const ROW_COMMANDS: readonly PageCommand[] = [
  {
    id: 'add row',
    label: 'Add a row',
    applies: isEntered,
    refusal: ({ grid }) => (grid === undefined ? 'The rows are still on their way.' : undefined),
    menus: { cell: 2 },
    run: ({ grid }) => grid?.startNewRow(),
  },
  ...(['above', 'below'] as const).map(
    (where): PageCommand => ({
      id: `row ${where}`,
      label: `A row ${where}`,
      keys: [where === 'above' ? 'Alt Insert' : 'Alt Shift Insert'],
      where: ['grid'],
      applies: isEntered,
      menus: { cell: 2 },
      run: ({ grid }) => grid?.putRowIn(where),
    }),
  ),
  ...([-1, 1] as const).map(
    (by): PageCommand => ({
      id: by === 1 ? 'row down' : 'row up',
      label: by === 1 ? 'Move the rows down' : 'Move the rows up',
      keys: [by === 1 ? 'Alt ArrowDown' : 'Alt ArrowUp'],
      where: ['grid'],
      applies: isEntered,
      menus: { cell: 2 },
      run: ({ grid }) => grid?.moveRows(by),
    }),
  ),
  {
    id: 'duplicate row',
    label: 'Duplicate the row',
    applies: isEntered,
    refusal: ({ rows }) => (rows.length === 1 ? undefined : 'Select one row to duplicate it.'),
    menus: { cell: 2 },
    run: ({ place, rows: [first] }) => {
      if (first !== undefined) duplicateRow(place.sheet, first);
    },
  },
  {
    id: 'remove rows',
    label: 'Remove the rows',
    says: ({ rows }) => (rows.length > 1 ? `Remove ${rows.length} rows` : 'Remove the row'),
    keys: ['Alt Delete'],
    where: ['grid'],
    applies: isEntered,
    refusal: ({ rows }) => (rows.length === 0 ? 'Select a row to remove it.' : undefined),
    menus: { cell: 2 },
    run: ({ sheet, rows }) => {
      if (sheet !== undefined) removeRows(sheet, rows);
    },
  },
  {
    id: 'import',
    label: 'Import rows from a file',
    says: ({ book, place }) =>
      book !== undefined && takesStation(book, place.sheet) ? 'Import daily weather' : 'Import rows',
    applies: ({ sheet }) => sheet?.columns.some(isTyped) === true,
    run: ({ place }) => pickFile(TABLE_FILES, (file) => void readImport(place.sheet, file)),
  },
  ...FORMATS.filter(({ holds }) => holds !== 'workbook').map(
    (format): PageCommand => ({
      id: `download ${format.id}`,
      label: `Download ${format.name}`,
      run: ({ place }) =>
        withPart(import('../files/download-sheets.ts'), (part) => part.downloadSheet(format, place.sheet)),
    }),
  ),
];

export const COLUMN_COMMANDS: readonly PageCommand[] = [
  {
    id: 'change formula',
    label: 'Change the formula of the column',
    says: ({ column }) => `Change the formula of ${column?.name ?? ''}`,
    applies: ({ column }) => column !== undefined && hasFormula(column),
    menus: { cell: 3, column: 4 },
    run: ({ place, column }) => beginLine(`=${column?.formula ?? ''}`, { ...place, column: column?.id }),
  },
  {
    id: 'formula side by side',
    label: 'Change the formula side by side',
    applies: ({ column }) => column !== undefined && hasFormula(column),
    menus: { cell: 3, column: 1 },
    run: ({ place, column }) => {
      formulaTried.value = { sheet: place.sheet, column: column?.id ?? '' };
    },
  },
  {
    id: 'template formula',
    label: "Take the sheet's own formula back",
    applies: ({ column }) => column?.templateFormula !== undefined,
    menus: { cell: 3, column: 4 },
    run: ({ place, column }) => takeTemplateFormula(place.sheet, column?.id ?? ''),
  },
  {
    id: 'add column',
    label: 'Add a column',
    menus: { cell: 3, column: 5 },
    run: ({ place }) => beginColumn(place.sheet),
  },
  {
    id: 'remove column',
    label: 'Remove the column',
    says: ({ column }) => `Remove ${column?.name ?? 'the column'}`,
    menus: { column: 5 },
    run: ({ place, column }) => {
      if (column !== undefined) removeColumn(place.sheet, column);
    },
  },
];
