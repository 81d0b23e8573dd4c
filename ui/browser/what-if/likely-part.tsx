// How likely: the season drawn many times, and the 10, 50 and 90% values of a figure, the chance of a goal, what it hangs on.

import { useState } from 'preact/hooks';
import { figureIn, sayNumber, type Workbook } from '../../../engine/index.ts';
import { cancelDrawing, type DrawnAnswer, drawing, drawSeasons } from './draws-state.ts';
import { FIRST_FIGURE, FigurePicker, figureOf, useText } from './pickers.tsx';
import { goalOf } from './seek-part.tsx';
import { plan } from './what-if-state.ts';

const MOST = 20_000;

export function LikelyPart() {
  const book = plan();
  return book === undefined ? null : <Likely book={book} />;
}

function Likely({ book }: { readonly book: Workbook }) {
  const [chosen, choose] = useState(FIRST_FIGURE);
  const [goalText, Goal] = useText();
  const [countText, Count] = useText('2000');
  const [seedText, Seed] = useText('1');
  const [refused, refuse] = useState('');
  const state = drawing.value;
  const start = (): string => {
    const figure = figureOf(chosen);
    if (figure === undefined) return 'Write a formula first.';
    const goal = goalText.trim() === '' ? undefined : goalOf(book, goalText);
    if (typeof goal === 'string') return goal;
    const [count, seed] = [Number(countText), Number(seedText)];
    if (!Number.isInteger(count) || count < 10 || count > MOST) return `Draw between 10 and ${MOST} seasons.`;
    if (!Number.isInteger(seed) || seed < 1) return 'The seed is a whole number above 0.';
    drawSeasons(figure, count, seed, goal);
    return '';
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        refuse(start());
      }}
    >
      <p>
        Figures typed as ranges (80..90%, 25..35 lb, 12 May..28 May) and those of the library that have a lowest and a
        highest are drawn by chance, most often near what is likely.
      </p>
      <FigurePicker chosen={chosen} choose={choose} />
      <div class="what-if-line">
        {Goal({ label: 'Goal: at least', hint: 'none' })}
        {Count({ label: 'Seasons' })}
        {Seed({ label: 'Seed' })}
        <button type="submit" class="primary">
          Draw the season
        </button>
      </div>
      {refused === '' ? null : (
        <p class="refusal" role="alert">
          {refused}
        </p>
      )}
      {state.state === 'drawing' ? (
        <div class="what-if-line">
          <progress value={state.done} max={state.of} aria-label="Seasons drawn" />
          <button type="button" onClick={cancelDrawing}>
            Cancel
          </button>
        </div>
      ) : null}
      {state.state === 'failed' ? <p class="refusal">{state.why}</p> : null}
      {state.state === 'drawn' ? <Answer book={book} answer={state.answer} /> : null}
    </form>
  );
}

function percent(share: number): string {
  return `${(share * 100).toFixed(share > 0 && share < 0.01 ? 1 : 0)}%`;
}

function Answer({ book, answer }: { readonly book: Workbook; readonly answer: DrawnAnswer }) {
  const { figure, count, seed, interval, chance, hangsOn, old } = answer;
  const { type } = figureIn(book, figure.figure);
  if (interval === undefined) return <p>{`${figure.name} is no number in any of the seasons.`}</p>;
  const say = (value: number): string => sayNumber(book, value, type);
  return (
    <output class="what-if-answer">
      <p>
        <b>{figure.name}</b>
        {`, ${count} seasons, seed ${seed}`}
        {old ? <b> (old: the plan has changed since)</b> : null}
      </p>
      <p>
        {`In one season of ten below ${say(interval.p10)}, in half below ${say(interval.p50)}, in one of ten above ${say(interval.p90)}.`}
      </p>
      {chance === undefined ? null : (
        <p>{`The goal is reached in ${percent(chance.chance)} of seasons, give or take ${percent(chance.error)}.`}</p>
      )}
      <table class="what-if-table">
        <caption>What it hangs on</caption>
        <tbody>
          {hangsOn.map(({ name, share }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>
                <meter value={share} max={1} aria-label={`${name}: share of the spread`} /> {percent(share)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </output>
  );
}
