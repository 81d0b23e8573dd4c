// The bar above a sheet while a branch stands on screen in place of the plan.

import { branchName, openWhatIf, toThePlan } from './what-if-state.ts';

export function BranchBar() {
  const name = branchName.value;
  if (name === undefined) return null;
  return (
    <div class="branch-bar" role="status">
      <span>
        Branch <b>{name}</b>: what you change here leaves the plan as it is.
      </span>
      <button type="button" onClick={openWhatIf}>
        Compare
      </button>
      <button type="button" onClick={toThePlan}>
        Back to the plan
      </button>
    </div>
  );
}
