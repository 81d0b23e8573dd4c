// The box on top of a list in which a person types what to look for.

import type { Signal } from '@preact/signals';

export function SearchBox({ label, wanted }: { readonly label: string; readonly wanted: Signal<string> }) {
  return (
    <input
      class="phone-search"
      type="search"
      enterkeyhint="search"
      autocomplete="off"
      placeholder={label}
      aria-label={label}
      value={wanted.value}
      onInput={({ currentTarget }) => {
        wanted.value = currentTarget.value;
      }}
    />
  );
}
