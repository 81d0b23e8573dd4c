// Branches: a new one, those there are with their changes, and up to four beside the plan with the totals that matter.

import { useState } from 'preact/hooks';
import {
  type BranchData,
  compareTotals,
  compareWeeks,
  lookIntoBranch,
  lostChanges,
  sayChange,
  sayNumber,
  type Workbook,
} from '../../../engine/index.ts';
import { PLAN_BY_WEEK, PLAN_TOTALS } from '../../../sheets-templates/index.ts';
import { LOST } from '../../branch-words.ts';
import { dayWords } from '../store/day-words.ts';
import { makeBranch, takeOver, throwAway, workIn } from './branch-acts.ts';
import { plan } from './what-if-state.ts';

const MOST_COMPARED = 4;

interface Opened extends BranchData {
  readonly id: string;
  readonly book: Workbook;
}

export function BranchesPart() {
  const base = plan();
  const [left, leave] = useState<ReadonlySet<string>>(new Set());
  if (base === undefined) return null;
  const all = [...base.document.branches];
  const compared = all.filter(([id]) => !left.has(id)).slice(0, MOST_COMPARED);
  const opened = compared.flatMap(([id, data]): Opened[] => {
    const book = lookIntoBranch(base, id);
    return book === undefined ? [] : [{ id, ...data, book }];
  });
  return (
    <>
      <p>A branch is another way that the plan could go. Change anything in it: the plan stays as it is.</p>
      <NewBranch />
      {all.length > 1 ? (
        <fieldset class="what-if-choose">
          <legend>Side by side, four at most</legend>
          {all.map(([id, { name }]) => (
            <label key={id}>
              <input
                type="checkbox"
                checked={compared.some(([one]) => one === id)}
                onChange={({ currentTarget }) => {
                  const next = new Set(left);
                  if (currentTarget.checked) next.delete(id);
                  else next.add(id);
                  leave(next);
                }}
              />
              {name}
            </label>
          ))}
        </fieldset>
      ) : null}
      {opened.map((branch) => (
        <OneBranch key={branch.id} base={base} branch={branch} />
      ))}
      {opened.length === 0 ? null : <Totals base={base} opened={opened} />}
      {opened.length === 0 ? null : <Weeks base={base} opened={opened} />}
    </>
  );
}

function NewBranch() {
  const [name, write] = useState('');
  const [refused, refuse] = useState<string | undefined>(undefined);
  return (
    <form
      class="what-if-line"
      onSubmit={(event) => {
        event.preventDefault();
        refuse(makeBranch(name));
      }}
    >
      <label>
        Name of a new branch <input value={name} onInput={({ currentTarget }) => write(currentTarget.value)} />
      </label>
      <button type="submit" class="primary">
        Branch the plan
      </button>
      {refused === undefined ? null : (
        <span class="refusal" role="alert">
          {refused}
        </span>
      )}
    </form>
  );
}

function OneBranch({ base, branch }: { readonly base: Workbook; readonly branch: Opened }) {
  const { id, name, changes, book } = branch;
  const lost = lostChanges(base, changes);
  const misses = changes.map((change) => lost.get(change.id));
  return (
    <article class="what-if-branch" aria-label={name}>
      <h3>{name}</h3>
      {changes.length === 0 ? <p>Nothing is changed in it yet.</p> : null}
      <ul>
        {changes.map((change, at) => (
          <li key={change.id}>
            {sayChange(book, change)} {misses[at] === undefined ? null : <em>{LOST[misses[at]]} </em>}
            {misses[at] === 'all' ? null : (
              <button type="button" onClick={() => takeOver(id, name, [change.id])}>
                Take over
              </button>
            )}
          </li>
        ))}
      </ul>
      <div class="what-if-line">
        <button type="button" onClick={() => workIn(id)}>
          Work in it
        </button>
        <button type="button" onClick={() => takeOver(id, name)}>
          Keep it as the plan
        </button>
        <button type="button" onClick={() => throwAway(id, name)}>
          Throw it away
        </button>
      </div>
    </article>
  );
}

interface SideBySide {
  readonly base: Workbook;
  readonly opened: readonly Opened[];
}

function Totals({ base, opened }: SideBySide) {
  const books = opened.map(({ book }) => book);
  const totals = compareTotals(base, books, PLAN_TOTALS);
  return (
    <table class="what-if-table">
      <caption>Totals</caption>
      <thead>
        <tr>
          <th scope="col">
            <span class="spoken">Figure</span>
          </th>
          <th scope="col">Plan</th>
          {opened.map(({ id, name }) => (
            <th key={id} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {totals.map(({ id, name, base: here, branches }) => (
          <tr key={id}>
            <th scope="row">{name}</th>
            <td>{here.shown}</td>
            {branches.map(({ shown, differenceShown }, i) => (
              <td key={opened[i]?.id} class={differenceShown === '' ? undefined : 'differs'}>
                {shown} {differenceShown === '' ? null : <small>{differenceShown}</small>}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The weeks in which a branch differs from the plan. */
function Weeks({ base, opened }: SideBySide) {
  const figures = compareWeeks([base, ...opened.map(({ book }) => book)], PLAN_BY_WEEK).flatMap((figure) => {
    const weeks = figure.weeks.filter(({ values: [first, ...rest] }) => rest.some((value) => differs(first, value)));
    return weeks.length === 0 ? [] : [{ ...figure, weeks }];
  });
  if (figures.length === 0) return null;
  return (
    <>
      {figures.map(({ id, name, type, weeks }) => (
        <details key={id}>
          <summary>{`${name} by week: ${weeks.length} ${weeks.length === 1 ? 'week differs' : 'weeks differ'}`}</summary>
          <table class="what-if-table">
            <thead>
              <tr>
                <th scope="col">Week from</th>
                <th scope="col">Plan</th>
                {opened.map((branch) => (
                  <th key={branch.id} scope="col">
                    {branch.name}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {weeks.map(({ week, values }) => (
                <tr key={week}>
                  <th scope="row">{dayWords(base, week)}</th>
                  {values.map((value, i) => (
                    <td key={i}>{value === undefined ? '' : sayNumber(base, value, type)}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      ))}
    </>
  );
}

function differs(a: number | undefined, b: number | undefined): boolean {
  return Math.abs((a ?? 0) - (b ?? 0)) > 1e-9 * Math.max(Math.abs(a ?? 0), Math.abs(b ?? 0));
}
