// How a sheet's cards are looked at on the phone: through which of its views, in which order, and whether only those rows that need
// attention. The same views as on the desk, kept in the workbook: what is changed here is one step of undo.

import { arrange, type Finding, type SheetView } from '../../../engine/index.ts';
import { CommandButton } from '../commands/command-button.tsx';
import { namedOptions } from '../page/named-options.tsx';
import { findingsOf } from '../store/findings.ts';
import { changeView, chooseView, orderWords, viewOn, viewsOf } from '../store/looks.ts';
import { columnOf } from '../store/sheets.ts';
import { workbook } from '../store/workbook.ts';

export interface Looked {
  /** Slots in the order of the view. */
  readonly rows: readonly number[];
  /** How many rows the view's filters keep back. */
  readonly left: number;
  /** The columns that the view asks for; undefined for the sheet's first, which says what tells rows apart. */
  readonly columns: readonly string[] | undefined;
}

/** The rows and columns of a sheet as its view shows them. */
export function lookedAt(sheet: SheetView): Looked {
  const view = viewOn(sheet);
  const found = findingsOf(sheet.id);
  const has = (row: string, level: Finding['level'] | 'any'): boolean =>
    found.some((each) => each.rowId === row && (level === 'any' || each.level === level));
  const { rows, left } = arrange(workbook(), sheet.id, view, has);
  const isFirst = view.id === viewsOf(sheet)[0]?.id;
  const sorted = (view.sort ?? []).map(({ column }) => column);
  const columns = [...new Set([...sorted, ...view.shows])].filter((id) => id !== sheet.key);
  return { rows, left, columns: isFirst && sorted.length === 0 ? undefined : columns };
}

const AS_ENTERED = '';

export function CardLook({ sheet, left }: { readonly sheet: SheetView; readonly left: number }) {
  const views = viewsOf(sheet);
  const view = viewOn(sheet);
  const [first] = view.sort ?? [];
  const columns = [...new Set([...(first === undefined ? [] : [first.column]), ...view.shows])].flatMap(
    (id) => columnOf(sheet, id) ?? [],
  );
  return (
    <div class="phone-look">
      {views.length < 2 ? null : (
        <label>
          Look at
          <select value={view.id} onChange={({ currentTarget }) => chooseView(sheet.id, currentTarget.value)}>
            {namedOptions(views)}
          </select>
        </label>
      )}
      <label>
        In order of
        <select
          value={first?.column ?? AS_ENTERED}
          onChange={({ currentTarget: { value: column } }) =>
            changeView(sheet, { sort: column === AS_ENTERED ? [] : [{ column }] }, 'sort view')
          }
        >
          <option value={AS_ENTERED}>the sheet</option>
          {namedOptions(columns)}
        </select>
      </label>
      {first === undefined ? null : (
        <button
          type="button"
          onClick={() => {
            const { column, descending } = first;
            changeView(sheet, { sort: [descending === true ? { column } : { column, descending: true }] }, 'sort view');
          }}
        >
          {orderWords(
            columns.find(({ id }) => id === first.column),
            first.descending === true,
          )}
        </button>
      )}
      {left === 0 ? null : (
        <p class="phone-left">
          {left === 1 ? 'One row is kept back.' : `${left} rows are kept back.`}{' '}
          <CommandButton id="filter not">Show all rows</CommandButton>
        </p>
      )}
      {left > 0 || !findingsOf(sheet.id).some((each) => each.rowId !== undefined) ? null : (
        <CommandButton id="found any">Only rows that need attention</CommandButton>
      )}
    </div>
  );
}
