// Curves: one cell tried at several values, and what several figures become, a curve each with the same figures as a table.

import { useState } from 'preact/hooks';
import { oneWay, readInputs, rowName, rowWithId, type Workbook } from '../../../engine/index.ts';
import { PLAN_TOTALS } from '../../../sheets-templates/index.ts';
import { LinesPicture } from '../pictures/kit/lines-picture.tsx';
import type { LinesModel } from '../pictures/kit/model.ts';
import { curveAgainst } from './curves-model.ts';
import { columnAt } from './likely-model.ts';
import { firstInput, InputPicker, useText } from './pickers.tsx';
import { plan } from './what-if-state.ts';

const FIRST = ['yield', 'margin', 'hours'];

export function CurvesPart() {
  const book = plan();
  return book === undefined ? null : <Curves book={book} />;
}

interface Answer {
  readonly curves: readonly LinesModel[];
  /** Of figures that have none, why. */
  readonly without: readonly string[];
}

function Curves({ book }: { readonly book: Workbook }) {
  const [input, chooseInput] = useState(() => firstInput(book));
  const [valuesText, Values] = useText();
  const [formula, Formula] = useText();
  const [chosen, choose] = useState<readonly string[]>(FIRST);
  const [answer, show] = useState<Answer | string>({ curves: [], without: [] });
  const draw = (): Answer | string => {
    const read = readInputs(book, input, valuesText);
    if (!read.ok) return read.why;
    if (read.values.length < 2) return 'A curve takes two values or more: 4 in; 6 in, or 4 in..12 in by 2 in.';
    const own = formula.trim().replace(/^=/, '');
    const figures = [
      ...PLAN_TOTALS.filter(({ id }) => chosen.includes(id)),
      ...(own === '' ? [] : [{ id: 'own', name: own, figure: { figure: 'formula', formula: own } as const }]),
    ];
    if (figures.length === 0) return 'Choose a figure, or write a formula.';
    const tried = oneWay(
      book,
      { input, values: read.values },
      figures.map(({ figure }) => figure),
    );
    if (!tried.ok) return tried.why;
    const column = columnAt(book, input.sheet, input.column);
    const slot = rowWithId(book, input.sheet, input.row);
    if (column?.type === undefined || slot === undefined) return 'There is no such cell any more.';
    const inputName = `${rowName(book, input.sheet, slot)} / ${column.name}`;
    const drawn = figures.map(({ name }, i) => {
      const answers = tried.cells.flatMap((line) => line[i] ?? []);
      const at = { input, inputName, inputType: column.type ?? { kind: 'text' as const }, values: read.values };
      return curveAgainst(book, at, { name, answers });
    });
    return {
      curves: drawn.filter((one) => typeof one !== 'string'),
      without: drawn.filter((one) => typeof one === 'string'),
    };
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        show(draw());
      }}
    >
      <p>What figures become while one cell is tried at several values: 4 in; 6 in; 8 in, or 4 in..12 in by 2 in.</p>
      <InputPicker book={book} legend="Input" input={input} choose={chooseInput} />
      <div class="what-if-line">{Values({ label: 'Values', hint: '4 in..12 in by 2 in' })}</div>
      <fieldset class="what-if-line">
        <legend>Figures</legend>
        {PLAN_TOTALS.map(({ id, name }) => (
          <label key={id}>
            <input
              type="checkbox"
              checked={chosen.includes(id)}
              onChange={({ currentTarget }) => {
                choose(currentTarget.checked ? [...chosen, id] : chosen.filter((one) => one !== id));
              }}
            />{' '}
            {name}
          </label>
        ))}
        {Formula({ label: 'A formula', hint: 'SUM(Plantings[Pieces])' })}
      </fieldset>
      <button type="submit" class="primary">
        Draw the curves
      </button>
      {typeof answer === 'string' ? (
        <p class="refusal" role="alert">
          {answer}
        </p>
      ) : (
        <>
          {answer.without.map((why) => (
            <p key={why} class="refusal" role="alert">
              {why}
            </p>
          ))}
          <div class="what-if-curves">
            {answer.curves.map((model) => (
              <LinesPicture key={model.title} model={model} height={210} />
            ))}
          </div>
        </>
      )}
    </form>
  );
}
