// What the season drawn last said, above the sheet for as long as it is wanted; marked old once the plan changes. Small, and loaded
// with the page; draws-state.ts fills it.

import { signal } from '@preact/signals';
import { whatIf } from './what-if-state.ts';

/** What was drawn in one sentence; undefined while nothing is, or once it was put away. */
export const likelyKept = signal<{ readonly says: string; readonly old: boolean } | undefined>(undefined);

export function LikelyBar() {
  const kept = likelyKept.value;
  if (kept === undefined) return null;
  return (
    <div class="branch-bar likely-bar" role="status">
      <span>
        {kept.old ? <b>Old, the plan has changed since: </b> : null}
        {kept.says}
      </span>
      <button
        type="button"
        onClick={() => {
          whatIf.value = 'How likely';
        }}
      >
        {kept.old ? 'Draw again' : 'Show'}
      </button>
      <button
        type="button"
        onClick={() => {
          likelyKept.value = undefined;
          void import('./kept-answers.ts').then(({ putAway }) => putAway());
        }}
      >
        Put away
      </button>
    </div>
  );
}
