// How a file was read, each of it changeable: its letters, what parts its fields, its decimal mark, which of its tables; and in
// which column of the sheet each of its columns goes.

import { type ColumnView, ENCODING_NAMES, ENCODINGS, type MatchedColumn, sheetView } from '../../../engine/index.ts';
import { workbookNow } from '../store/workbook.ts';
import type { PendingImport } from './import-state.ts';
import { chooseColumn, chooseReading } from './import-work.ts';
import type { Reading } from './messages.ts';

const DELIMITERS = [
  [',', 'commas'],
  [';', 'semicolons'],
  ['\t', 'tabs'],
] as const;

const MARKS = [
  ['point', 'a point: 1.5'],
  ['comma', 'a comma: 1,5'],
] as const;

interface Props {
  readonly pending: PendingImport;
  readonly reading: Reading;
}

export function ReadingChoices({ pending, reading }: Props) {
  const { text, tables, table, decimal } = reading;
  return (
    <div class="reading-choices">
      {text === undefined ? null : (
        <>
          <Choice
            label="Letters"
            now={text.encoding}
            options={ENCODINGS.map((encoding) => [encoding, ENCODING_NAMES[encoding]])}
            choose={(encoding) => chooseReading({ encoding })}
          />
          <Choice
            label="Fields are parted by"
            now={text.delimiter}
            options={DELIMITERS}
            choose={(delimiter) => chooseReading({ delimiter })}
          />
          <Choice
            label="The decimal mark is"
            now={decimal ?? ''}
            options={decimal === undefined ? [['', 'not clear: choose'], ...MARKS] : MARKS}
            choose={(mark) => (mark === '' ? undefined : chooseReading({ decimal: mark }))}
          />
        </>
      )}
      {tables.length < 2 ? null : (
        <Choice
          label="Table"
          now={table}
          options={tables.map((name) => [name, name])}
          choose={(name) => chooseReading({ table: name })}
        />
      )}
      <Columns pending={pending} reading={reading} />
    </div>
  );
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly now: T;
  readonly options: readonly (readonly [T, string])[];
  readonly choose: (value: T) => void;
}

function Choice<T extends string>({ label, now, options, choose }: ChoiceProps<T>) {
  return (
    <label>
      <span>{label}</span>
      <select
        aria-label={label}
        value={now}
        onChange={({ currentTarget }) => {
          const found = options.find(([value]) => value === currentTarget.value);
          if (found !== undefined) choose(found[0]);
        }}
      >
        {options.map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Open where a column has no place, so that nothing is left out unseen. */
function Columns({ pending, reading: { columns } }: Props) {
  const book = workbookNow();
  const view = book === undefined ? undefined : sheetView(book, pending.sheet);
  if (view === undefined || columns.length === 0) return null;
  const unplaced = columns.filter(({ why }) => why !== undefined).length;
  const placed = columns.filter(({ column }) => column !== undefined).length;
  return (
    <details class="import-columns" open={unplaced > 0}>
      <summary>{`${placed} of ${columns.length} columns have a place${unplaced > 0 ? '; see to the others' : ''}`}</summary>
      <ul>
        {columns.map((column, i) => (
          <li key={`${i} ${column.header}`}>
            <ColumnChoice column={column} columns={view.columns} />
          </li>
        ))}
      </ul>
    </details>
  );
}

function ColumnChoice({
  column,
  columns,
}: {
  readonly column: MatchedColumn;
  readonly columns: readonly ColumnView[];
}) {
  const { header, column: id, passedOver, why } = column;
  const typed = columns.filter(({ role }) => role !== 'computed');
  const inPlace = columns.find((one) => one.id === id);
  return (
    <>
      <label>
        <span>{header}</span>
        <select
          aria-label={header}
          value={id ?? ''}
          onChange={({ currentTarget }) => chooseColumn(header, currentTarget.value || null)}
        >
          <option value="">left out</option>
          {passedOver && inPlace !== undefined ? (
            <option value={inPlace.id}>{`${inPlace.name} (worked out here, passed over)`}</option>
          ) : null}
          {typed.map((one) => (
            <option key={one.id} value={one.id}>
              {one.name}
            </option>
          ))}
        </select>
      </label>
      {why === undefined ? null : <p class="refusal">{why}</p>}
    </>
  );
}
