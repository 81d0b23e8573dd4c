// What drawn seasons are asked for: one of the totals, a figure of every week, any column of any sheet, the cell in hand, or a
// formula of one's own.

import { useState } from 'preact/hooks';
import { type NamedFigure, rowName, rowWithId, sheetView, sheetViews, type Workbook } from '../../../engine/index.ts';
import { PLAN_TOTALS, WEEKLY_CHANCES } from '../../../sheets-templates/index.ts';
import { namedOptions } from '../page/named-options.tsx';
import { selection } from '../store/selection.ts';
import type { LikelyFigure } from './drawn-answer.ts';
import { columnAt } from './likely-model.ts';

const COLUMN = 'column';
const CELL = 'cell';
const FORMULA = 'formula';

interface Chosen {
  readonly id: string;
  readonly sheet: string;
  readonly column: string;
  readonly formula: string;
}

/** The figure chosen, or what is to be done first; and the fields to choose it in. */
export function useLikelyFigure(book: Workbook) {
  const [chosen, choose] = useState<Chosen>({ id: 'total margin', sheet: 'plantings', column: '', formula: '' });
  return { figure: figureOf(book, chosen), fields: <Fields book={book} chosen={chosen} choose={choose} /> };
}

function figureOf(book: Workbook, { id, sheet, column, formula }: Chosen): LikelyFigure | string {
  const total = PLAN_TOTALS.find((one) => `total ${one.id}` === id);
  if (total !== undefined) return { by: 'season', named: total };
  const weekly = WEEKLY_CHANCES.find((one) => `week ${one.id}` === id);
  if (weekly !== undefined) return { by: 'week', name: weekly.name, weekly };
  if (id === COLUMN) return ofColumn(book, sheet, column || (columnsOf(book, sheet)[0]?.id ?? ''));
  if (id === CELL) return cellInHand(book) ?? 'Choose a cell that holds a number first.';
  const text = formula.trim().replace(/^=/, '');
  if (text === '') return 'Write a formula first.';
  return { by: 'season', named: { id: FORMULA, name: text, figure: { figure: 'formula', formula: text } } };
}

/** By week where the sheet has a date a row, else the sum of all rows. */
function ofColumn(book: Workbook, sheet: string, column: string): LikelyFigure | string {
  const [of, at] = [sheetView(book, sheet), columnAt(book, sheet, column)];
  if (of === undefined || at === undefined) return 'Choose a column that holds numbers.';
  const name = `${of.name} / ${at.name}`;
  const date = of.columns.find(({ type }) => type?.kind === 'date');
  if (date !== undefined && !of.entered) {
    return { by: 'week', name, weekly: { id: COLUMN, name, sheet, date: date.id, column } };
  }
  const formula = `SUM('#${sheet}'[#${sheet}/${column}])`;
  return { by: 'season', named: { id: COLUMN, name, figure: { figure: 'formula', formula } } };
}

function cellInHand(book: Workbook): LikelyFigure | undefined {
  const { sheet, row = '', column = '' } = selection.value;
  const [slot, view] = [rowWithId(book, sheet, row), columnAt(book, sheet, column)];
  if (slot === undefined || view?.type === undefined || !isFigure(view.type.kind)) return undefined;
  const name = [sheetView(book, sheet)?.name, rowName(book, sheet, slot), view.name].join(' / ');
  const named: NamedFigure = { id: CELL, name, figure: { figure: 'cell', sheet, row, column } };
  return { by: 'season', named };
}

function isFigure(kind: string): boolean {
  return kind === 'number' || kind === 'temperature' || kind === 'date';
}

function columnsOf(book: Workbook, sheet: string) {
  return (sheetView(book, sheet)?.columns ?? []).filter(({ type }) => type?.kind === 'number');
}

interface FieldsProps {
  readonly book: Workbook;
  readonly chosen: Chosen;
  readonly choose: (chosen: Chosen) => void;
}

function Fields({ book, chosen, choose }: FieldsProps) {
  const inHand = cellInHand(book);
  return (
    <fieldset class="what-if-line">
      <legend>Figure</legend>
      <label>
        <span class="spoken">Figure</span>
        <select value={chosen.id} onChange={({ currentTarget }) => choose({ ...chosen, id: currentTarget.value })}>
          <optgroup label="Of the season">
            {PLAN_TOTALS.map(({ id, name }) => (
              <option key={id} value={`total ${id}`}>
                {name}
              </option>
            ))}
          </optgroup>
          <optgroup label="Of every week">
            {WEEKLY_CHANCES.filter(({ sheet, column }) => columnAt(book, sheet, column) !== undefined).map(
              ({ id, name }) => (
                <option key={id} value={`week ${id}`}>
                  {name}
                </option>
              ),
            )}
          </optgroup>
          <optgroup label="Others">
            {inHand?.by === 'season' ? <option value={CELL}>{inHand.named.name}</option> : null}
            <option value={COLUMN}>A column of a sheet ...</option>
            <option value={FORMULA}>A formula ...</option>
          </optgroup>
        </select>
      </label>
      {chosen.id === COLUMN ? (
        <>
          <label>
            Sheet{' '}
            <select
              value={chosen.sheet}
              onChange={({ currentTarget }) => choose({ ...chosen, sheet: currentTarget.value, column: '' })}
            >
              {namedOptions(sheetViews(book))}
            </select>
          </label>
          <label>
            Column{' '}
            <select
              value={chosen.column}
              onChange={({ currentTarget }) => choose({ ...chosen, column: currentTarget.value })}
            >
              {namedOptions(columnsOf(book, chosen.sheet))}
            </select>
          </label>
        </>
      ) : null}
      {chosen.id === FORMULA ? (
        <label>
          Formula{' '}
          <input
            value={chosen.formula}
            placeholder="SUM(Plantings[Pieces])"
            onInput={({ currentTarget }) => choose({ ...chosen, formula: currentTarget.value })}
          />
        </label>
      ) : null}
    </fieldset>
  );
}
