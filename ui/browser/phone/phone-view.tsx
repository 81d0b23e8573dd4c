// The workbook on a phone, from 700 px down: sheets under their questions, a sheet as cards, a card with its picture and
// fields; at the bottom, four places. The page mounts it in place of the grid.

import { useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { arrival, attention, selection, undo, workbook } from '../state.ts';
import { AttentionPlace } from './attention-place.tsx';
import { Card } from './card.tsx';
import { Cards } from './cards.tsx';
import { MorePlace } from './more-place.tsx';
import './phone.css';
import { above, followHistory, type PhonePlace, phonePlace, visit } from './places.ts';
import { SheetPlaces } from './sheet-places.tsx';

export function PhoneView() {
  const arrivedAt = useRef(arrival.peek());
  useEffect(followHistory, []);
  useSignalEffect(() => {
    const count = arrival.value;
    const { table, row, column } = selection.peek();
    if (count === arrivedAt.current) return;
    arrivedAt.current = count;
    visit(row === undefined ? { at: 'sheet', table } : { at: 'card', table, row }, column);
  });
  const place = standing(phonePlace.value);
  const up = above(place);
  return (
    <div class="phone">
      <header class="phone-top">
        {up === undefined ? null : (
          <button type="button" class="phone-up" onClick={() => visit(up)}>
            <span aria-hidden="true">&lsaquo;</span> {up.at === 'sheet' ? up.table : 'Sheets'}
          </button>
        )}
        <h1>{titleOf(place)}</h1>
      </header>
      <main class="phone-place" aria-label={titleOf(place)}>
        <Place place={place} />
      </main>
      <BottomBar place={place} />
    </div>
  );
}

/** The place, or the one above it where its row or sheet is gone. */
function standing(place: PhonePlace): PhonePlace {
  const book = workbook();
  if (place.at === 'card' && !book.rows(place.table).includes(place.row))
    return standing({ at: 'sheet', table: place.table });
  if (place.at === 'sheet' && book.table(place.table) === undefined) return { at: 'sheets' };
  // A sheet of one row is one card, so its card lies right under the list of sheets.
  if (place.at === 'card' && book.table(place.table)?.oneRow === true) return { at: 'sheet', table: place.table };
  return place;
}

function titleOf(place: PhonePlace): string {
  switch (place.at) {
    case 'sheets':
      return workbook().title;
    case 'sheet':
      return place.table;
    case 'card':
      return workbook().rowName(place.table, place.row);
    case 'attention':
      return 'Needs attention';
    case 'more':
      return 'Workbook';
  }
}

function Place({ place }: { readonly place: PhonePlace }) {
  const table = place.at === 'sheet' || place.at === 'card' ? workbook().table(place.table) : undefined;
  if (place.at === 'attention') return <AttentionPlace />;
  if (place.at === 'more') return <MorePlace />;
  if (table === undefined) return <SheetPlaces />;
  if (place.at === 'card') return <Card key={`${table.name} ${place.row}`} table={table} row={place.row} />;
  return <Cards key={table.name} table={table} />;
}

function BottomBar({ place }: { readonly place: PhonePlace }) {
  const step = workbook().undoState().undo;
  const found = attention.value.filter(({ level }) => level !== 'note').length;
  const inSheets = place.at === 'sheets' || place.at === 'sheet' || place.at === 'card';
  return (
    <nav class="phone-bar" aria-label="Places">
      <button type="button" aria-current={inSheets ? 'page' : undefined} onClick={() => visit({ at: 'sheets' })}>
        Sheets
      </button>
      <button
        type="button"
        aria-current={place.at === 'attention' ? 'page' : undefined}
        onClick={() => visit({ at: 'attention' })}
      >
        Attention{found === 0 ? '' : ` ${found}`}
      </button>
      <button
        type="button"
        disabled={step === undefined}
        title={step === undefined ? 'Nothing to undo' : `Undo: ${step}`}
        onClick={undo}
      >
        Undo
      </button>
      <button
        type="button"
        aria-current={place.at === 'more' ? 'page' : undefined}
        onClick={() => visit({ at: 'more' })}
      >
        Workbook
      </button>
    </nav>
  );
}
