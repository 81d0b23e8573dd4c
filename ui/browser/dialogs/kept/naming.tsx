// A name that is typed in a list of what is kept: for a version, or for a workbook.

import { useSignal } from '@preact/signals';

interface Props {
  readonly label: string;
  readonly button: string;
  readonly begin: string;
  readonly take: (name: string) => void;
  /** It stands there for the next name too. */
  readonly stays?: boolean;
}

/** Longer names are of no use in a list. */
const LONGEST = 120;

export function Naming({ label, button, begin, take, stays = false }: Props) {
  const text = useSignal(begin);
  const name = text.value.trim();
  return (
    <form
      class="kept-naming"
      onSubmit={(event) => {
        event.preventDefault();
        if (name === '') return;
        take(name);
        if (stays) text.value = '';
      }}
    >
      <label>
        <span>{label}</span>
        <input
          type="text"
          maxLength={LONGEST}
          value={text.value}
          onInput={({ currentTarget }) => {
            text.value = currentTarget.value;
          }}
        />
      </label>
      <button type="submit" disabled={name === ''}>
        {button}
      </button>
    </form>
  );
}
