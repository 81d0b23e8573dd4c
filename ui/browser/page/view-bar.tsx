// Under a sheet's name: the views it can be looked at through, and what the one on screen does with the rows (filters, order,
// groups), each to be taken off again.

import { useLayoutEffect, useRef } from 'preact/hooks';
import { type ColumnView, type Filter, type SheetView, settings, showDate, type View } from '../../../engine/index.ts';
import { CommandButton } from '../commands/command-button.tsx';
import { showMenu } from '../commands/menu-state.ts';
import { menuItems } from '../commands/menus.ts';
import { Situation } from '../commands/situation.ts';
import { beginFilter } from '../dialogs/look-state.ts';
import { rowsOnScreen } from '../grid/grid-surface.ts';
import { conditionWords } from '../store/condition-words.ts';
import { changeView, chooseView, viewOn, viewsOf } from '../store/looks.ts';
import { columnOf } from '../store/sheets.ts';
import { useSteady } from '../store/steady.ts';
import { workbook } from '../store/workbook.ts';

export function ViewBar({ sheet }: { readonly sheet: SheetView }) {
  const views = useSteady(sheet, viewsOf);
  const view = useSteady(sheet, viewOn);
  const pressed = useRef<HTMLButtonElement>(null);
  useLayoutEffect(() => {
    pressed.current?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [sheet.id, view.id]);
  return (
    <div class="view-bar">
      <nav class="views" aria-label="Views of this sheet">
        {views.map(({ id, name }) => (
          <button
            key={id}
            type="button"
            class="quiet"
            aria-pressed={id === view.id}
            ref={id === view.id ? pressed : null}
            onClick={() => chooseView(sheet.id, id)}
          >
            {name}
          </button>
        ))}
      </nav>
      <ViewState sheet={sheet} view={view} />
      <button
        type="button"
        class="quiet"
        aria-haspopup="menu"
        onClick={({ currentTarget }) => {
          const { right, bottom } = currentTarget.getBoundingClientRect();
          const each = views.map(({ id, name }) => ({
            label: id === view.id ? `${name} (now)` : name,
            keys: undefined,
            why: undefined,
            run: () => chooseView(sheet.id, id),
          }));
          const sets = [each, ...menuItems('view', new Situation('page'))];
          showMenu({ x: right - 240, y: bottom + 4, label: 'View', sets });
        }}
      >
        View
      </button>
    </div>
  );
}

/** What keeps rows back or orders them, as chips; pressing one takes it off, or opens its filter. */
function ViewState({ sheet, view }: { readonly sheet: SheetView; readonly view: View }) {
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
      words={filterWords(filter, column)}
      off="Show the rows that it keeps back"
      onOff={() => changeView(sheet, { filters: filters.filter((each) => each !== filter) }, 'filter view')}
      onOpen={column === undefined ? undefined : () => beginFilter(sheet.id, column.id)}
    />
  );
}

function filterWords(filter: Filter, column: ColumnView | undefined): string {
  if (filter.by === 'finding')
    return filter.level === 'any' ? 'Rows that need attention' : `Rows with ${filter.level}s`;
  const book = workbook();
  const { writing } = settings(book);
  if (column === undefined) return 'A column that went';
  return `${column.name} ${conditionWords(book, column, filter.when, (civil) => showDate(civil, writing))}`;
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
