// Table: what a figure becomes while one cell, or two against each other, are tried at several values. Lower and higher figures are
// shaded, and every cell says its number.

import { useState } from 'preact/hooks';
import {
  type FigureValue,
  type Input,
  type InputValue,
  numberOf,
  oneWay,
  readInputs,
  sayInput,
  twoWay,
  type Workbook,
} from '../../../engine/index.ts';
import { FIRST_FIGURE, FigurePicker, figureOf, firstInput, InputPicker, useText } from './pickers.tsx';
import { plan } from './what-if-state.ts';

export function TablePart() {
  const book = plan();
  return book === undefined ? null : <Table book={book} />;
}

interface Answer {
  readonly figure: string;
  readonly down: readonly string[];
  readonly across: readonly string[];
  readonly cells: readonly (readonly FigureValue[])[];
}

function Table({ book }: { readonly book: Workbook }) {
  const [down, chooseDown] = useState(() => firstInput(book));
  const [across, chooseAcross] = useState(() => firstInput(book));
  const [chosen, chooseFigure] = useState(FIRST_FIGURE);
  const [downText, Down] = useText();
  const [acrossText, Across] = useText();
  const [answer, show] = useState<Answer | string>('');
  const hint = '4 in..8 in by 1 in';
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        show(answerOf(book, chosen, { input: down, text: downText }, { input: across, text: acrossText }));
      }}
    >
      <p>What a figure becomes while cells are tried at several values: 4 in; 6 in; 8 in, or 4 in..8 in by 1 in.</p>
      <InputPicker book={book} legend="Down" input={down} choose={chooseDown} />
      <div class="what-if-line">{Down({ label: 'Values down', hint })}</div>
      <InputPicker book={book} legend="Across" input={across} choose={chooseAcross} />
      <div class="what-if-line">{Across({ label: 'Values across, or none', hint })}</div>
      <FigurePicker chosen={chosen} choose={chooseFigure} />
      <button type="submit" class="primary">
        Make the table
      </button>
      {typeof answer === 'string' ? (
        <output class="what-if-answer" aria-live="polite">
          {answer}
        </output>
      ) : (
        <Heat answer={answer} />
      )}
    </form>
  );
}

interface Tried {
  readonly input: Input;
  readonly text: string;
}

function answerOf(book: Workbook, chosen: typeof FIRST_FIGURE, down: Tried, across: Tried): Answer | string {
  const now = figureOf(chosen);
  if (now === undefined) return 'Write a formula first.';
  const first = readInputs(book, down.input, down.text);
  if (!first.ok) return first.why;
  const named = ({ input }: Tried, values: readonly InputValue[]) =>
    values.map((value) => sayInput(book, input, value));
  const downAt = { input: down.input, values: first.values };
  if (across.text.trim() === '') {
    const table = oneWay(book, downAt, [now.figure]);
    if (!table.ok) return table.why;
    return { figure: now.name, down: named(down, first.values), across: [now.name], cells: table.cells };
  }
  const second = readInputs(book, across.input, across.text);
  if (!second.ok) return second.why;
  const table = twoWay(book, downAt, { input: across.input, values: second.values }, now.figure);
  if (!table.ok) return table.why;
  const heads = named(across, second.values);
  return { figure: now.name, down: named(down, first.values), across: heads, cells: table.cells };
}

/** Steps of shade from the lowest figure to the highest. */
const SHADES = 5;

function Heat({ answer }: { readonly answer: Answer }) {
  const { figure, down, across, cells } = answer;
  const numbers = cells.flat().flatMap((cell) => numberOf(cell) ?? []);
  const [least, most] = [Math.min(...numbers), Math.max(...numbers)];
  const shade = (cell: FigureValue): string | undefined => {
    const number = numberOf(cell);
    if (number === undefined || least === most) return undefined;
    return `shade-${Math.min(SHADES - 1, Math.floor(((number - least) / (most - least)) * SHADES))}`;
  };
  return (
    <table class="what-if-table heat">
      <caption>{`${figure}, more shaded where it is higher`}</caption>
      <thead>
        <tr>
          <th scope="col">
            <span class="spoken">Value</span>
          </th>
          {across.map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {cells.map((line, i) => (
          <tr key={down[i]}>
            <th scope="row">{down[i]}</th>
            {line.map((cell, k) => (
              <td key={across[k]} class={shade(cell)}>
                {cell.shown}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
