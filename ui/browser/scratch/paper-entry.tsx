// The box in which a cell of a scratch paper is typed, in the cell or in the line above: one text, whichever box it is typed in.

import { useLayoutEffect, useRef } from 'preact/hooks';
import { goTo, hand, takeTyped, typing } from './paper-hand.ts';

export function PaperEntry({ class: className, label }: { readonly class: string; readonly label: string }) {
  const box = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => {
    const { current } = box;
    if (current === null) return;
    current.focus();
    current.setSelectionRange(current.value.length, current.value.length);
  }, []);
  return (
    <input
      ref={box}
      class={className}
      aria-label={label}
      spellcheck={false}
      autocomplete="off"
      value={typing.value?.text ?? ''}
      onInput={({ currentTarget }) => {
        const now = typing.peek();
        if (now !== undefined) typing.value = { ...now, text: currentTarget.value };
      }}
      onKeyDown={onEntryKey}
      onBlur={(event) => {
        // Within the paper the entry goes on, in the other box or by pressing a cell.
        const next = event.relatedTarget;
        if (!(next instanceof Element) || next.closest('.scratch-page') === null) takeTyped();
      }}
    />
  );
}

/** Enter and Tab take it and go on; Escape leaves it. */
export function onEntryKey(event: KeyboardEvent): void {
  if (event.isComposing) return;
  const { key, shiftKey } = event;
  const { row, column } = hand.peek();
  const by = shiftKey ? -1 : 1;
  if (!['Escape', 'Enter', 'Tab'].includes(key)) return;
  // The cells have the keys again before the box goes, or they would be nobody's.
  document.querySelector<HTMLElement>('.scratch-room')?.focus({ preventScroll: true });
  if (key === 'Escape') typing.value = undefined;
  else if (key === 'Enter') {
    takeTyped();
    goTo({ row: row + by, column });
  } else {
    takeTyped();
    goTo({ row, column: column + by });
  }
  event.preventDefault();
  event.stopPropagation();
}
