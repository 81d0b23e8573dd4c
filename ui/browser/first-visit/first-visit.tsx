// The short way into a season: where, the climate, the beds, the first crops. Every answer stands in the workbook at once, in the
// cell where it would be typed anyway, and what follows from it is shown beside it; undo takes any of it back.

import { useEffect, useState } from 'preact/hooks';
import { message, ONLY_ROW, rows, sheetView, showDate } from '../../../engine/index.ts';
import { CommandButton } from '../commands/command-button.tsx';
import { FormField } from '../form/form-field.tsx';
import { BEDS, FARM, PLANTINGS } from '../panels/columns.ts';
import { farmFigure } from '../panels/read.ts';
import { askRow, askRows, inUnit, sumOf } from '../pictures/kit/ask.ts';
import { CalendarPicture } from '../pictures/season-calendar/calendar-picture.tsx';
import { change, UNDO } from '../store/change.ts';
import { findingsOf } from '../store/findings.ts';
import { tell } from '../store/notices.ts';
import { rowAt } from '../store/selection.ts';
import { columnOf } from '../store/sheets.ts';
import { view } from '../store/view.ts';
import { units, workbook, workbookNow } from '../store/workbook.ts';
import '../pictures/picture-page.css';
import { bedCommands, bedCount, MOST_BEDS } from './first-beds.ts';
import { cropsFound, toggleCrop } from './first-crops.ts';
import './first-visit.css';
import { readMonths } from './months.ts';
import { KNOWN_PLACES, placeCalled } from './places.ts';

export function FirstVisit() {
  // It stays while its answers fill the workbook.
  useEffect(() => {
    view.value = { at: 'first visit' };
  }, []);
  const book = workbook();
  const planted = rows(book, PLANTINGS).length;
  return (
    <div class="first-visit">
      <header>
        <h2>A new season</h2>
        <p>
          Four questions, in any order; each answer is worked out at once and can be changed later on its sheet. Or look
          at a season that is planned already: <CommandButton id="demo farm">Open the demo farm</CommandButton>
        </p>
      </header>
      <div class="first-steps">
        <Where />
        <Climate />
        <Beds />
        <Crops />
      </div>
      {planted === 0 ? null : <Plan />}
    </div>
  );
}

function Field({ column }: { readonly column: string }) {
  const book = workbook();
  const sheet = sheetView(book, FARM);
  const found = columnOf(sheet, column);
  const row = rowAt(book, FARM, ONLY_ROW);
  return found === undefined || row === undefined ? null : <FormField sheet={FARM} row={row} column={found} />;
}

