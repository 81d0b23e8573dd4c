// The short way into a season: where, the climate, the beds, the first crops. Every answer stands in the workbook at once, in the
// cell where it would be typed anyway, and what follows from it is shown beside it; undo takes any of it back.

import { useEffect } from 'preact/hooks';
import { rows } from '../../../engine/index.ts';
import { CommandButton } from '../commands/command-button.tsx';
import { PLANTINGS } from '../panels/columns.ts';
import { view } from '../store/view.ts';
import { workbook } from '../store/workbook.ts';
import '../pictures/picture-page.css';
import { BedsStep } from './beds-step.tsx';
import { ClimateStep } from './climate-step.tsx';
import { CropsStep } from './crops-step.tsx';
import './first-visit.css';
import { PlanSoFar } from './plan-so-far.tsx';
import { enterQuestions } from './way-back.ts';
import { WhereStep } from './where-step.tsx';

export function FirstVisit() {
  // It stays while its answers fill the workbook.
  useEffect(() => {
    view.value = { at: 'first visit' };
  }, []);
  // After every answer: a step back that was taken before is then behind again.
  useEffect(enterQuestions);
  const book = workbook();
  const planted = rows(book, PLANTINGS).length;
  return (
    <div class="first-visit">
      <header>
        <h2>A new season</h2>
        <p>
          Four questions, in any order; each answer is worked out at once and can be changed later on its sheet. Or look
          at a season that is planned already: <CommandButton id="demo farm">Open the demo farm</CommandButton>
        </p>
      </header>
      <div class="first-steps">
        <WhereStep />
        <ClimateStep />
        <BedsStep />
        <CropsStep />
      </div>
      {planted === 0 ? null : <PlanSoFar />}
    </div>
  );
}
