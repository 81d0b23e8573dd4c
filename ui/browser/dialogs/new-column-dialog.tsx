// Adding a column to a sheet: its name, and a formula or what is typed in it. The checker answers under the formula.

import type { ComponentChildren } from 'preact';
import { useId, useLayoutEffect, useRef } from 'preact/hooks';
import { addColumn, describeColumn, formulaSays } from './new-column-acts.ts';
import { type ColumnKind, linkable, type NewColumn, newColumn } from './new-column-state.ts';

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
  const { kind } = column;
  return (
    <>
      <TextField label="Name" of="name" column={column} />
      <Choose
        label="What fills it"
        chosen={kind}
        among={KINDS}
        onChoose={(chosen) => {
          const next = KINDS.find(([each]) => each === chosen)?.[0];
          if (next !== undefined) describeColumn({ kind: next });
        }}
      />
      {kind === 'formula' ? (
        <TextField label="Formula" of="formula" column={column} example="=[Length] / 2">
          <FormulaAnswer column={column} />
        </TextField>
      ) : null}
      {kind === 'choice' ? <TextField label="Choices" of="options" column={column} example="good; fair; poor" /> : null}
      {kind === 'link' ? (
        <Choose
          label="Of the sheet"
          chosen={column.linked}
          among={linkable(column.sheet).map(({ id, name }) => [id, name] as const)}
          onChoose={(linked) => describeColumn({ linked })}
        />
      ) : null}
      {kind === 'number' ? (
        <TextField label="Unit" of="unit" column={column} example="in, lb, %, or nothing for a plain number" />
      ) : null}
    </>
  );
}

function FormulaAnswer({ column }: { readonly column: NewColumn }) {
  const { ok, says } = formulaSays(column);
  return (
    <span class={ok ? 'within' : 'is-error'} role="status">
      {says}
    </span>
  );
}

interface TextFieldProps {
  readonly label: string;
  /** The part of the column that is typed here. */
  readonly of: 'name' | 'formula' | 'options' | 'unit';
  readonly column: NewColumn;
  /** How an entry looks; nothing where that needs no saying. */
  readonly example?: string;
  /** What is said under it. */
  readonly children?: ComponentChildren;
}

function TextField({ label, of, column, example = '', children }: TextFieldProps) {
  const id = useId();
  return (
    <div>
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        value={column[of]}
        autocomplete="off"
        spellcheck={of !== 'formula'}
        placeholder={example}
        onInput={({ currentTarget }) => describeColumn({ [of]: currentTarget.value })}
      />
      {children}
    </div>
  );
}

interface ChooseProps {
  readonly label: string;
  readonly chosen: string;
  readonly among: readonly (readonly [id: string, words: string])[];
  readonly onChoose: (id: string) => void;
}

function Choose({ label, chosen, among, onChoose }: ChooseProps) {
  const id = useId();
  return (
    <div>
      <label for={id}>{label}</label>
      <select id={id} value={chosen} onChange={({ currentTarget }) => onChoose(currentTarget.value)}>
        {among.map(([each, words]) => (
          <option key={each} value={each}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}
