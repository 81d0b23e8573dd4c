// What is in hand on the season calendar: buttons that move it as dragging does, and what it changes.

import { sameWords, type WhatFollows } from './moving.ts';

export interface FollowsProps {
  readonly name: string;
  readonly says: string;
  readonly beds: readonly { readonly id: string; readonly name: string }[];
  readonly bed: string;
  /** While a pointer carries it there are no buttons, which it could not press, so that more of the calendar is in sight. */
  readonly carried: boolean;
  /** Undefined while it is being worked out. */
  readonly follows: WhatFollows | undefined;
  readonly onDays: (days: number) => void;
  readonly onBed: (bed: string) => void;
  readonly onSet: () => void;
  readonly onLeave: () => void;
  readonly onOpen: () => void;
}

const STEPS: readonly (readonly [number, string])[] = [
  [-7, 'Week earlier'],
  [-1, 'Day earlier'],
  [1, 'Day later'],
  [7, 'Week later'],
];

export function Follows({ name, says, follows, carried, ...acts }: FollowsProps) {
  return (
    <section class={`follows${carried ? ' is-carried' : ''}`} aria-label={`${name} in hand`}>
      <h3>{says}</h3>
      {carried ? null : <Acts {...acts} />}
      {follows === undefined ? <p>Working out what follows ...</p> : <FollowsTable follows={follows} />}
    </section>
  );
}

type ActsProps = Omit<FollowsProps, 'name' | 'says' | 'follows' | 'carried'>;

function Acts({ beds, bed, onDays, onBed, onSet, onLeave, onOpen }: ActsProps) {
  return (
    <div class="picture-choices">
      {STEPS.map(([days, words]) => (
        <button key={days} type="button" onClick={() => onDays(days)}>
          {words}
        </button>
      ))}
      <label>
        Bed{' '}
        <select value={bed} onChange={({ currentTarget }) => onBed(currentTarget.value)}>
          {beds.map((each) => (
            <option key={each.id} value={each.id}>
              {each.name}
            </option>
          ))}
        </select>
      </label>
      <button type="button" class="primary" onClick={onSet}>
        Set it
      </button>
      <button type="button" onClick={onLeave}>
        Leave it
      </button>
      <button type="button" class="quiet" onClick={onOpen}>
        Open the planting
      </button>
    </div>
  );
}

/** At most so many warnings are read at once while moving. */
const WARNINGS = 4;

function FollowsTable({ follows: { lines, warnings, why } }: { readonly follows: WhatFollows }) {
  return (
    <div class="follows-table">
      <div>
        <dl>
          {lines
            .filter(({ changed }) => changed)
            .map(({ name, before, after }) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>
                  <span class="spoken">from </span>
                  {before === '' ? 'none' : before}
                  <span aria-hidden="true"> {'\u2192'} </span>
                  <span class="spoken"> to </span>
                  <b>{after === '' ? 'none' : after}</b>
                </dd>
              </div>
            ))}
        </dl>
        <p class="the-same">{sameWords(lines)}</p>
      </div>
      <div>
        {why === undefined ? null : <p class="finding level-error">{why}</p>}
        {warnings.slice(0, WARNINGS).map((warning) => (
          <p key={warning} class="finding level-warning">
            {warning}
          </p>
        ))}
        {warnings.length > WARNINGS ? <p>And {warnings.length - WARNINGS} more.</p> : null}
        {why === undefined && warnings.length === 0 ? <p>Nothing new would need attention.</p> : null}
      </div>
    </div>
  );
}
