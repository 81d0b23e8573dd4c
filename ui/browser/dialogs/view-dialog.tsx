// A view's name and its columns: which are shown, in which order, which stay in sight at the left. Also how a new one begins.

import { useSignal } from '@preact/signals';
import { namingColumns, type SheetView } from '../../../engine/index.ts';
import { newId } from '../files/world.ts';
import { Refused } from '../own/refused.tsx';
import { addView, changeView, viewNow } from '../store/looks.ts';
import { columnOf } from '../store/sheets.ts';
import { Dialog } from './dialog.tsx';
import { closeLooks } from './look-state.ts';

export function ViewDialog({ sheet, fresh }: { readonly sheet: SheetView; readonly fresh: boolean }) {
  const view = viewNow(sheet);
  const naming = namingColumns(sheet);
  const name = useSignal(fresh ? '' : view.name);
  const shown = useSignal<readonly string[]>(view.shows.filter((id) => !naming.includes(id)));
  const pinned = useSignal<readonly string[]>(view.pinned ?? []);
  const wanted = useSignal('');
  const refused = useSignal<string | undefined>(undefined);
  const text = wanted.value.trim().toLowerCase();
  const rest = sheet.columns.filter(({ id }) => !naming.includes(id) && !shown.value.includes(id));
  const take = (): void => {
    const columns = shown.value;
    const part = { columns: columns.length === 0 ? naming : columns, pinned: pinned.value };
    const called = name.value.trim();
    refused.value = fresh ? addView(sheet, newId(), called, part) : changeView(sheet, { name: called, ...part });
    if (refused.value === undefined) closeLooks();
  };
  const toggle = (id: string, shows: boolean): void => {
    shown.value = shows ? [...shown.value, id] : shown.value.filter((each) => each !== id);
    if (!shows) pinned.value = pinned.value.filter((each) => each !== id);
  };
  return (
    <Dialog
      id="view"
      title={fresh ? `A view of ${sheet.name}` : `The view ${view.name} of ${sheet.name}`}
      takes={fresh ? 'Add the view' : 'Take it so'}
      canTake={name.value.trim() !== ''}
      onTake={take}
      onLeave={closeLooks}
    >
      <div>
        <label for="view-name">Name</label>
        <input
          id="view-name"
          type="text"
          value={name.value}
          onInput={({ currentTarget }) => {
            name.value = currentTarget.value;
            refused.value = undefined;
          }}
        />
        <Refused why={refused.value} />
      </div>
      <fieldset class="values">
        <legend>{`Shown, in this order, after ${naming.map((id) => columnOf(sheet, id)?.name ?? '').join(', ')}`}</legend>
        <ol>
          {shown.value.map((id, at) => (
            <Shown
              key={id}
              name={columnOf(sheet, id)?.name ?? ''}
              isPinned={pinned.value.includes(id)}
              isFirst={at === 0}
              onHide={() => toggle(id, false)}
              onUp={() => {
                shown.value = swapped(shown.value, at);
              }}
              onPin={(pin) => {
                pinned.value = pin ? [...pinned.value, id] : pinned.value.filter((each) => each !== id);
              }}
            />
          ))}
        </ol>
      </fieldset>
      <fieldset class="values">
        <legend>Not shown</legend>
        <div class="values-find">
          <input
            type="text"
            aria-label="Find a column"
            placeholder="Find a column"
            value={wanted.value}
            onInput={({ currentTarget }) => {
              wanted.value = currentTarget.value;
            }}
          />
        </div>
        <ul>
          {rest
            .filter((column) => column.name.toLowerCase().includes(text))
            .map((column) => (
              <li key={column.id}>
                <label>
                  <input type="checkbox" checked={false} onChange={() => toggle(column.id, true)} />
                  {column.name}
                  <span class="group-count">{column.group}</span>
                </label>
              </li>
            ))}
        </ul>
      </fieldset>
    </Dialog>
  );
}

interface ShownProps {
  readonly name: string;
  readonly isPinned: boolean;
  readonly isFirst: boolean;
  readonly onHide: () => void;
  readonly onUp: () => void;
  readonly onPin: (pin: boolean) => void;
}

function Shown({ name, isPinned, isFirst, onHide, onUp, onPin }: ShownProps) {
  return (
    <li class="shown-column">
      <label>
        <input type="checkbox" checked onChange={onHide} />
        {name}
      </label>
      <label>
        <input type="checkbox" checked={isPinned} onChange={({ currentTarget }) => onPin(currentTarget.checked)} />
        in sight
      </label>
      <button type="button" class="quiet" disabled={isFirst} aria-label={`${name} further to the front`} onClick={onUp}>
        {'\u2191'}
      </button>
    </li>
  );
}

/** With one and the one before it in each other's place. */
function swapped(list: readonly string[], at: number): readonly string[] {
  const next = [...list];
  const [one = ''] = next.splice(at, 1);
  next.splice(at - 1, 0, one);
  return next;
}
