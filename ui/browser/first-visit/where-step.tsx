// Where a person grows: a town of the list, or the latitude.

import { useRef, useState } from 'preact/hooks';
import { message, ONLY_ROW } from '../../../engine/index.ts';
import { FARM } from '../panels/columns.ts';
import { farmFigure } from '../panels/read.ts';
import { askRows, inUnit } from '../pictures/kit/ask.ts';
import { change } from '../store/change.ts';
import { workbook } from '../store/workbook.ts';
import { FarmField } from './farm-field.tsx';
import { KNOWN_PLACES, placeCalled, placesLike } from './places.ts';

export function WhereStep() {
  const book = workbook();
  const [town, setTown] = useState('');
  const box = useRef<HTMLInputElement>(null);
  const latitude = farmFigure(book, 'latitude');
  /** A town that the list hasn't, and the latitude that stood then: once that is another, the question is answered. */
  const [unknown, setUnknown] = useState({ town: '', latitude });
  const choose = (typed: string): void => {
    const place = placeCalled(typed);
    setTown(place?.name ?? typed);
    setUnknown({ town: place === undefined ? typed.trim() : '', latitude });
    if (place === undefined) return;
    const cell = (column: string, figure: number) =>
      ({ command: 'set cell', sheet: FARM, row: ONLY_ROW, column, entry: String(figure) }) as const;
    change(
      [cell('latitude', place.latitude), cell('longitude', place.longitude)],
      message('type cell', { column: 'Latitude', entry: place.name }),
    );
  };
  const take = (name: string): void => {
    choose(name);
    // The button that was pressed goes with the question.
    box.current?.focus();
  };
  return (
    <section class="first-step" aria-labelledby="first-where">
      <h3 id="first-where">1. Where do you grow?</h3>
      <label class="first-field">
        A town near you
        <input
          type="text"
          ref={box}
          list="first-places"
          autocomplete="off"
          value={town}
          onInput={({ currentTarget }) => setTown(currentTarget.value)}
          onChange={({ currentTarget }) => choose(currentTarget.value)}
        />
      </label>
      <datalist id="first-places">
        {KNOWN_PLACES.map(({ name }) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      {unknown.town === '' || unknown.latitude !== latitude ? null : (
        <UnknownTown town={unknown.town} isSet={latitude !== undefined} onChoose={take} />
      )}
      <div class="fields">
        <FarmField column="latitude" />
      </div>
      <p class="first-says">
        {latitude === undefined
          ? 'The latitude says how long the days are. Pick a town of the list, or type the latitude.'
          : daysWords()}
      </p>
    </section>
  );
}

interface UnknownTownProps {
  readonly town: string;
  /** Whether a latitude stands meanwhile. */
  readonly isSet: boolean;
  readonly onChoose: (town: string) => void;
}

/** What is said of a town that the list hasn't, with those of it that may be meant. */
function UnknownTown({ town, isSet, onChoose }: UnknownTownProps) {
  const like = placesLike(town);
  const way =
    like.length === 0
      ? 'type its latitude, or take a town of the list near it.'
      : `type its latitude, or take ${like.length === 1 ? 'this' : 'one of these'}.`;
  return (
    <div class="finding level-warning">
      <p>{`“${town}” is not in the list: ${way}${isSet ? ' Till then the latitude stays as it is.' : ''}`}</p>
      <p class="first-row">
        {like.map(({ name }) => (
          <button key={name} type="button" onClick={() => onChoose(name)}>
            {name}
          </button>
        ))}
      </p>
    </div>
  );
}

/** 'The longest day has 15.6 h, the shortest 8.8 h.' */
function daysWords(): string {
  const book = workbook();
  const lengths = askRows(book, 'climate').flatMap((row) => row.figure('day-length') ?? []);
  if (lengths.length === 0) return '';
  const words = (figure: number): string => inUnit(book, 'climate', 'day-length', figure, 1);
  return `The longest day has ${words(Math.max(...lengths))}, the shortest ${words(Math.min(...lengths))}.`;
}
