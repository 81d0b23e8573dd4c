// The figures that matter of a row, in large type; each opens its reasons. Which ones they are, the caller says.

import { useSignal } from '@preact/signals';
import { cellView, settings } from '../../../../engine/index.ts';
import { intervalWords } from '../../pictures/kit/interval-words.ts';
import { findingsAt, workbookFollowed } from '../../store/findings.ts';
import { columnOf } from '../../store/sheets.ts';
import { unitBehind } from '../../store/shown.ts';
import { workbook } from '../../store/workbook.ts';
import type { PanelProps } from '../panel.ts';
import { Reasons } from './reasons-later.ts';

export interface KeyFiguresProps extends PanelProps {
  readonly columns: readonly string[];
  /** Those of them that rest on the whole season: they follow a moment after the others. */
  readonly late?: readonly string[];
  /** Whether their reasons are open from the start. */
  readonly opened?: boolean;
}

const NONE: readonly string[] = [];

export function KeyFigures({ sheet, row, columns, late = NONE, opened = false }: KeyFiguresProps) {
  return (
    <ul class="key-figures">
      {columns.map((column) => (
        <KeyFigure key={column} {...{ sheet, row, column, opened }} late={late.includes(column)} />
      ))}
    </ul>
  );
}

interface KeyFigureProps extends PanelProps {
  readonly column: string;
  readonly late: boolean;
  readonly opened: boolean;
}

function KeyFigure({ sheet, row, column, late, opened }: KeyFigureProps) {
  const open = useSignal(opened);
  const view = columnOf(sheet, column);
  if (view === undefined) return null;
  const { number, figure, fullUnit } = cellView(late ? workbookFollowed() : workbook(), sheet.id, row.slot, column);
  const found = findingsAt(sheet.id, row.id, column);
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
        <span class="key-name">{view.name}</span>
        <span class={number === undefined ? 'key-value words' : 'key-value'}>
          {figure === '' ? <span class="key-blank">blank</span> : figure}
          {fullUnit === '' ? null : <span class="key-unit">{unitBehind(fullUnit)}</span>}
        </span>
      </button>
      <Range sheet={sheet} row={row} column={column} late={late} />
      {found.map(({ says }) => (
        <p key={says} class="key-found">
          {says}
        </p>
      ))}
      {open.value ? <Reasons sheet={sheet.id} row={row} column={column} /> : null}
    </li>
  );
}

/** Between which ends a figure lies, where the sheet has columns for them. */
function Range({ sheet, row, column, late }: PanelProps & Pick<KeyFigureProps, 'column' | 'late'>) {
  const book = late ? workbookFollowed() : workbook();
  const shown = (id: string) => {
    return columnOf(sheet, id) === undefined ? undefined : cellView(book, sheet.id, row.slot, id);
  };
  const [low, likely, high] = [shown(`${column}-low`), shown(column), shown(`${column}-high`)];
  if (low?.number === undefined || likely?.number === undefined || high?.number === undefined) return null;
  const interval = { low: low.number, likely: likely.number, high: high.number };
  return <p class="key-range">{intervalWords(interval, likely.fullUnit, settings(book).writing)}</p>;
}
