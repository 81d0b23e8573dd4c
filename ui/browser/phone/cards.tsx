// One sheet as a list of cards: what it is for, its rows by name with the figures that tell them apart, a search over them,
// a way to add one, and its CSV file. A sheet of one row is its one card.

import { useSignal } from '@preact/signals';
import type { TableView } from '../../../engine/index.ts';
import { downloadCsv } from '../parts/download-csv.ts';
import { addRow } from '../sheet-actions.ts';
import { attention, readOnly, workbook } from '../state.ts';
import { Card } from './card.tsx';
import { answers, tellingOf } from './card-summary.ts';
import { visit } from './places.ts';
import { SearchBox } from './search-box.tsx';

/** So many cards stand in the list at first; a press shows as many more. */
const AT_ONCE = 60;

export function Cards({ table }: { readonly table: TableView }) {
  const row = table.oneRow ? workbook().rows(table.name)[0] : undefined;
  return (
    <>
      <p class="phone-about">{table.about}</p>
      {row === undefined ? <CardList table={table} /> : <Card table={table} row={row} />}
    </>
  );
}

function CardList({ table }: { readonly table: TableView }) {
  const wanted = useSignal('');
  const most = useSignal(AT_ONCE);
  const book = workbook();
  const rows = [...book.rows(table.name)].map((row) => ({
    row,
    name: book.rowName(table.name, row),
    told: tellingOf(book, table, row),
  }));
  const found =
    wanted.value.trim() === '' ? rows : rows.filter(({ name, told }) => answers(name, told, wanted.value.trim()));
  return (
    <>
      <SearchBox label={`Find in ${table.name}`} wanted={wanted} />
      <div class="phone-acts">
        {table.entered && readOnly.value === undefined ? <AddRow table={table} /> : null}
        <button type="button" onClick={() => downloadCsv(table.name)}>
          Download CSV
        </button>
      </div>
      {rows.length === 0 ? <p class="phone-nothing">{emptyWords(table)}</p> : null}
      {rows.length > 0 && found.length === 0 ? <p class="phone-nothing">No card here says that.</p> : null}
      <ul class="phone-cards">
        {found.slice(0, most.value).map(({ row, name, told }) => (
          <li key={row}>
            <button type="button" onClick={() => visit({ at: 'card', table: table.name, row })}>
              <span class="phone-name">{name}</span>
              <span class="phone-told">
                {told.map((each) => (
                  <span key={each.name}>
                    <span class="told-name">{each.name}</span> {each.text}
                  </span>
                ))}
              </span>
              <FoundIn table={table.name} row={row} />
            </button>
          </li>
        ))}
      </ul>
      {found.length > most.value ? (
        <button
          type="button"
          class="phone-more"
          onClick={() => {
            most.value += AT_ONCE;
          }}
        >
          Show {Math.min(AT_ONCE, found.length - most.value)} more of {found.length}
        </button>
      ) : null}
      <Cautions cautions={table.cautions} />
    </>
  );
}

function FoundIn({ table, row }: { readonly table: string; readonly row: number }) {
  const found = attention.value.filter((item) => item.table === table && item.row === row && item.level !== 'note');
  const first = found[0];
  if (first === undefined) return null;
  const more = found.length === 1 ? '' : ` And ${found.length - 1} more.`;
  return <span class={`phone-finding level-${first.level}`}>{`${first.column}: ${first.says}${more}`}</span>;
}

function emptyWords({ source }: TableView): string {
  return source.from === 'entry'
    ? 'No rows yet: add the first one.'
    : 'Rows appear here as other sheets call for them; none does yet.';
}

/** A name and a button; sheets whose rows have no name need the button alone. */
function AddRow({ table }: { readonly table: TableView }) {
  const open = useSignal(false);
  const name = useSignal('');
  const { key } = table;
  if (key === undefined) {
    return (
      <button type="button" onClick={() => addRow(table.name, {})}>
        Add a row
      </button>
    );
  }
  if (!open.value) {
    return (
      <button
        type="button"
        onClick={() => {
          open.value = true;
        }}
      >
        Add a row
      </button>
    );
  }
  return (
    <form
      class="phone-add"
      onSubmit={(event) => {
        event.preventDefault();
        addRow(table.name, { [key]: name.value });
      }}
    >
      <label>
        {key}
        <input
          type="text"
          autocomplete="off"
          value={name.value}
          ref={(input) => input?.focus()}
          onInput={({ currentTarget }) => {
            name.value = currentTarget.value;
          }}
        />
      </label>
      <button type="submit">Add</button>
    </form>
  );
}

function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <section class="phone-cautions">
      <h3>Cautions</h3>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}
