// How warm it is: twelve months as they are pasted, or the days of the frosts.

import { useState } from 'preact/hooks';
import { type Book, message, rows, settings } from '../../../engine/index.ts';
import { FARM } from '../panels/columns.ts';
import { farmFigure } from '../panels/read.ts';
import { askRow, askRows } from '../pictures/kit/ask.ts';
import { change, UNDO } from '../store/change.ts';
import { dayWords } from '../store/day-words.ts';
import { findingsOf } from '../store/findings.ts';
import { tell } from '../store/notices.ts';
import { units, workbook } from '../store/workbook.ts';
import { FarmField } from './farm-field.tsx';
import type { Scale } from './month-figures.ts';
import { asReadWords } from './month-words.ts';
import { readMonths } from './months.ts';

const MONTHS = 'monthly-climate';

/** The scale that the workbook's temperatures are read and shown in, and the other. */
function scales(): readonly [Scale, Scale] {
  return units.value === 'us' ? ['°F', '°C'] : ['°C', '°F'];
}

export function ClimateStep() {
  const book = workbook();
  const [why, setWhy] = useState('');
  /** What was typed without a scale, which may be meant in the other. */
  const [bare, setBare] = useState('');
  const [usual, other] = scales();
  const doubt = findingsOf(MONTHS).find(({ check }) => check === 'other-scale');
  const take = (typed: string, assumed: Scale): void => {
    const read = readMonths(typed, settings(book).writing?.months);
    setWhy(read.ok || typed.trim() === '' ? '' : read.why);
    setBare(read.ok && read.scale === undefined ? typed : '');
    if (!read.ok) return;
    const unit = read.scale ?? assumed;
    const months = Array.from(rows(book, MONTHS));
    const done = change(
      months.flatMap((slot, index) => {
        const { id } = askRow(book, MONTHS, slot);
        const month = read.months[index];
        if (month === undefined) return [];
        const cell = (column: string, figure: number) =>
          ({ command: 'set cell', sheet: MONTHS, row: id, column, entry: `${figure} ${unit}` }) as const;
        return [cell('low', month.low), cell('high', month.high)];
      }),
      message('paste cells', { count: months.length * 2 }),
    );
    if (!done.refused) tell('Twelve months are in.', 'done', UNDO);
  };
  const elsewhere = findingsOf(FARM).find(({ check }) => check === 'other-half');
  const asRead = asReadWords(
    askRows(book, MONTHS).map((row) => ({ month: row.text('month'), low: row.text('low'), high: row.text('high') })),
    usual,
  );
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
      {doubt === undefined || bare === '' ? null : (
        <p class="finding level-warning">
          {doubt.says}{' '}
          <button type="button" onClick={() => take(bare, other)}>
            {`They are in ${other}`}
          </button>
        </p>
      )}
      {why === '' ? null : <p class="finding level-warning">{why}</p>}
      {asRead === undefined ? null : <p class="first-says">{asRead}</p>}
      <div class="fields">
        <FarmField column="average-last-frost" />
        <FarmField column="average-first-frost" />
      </div>
      {elsewhere === undefined ? null : <p class="finding level-warning">{elsewhere.says}</p>}
      <p class="first-says">{frostWords(book)}</p>
    </section>
  );
}

/** The time between the frosts, or what is wrong with them where there is none. */
function frostWords(book: Book): string {
  const last = farmFigure(book, 'average-last-frost');
  const first = farmFigure(book, 'average-first-frost');
  if (last === undefined || first === undefined) {
    return 'A weather office prints the twelve months of a place. A station’s file of days can be dropped on the page instead.';
  }
  const [from, to] = [dayWords(book, last), dayWords(book, first)];
  return first > last
    ? `In the average year no frost falls from ${from} to ${to}: ${first - last} days.`
    : `The first frost of autumn, ${to}, does not come after the last of spring, ${from}: look at both dates and their years.`;
}
