// Commands about the selected cells. Entries of the table.

import { beginLine } from '../formula-line/draft.ts';
import { narrow } from '../store/screen.ts';
import { hasFormula } from '../store/sheets.ts';
import { canTakeBack, clearCells, takeBack } from './cells.ts';
import type { PageCommand } from './command.ts';

const CELLS = ['grid', 'field'] as const;

export const CELL_COMMANDS: readonly PageCommand[] = [
  {
    id: 'edit',
    label: 'Edit the cell',
    keys: ['Enter', 'F2'],
    where: ['grid'],
    changes: true,
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
    changes: true,
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
    changes: true,
    menus: { cell: 0 },
    run: ({ cells }) => clearCells(cells),
  },
  {
    id: 'fill down',
    label: 'Fill down',
    keys: ['Ctrl D'],
    where: ['grid'],
    changes: true,
    menus: { cell: 0 },
    run: ({ grid }) => grid?.fillDown(),
  },
  {
    id: 'copy',
    label: 'Copy',
    keys: ['Ctrl C'],
    where: ['grid'],
    clipboard: 'copy',
    menus: { cell: 1 },
    run: ({ grid }, clipboard) => copyTo(clipboard, grid?.copied()),
  },
  {
    id: 'cut',
    label: 'Cut',
    keys: ['Ctrl X'],
    where: ['grid'],
    clipboard: 'cut',
    changes: true,
    run: ({ grid, cells }, clipboard) => {
      copyTo(clipboard, grid?.copied());
      clearCells(cells);
    },
  },
  {
    id: 'paste',
    label: 'Paste',
    keys: ['Ctrl V'],
    where: ['grid'],
    clipboard: 'paste',
    changes: true,
    run: ({ grid }, clipboard) => grid?.paste(clipboard?.getData('text/plain') ?? ''),
  },
  {
    id: 'begin formula',
    label: 'Begin a formula for the column',
    keys: ['='],
    where: CELLS,
    changes: true,
    // The cards have no formula line to begin in.
    applies: ({ column }) => column !== undefined && hasFormula(column) && !narrow.value,
    run: () => beginLine('='),
  },
];

/** A menu's copy has no clipboard event to hand the text to. */
function copyTo(clipboard: DataTransfer | undefined, text: string | undefined): void {
  if (text === undefined) return;
  if (clipboard === undefined) void navigator.clipboard.writeText(text);
  else clipboard.setData('text/plain', text);
}
