// The menus of the grid: of cells and their rows, and of columns. Each item says the keys that do the same.

import type { ColumnView, TableView } from '../../../engine/index.ts';
import { beginFormula } from '../formula-line/requests.ts';
import { tell } from '../messages.ts';
import type { MenuItem } from '../parts/menu-state.ts';
import { beginColumn } from '../parts/new-column-state.ts';
import { type CellPlace, canTakeBack, duplicateRow, removeRows, takeBack } from '../sheet-actions.ts';
import { edit, readOnly, undo } from '../state.ts';
import type { RangeCommands } from './range-commands.ts';
import { newRowWish } from './selected.ts';

export interface MenuPlace {
  readonly table: TableView;
  readonly column: ColumnView;
  /** Slots of the selected rows, the empty row left out. */
  readonly rows: readonly number[];
  /** The selected cells. */
  readonly cells: readonly CellPlace[];
  readonly commands: RangeCommands;
  readonly startEditing: () => void;
}

/** What can be done with the selected cells and their rows. */
export function cellMenu(place: MenuPlace): readonly (readonly MenuItem[])[] {
  const { table, column, rows, cells, commands } = place;
  const free = readOnly.value === undefined;
  const first = rows[0];
  const typedOver = cells.some(canTakeBack);
  const many = rows.length > 1;
  return [
    [
      {
        label: 'Edit the cell',
        keys: 'Enter',
        run: place.startEditing,
        can: free && column.role !== 'made',
        why: 'This cell comes from other sheets.',
      },
      {
        label: cells.length > 1 ? 'Take cells back to their formulas' : 'Take back to the formula',
        keys: 'Alt Backspace',
        run: () => takeBack(cells),
        can: free && typedOver,
        why: 'Nothing was typed over a formula here.',
      },
      { label: 'Clear', keys: 'Delete', run: () => commands.clear(), can: free },
      { label: 'Fill down', keys: 'Ctrl D', run: () => commands.fillDown(), can: free },
    ],
    [
      {
        label: 'Copy',
        keys: 'Ctrl C',
        run: () => void navigator.clipboard.writeText(commands.copied() ?? ''),
      },
    ],
    table.entered
      ? [
          { label: 'Add a row', run: wishForRow, can: free },
          {
            label: 'Duplicate the row',
            run: () => {
              if (first !== undefined) duplicateRow(table.name, first);
            },
            can: free && !many && first !== undefined,
            why: 'Select one row to duplicate it.',
          },
          {
            label: many ? `Remove ${rows.length} rows` : 'Remove the row',
            run: () => removeRows(table.name, rows),
            can: free && first !== undefined,
          },
        ]
      : [],
    [...formulaItems(column), { label: 'Add a column', run: () => beginColumn(table.name), can: free }],
  ];
}

function wishForRow(): void {
  newRowWish.value += 1;
}

function formulaItems(column: ColumnView): readonly MenuItem[] {
  if (column.role !== 'computed' && column.role !== 'default') return [];
  return [{ label: `Change the formula of ${column.name}`, keys: '=', run: () => beginFormula(`=${column.formula}`) }];
}

/** What can be done with a column. */
export function columnMenu(
  table: string,
  column: ColumnView,
  sort: (order: 'asc' | 'desc' | null) => void,
): readonly (readonly MenuItem[])[] {
  return [
    [
      { label: 'Least first', run: () => sort('asc') },
      { label: 'Greatest first', run: () => sort('desc') },
      { label: 'In the order entered', run: () => sort(null) },
    ],
    formulaItems(column),
    [
      { label: 'Add a column', run: () => beginColumn(table), can: readOnly.value === undefined },
      {
        label: `Remove ${column.name}`,
        run: () => removeColumn(table, column.name),
        can: readOnly.value === undefined,
      },
    ],
  ];
}

function removeColumn(table: string, column: string): void {
  const done = edit([{ edit: 'remove column', table, column }], `Remove the column ${column}`);
  if (!done.refused) tell(`Removed the column ${column}.`, 'done', { label: 'Undo', run: undo });
}
