// The phone's first place: everything findable by name on top, then the season's questions with their sheets.

import { useSignal } from '@preact/signals';
import { type SheetView, sheetViews } from '../../../engine/index.ts';
import { type FoundPlace, findPlaces } from '../page/find-places.ts';
import { needsOf, rowsInWords } from '../page/sheet-needs.ts';
import { findingsOf } from '../store/findings.ts';
import { questionsOf } from '../store/sheets.ts';
import { workbook } from '../store/workbook.ts';
import { visit } from './places.ts';
import { SearchBox } from './search-box.tsx';

/** At most so many are found at once. */
const FOUND = 40;

export function SheetPlaces() {
  const wanted = useSignal('');
  const book = workbook();
  return (
    <>
      <SearchBox label="Find a sheet, row or column" wanted={wanted} />
      {wanted.value.trim() === '' ? (
        questionsOf(sheetViews(book)).map(({ name: question, within }) => (
          <section key={question} class="phone-question">
            <h2>{question}</h2>
            <ul class="phone-list">
              {within.map((sheet) => (
                <SheetPlace key={sheet.id} sheet={sheet} />
              ))}
            </ul>
          </section>
        ))
      ) : (
        <FoundPlaces found={findPlaces(book, wanted.value, FOUND)} />
      )}
    </>
  );
}

function SheetPlace({ sheet }: { readonly sheet: SheetView }) {
  const book = workbook();
  const needs = needsOf(book, sheet, findingsOf(sheet.id));
  const rows = rowsInWords(book, sheet);
  return (
    <li>
      <button type="button" onClick={() => visit({ at: 'sheet', sheet: sheet.id })}>
        <span class="phone-name">{sheet.name}</span>
        {needs === undefined ? null : (
          <span class="phone-found">
            <span aria-hidden="true">{needs.count} to look at</span>
            <span class="spoken">{needs.words}</span>
          </span>
        )}
        {rows === '' ? null : <span class="phone-count">{rows}</span>}
      </button>
    </li>
  );
}

/** What was found by its name, each leading to its place. */
export function FoundPlaces({ found }: { readonly found: readonly FoundPlace[] }) {
  if (found.length === 0) return <p class="phone-nothing">Nothing here is called that.</p>;
  return (
    <ul class="phone-list">
      {found.map((place) => (
        <li key={`${place.kind} ${place.sheet} ${place.row ?? ''} ${place.column ?? ''}`}>
          <button type="button" onClick={() => visitFound(place)}>
            <span class="phone-name">{place.name}</span>
            <span class="phone-count">{place.kind === 'sheet' ? 'sheet' : `${place.kind} in ${place.within}`}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

function visitFound({ sheet, row }: FoundPlace): void {
  visit(row === undefined ? { at: 'sheet', sheet } : { at: 'card', sheet, row });
}
