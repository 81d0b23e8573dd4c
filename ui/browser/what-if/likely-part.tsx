// How likely: the season drawn many times, and of a figure the 10, 50 and 90% values, the chance of a goal, what it hangs on; of a
// figure by week a fan, and in which weeks it runs out or over.

import { useEffect, useState } from 'preact/hooks';
import { readGoal, type Workbook } from '../../../engine/index.ts';
import { WEEKLY_CHANCES } from '../../../sheets-templates/index.ts';
import { LinesPicture } from '../pictures/kit/lines-picture.tsx';
import { wholeNumber } from '../store/whole-number.ts';
import type { DrawnAnswer, Goal, LikelyFigure } from './drawn-answer.ts';
import { askedOf, cancelDrawing, drawing, drawSeasons } from './draws-state.ts';
import { beginWorkers } from './draws-workers.ts';
import { useLikelyFigure } from './likely-figure.tsx';
import { chanceWords, curveOf, fanOf, leftOutWords, nameOf, percent, sayRounded, typeOf } from './likely-model.ts';
import { useText } from './pickers.tsx';
import { plan } from './what-if-state.ts';

const MOST = 20_000;
/** What is drawn unless something else is typed. */
const USUAL = { count: 2000, seed: 1 };

export function LikelyPart() {
  const book = plan();
  return book === undefined ? null : <Likely book={book} />;
}

function Likely({ book }: { readonly book: Workbook }) {
  const { figure, fields } = useLikelyFigure(book);
  const [side, chooseSide] = useState<Goal['side']>('at least');
  const [goalText, GoalField] = useText();
  const [countText, Count] = useText(String(USUAL.count));
  const [seedText, Seed] = useText(String(USUAL.seed));
  const [refused, refuse] = useState('');
  const likely = typeof figure === 'string' ? undefined : { ...askedOf(figure), ...USUAL };
  // While a person still reads and chooses, the workers make ready.
  useEffect(() => beginWorkers(book, likely), []);
  const start = (): string => {
    if (typeof figure === 'string') return figure;
    const written = goalText.trim() === '' ? undefined : readGoal(book, goalText, typeOf(book, figure));
    if (written?.ok === false) return written.why;
    const [count, seed] = [wholeNumber(book, countText), wholeNumber(book, seedText)];
    if (count === undefined || count < 10 || count > MOST) return `Draw between 10 and ${MOST} seasons.`;
    if (seed === undefined || seed < 1) return 'The seed is a whole number above 0.';
    const goal = written === undefined ? usualGoal(figure) : { side, value: written.value };
    drawSeasons({ figure, count, seed, goal });
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
        highest are drawn by chance, most often near what is likely; of seed and plants each comes up or stands by
        itself. What is decided, such as dates, spacing and seed sown, stays as planned. Only where Sown, Planted out or
        Time raised is itself typed as a range do the dates that follow from it in that planting move with it.
      </p>
      {fields}
      <div class="what-if-line">
        {GoalField({ label: 'Goal', hint: 'none' })}
        <select
          aria-label="The goal is so much"
          value={side}
          onChange={({ currentTarget }) => chooseSide(currentTarget.value === 'at most' ? 'at most' : 'at least')}
        >
          <option value="at least">or more</option>
          <option value="at most">or less</option>
        </select>
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
      <HowFar book={book} />
    </form>
  );
}

/** How far the drawing is, and what it came to: by itself, so that the fields are not drawn again at each word of how far it is. */
function HowFar({ book }: { readonly book: Workbook }) {
  const state = drawing.value;
  switch (state.state) {
    case 'none':
      return null;
    case 'failed':
      return <p class="refusal">{state.why}</p>;
    case 'drawn':
      return <Answer book={book} answer={state.answer} />;
    case 'drawing':
      return (
        <div class="what-if-line">
          <progress value={state.done} max={state.of} aria-label="Seasons drawn" />
          <button type="button" onClick={cancelDrawing}>
            Cancel
          </button>
        </div>
      );
  }
}

/** Of figures that run out or over by week: that they do not. */
function usualGoal(figure: LikelyFigure): Goal | undefined {
  return figure.by === 'week' ? WEEKLY_CHANCES.find(({ id }) => id === figure.weekly.id)?.well : undefined;
}

function isSpread({ quantiles }: DrawnAnswer): boolean {
  return quantiles[0]?.value !== quantiles.at(-1)?.value;
}

export function Answer({ book, answer }: { readonly book: Workbook; readonly answer: DrawnAnswer }) {
  const { figure, count, seed, interval, chance, goal, hangsOn, old } = answer;
  const type = typeOf(book, figure);
  const name = nameOf(figure);
  if (interval === undefined) return <p>{`${name} is no number in any of the seasons.`}</p>;
  const say = (value: number): string => sayRounded(book, value, type);
  const asked = type === undefined ? undefined : { name, type, answer };
  const picture = asked === undefined ? undefined : figure.by === 'week' ? fanOf(book, asked) : curveOf(book, asked);
  return (
    <output class="what-if-answer">
      <p>
        <b>{name}</b>
        {`, ${count} seasons, seed ${seed}`}
        {old ? <b> (old: the plan has changed since)</b> : null}
      </p>
      {figure.by === 'week' ? null : (
        <p>
          {isSpread(answer)
            ? `In one season of ten below ${say(interval.p10)}, in half below ${say(interval.p50)}, in one of ten above ${say(interval.p90)}.`
            : `${say(interval.p50)} in every season: nothing that is uncertain moves it.`}
        </p>
      )}
      {chance === undefined || goal === undefined ? null : (
        <p>{`${goal.side === 'at least' ? 'At least' : 'At most'} ${say(goal.value)} in ${chanceWords(chance)}.`}</p>
      )}
      {picture === undefined ? null : <LinesPicture model={picture} />}
      {hangsOn === undefined ? null : (
        <>
          {hangsOn.named.length === 0 ? null : (
            <table class="what-if-table">
              <caption>{figure.by === 'week' ? 'What its sum hangs on' : 'What it hangs on'}</caption>
              <tbody>
                {hangsOn.named.map(({ name: input, share }) => (
                  <tr key={input}>
                    <th scope="row">{input}</th>
                    <td>
                      <meter value={share} max={1} aria-label={`${input}: share of the spread`} /> {percent(share)}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          )}
          <p>{leftOutWords(hangsOn, count)}</p>
        </>
      )}
    </output>
  );
}
