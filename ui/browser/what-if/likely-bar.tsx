// What the season drawn last said, above the sheet for as long as it is wanted; marked old once the plan changes.

import { likelyKept } from './likely-kept.ts';
import { whatIf } from './what-if-state.ts';

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
