// Chooses amounts beside the page, on a copy of the plan as it stands, so that the page stays in hand: lengths are tried on one branch
// after another. Asked once, it gives the act with its answer. Begun and ended by choose-part.tsx.

import { type DocumentData, Workbook } from '../../../engine/index.ts';
import { type ChooseWish, chooseAmounts } from '../../../sheets-templates/acts/choose-amounts.ts';
import { linearSolver } from '../../linear-solver.ts';
import { withUnitsWanted } from '../../units-wanted.ts';
import { fetchTemplate, newId, templates } from '../files/world.ts';

export interface ChooseAsked {
  readonly data: DocumentData;
  readonly wish: ChooseWish;
}

export type ChooseTold = ReturnType<typeof chooseAmounts>;

addEventListener('message', ({ data: asked }: MessageEvent<ChooseAsked>) => {
  chosenIn(asked).then(
    (told) => postMessage(told),
    (fault: unknown) => {
      const said = fault instanceof Error ? fault.message : String(fault);
      postMessage(refusal(`The amounts could not be chosen (a fault in Dibble: ${said}).`));
    },
  );
});

async function chosenIn({ data, wish }: ChooseAsked): Promise<ChooseTold> {
  await fetchTemplate(data.template);
  const world = { newId, now: () => Date.now(), actor: 'choosing', templates };
  const workbook = await withUnitsWanted(() => Workbook.open(data, world));
  if (workbook === undefined) return refusal('The sheets of the workbook could not be fetched: try again.');
  return withUnitsWanted(() => chooseAmounts(workbook, linearSolver, wish));
}

function refusal(why: string): ChooseTold {
  return { ok: false, why };
}
