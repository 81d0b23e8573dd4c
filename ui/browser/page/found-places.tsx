// What the go-to box found, as a list under it; fetched with what finds. Called by go-to.tsx.

import type { FoundPlace } from './find-places.ts';

export { findPlaces } from './find-places.ts';

interface FoundListProps {
  readonly places: readonly FoundPlace[];
  /** The place, from 0, that Enter takes. */
  readonly active: number;
  readonly take: (place: FoundPlace) => void;
}

export function FoundList({ places, active, take }: FoundListProps) {
  return (
    <div class="go-to-list" id="go-to-list" role="listbox" aria-label="Found">
      {places.map((place, index) => (
        <div
          key={`${place.kind} ${place.sheet} ${place.row ?? ''} ${place.column ?? ''}`}
          id={`go-to-${index}`}
          role="option"
          tabIndex={-1}
          aria-selected={index === active}
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
  );
}

function withinWords({ kind, within }: FoundPlace): string {
  return kind === 'sheet' || kind === 'value' ? within : `${kind} of ${within}`;
}
