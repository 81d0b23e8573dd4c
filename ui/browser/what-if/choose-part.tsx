// Choose: how much of each planting to grow within beds, hands, bench, stores and demand, for the most margin or the least hours. The
// answer says what holds it back and what more of that is worth, and is kept as a branch.

import { useState } from 'preact/hooks';
import type { Workbook } from '../../../engine/index.ts';
import type { ChooseWish, ChosenAmounts } from '../../../sheets-templates/acts/choose-amounts.ts';
import type { Within } from '../../../sheets-templates/acts/choose-limits.ts';
import type { Act } from '../../../sheets-templates/index.ts';
import { askOnce } from '../files/ask-once.ts';
import { change } from '../store/change.ts';
import { followChanges } from '../store/workbook.ts';
import { makeBranch } from './branch-acts.ts';
import type { ChooseAsked, ChooseTold } from './choose-worker.ts';
import { useText } from './pickers.tsx';
import { plan } from './what-if-state.ts';

const WITHIN: readonly { readonly id: Within; readonly name: string }[] = [
  { id: 'beds', name: 'Beds' },
  { id: 'hands', name: 'Hands' },
  { id: 'bench', name: 'Bench' },
  { id: 'stores', name: 'Stores' },
  { id: 'demand', name: 'Demand' },
];

export function ChoosePart() {
  const book = plan();
  return book === undefined ? null : <Choose book={book} />;
}

type Done = Extract<Act, { readonly ok: true }> & { readonly chosen?: ChosenAmounts };

interface Answer {
  readonly wish: ChooseWish;
  readonly act: Done;
}

function Choose({ book }: { readonly book: Workbook }) {
  const [goal, chooseGoal] = useState<ChooseWish['goal']>('margin');
  const [within, keepWithin] = useState<readonly Within[]>(WITHIN.map(({ id }) => id));
  const [answer, show] = useState<Answer | string | undefined>(undefined);
  const [working, work] = useState(false);
  const start = async (): Promise<void> => {
    if (within.length === 0) {
      show('Choose what to keep within: without limits every planting would be as long as it may.');
      return;
    }
    work(true);
    const wish: ChooseWish = { goal, within };
    show(await chosenFor(book, wish));
    work(false);
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void start();
      }}
    >
      <p>
        How long to make each planting that has not begun yet, within what there is. All is taken to grow with the
        length; the lengths found and some near them are tried on branches, and told is what the best of these has. The
        margin is Margin, or within Demand Sales by outlets less Costs; without a price of its own a planting sells by
        Demand in either case.
      </p>
      <fieldset class="what-if-line">
        <legend>For</legend>
        <label>
          <input type="radio" name="choose-goal" checked={goal === 'margin'} onChange={() => chooseGoal('margin')} />{' '}
          the most margin
        </label>
        <label>
          <input type="radio" name="choose-goal" checked={goal === 'hours'} onChange={() => chooseGoal('hours')} /> the
          least hours, at the margin there is now
        </label>
      </fieldset>
      <fieldset class="what-if-line">
        <legend>Within</legend>
        {WITHIN.map(({ id, name }) => (
          <label key={id}>
            <input
              type="checkbox"
              checked={within.includes(id)}
              onChange={({ currentTarget }) => {
                keepWithin(currentTarget.checked ? [...within, id] : within.filter((one) => one !== id));
              }}
            />{' '}
            {name}
          </label>
        ))}
      </fieldset>
      <button type="submit" class="primary" disabled={working}>
        Choose
      </button>
      {working ? <p aria-live="polite">Choosing ...</p> : null}
      {typeof answer === 'string' ? (
        <p class="refusal" role="alert">
          {answer}
        </p>
      ) : null}
      {typeof answer === 'object' ? <Chosen answer={answer} /> : null}
    </form>
  );
}

/** What is chosen for the plan as it stands, worked out beside the page; in a sentence why nothing is. */
async function chosenFor(book: Workbook, wish: ChooseWish): Promise<Answer | string> {
  let isOld = false;
  const stop = followChanges(() => {
    isOld = true;
  });
  const act = await chosenBeside({ data: book.data(), wish }).finally(stop);
  if (isOld) return 'The plan was changed while amounts were chosen: choose again.';
  return act.ok ? { wish, act } : act.why;
}

function chosenBeside(asked: ChooseAsked): Promise<ChooseTold> {
  const worker = new Worker(new URL('./choose-worker.ts', import.meta.url), { type: 'module' });
  const why = 'Amounts could not be chosen: load the page again.';
  return askOnce<ChooseTold>(worker, asked, why).catch(() => ({ ok: false, why }));
}

function Chosen({ answer: { wish, act } }: { readonly answer: Answer }) {
  const [name, Name] = useText(wish.goal === 'margin' ? 'Most margin' : 'Least hours');
  const [refused, refuse] = useState('');
  const { lengths = [], heldBackBy = [] } = act.chosen ?? {};
  const keep = (): void => {
    const why = makeBranch(name);
    if (why !== undefined) {
      refuse(why);
      return;
    }
    change(act.commands, act.message);
  };
  return (
    <output class="what-if-answer">
      <p>{act.said}</p>
      {heldBackBy.length === 0 ? null : (
        <table class="what-if-table">
          <caption>What holds it back</caption>
          <thead>
            <tr>
              <th scope="col">Limit</th>
              <th scope="col">With</th>
              <th scope="col">{wish.goal === 'margin' ? 'it would gain about' : 'it would save about'}</th>
            </tr>
          </thead>
          <tbody>
            {heldBackBy.map((limit) => (
              <tr key={limit.name}>
                <th scope="row">{limit.name}</th>
                <td>{limit.more}</td>
                <td>{limit.worth}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {lengths.length === 0 ? null : (
        <>
          <div class="what-if-line">
            {Name({ label: 'Name of the branch' })}
            <button type="button" onClick={keep}>
              Keep as a branch
            </button>
          </div>
          {refused === '' ? null : (
            <p class="refusal" role="alert">
              {refused}
            </p>
          )}
          <table class="what-if-table">
            <caption>Lengths that change</caption>
            <thead>
              <tr>
                <th scope="col">Planting</th>
                <th scope="col">Now</th>
                <th scope="col">Chosen</th>
              </tr>
            </thead>
            <tbody>
              {lengths.map((one) => (
                <tr key={one.name}>
                  <th scope="row">{one.name}</th>
                  <td>{one.before}</td>
                  <td>{one.after}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </output>
  );
}
