// Commands about how a sheet is looked at: order, filter, groups, which columns are shown and where. Each changes the view on
// screen, as one step of undo. Entries of the table.

import { type SheetView, type SortKey, viewsPutAway } from '../../../engine/index.ts';
import { beginColour, beginFilter, beginView } from '../dialogs/look-state.ts';
import { bringViewsBack, changeView, orderWords, removeView, takeViewBack, viewNow } from '../store/looks.ts';
import type { PageCommand } from './command.ts';
import type { Situation } from './situation.ts';

const FOUND: readonly (readonly ['any' | 'error' | 'warning' | 'note', string])[] = [
  ['any', 'Rows in which something was found'],
  ['error', 'Rows with errors'],
  ['warning', 'Rows with warnings'],
];

type Act = (sheet: SheetView, column: string) => void;

function onColumn(act: Act): PageCommand['run'] {
  return ({ sheet, column }: Situation) => {
    if (sheet !== undefined && column !== undefined) act(sheet, column.id);
  };
}

/** Sorts by a column alone, or after the keys there are. */
function sortBy(sheet: SheetView, key: SortKey, after: boolean): void {
  const kept = after ? (viewNow(sheet).sort ?? []).filter(({ column }) => column !== key.column) : [];
  changeView(sheet, { sort: [...kept, key] }, 'sort view');
}

function keyOf(column: string, descending: boolean): SortKey {
  return descending ? { column, descending: true } : { column };
}

function lowered(words: string): string {
  return words.includes(' to ') ? words : `${words.charAt(0).toLowerCase()}${words.slice(1)}`;
}

const isSorted = ({ sheet }: Situation): boolean => sheet !== undefined && (viewNow(sheet).sort ?? []).length > 0;

const isPinned = ({ sheet, column }: Situation): boolean =>
  sheet !== undefined && column !== undefined && viewNow(sheet).pinned?.includes(column.id) === true;

/** What names a row always stands in front. */
const isFree = ({ sheet, column }: Situation): boolean => {
  if (sheet === undefined || column === undefined) return false;
  const { shows, inFront, pinned = [] } = viewNow(sheet);
  return shows.indexOf(column.id) >= inFront - pinned.length;
};

function move(by: 1 | -1): Act {
  return (sheet, column) => {
    const { shows, inFront } = viewNow(sheet);
    const columns = shows.slice(inFront);
    const at = columns.indexOf(column);
    const to = at + by;
    if (at < 0 || to < 0 || to >= columns.length) return;
    columns.splice(at, 1);
    columns.splice(to, 0, column);
    changeView(sheet, { columns });
  };
}

