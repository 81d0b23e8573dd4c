// Sheets and columns of one's own: a sheet added, named, moved, removed; columns renamed, moved, removed; checks written; sheets
// saved as a file, brought in from one or from the gallery.

import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { type SheetView, sheetView, sheetViews, type Workbook } from '../../../engine/index.ts';
import { GALLERY } from '../../../sheets-templates/gallery/gallery.ts';
import { pickFile } from '../files/pick.ts';
import { workbook } from '../store/workbook.ts';
import { Checks } from './checks-part.tsx';
import './own.css';
import { namedOptions } from '../page/named-options.tsx';
import { ownSheets } from './own-open.ts';
import { act, addSheet, bringIn, type NewSheet, type RowsFrom, saveSheets } from './own-state.ts';
import { Refused } from './refused.tsx';

export function OwnDialog() {
  const open = ownSheets.value;
  const box = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    if (open !== undefined && box.current?.open === false) box.current.showModal();
  }, [open]);
  if (open === undefined) return null;
  const book = workbook();
  const sheet = sheetView(book, open.sheet) ?? sheetViews(book)[0];
  return (
    <dialog class="dialog own" ref={box} aria-labelledby="own-title" onClose={shut}>
      <h2 id="own-title">Sheets of your own</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reachable by keyboard */}
      <section class="own-part" aria-label="Sheets and columns" tabIndex={0}>
        <AddSheet />
        {sheet === undefined ? null : <OneSheet key={sheet.id} book={book} sheet={sheet} />}
        <Files />
      </section>
      <div class="dialog-acts">
        <button type="button" onClick={shut}>
          Close
        </button>
      </div>
    </dialog>
  );
}

function shut(): void {
  ownSheets.value = undefined;
}

const SOURCES: readonly (readonly [RowsFrom, string])[] = [
  ['entry', 'Typed by hand'],
  ['each', 'One for each row of another sheet'],
  ['weeks', 'One for each week of the season'],
  ['pairs', 'One for each pair of rows of two sheets'],
  ['events', 'One for each date in columns of a sheet'],
];

/** Reads the workbook itself, as all here must that keep something: else they would be drawn again only for another workbook. */
function AddSheet() {
  const book = workbook();
  const [sheet, describe] = useState<NewSheet>({
    name: '',
    about: '',
    from: 'entry',
    first: 'beds',
    second: 'weeks',
    dates: [],
  });
  const [refused, refuse] = useState<string | undefined>(undefined);
  const choices = (of: 'first' | 'second', label: string) => (
    <label>
      {label}{' '}
      <select
        value={sheet[of]}
        onChange={({ currentTarget }) => describe({ ...sheet, [of]: currentTarget.value, dates: [] })}
      >
        {namedOptions(sheetViews(book).filter(({ oneRow }) => !oneRow))}
      </select>
    </label>
  );
  return (
    <form
      class="own-line"
      onSubmit={(event) => {
        event.preventDefault();
        const why = addSheet(sheet);
        refuse(why);
        if (why === undefined) describe({ ...sheet, name: '', about: '' });
      }}
    >
      <h3>A new sheet</h3>
      <label>
        Name{' '}
        <input value={sheet.name} onInput={({ currentTarget }) => describe({ ...sheet, name: currentTarget.value })} />
      </label>
      <label>
        What it is for{' '}
        <input
          value={sheet.about}
          onInput={({ currentTarget }) => describe({ ...sheet, about: currentTarget.value })}
        />
      </label>
      <label>
        Its rows{' '}
        <select
          value={sheet.from}
          onChange={({ currentTarget }) => {
            const from = SOURCES.find(([each]) => each === currentTarget.value)?.[0];
            if (from !== undefined) describe({ ...sheet, from });
          }}
        >
          {SOURCES.map(([from, words]) => (
            <option key={from} value={from}>
              {words}
            </option>
          ))}
        </select>
      </label>
      {sheet.from === 'each' || sheet.from === 'pairs' || sheet.from === 'events'
        ? choices('first', 'Of the sheet')
        : null}
      {sheet.from === 'events' ? <Dates book={book} sheet={sheet} describe={describe} /> : null}
      {sheet.from === 'pairs' ? choices('second', 'And of') : null}
      <button type="submit" class="primary">
        Add the sheet
      </button>
      <Refused why={refused} />
    </form>
  );
}

interface DatesProps {
  readonly book: Workbook;
  readonly sheet: NewSheet;
  readonly describe: (sheet: NewSheet) => void;
}

/** The date columns of a sheet, to be ticked. */
function Dates({ book, sheet, describe }: DatesProps) {
  const dates = (sheetView(book, sheet.first)?.columns ?? []).filter(({ type }) => type?.kind === 'date');
  if (dates.length === 0) return <span>This sheet has no dates: choose another.</span>;
  return (
    <fieldset class="own-line">
      <legend>Its dates</legend>
      {dates.map(({ id, name }) => (
        <label key={id}>
          <input
            type="checkbox"
            checked={sheet.dates.includes(id)}
            onChange={({ currentTarget }) => {
              const others = sheet.dates.filter((one) => one !== id);
              describe({ ...sheet, dates: currentTarget.checked ? [...others, id] : others });
            }}
          />{' '}
          {name}
        </label>
      ))}
    </fieldset>
  );
}

