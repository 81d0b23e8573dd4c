// Seek: the value of one cell at which a figure reaches a goal, said in a sentence.

import { useState } from 'preact/hooks';
import { figureIn, isError, readGoal, readInput, seek, type Workbook } from '../../../engine/index.ts';
import { keepAnswers, planNow } from './kept-answers.ts';
import { FIRST_FIGURE, FigurePicker, figureOf, firstInput, InputPicker, useText } from './pickers.tsx';
import { sought } from './sought.ts';
import { plan } from './what-if-state.ts';

export function SeekPart() {
  const book = plan();
  return book === undefined ? null : <Seek book={book} />;
}

function Seek({ book }: { readonly book: Workbook }) {
  const [input, choose] = useState(() => firstInput(book));
  const [chosen, chooseFigure] = useState(FIRST_FIGURE);
  const [from, From] = useText();
  const [to, To] = useText();
  const [goal, Goal] = useText();
  const [says, say] = useState('');
  const now = figureOf(chosen);
  const last = sought.value;
  /** What is found is kept; why nothing could be looked for is not. */
  const answer = (): string => {
    if (now === undefined) return 'Write a formula first.';
    const { value, type } = figureIn(book, now.figure);
    if (isError(value) && type === undefined) return value.why;
    const wanted = readGoal(book, goal, type);
    if (!wanted.ok) return wanted.why;
    const ends = [from, to].map((text) => readInput(book, input, text));
    const [low, high] = ends.map((end) => (end.ok ? end.values[0] : undefined));
    const failed = ends.find((end) => !end.ok);
    if (failed?.ok === false) return failed.why;
    if (low === undefined || high === undefined) return 'Write the values between which to look.';
    const found = seek(book, {
      input,
      from: low.value,
      to: high.value,
      unit: low.unit ?? high.unit,
      figure: now.figure,
      goal: wanted.value,
      figureName: now.name,
    }).says;
    const plan = planNow();
    sought.value = { says: found, old: false, plan };
    keepAnswers({ sought: { plan, says: found } });
    return '';
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        say(answer());
      }}
    >
      <p>The value of one cell at which a figure reaches a goal. Nothing is changed.</p>
      <InputPicker book={book} legend="Cell to try" input={input} choose={choose} />
      <div class="what-if-line">
        {From({ label: 'From' })}
        {To({ label: 'To' })}
      </div>
      <FigurePicker chosen={chosen} choose={chooseFigure} />
      <div class="what-if-line">
        {Goal({ label: 'Goal', hint: now === undefined ? '' : figureIn(book, now.figure).shown })}
        <button type="submit" class="primary">
          Seek
        </button>
      </div>
      <output class="what-if-answer" aria-live="polite">
        {says}
        {says === '' && last?.old === true ? <b>Old, the plan has changed since: </b> : null}
        {says === '' ? last?.says : null}
      </output>
    </form>
  );
}
