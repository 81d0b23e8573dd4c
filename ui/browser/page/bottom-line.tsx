// The page's last line: what the selected cells add up to, and what needs attention, which opens the list of it.

import { useComputed, useSignal } from '@preact/signals';
import { cellView, sheetView, showDate } from '../../../engine/index.ts';
import { type Summary, type SummedCell, summarize, summaryNumber } from '../grid/summary.ts';
import { findings, following, nothingFound } from '../store/findings.ts';
import { cellsIn, selectedCells } from '../store/selection.ts';
import { columnOf } from '../store/sheets.ts';
import { workbook } from '../store/workbook.ts';
import { AttentionList } from './attention-list.tsx';

/** Beyond so many cells a sum would make the selection lag behind the hand. */
const SUMMED = 60_000;

export function BottomLine() {
  const listIsOpen = useSignal(false);
  const parts = useComputed(summaryWords);
  const attention = useComputed(attentionWords);
  const count = findings.value.length;
  const worst = findings.value[0]?.level;
  return (
    <footer class="bottom-line">
      <p class="summary" aria-live="off">
        {parts.value.map(({ name, value }) => (
          <span key={name}>
            {name} <b>{value}</b>
          </span>
        ))}
      </p>
      {following.value && count > 0 ? <span class="following">Figures off screen follow</span> : null}
      <button
        type="button"
        class={`attention-button level-${worst ?? 'none'}`}
        aria-expanded={listIsOpen.value}
        disabled={count === 0}
        onClick={() => {
          listIsOpen.value = !listIsOpen.value;
        }}
      >
        {attention.value}
      </button>
      {listIsOpen.value && count > 0 ? (
        <AttentionList
          onClose={() => {
            listIsOpen.value = false;
          }}
        />
      ) : null}
    </footer>
  );
}

interface Part {
  readonly name: string;
  readonly value: string;
}

const NOTHING: readonly Part[] = [];

function summaryWords(): readonly Part[] {
  const selected = selectedCells.value;
  const book = workbook();
  const sheet = selected === undefined ? undefined : sheetView(book, selected.sheet);
  if (selected === undefined || sheet === undefined) return NOTHING;
  const count = selected.areas.reduce((sum, { rows, columns }) => sum + rows.length * columns.length, 0);
  if (count < 2) return NOTHING;
  if (count > SUMMED) return [{ name: 'Cells', value: summaryNumber(count, 0) }];
  const cells = cellsIn(selected).flatMap(({ row, column: id }): SummedCell[] => {
    const column = columnOf(sheet, id);
    return column === undefined ? [] : [{ column, cell: cellView(book, sheet.id, row.slot, id) }];
  });
  return wordsOf(summarize(cells));
}

function wordsOf({ cells, filled, numbers, dates }: Summary): readonly Part[] {
  const counted = { name: 'Filled', value: filled === cells ? String(cells) : `${filled} of ${cells}` };
  if (dates !== undefined) {
    return [{ name: 'From', value: showDate(dates.first) }, { name: 'to', value: showDate(dates.last) }, counted];
  }
  if (numbers === undefined) return [counted];
  const { sum, mean, least, most, unit, decimals } = numbers;
  const figure = (n: number, digits: number): string => `${summaryNumber(n, digits)}${unit === '' ? '' : ` ${unit}`}`;
  return [
    { name: 'Sum', value: figure(sum, decimals) },
    { name: 'Mean', value: figure(mean, Math.min(decimals + 1, 4)) },
    { name: 'Least', value: figure(least, decimals) },
    { name: 'Most', value: figure(most, decimals) },
    counted,
  ];
}

/** '2 errors, 5 warnings': errors and warnings; notes where there is nothing else. */
function attentionWords(): string {
  const list = findings.value;
  const parts = (['error', 'warning', 'note'] as const).flatMap((level) => {
    const count = list.filter((each) => each.level === level).length;
    return count === 0 ? [] : [`${count} ${level}${count === 1 ? '' : 's'}`];
  });
  return parts.length === 0 ? nothingFound() : `Needs attention: ${parts.join(', ')}`;
}
