// Fields in which an input, a cell of the plan, and a figure to ask for are chosen. Shared by seeking, tables and chance.

import { useState } from 'preact/hooks';
import {
  type Figure,
  type Input,
  type NamedFigure,
  refuseInput,
  rowId,
  rowName,
  rows,
  sheetView,
  sheetViews,
  type Workbook,
} from '../../../engine/index.ts';
import { PLAN_TOTALS } from '../../../sheets-templates/index.ts';
import { namedOptions } from '../page/named-options.tsx';
import { selection } from '../store/selection.ts';

/** The cell in hand, or a first one that can be tried. */
export function firstInput(book: Workbook): Input {
  const { sheet, row = '', column = '' } = selection.peek();
  const inHand = { sheet, row, column };
  if (refuseInput(book, inHand) === undefined) return inHand;
  return inSheet(book, 'plantings', row);
}

/** A cell of a sheet that can be tried: of the row named, if it is there. */
function inSheet(book: Workbook, sheet: string, row: string): Input {
  const slot = rows(book, sheet)[0];
  const there = Array.from(rows(book, sheet), (one) => rowId(book, sheet, one)).includes(row);
  const chosen = there ? row : slot === undefined ? '' : rowId(book, sheet, slot);
  const column = sheetView(book, sheet)?.columns.find(({ id, role }) => {
    return role !== 'computed' && refuseInput(book, { sheet, row: chosen, column: id }) === undefined;
  });
  return { sheet, row: chosen, column: column?.id ?? '' };
}

interface InputProps {
  readonly book: Workbook;
  readonly legend: string;
  readonly input: Input;
  readonly choose: (input: Input) => void;
}

export function InputPicker({ book, legend, input, choose }: InputProps) {
  const sheet = sheetView(book, input.sheet);
  const columns = (sheet?.columns ?? []).filter(({ type, role }) => {
    const isFigure = type?.kind === 'number' || type?.kind === 'temperature' || type?.kind === 'date';
    return isFigure && (role === 'entered' || role === 'default');
  });
  return (
    <fieldset class="what-if-line">
      <legend>{legend}</legend>
      <label>
        Sheet{' '}
        <select
          value={input.sheet}
          onChange={({ currentTarget }) => choose(inSheet(book, currentTarget.value, input.row))}
        >
          {namedOptions(sheetViews(book).filter(({ entered, oneRow }) => entered || oneRow))}
        </select>
      </label>
      <label>
        Row{' '}
        <select value={input.row} onChange={({ currentTarget }) => choose({ ...input, row: currentTarget.value })}>
          {Array.from(rows(book, input.sheet), (slot) => (
            <option key={slot} value={rowId(book, input.sheet, slot)}>
              {rowName(book, input.sheet, slot)}
            </option>
          ))}
        </select>
      </label>
      <label>
        Column{' '}
        <select
          value={input.column}
          onChange={({ currentTarget }) => choose({ ...input, column: currentTarget.value })}
        >
          {namedOptions(columns)}
        </select>
      </label>
    </fieldset>
  );
}

const OTHER = 'other';

export interface ChosenFigure {
  readonly id: string;
  readonly formula: string;
}

export const FIRST_FIGURE: ChosenFigure = { id: 'margin', formula: '' };

/** The figure chosen; undefined while a formula of one's own is not written yet. */
export function figureOf({ id, formula }: ChosenFigure): NamedFigure | undefined {
  if (id !== OTHER) return PLAN_TOTALS.find((total) => total.id === id);
  const text = formula.trim().replace(/^=/, '');
  const figure: Figure = { figure: 'formula', formula: text };
  return text === '' ? undefined : { id, name: text, figure };
}

interface FigureProps {
  readonly chosen: ChosenFigure;
  readonly choose: (figure: ChosenFigure) => void;
}

export function FigurePicker({ chosen, choose }: FigureProps) {
  return (
    <fieldset class="what-if-line">
      <legend>Figure</legend>
      <label>
        <span class="spoken">Figure</span>
        <select value={chosen.id} onChange={({ currentTarget }) => choose({ ...chosen, id: currentTarget.value })}>
          {namedOptions(PLAN_TOTALS)}
          <option value={OTHER}>A formula ...</option>
        </select>
      </label>
      {chosen.id === OTHER ? (
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

/** A text field of one line with its state. */
export function useText(
  start = '',
): readonly [string, (props: { readonly label: string; readonly hint?: string }) => preact.JSX.Element] {
  const [text, write] = useState(start);
  const draw = ({ label, hint = '' }: { readonly label: string; readonly hint?: string }) => (
    <label>
      {label} <input value={text} placeholder={hint} onInput={({ currentTarget }) => write(currentTarget.value)} />
    </label>
  );
  return [text, draw];
}
