// The phone's first place: everything findable by name on top, then the season's questions with their sheets.

import { useSignal } from '@preact/signals';
import type { TableView } from '../../../engine/index.ts';
import { type FoundPlace, findPlaces } from '../parts/find-places.ts';
import { attention, workbook } from '../state.ts';
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
        questionsOf(book.tables()).map(({ question, tables }) => (
          <section key={question} class="phone-question">
            <h3>{question}</h3>
            <ul class="phone-list">
              {tables.map((table) => (
                <SheetPlace key={table.name} table={table} />
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

function SheetPlace({ table }: { readonly table: TableView }) {
  const found = attention.value.filter((item) => item.table === table.name && item.level !== 'note').length;
  return (
    <li>
      <button type="button" onClick={() => visit({ at: 'sheet', table: table.name })}>
        <span class="phone-name">{table.name}</span>
        {found === 0 ? null : <span class="phone-found">{found} to look at</span>}
        {table.oneRow ? null : <span class="phone-count">{workbook().rows(table.name).length}</span>}
      </button>
    </li>
  );
}

function FoundPlaces({ found }: { readonly found: readonly FoundPlace[] }) {
  if (found.length === 0) return <p class="phone-nothing">Nothing here is called that.</p>;
  return (
    <ul class="phone-list">
      {found.map((place) => (
        <li key={`${place.kind} ${place.table} ${place.row ?? ''} ${place.column ?? ''} ${place.name}`}>
          <button type="button" onClick={() => visitFound(place)}>
            <span class="phone-name">{place.name}</span>
            <span class="phone-count">{place.kind === 'sheet' ? 'sheet' : `${place.kind} in ${place.within}`}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

function visitFound({ table, row }: FoundPlace): void {
  visit(row === undefined ? { at: 'sheet', table } : { at: 'card', table, row });
}

interface Question {
  readonly question: string;
  readonly tables: readonly TableView[];
}

/** Sheets under their questions, each question where its first sheet stands. */
function questionsOf(tables: readonly TableView[]): readonly Question[] {
  const questions = new Map<string, TableView[]>();
  for (const table of tables) questions.set(table.question, [...(questions.get(table.question) ?? []), table]);
  return [...questions].map(([question, within]) => ({ question, tables: within }));
}
