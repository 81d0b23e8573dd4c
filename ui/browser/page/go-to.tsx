// The box that finds any sheet, row or column by its name and goes there. Ctrl K puts the focus in it.

import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { rowId, rows } from '../../../engine/index.ts';
import { goTo, selection } from '../store/selection.ts';
import { workbookNow } from '../store/workbook.ts';
import { type FoundPlace, findPlaces } from './find-places.ts';

const SHOWN = 14;

export function GoTo() {
  const box = useRef<HTMLInputElement>(null);
  const found = useSignal<readonly FoundPlace[] | undefined>(undefined);
  const active = useSignal(0);

  const look = (typed: string): void => {
    const book = workbookNow();
    found.value = book === undefined ? undefined : findPlaces(book, typed, SHOWN, selection.peek().sheet);
    active.value = 0;
  };
  const leave = (): void => {
    found.value = undefined;
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
      take(places[active.value]);
    } else if (event.key === 'Escape') {
      leave();
      box.current?.blur();
    }
  };
  const places = found.value;
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
      {places === undefined ? null : (
        <div class="go-to-list" id="go-to-list" role="listbox" aria-label="Found">
          {places.map((place, index) => (
            <div
              key={`${place.kind} ${place.sheet} ${place.row ?? ''} ${place.column ?? ''}`}
              id={`go-to-${index}`}
              role="option"
              tabIndex={-1}
              aria-selected={index === active.value}
              onMouseDown={(event) => {
                event.preventDefault();
                take(place);
              }}
            >
              <span>{place.name}</span>
              <span class="within">{withinWords(place)}</span>
            </div>
          ))}
          {places.length === 0 ? <p class="within">Nothing in this workbook has that name or holds it.</p> : null}
        </div>
      )}
    </div>
  );
}

function withinWords({ kind, within }: FoundPlace): string {
  return kind === 'sheet' || kind === 'value' ? within : `${kind} of ${within}`;
}

function firstRow(sheet: string): string | undefined {
  const book = workbookNow();
  const slot = book === undefined ? undefined : rows(book, sheet)[0];
  return book === undefined || slot === undefined ? undefined : rowId(book, sheet, slot);
}