function Where() {
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
        <Field column="latitude" />
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

/** The scale that the workbook's temperatures are read and shown in, and the other. */
function scales(): readonly [string, string] {
  return units.value === 'us' ? ['°F', '°C'] : ['°C', '°F'];
}

function Climate() {
  const book = workbook();
  const [why, setWhy] = useState('');
  const [text, setText] = useState('');
  const [usual, other] = scales();
  const doubt = findingsOf('monthly-climate').find(({ check }) => check === 'other-scale');
  const take = (typed: string, unit: string): void => {
    setText(typed);
    const read = readMonths(typed);
    setWhy(read.ok || typed.trim() === '' ? '' : read.why);
    if (!read.ok) return;
    const months = Array.from(rows(book, 'monthly-climate'));
    const done = change(
      months.flatMap((slot, index) => {
        const { id } = askRow(book, 'monthly-climate', slot);
        const month = read.months[index];
        if (month === undefined) return [];
        const cell = (column: string, figure: number) =>
          ({ command: 'set cell', sheet: 'monthly-climate', row: id, column, entry: `${figure} ${unit}` }) as const;
        return [cell('low', month.low), cell('high', month.high)];
      }),
      message('paste cells', { count: months.length * 2 }),
    );
    if (!done.refused) tell('Twelve months are in.', 'done', UNDO);
  };
  const last = farmFigure(book, 'average-last-frost');
  const first = farmFigure(book, 'average-first-frost');
  return (
    <section class="first-step" aria-labelledby="first-climate">
      <h3 id="first-climate">2. How warm is it?</h3>
      <label class="first-field">
        Twelve months, a line each: mean low and mean high in {usual}
        <textarea
          rows={4}
          placeholder={'January 8 25\nFebruary 12 30'}
          onChange={({ currentTarget }) => take(currentTarget.value, usual)}
        />
      </label>
      {doubt === undefined || text === '' ? null : (
        <p class="finding level-warning">
          {doubt.says}{' '}
          <button type="button" onClick={() => take(text, other)}>
            {`They are in ${other}`}
          </button>
        </p>
      )}
      {why === '' ? null : <p class="finding level-warning">{why}</p>}
      <MonthsAsRead />
      <div class="fields">
        <Field column="average-last-frost" />
        <Field column="average-first-frost" />
      </div>
      <p class="first-says">
        {last === undefined || first === undefined
          ? 'A weather office prints the twelve months of a place. A station’s file of days can be dropped on the page instead.'
          : `In the average year no frost falls from ${showDate(last)} to ${showDate(first)}: ${first - last} days.`}
      </p>
    </section>
  );
}

/** 'Low and high as read, in °C: January -7 to 3, ...', so that a slip is seen where it was made; nothing until all months are in. */
function MonthsAsRead() {
  const book = workbook();
  const said = askRows(book, 'monthly-climate').flatMap((row) => {
    const [low, high] = ['low', 'high'].map((column) => row.figure(column));
    if (low === undefined || high === undefined) return [];
    return `${row.text('month')} ${row.text('low')} to ${row.text('high')}`;
  });
  return said.length < 12 ? null : (
    <p class="first-says">{`Low and high as read, in ${scales()[0]}: ${said.join(', ')}.`}</p>
  );
}

function Beds() {
  const book = workbook();
  const [count, setCount] = useState('10');
  const there = bedCount(book);
  const length = sumOf(askRows(book, BEDS), 'length');
  const add = (): void => {
    const wanted = Number(count);
    if (!Number.isInteger(wanted) || wanted < 1) {
      tell('How many beds? A whole number is wanted, such as 10.', 'refusal');
      return;
    }
    change(
      bedCommands(book, wanted),
      message('add row', { row: `${Math.min(wanted, MOST_BEDS)} beds`, sheet: 'Beds' }),
    );
  };
  return (
    <section class="first-step" aria-labelledby="first-beds">
      <h3 id="first-beds">3. Which beds?</h3>
      <div class="fields">
        <Field column="bed-length" />
        <Field column="bed-width" />
      </div>
      <div class="first-field first-row">
        <label>
          How many{' '}
          <input
            class="first-count"
            type="text"
            inputMode="numeric"
            value={count}
            onInput={({ currentTarget }) => setCount(currentTarget.value)}
          />
        </label>
        <button type="button" onClick={add}>
          {there === 0 ? 'Lay them out' : 'Lay out so many more'}
        </button>
      </div>
      <p class="first-says">
        {there === 0 || length === undefined
          ? 'Beds of other lengths are changed on the sheet Beds.'
          : `${there} ${there === 1 ? 'bed' : 'beds'}, ${inUnit(book, BEDS, 'length', length, 0)} in all.`}
      </p>
    </section>
  );
}

const SHOWN = 12;

function Crops() {
  const book = workbook();
  const [typed, setTyped] = useState('');
  const found = cropsFound(book, typed);
  const ticked = cropsFound(book, '').filter(({ planting }) => planting !== undefined);
  const shown = typed.trim() === '' ? [...ticked, ...found.filter(({ planting }) => planting === undefined)] : found;
  return (
    <section class="first-step" aria-labelledby="first-crops">
      <h3 id="first-crops">4. What do you grow?</h3>
      <label class="first-field">
        Find a crop
        <input
          type="search"
          placeholder="lettuce, carrots, tomatoes"
          value={typed}
          onInput={({ currentTarget }) => setTyped(currentTarget.value)}
        />
      </label>
      <ul class="first-crops">
        {shown.slice(0, Math.max(SHOWN, typed === '' ? ticked.length : 0)).map((crop) => (
          <li key={crop.name}>
            <label>
              <input
                type="checkbox"
                checked={crop.planting !== undefined}
                onChange={() => {
                  const now = workbookNow();
                  if (now === undefined) return;
                  const { commands, said } = toggleCrop(now, crop);
                  change(commands, said);
                }}
              />
              {crop.name}
            </label>
          </li>
        ))}
      </ul>
      <p class="first-says">
        {found.length === 0
          ? 'The library has no crop of that name: add it on the sheet Crops.'
          : shown.length > SHOWN
            ? `${found.length} crops in all: type to find the others.`
            : `${found.length} found.`}
      </p>
    </section>
  );
}

/** What comes of the answers: each planting with what is usual for it, and the beds through the season. */
function Plan() {
  const book = workbook();
  const plantings = askRows(book, PLANTINGS);
  const cells = ['start', 'in-row-spacing', 'rows', 'sown', 'planted-out', 'harvest', 'marketable-yield', 'bed'];
  const sheet = sheetView(book, PLANTINGS);
  const columns = cells.flatMap((id) => columnOf(sheet, id) ?? []);
  const waiting = plantings.filter((row) => row.text('bed') === '').length;
  const [trying, setTrying] = useState(false);
  return (
    <section class="first-plan" aria-labelledby="first-plan">
      <h3 id="first-plan">Your plan so far</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reachable by keyboard */}
      <section class="table-scroll" tabIndex={0} aria-label="Plantings so far">
        <table>
          <thead>
            <tr>
              <th scope="col">Planting</th>
              {columns.map(({ id, name }) => (
                <th key={id} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {plantings.map((row) => (
              <tr key={row.id}>
                <th scope="row">{row.text('planting')}</th>
                {columns.map(({ id }) => (
                  <td key={id}>
                    {row.full(id) || (id === 'harvest' ? noHarvest(row.text('no-harvest-because')) : '')}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p class="first-acts">
        {waiting > 0 && bedCount(book) > 0 ? (
          <button
            type="button"
            disabled={trying}
            onClick={() => {
              setTrying(true);
              void proposeAll().finally(() => setTrying(false));
            }}
          >
            {`Find beds for the ${waiting === 1 ? 'one that has' : `${waiting} that have`} none`}
          </button>
        ) : null}
        <button
          type="button"
          class="primary"
          onClick={() => {
            view.value = { at: 'glance' };
          }}
        >
          To the season at a glance
        </button>
      </p>
      {bedCount(book) === 0 ? null : <CalendarPicture />}
    </section>
  );
}

/** Beds for all plantings without one, by the command that proposes them; its code is fetched when first asked for. */
async function proposeAll(): Promise<void> {
  const { placeBeds } = await import('../commands/plan-acts.ts');
  await placeBeds();
}

/** 'None: cold ends it about 22 Sep, with 64% of the warmth it needs.' */
function noHarvest(why: string): string {
  return why === '' ? '' : `None: ${why}.`;
}
