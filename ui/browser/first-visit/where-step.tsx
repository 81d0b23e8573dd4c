// Where a person grows: a town of the list, or the latitude.

import { useState } from 'preact/hooks';
import { message, ONLY_ROW } from '../../../engine/index.ts';
import { FARM } from '../panels/columns.ts';
import { farmFigure } from '../panels/read.ts';
import { askRows, inUnit } from '../pictures/kit/ask.ts';
import { change } from '../store/change.ts';
import { workbook } from '../store/workbook.ts';
import { FarmField } from './farm-field.tsx';
import { KNOWN_PLACES, placeCalled } from './places.ts';

export function WhereStep() {
  const book = workbook();
  const [unknown, setUnknown] = useState('');
  const latitude = farmFigure(book, 'latitude');
  const choose = (typed: string): void => {
    const place = placeCalled(typed);
    setUnknown(place === undefined ? typed.trim() : '');
    if (place === undefined) return;
    const cell = (column: string, figure: number) =>
      ({ command: 'set cell', sheet: FARM, row: ONLY_ROW, column, entry: String(figure) }) as const;
    change(
      [cell('latitude', place.latitude), cell('longitude', place.longitude)],
      message('type cell', { column: 'Latitude', entry: place.name }),
    );
  };
  return (
    <section class="first-step" aria-labelledby="first-where">
      <h3 id="first-where">1. Where do you grow?</h3>
      <label class="first-field">
        A town near you
        <input
          type="text"
          list="first-places"
          autocomplete="off"
          onChange={({ currentTarget }) => choose(currentTarget.value)}
        />
      </label>
      <datalist id="first-places">
        {KNOWN_PLACES.map(({ name }) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      {unknown === '' ? null : (
        <p class="finding level-warning">
          {`“${unknown}” is not in the list: type its latitude, or take a town of the list near it.${latitude === undefined ? '' : ' Till then the latitude stays as it is.'}`}
        </p>
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

/** 'The longest day has 15.6 h, the shortest 8.8 h.' */
function daysWords(): string {
  const book = workbook();
  const lengths = askRows(book, 'climate').flatMap((row) => row.figure('day-length') ?? []);
  if (lengths.length === 0) return '';
  const words = (figure: number): string => inUnit(book, 'climate', 'day-length', figure, 1);
  return `The longest day has ${words(Math.max(...lengths))}, the shortest ${words(Math.min(...lengths))}.`;
}
