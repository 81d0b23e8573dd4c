// Commands about the selected cells. Entries of the table.

import { cellView, isoDate } from '../../../engine/index.ts';
import { beginNote } from '../dialogs/note-state.ts';
import { today } from '../files/world.ts';
import { beginLine } from '../formula-line/draft.ts';
import { narrow } from '../store/screen.ts';
import { rowAt } from '../store/selection.ts';
import { hasFormula } from '../store/sheets.ts';
import { canTakeBack, clearCells, takeBack } from './cells.ts';
import { pasteInto, putOnClipboard } from './clipboard.ts';
import type { PageCommand } from './command.ts';

const CELLS = ['grid', 'field'] as const;

export const CELL_COMMANDS: readonly PageCommand[] = [
  {
    id: 'edit',
    label: 'Edit the cell',
    keys: ['Enter', 'F2'],
    where: ['grid'],
    refusal: ({ column }) => (column?.role === 'made' ? 'This cell comes from other sheets.' : undefined),
    menus: { cell: 0 },
    run: ({ grid }) => grid?.startEditing(),
  },
  {
    id: 'take back',
    label: 'Take back to the formula',
    says: ({ cells }) => (cells.length > 1 ? 'Take cells back to their formulas' : 'Take back to the formula'),
    keys: ['Alt Backspace'],
    where: CELLS,
    refusal: ({ book, cells }) =>
      book !== undefined && cells.some((cell) => canTakeBack(book, cell))
        ? undefined
        : 'Nothing was typed over a formula here.',
    menus: { cell: 0 },
    run: ({ cells }) => takeBack(cells),
  },
  {
    id: 'clear',
    label: 'Clear',
    keys: ['Delete', 'Backspace'],
    where: CELLS,
    menus: { cell: 0 },
    run: ({ cells }) => clearCells(cells),
  },
  {
    id: 'today',
    label: 'Today’s date',
    keys: ['Ctrl ;'],
    where: ['grid'],
    applies: ({ column }) => column?.type?.kind === 'date',
    menus: { cell: 0 },
    run: ({ grid }) => grid?.typeIn(isoDate(today())),
  },
  {
    id: 'fill all',
    label: 'Fill the selection from the cell in hand',
    keys: ['Ctrl Enter'],
    where: ['grid'],
    applies: ({ grid }) => grid?.isWide() === true,
    menus: { cell: 0 },
    run: ({ grid, book, place, column }) => {
      const at = book === undefined ? undefined : rowAt(book, place.sheet, place.row);
      if (book === undefined || at === undefined || column === undefined) return;
      grid?.typeIn(cellView(book, place.sheet, at.slot, column.id).entry, column.unit);
    },
  },
  {
    id: 'fill down',
    label: 'Fill down',
    keys: ['Ctrl D'],
    where: ['grid'],
    menus: { cell: 0 },
    run: ({ grid }) => grid?.fillDown(),
  },
  {
    id: 'fill right',
    label: 'Fill to the right',
    keys: ['Ctrl R'],
    where: ['grid'],
    menus: { cell: 0 },
    run: ({ grid }) => grid?.fillRight(),
  },
  {
    id: 'copy',
    label: 'Copy',
    keys: ['Ctrl C'],
    where: ['grid'],
    clipboard: 'copy',
    menus: { cell: 1 },
    run: ({ grid }, clipboard) => putOnClipboard(grid?.copied(false), clipboard),
  },
  {
    id: 'copy with headers',
    label: 'Copy with headers',
    keys: ['Ctrl Shift C'],
    where: ['grid'],
    menus: { cell: 1 },
    run: ({ grid }) => putOnClipboard(grid?.copied(true), undefined),
  },
  {
    id: 'cut',
    label: 'Cut',
    keys: ['Ctrl X'],
    where: ['grid'],
    clipboard: 'cut',
    menus: { cell: 1 },
    run: ({ grid }, clipboard) => putOnClipboard(grid?.cut(), clipboard),
  },
  {
    id: 'paste',
    label: 'Paste',
    keys: ['Ctrl V'],
    where: ['grid'],
    clipboard: 'paste',
    menus: { cell: 1 },
    run: (now, clipboard) => pasteInto(now, clipboard, false),
  },
  {
    id: 'paste values',
    label: 'Paste, formulas left as they are',
    keys: ['Ctrl Shift V'],
    where: ['grid'],
    clipboard: 'paste',
    menus: { cell: 1 },
    run: (now, clipboard) => pasteInto(now, clipboard, true),
  },
  {
    id: 'note',
    label: 'Note on the cell',
    keys: ['Shift F2'],
    where: CELLS,
    refusal: ({ place }) => (place.row === undefined ? 'A row that is only begun takes no note.' : undefined),
    menus: { cell: 1 },
    run: ({ place }) => beginNote(place),
  },
  {
    id: 'begin formula',
    label: 'Begin a formula for the column',
    keys: ['='],
    where: CELLS,
    // The cards have no formula line to begin in.
    applies: ({ column }) => column !== undefined && hasFormula(column) && !narrow.value,
    run: () => beginLine('='),
  },
];
