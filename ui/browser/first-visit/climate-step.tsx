// How warm it is: twelve months as they are pasted, or the days of the frosts.

import { useState } from 'preact/hooks';
import { message, rows, showDate } from '../../../engine/index.ts';
import { farmFigure } from '../panels/read.ts';
import { askRow, askRows } from '../pictures/kit/ask.ts';
import { change, UNDO } from '../store/change.ts';
import { findingsOf } from '../store/findings.ts';
import { tell } from '../store/notices.ts';
import { units, workbook } from '../store/workbook.ts';
import { FarmField } from './farm-field.tsx';
import { readMonths } from './months.ts';

/** The scale that the workbook's temperatures are read and shown in, and the other. */
function scales(): readonly [string, string] {
  return units.value === 'us' ? ['°F', '°C'] : ['°C', '°F'];
}

export function ClimateStep() {
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
        <FarmField column="average-last-frost" />
        <FarmField column="average-first-frost" />
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
