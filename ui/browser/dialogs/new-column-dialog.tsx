// Adding a column to a sheet: its name, and a formula or what is typed in it. The checker answers under the formula.

import { useLayoutEffect, useRef } from 'preact/hooks';
import {
  addColumn,
  type ColumnKind,
  describeColumn,
  formulaSays,
  linkable,
  type NewColumn,
  newColumn,
} from './new-column-state.ts';

const KINDS: readonly (readonly [ColumnKind, string])[] = [
  ['formula', 'A formula gives it'],
  ['number', 'A number, typed'],
  ['text', 'Text, typed'],
  ['date', 'A date, typed'],
  ['yesno', 'Yes or no, typed'],
  ['choice', 'One of a few choices'],
  ['link', 'A row of another sheet'],
];

export function NewColumnDialog() {
  const column = newColumn.value;
  const box = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    if (column !== undefined && box.current?.open === false) box.current.showModal();
  }, [column]);
  if (column === undefined) return null;
  return (
    <dialog class="dialog" ref={box} aria-labelledby="new-column-title" onClose={giveUp}>
      <h2 id="new-column-title">{`A column for ${column.sheetName}`}</h2>
      <form
        class="dialog-form"
        onSubmit={(event) => {
          event.preventDefault();
          addColumn();
        }}
      >
        <Fields column={column} />
        {column.refused === undefined ? null : (
          <p class="refusal" role="alert">
            {column.refused}
          </p>
        )}
        <div class="dialog-acts">
          <button type="button" onClick={giveUp}>
            Leave it
          </button>
          <button type="submit" class="primary">
            Add the column
          </button>
        </div>
      </form>
    </dialog>
  );
}

function giveUp(): void {
  newColumn.value = undefined;
}

function Fields({ column }: { readonly column: NewColumn }) {
  const said = formulaSays(column);
  return (
    <>
      <div>
        <label for="new-column-name">Name</label>
        <input
          id="new-column-name"
          type="text"
          value={column.name}
          autocomplete="off"
          onInput={({ currentTarget }) => describeColumn({ name: currentTarget.value })}
        />
      </div>
      <div>
        <label for="new-column-kind">What fills it</label>
        <select
          id="new-column-kind"
          value={column.kind}
          onChange={({ currentTarget }) => {
            const kind = KINDS.find(([each]) => each === currentTarget.value)?.[0];
            if (kind !== undefined) describeColumn({ kind });
          }}
        >
          {KINDS.map(([kind, words]) => (
            <option key={kind} value={kind}>
              {words}
            </option>
          ))}
        </select>
      </div>
      {column.kind === 'formula' ? (
        <div>
          <label for="new-column-formula">Formula</label>
          <input
            id="new-column-formula"
            type="text"
            value={column.formula}
            autocomplete="off"
            spellcheck={false}
            placeholder="=[Length] / 2"
            onInput={({ currentTarget }) => describeColumn({ formula: currentTarget.value })}
          />
          <span class={said.ok ? 'within' : 'is-error'} role="status">
            {said.says}
          </span>
        </div>
      ) : null}
      {column.kind === 'choice' ? (
        <div>
          <label for="new-column-choices">Choices</label>
          <input
            id="new-column-choices"
            type="text"
            value={column.options}
            autocomplete="off"
            placeholder="good; fair; poor"
            onInput={({ currentTarget }) => describeColumn({ options: currentTarget.value })}
          />
        </div>
      ) : null}
      {column.kind === 'link' ? (
        <div>
          <label for="new-column-linked">Of the sheet</label>
          <select
            id="new-column-linked"
            value={column.linked}
            onChange={({ currentTarget }) => describeColumn({ linked: currentTarget.value })}
          >
            {linkable(column.sheet).map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </div>
      ) : null}
      {column.kind === 'number' ? (
        <div>
          <label for="new-column-unit">Unit</label>
          <input
            id="new-column-unit"
            type="text"
            value={column.unit}
            autocomplete="off"
            placeholder="in, lb, %, or nothing for a plain number"
            onInput={({ currentTarget }) => describeColumn({ unit: currentTarget.value })}
          />
        </div>
      ) : null}
    </>
  );
}
