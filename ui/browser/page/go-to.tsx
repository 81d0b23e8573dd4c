// The box that finds any sheet, row or column by its name and goes there. Ctrl K puts the focus in it. What finds, and the list of
// what was found, is in found-places.tsx.

import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { rowId, rows } from '../../../engine/index.ts';
import { goTo, selection } from '../store/selection.ts';
import { workbookNow } from '../store/workbook.ts';
import type { FoundPlace } from './find-places.ts';

const SHOWN = 14;

type Finder = typeof import('./found-places.tsx');

let finder: Finder | undefined;

/** What finds is fetched once the page stands, or else with the first key; where there is no way to it, the next key tries again. */
export async function fetchFinder(): Promise<Finder | undefined> {
  finder ??= await import('./found-places.tsx').catch(() => undefined);
  return finder;
}

export function GoTo() {
  const box = useRef<HTMLInputElement>(null);
  const found = useSignal<readonly FoundPlace[] | undefined>(undefined);
  const active = useSignal(0);
  /** Enter before there was anything to take. */
  const isWanted = useRef(false);

  const look = (typed: string): void => {
    const book = workbookNow();
    if (finder === undefined) {
      void fetchFinder().then((came) => {
        if (came !== undefined && box.current !== null && box.current === document.activeElement)
          look(box.current.value);
      });
      return;
    }
    found.value = book === undefined ? undefined : finder.findPlaces(book, typed, SHOWN, selection.peek().sheet);
    active.value = 0;
    if (isWanted.current) take(found.value?.[0]);
  };
  const leave = (): void => {
    found.value = undefined;
    isWanted.current = false;
    if (box.current !== null) box.current.value = '';
  };
  const take = (place: FoundPlace | undefined): void => {
    if (place === undefined) return;
    leave();
    box.current?.blur();
    goTo(place.sheet, place.row ?? (place.kind === 'column' ? firstRow(place.sheet) : undefined), place.column);
  };
  const onKey = (event: KeyboardEvent): void => {
    const places = found.value ?? [];
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      const step = event.key === 'ArrowDown' ? 1 : -1;
      active.value = (active.value + step + places.length) % Math.max(1, places.length);
    } else if (event.key === 'Enter') {
      event.preventDefault();
      isWanted.current = found.value === undefined;
      take(places[active.value]);
    } else if (event.key === 'Escape') {
      leave();
      box.current?.blur();
    }
  };
  const places = found.value;
  const Found = finder?.FoundList;
  return (
    <div class="go-to">
      <input
        ref={box}
        id="go-to"
        type="text"
        role="combobox"
        placeholder="Go to a sheet, row or column"
        aria-label="Go to a sheet, row or column"
        aria-expanded={places !== undefined}
        aria-controls="go-to-list"
        aria-autocomplete="list"
        aria-activedescendant={places === undefined || places.length === 0 ? undefined : `go-to-${active.value}`}
        autocomplete="off"
        spellcheck={false}
        onFocus={({ currentTarget }) => look(currentTarget.value)}
        onInput={({ currentTarget }) => look(currentTarget.value)}
        onKeyDown={onKey}
        onBlur={leave}
      />
      <span class="key-hint">Ctrl K</span>
      {places === undefined || Found === undefined ? null : <Found places={places} active={active.value} take={take} />}
    </div>
  );
}

function firstRow(sheet: string): string | undefined {
  const book = workbookNow();
  const slot = book === undefined ? undefined : rows(book, sheet)[0];
  return book === undefined || slot === undefined ? undefined : rowId(book, sheet, slot);
}
