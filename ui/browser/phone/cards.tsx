// One sheet as a list of cards: what it is for, its rows by name with the figures that tell them apart, a search over them, ways to
// look at them, to add one, and to read and write CSV files. A sheet of one row is its one card.

import { useSignal } from '@preact/signals';
import { type Finding, rowId, rowName, type SheetView } from '../../../engine/index.ts';
import { CommandButton } from '../commands/command-button.tsx';
import { addRow } from '../commands/rows.ts';
import { emptyWords } from '../page/empty-words.ts';
import { findingsIn } from '../store/findings.ts';
import { onlyRow } from '../store/selection.ts';
import { columnOf } from '../store/sheets.ts';
import { workbook } from '../store/workbook.ts';
import { Card } from './card.tsx';
import { CardLook, lookedAt } from './card-look.tsx';
import { answers, tellingOf } from './card-summary.ts';
import { downloadAsCsv } from './download-as-csv.ts';
import { visit } from './places.ts';
import { SearchBox } from './search-box.tsx';

/** So many cards stand in the list at first; a press shows as many more. */
const AT_ONCE = 60;

export function Cards({ sheet }: { readonly sheet: SheetView }) {
  const row = sheet.oneRow ? onlyRow(workbook(), sheet.id) : undefined;
  return (
    <>
      <p class="phone-about">{sheet.about}</p>
      {row === undefined ? <CardList sheet={sheet} /> : <Card sheet={sheet} row={row} />}
    </>
  );
}

function CardList({ sheet }: { readonly sheet: SheetView }) {
  const wanted = useSignal('');
  const most = useSignal(AT_ONCE);
  const book = workbook();
  const looked = lookedAt(sheet);
  const rows = looked.rows.map((slot) => ({
    id: rowId(book, sheet.id, slot),
    name: rowName(book, sheet.id, slot),
    told: tellingOf(book, sheet, slot, looked.columns),
  }));
  const found =
    wanted.value.trim() === '' ? rows : rows.filter(({ name, told }) => answers(name, told, wanted.value.trim()));
  return (
    <>
      <SearchBox label={`Find in ${sheet.name}`} wanted={wanted} />
      <div class="phone-acts">
        {sheet.entered ? <AddRow sheet={sheet} /> : null}
        <CommandButton id="import" />
        <button type="button" onClick={() => downloadAsCsv(sheet.id)}>
          Download CSV
        </button>
      </div>
      {rows.length + looked.left < 2 ? null : <CardLook sheet={sheet} left={looked.left} />}
      {rows.length + looked.left === 0 ? <p class="phone-nothing">{emptyWords(book, sheet)}</p> : null}
      {rows.length > 0 && found.length === 0 ? <p class="phone-nothing">No card here says that.</p> : null}
      <ul class="phone-cards">
        {found.slice(0, most.value).map(({ id, name, told }) => (
          <li key={id}>
            <button type="button" onClick={() => visit({ at: 'card', sheet: sheet.id, row: id })}>
              <span class="phone-name">{name}</span>
              <span class="phone-told">
                {told.map((each) => (
                  <span key={each.id}>
                    <span class="told-name">{each.name}</span> {each.text}
                  </span>
                ))}
              </span>
              <FoundIn found={findingsIn(sheet.id, id)} />
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
      <Cautions cautions={sheet.cautions} />
    </>
  );
}

function FoundIn({ found }: { readonly found: readonly Finding[] }) {
  const [first, ...others] = found.filter(({ level }) => level !== 'note');
  if (first === undefined) return null;
  const more = others.length === 0 ? '' : ` And ${others.length} more.`;
  return <span class={`phone-finding level-${first.level}`}>{`${first.columnName}: ${first.says}${more}`}</span>;
}

/** A name and a button; sheets whose rows have no name need the button alone. */
function AddRow({ sheet }: { readonly sheet: SheetView }) {
  const open = useSignal(false);
  const name = useSignal('');
  const key = columnOf(sheet, sheet.key);
  if (key === undefined) {
    return (
      <button type="button" onClick={() => addRow(sheet, {})}>
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
        addRow(sheet, { [key.id]: name.value });
      }}
    >
      <label>
        {key.name}
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
      <h2>Cautions</h2>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}