export const LOOKS: readonly PageCommand[] = [
  ...([false, true] as const).flatMap((descending): readonly PageCommand[] => [
    {
      id: descending ? 'sort down' : 'sort up',
      label: descending ? 'Greatest first' : 'Least first',
      says: ({ column }) => orderWords(column, descending),
      menus: { column: 0 },
      run: onColumn((sheet, column) => sortBy(sheet, keyOf(column, descending), false)),
    },
    {
      id: descending ? 'then sort down' : 'then sort up',
      label: descending ? 'Then by this, greatest first' : 'Then by this, least first',
      says: ({ column }) => `Then by this, ${lowered(orderWords(column, descending))}`,
      applies: isSorted,
      menus: { column: 0 },
      run: onColumn((sheet, column) => sortBy(sheet, keyOf(column, descending), true)),
    },
  ]),
  {
    id: 'sort not',
    label: 'In the order entered',
    applies: isSorted,
    menus: { column: 0 },
    run: ({ sheet }) => {
      if (sheet !== undefined) changeView(sheet, { sort: [] }, 'sort view');
    },
  },
  {
    id: 'filter',
    label: 'Filter',
    says: ({ column }) => `Filter by ${column?.name ?? 'a column'}`,
    menus: { column: 1, cell: 4 },
    run: onColumn((sheet, column) => beginFilter(sheet.id, column)),
  },
  {
    id: 'group by',
    label: 'Group',
    says: ({ column }) => `Group by ${column?.name ?? 'a column'}`,
    menus: { column: 1 },
    run: onColumn((sheet, groupBy) => changeView(sheet, { groupBy }, 'group view')),
  },
  {
    id: 'colour',
    label: 'Colour by rule',
    says: ({ column }) => `Colour ${column?.name ?? 'cells'} by rule`,
    menus: { column: 1, cell: 4 },
    run: onColumn((sheet, column) => beginColour(sheet.id, column)),
  },
  {
    id: 'hide column',
    label: 'Hide the column',
    applies: isFree,
    menus: { column: 2 },
    run: onColumn((sheet, column) => {
      const { shows, inFront, pinned = [] } = viewNow(sheet);
      changeView(sheet, {
        columns: [...pinned, ...shows.slice(inFront)].filter((id) => id !== column),
        pinned: pinned.filter((id) => id !== column),
      });
    }),
  },
  {
    id: 'pin column',
    label: 'Keep in sight at the left',
    says: (now) => (isPinned(now) ? 'Let it scroll with the others' : 'Keep in sight at the left'),
    applies: isFree,
    menus: { column: 2 },
    run: onColumn((sheet, column) => {
      const { pinned = [] } = viewNow(sheet);
      const next = pinned.includes(column) ? pinned.filter((id) => id !== column) : [...pinned, column];
      changeView(sheet, { pinned: next });
    }),
  },
  ...([-1, 1] as const).map(
    (by): PageCommand => ({
      id: by === 1 ? 'column right' : 'column left',
      label: by === 1 ? 'Move to the right' : 'Move to the left',
      applies: (now) => isFree(now) && !isPinned(now),
      menus: { column: 2 },
      run: onColumn(move(by)),
    }),
  ),
  {
    id: 'fit column',
    label: 'As wide as its texts',
    menus: { column: 2 },
    run: ({ grid, column }) => {
      if (column !== undefined) grid?.fitColumn(column.id);
    },
  },
  {
    id: 'change view',
    label: 'Choose the columns of this view',
    applies: ({ sheet }) => sheet?.oneRow === false,
    menus: { column: 3, view: 0 },
    run: ({ sheet }) => {
      if (sheet !== undefined) beginView(sheet);
    },
  },
  {
    id: 'new view',
    label: 'A new view like this one',
    menus: { view: 0 },
    run: ({ sheet }) => {
      if (sheet !== undefined) beginView(sheet, true);
    },
  },
  {
    id: 'view as it came',
    label: 'This view as it came',
    applies: ({ sheet }) => sheet !== undefined && viewNow(sheet).changed,
    menus: { view: 0 },
    run: ({ sheet }) => {
      if (sheet !== undefined) takeViewBack(sheet);
    },
  },
  {
    id: 'remove view',
    label: 'Put this view away',
    says: ({ sheet }) => (sheet !== undefined && viewNow(sheet).own ? 'Remove this view' : 'Put this view away'),
    refusal: ({ sheet }) =>
      sheet !== undefined && viewNow(sheet).id === 'all' ? 'Every sheet keeps the view of all its columns.' : undefined,
    menus: { view: 0 },
    run: ({ sheet }) => {
      if (sheet !== undefined) removeView(sheet);
    },
  },
  {
    id: 'views back',
    label: 'Bring back the views that were put away',
    applies: ({ book, sheet }) => book !== undefined && sheet !== undefined && viewsPutAway(book, sheet.id).length > 0,
    menus: { view: 0 },
    run: ({ sheet }) => {
      if (sheet !== undefined) bringViewsBack(sheet);
    },
  },
  ...FOUND.map(
    ([level, label]): PageCommand => ({
      id: `found ${level}`,
      label,
      menus: { view: 1 },
      run: ({ sheet }) => {
        if (sheet === undefined) return;
        const others = (viewNow(sheet).filters ?? []).filter(({ by }) => by !== 'finding');
        changeView(sheet, { filters: [...others, { by: 'finding', level }] }, 'filter view');
      },
    }),
  ),
  {
    id: 'filter not',
    label: 'All rows',
    refusal: ({ sheet }) =>
      sheet !== undefined && (viewNow(sheet).filters ?? []).length > 0 ? undefined : 'No row is kept back.',
    menus: { view: 1 },
    run: ({ sheet }) => {
      if (sheet !== undefined) changeView(sheet, { filters: [] }, 'filter view');
    },
  },
  {
    id: 'arrange again',
    label: 'Sort and filter again',
    menus: { view: 2 },
    applies: ({ sheet }) => sheet?.oneRow === false,
    run: ({ grid }) => grid?.arrangeAgain(),
  },
  {
    id: 'fold groups',
    label: 'Fold all groups, or open them',
    menus: { view: 2 },
    applies: ({ sheet }) => sheet !== undefined && viewNow(sheet).groupBy !== undefined,
    run: ({ grid }) => grid?.foldGroups(),
  },
];
