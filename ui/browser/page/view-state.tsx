// What the view on screen does with the rows of its sheet: what keeps rows back, orders or groups them, each to be taken off again.
// Comes a moment after the sheet.

import type { Filter, SheetView, View } from '../../../engine/index.ts';
import { CommandButton } from '../commands/command-button.tsx';
import { beginFilter } from '../dialogs/look-state.ts';
import { rowsOnScreen } from '../grid/grid-surface.ts';
import { filterWords } from '../store/condition-words.ts';
import { changeView } from '../store/looks.ts';
import { columnOf } from '../store/sheets.ts';
import { workbook } from '../store/workbook.ts';

/** As chips; pressing one takes it off, or opens its filter. */
export function ViewState({ sheet, view }: { readonly sheet: SheetView; readonly view: View }) {
  const { filters = [], sort = [], groupBy } = view;
  const { shown, left, old } = rowsOnScreen.value;
  const grouped = columnOf(sheet, groupBy);
  return (
    <div class="view-state">
      {filters.map((filter) => (
        <FilterChip key={JSON.stringify(filter)} sheet={sheet} filter={filter} filters={filters} />
      ))}
      {left === 0 ? null : <span class="rows-left">{`${shown} of ${shown + left} rows`}</span>}
      {sort.length === 0 ? null : (
        <Chip
          words={`Sorted by ${sort.map(({ column }) => columnOf(sheet, column)?.name ?? '').join(', then ')}`}
          off="In the order entered"
          onOff={() => changeView(sheet, { sort: [] }, 'sort view')}
        />
      )}
      {grouped === undefined ? null : (
        <Chip
          words={`Grouped by ${grouped.name}`}
          off="Without groups"
          onOff={() => changeView(sheet, { groupBy: undefined }, 'group view')}
        />
      )}
      {old ? <CommandButton id="arrange again" class="quiet" /> : null}
    </div>
  );
}

interface FilterChipProps {
  readonly sheet: SheetView;
  readonly filter: Filter;
  readonly filters: readonly Filter[];
}

function FilterChip({ sheet, filter, filters }: FilterChipProps) {
  const column = filter.by === 'cell' ? columnOf(sheet, filter.column) : undefined;
  return (
    <Chip
      words={filterWords(workbook(), filter, column)}
      off="Show the rows that it keeps back"
      onOff={() => changeView(sheet, { filters: filters.filter((each) => each !== filter) }, 'filter view')}
      onOpen={column === undefined ? undefined : () => beginFilter(sheet.id, column.id)}
    />
  );
}

interface ChipProps {
  readonly words: string;
  readonly off: string;
  readonly onOff: () => void;
  readonly onOpen?: (() => void) | undefined;
}

function Chip({ words, off, onOff, onOpen }: ChipProps) {
  return (
    <span class="chip">
      {onOpen === undefined ? (
        <span class="chip-words" title={words}>
          {words}
        </span>
      ) : (
        <button type="button" class="chip-words quiet" title={words} onClick={onOpen}>
          {words}
        </button>
      )}
      <button type="button" class="chip-off" title={off} aria-label={`${off}: ${words}`} onClick={onOff}>
        <span aria-hidden="true">{'\u00d7'}</span>
      </button>
    </span>
  );
}
