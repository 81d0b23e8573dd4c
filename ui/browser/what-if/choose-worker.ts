// Chooses amounts beside the page, on a copy of the plan as it stands, so that the page stays in hand: lengths are tried on one branch
// after another. Asked once, it gives the act with its answer. Begun and ended by choose-part.tsx.

import type { DocumentData } from '../../../engine/index.ts';
import { type ChooseWish, chooseAmounts } from '../../../sheets-templates/acts/choose-amounts.ts';
import { linearSolver } from '../../linear-solver.ts';
import { withWanted } from '../../wanted.ts';
import { openCopy } from '../files/open-copy.ts';

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
  const workbook = await openCopy(data, 'choosing');
  if (typeof workbook === 'string') return refusal(workbook);
  return withWanted(() => chooseAmounts(workbook, linearSolver, wish));
}

function refusal(why: string): ChooseTold {
  return { ok: false, why };
}