function OneSheet({ book, sheet }: { readonly book: Workbook; readonly sheet: SheetView }) {
  const [refused, refuse] = useState<string | undefined>(undefined);
  const sheets = sheetViews(book);
  const at = sheets.findIndex(({ id }) => id === sheet.id);
  const moveTo = (after: string | null): void =>
    refuse(act({ command: 'move sheet', sheet: sheet.id, after }, 'move sheet', { sheet: sheet.name }));
  return (
    <>
      <div class="own-line">
        <h3>This sheet</h3>
        <label>
          Sheet{' '}
          <select
            value={sheet.id}
            onChange={({ currentTarget }) => {
              ownSheets.value = { sheet: currentTarget.value };
            }}
          >
            {namedOptions(sheets)}
          </select>
        </label>
        <Renamed
          label="Its name"
          name={sheet.name}
          rename={(name) => {
            const why = act({ command: 'rename sheet', sheet: sheet.id, name }, 'rename sheet', { sheet: sheet.name });
            refuse(why);
            return why;
          }}
        />
        <button type="button" disabled={at <= 0} onClick={() => moveTo(sheets[at - 2]?.id ?? null)}>
          Up in the list
        </button>
        <button type="button" disabled={at === sheets.length - 1} onClick={() => moveTo(sheets[at + 1]?.id ?? null)}>
          Down in the list
        </button>
        {sheet.own ? (
          <button
            type="button"
            onClick={() =>
              refuse(act({ command: 'remove sheet', sheet: sheet.id }, 'remove sheet', { sheet: sheet.name }))
            }
          >
            Remove it
          </button>
        ) : null}
        <Refused why={refused} />
      </div>
      <Columns sheet={sheet} />
      <Checks book={book} sheet={sheet} />
    </>
  );
}

interface RenamedProps {
  readonly label: string;
  readonly name: string;
  /** Gives the sentence of a refusal. */
  readonly rename: (name: string) => string | undefined;
}

/** A name that is changed when the field is left or Enter is pressed. After a refusal the field has the name that stands. */
function Renamed({ label, name, rename }: RenamedProps) {
  const field = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => {
    if (field.current !== null) field.current.value = name;
  }, [name]);
  return (
    <label>
      {label}{' '}
      <input
        ref={field}
        onChange={({ currentTarget }) => {
          const wanted = currentTarget.value.trim();
          if (wanted === name || rename(wanted) !== undefined) currentTarget.value = name;
        }}
      />
    </label>
  );
}

function Columns({ sheet }: { readonly sheet: SheetView }) {
  const [refused, refuse] = useState<string | undefined>(undefined);
  const { id, columns } = sheet;
  return (
    <details>
      <summary>{`Columns (${columns.length})`}</summary>
      <Refused why={refused} />
      <ul class="own-list">
        {columns.map((column, at) =>
          column.role === 'made' ? null : (
            <li key={column.id} class="own-line">
              <Renamed
                label={`Name of ${column.name}`}
                name={column.name}
                rename={(name) => {
                  const command = { command: 'rename column', sheet: id, column: column.id, name } as const;
                  const why = act(command, 'rename column', { column: column.name });
                  refuse(why);
                  return why;
                }}
              />
              <button
                type="button"
                disabled={at === 0 || columns[at - 1]?.role === 'made'}
                onClick={() =>
                  refuse(
                    act(
                      { command: 'move column', sheet: id, column: column.id, after: columns[at - 2]?.id ?? null },
                      'move column',
                      { column: column.name },
                    ),
                  )
                }
              >
                {`Move ${column.name} forward`}
              </button>
              {column.own ? (
                <button
                  type="button"
                  onClick={() =>
                    refuse(
                      act({ command: 'remove column', sheet: id, column: column.id }, 'remove column', {
                        column: column.name,
                      }),
                    )
                  }
                >
                  {`Remove ${column.name}`}
                </button>
              ) : null}
            </li>
          ),
        )}
      </ul>
    </details>
  );
}

function Files() {
  const book = workbook();
  const [refused, refuse] = useState<string | undefined>(undefined);
  const own = sheetViews(book).filter((sheet) => sheet.own);
  return (
    <div>
      <h3>Files of sheets</h3>
      <div class="own-line">
        {own.map(({ id, name }) => (
          <button key={id} type="button" onClick={() => saveSheets([id])}>
            {`Save ${name} as a file`}
          </button>
        ))}
        {own.length > 1 ? (
          <button type="button" onClick={() => saveSheets(own.map(({ id }) => id))}>
            Save all of them as one file
          </button>
        ) : null}
        <button
          type="button"
          onClick={() => pickFile('.json', (file) => void file.text().then((text) => refuse(bringIn(text))))}
        >
          Bring in sheets from a file
        </button>
        <Refused why={refused} />
      </div>
      <ul class="own-list" aria-label="Gallery">
        {GALLERY.map((file) => (
          <li key={file.title} class="own-line">
            <button type="button" onClick={() => refuse(bringIn(JSON.stringify(file)))}>
              {`Bring in ${file.title}`}
            </button>
            <span>{file.about}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
