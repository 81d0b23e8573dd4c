// The figures that matter of a row, in large type; each opens its reasons. Which ones they are, the caller says.

import { useSignal } from '@preact/signals';
import type { TableView } from '../../../engine/index.ts';
import { attention, workbook } from '../state.ts';
import { columnOf } from './planting.ts';
import { Reasons } from './reasons.tsx';

export interface KeyFiguresWishes {
  readonly table: TableView;
  readonly row: number;
  readonly columns: readonly string[];
  /** Whether their reasons are open from the start. */
  readonly opened?: boolean;
}

export function KeyFigures({ table, row, columns, opened = false }: KeyFiguresWishes) {
  return (
    <ul class="key-figures">
      {columns.map((column) => (
        <KeyFigure key={column} table={table} row={row} name={column} opened={opened} />
      ))}
    </ul>
  );
}

interface KeyFigureWishes {
  readonly table: TableView;
  readonly row: number;
  readonly name: string;
  readonly opened: boolean;
}

function KeyFigure({ table, row, name, opened }: KeyFigureWishes) {
  const open = useSignal(opened);
  const column = columnOf(table, name);
  if (column === undefined) return null;
  const cell = workbook().cell(table.name, row, name);
  const found = attention.value.filter((item) => item.table === table.name && item.row === row && item.column === name);
  const unit = column.unit !== '' && /\d$/.test(cell.text) ? column.unit : '';
  return (
    <li class={open.value ? 'is-open' : undefined}>
      <button
        type="button"
        class="key-figure"
        aria-expanded={open.value}
        onClick={() => {
          open.value = !open.value;
        }}
      >
        <span class="key-name">{name}</span>
        <span class={cell.number === undefined ? 'key-value words' : 'key-value'}>
          {cell.text === '' ? <span class="key-blank">blank</span> : cell.text}
          {unit === '' ? null : <span class="key-unit"> {unit}</span>}
        </span>
      </button>
      {found.map(({ says }) => (
        <p key={says} class="key-found">
          {says}
        </p>
      ))}
      {open.value ? <Reasons table={table.name} row={row} column={name} /> : null}
    </li>
  );
}
