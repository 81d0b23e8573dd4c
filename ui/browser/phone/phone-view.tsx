// The workbook on a phone, from 700 px down: the day's jobs, sheets under their questions, a sheet as cards, a card with its picture and
// fields; at the bottom, four places. The page mounts it in place of the grid.

import { useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { rowName, rowWithId, settings, sheetView } from '../../../engine/index.ts';
import { CommandButton } from '../commands/command-button.tsx';
import { opensHalfWay } from '../first-visit/half-way.ts';
import { hasGlance, shownView } from '../glance/opening.ts';
import { later } from '../page/later.tsx';
import { findings } from '../store/findings.ts';
import { arrival, rowAt, selection } from '../store/selection.ts';
import { view } from '../store/view.ts';
import { steps, workbook } from '../store/workbook.ts';
import { Bars } from '../what-if/bars.tsx';
import { AttentionPlace } from './attention-place.tsx';
import { Card } from './card.tsx';
import { Cards } from './cards.tsx';
import { MorePlace } from './more-place.tsx';
import './phone.css';
import { above, followHistory, type PhonePlace, phonePlace, visit } from './places.ts';
import { SheetPlaces } from './sheet-places.tsx';
import { Today } from './today/today.tsx';

const ScratchPage = later(() => import('../scratch/scratch-page.tsx').then((part) => part.ScratchPage));
const PicturePage = later(() => import('../pictures/picture-page.tsx').then((part) => part.PicturePage));
const PaperPage = later(() => import('../paper/paper-page.tsx').then((part) => part.PaperPage));
const FirstVisit = later(() => import('../first-visit/first-visit.tsx').then((part) => part.FirstVisit));

export function PhoneView() {
  const arrivedAt = useRef(arrival.peek());
  useEffect(followHistory, []);
  useSignalEffect(() => {
    const count = arrival.value;
    const { sheet, row, column } = selection.peek();
    if (count === arrivedAt.current) return;
    arrivedAt.current = count;
    visit(row === undefined ? { at: 'sheet', sheet } : { at: 'card', sheet, row }, column);
  });
  const place = standing(phonePlace.value);
  const up = above(place);
  return (
    <div class="phone">
      <header class="phone-top">
        {up === undefined ? null : (
          <button type="button" class="phone-up" onClick={() => visit(up)}>
            <span aria-hidden="true">&lsaquo;</span> {up.at === 'sheets' ? 'Sheets' : titleOf(up)}
          </button>
        )}
        <h1>{titleOf(place)}</h1>
        <CommandButton id="undo" class="phone-undo" title={`Undo: ${steps().undo ?? ''}`} />
        {steps().redo === undefined ? null : <CommandButton id="redo" title={`Redo: ${steps().redo}`} />}
      </header>
      <Bars />
      <main class="phone-place" aria-label={titleOf(place)}>
        <Place place={place} />
      </main>
      <BottomBar place={place} />
    </div>
  );
}

/** The place, or the one above it where its row or sheet is gone. */
function standing(place: PhonePlace): PhonePlace {
  if (place.at === 'today') return hasGlance(workbook()) ? place : { at: 'sheets' };
  if (place.at !== 'sheet' && place.at !== 'card') return place;
  const book = workbook();
  const sheet = sheetView(book, place.sheet);
  if (sheet === undefined) return { at: 'sheets' };
  // A sheet of one row is one card, so its card lies right under the list of sheets.
  const isThere = place.at === 'card' && !sheet.oneRow && rowWithId(book, sheet.id, place.row) !== undefined;
  return isThere ? place : { at: 'sheet', sheet: sheet.id };
}

function titleOf(place: PhonePlace): string {
  const book = workbook();
  switch (place.at) {
    case 'today':
    case 'sheets':
      return settings(book).title;
    case 'sheet':
      return sheetView(book, place.sheet)?.name ?? '';
    case 'card':
      return rowName(book, place.sheet, rowWithId(book, place.sheet, place.row) ?? -1);
    case 'attention':
      return 'Needs attention';
    case 'pictures':
      return 'Pictures';
    case 'paper':
      return 'Paper';
    case 'scratch':
      return 'Scratch paper';
    case 'more':
      return 'Workbook';
  }
}

function Place({ place }: { readonly place: PhonePlace }) {
  const book = workbook();
  if (place.at === 'today') {
    return shownView(book, view.value).at === 'first visit' || opensHalfWay(book) ? <FirstVisit /> : <Today />;
  }
  if (place.at === 'attention') return <AttentionPlace />;
  if (place.at === 'scratch') return <ScratchPage />;
  if (place.at === 'pictures') {
    return <PicturePage picture={view.value.at === 'pictures' ? view.value.picture : ''} />;
  }
  if (place.at === 'paper') return <PaperPage pages={view.value.at === 'paper' ? view.value.pages : ''} />;
  if (place.at === 'more') return <MorePlace />;
  const sheet = place.at === 'sheets' ? undefined : sheetView(book, place.sheet);
  if (sheet === undefined) return <SheetPlaces />;
  const row = place.at === 'card' ? rowAt(book, sheet.id, place.row) : undefined;
  if (row === undefined) return <Cards key={sheet.id} sheet={sheet} />;
  return <Card key={`${sheet.id} ${row.id}`} sheet={sheet} row={row} />;
}

function BottomBar({ place }: { readonly place: PhonePlace }) {
  const found = findings.value.filter(({ level }) => level !== 'note').length;
  const inSheets = place.at === 'sheets' || place.at === 'sheet' || place.at === 'card';
  return (
    <nav class="phone-bar" aria-label="Places">
      <button
        type="button"
        aria-current={place.at === 'today' ? 'page' : undefined}
        onClick={() => visit({ at: 'today' })}
      >
        Today
      </button>
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
        aria-current={place.at === 'more' ? 'page' : undefined}
        onClick={() => visit({ at: 'more' })}
      >
        Workbook
      </button>
    </nav>
  );
}
