// Chances of frost in the page.

import { FROST_DATE_DEVIATION } from '../../../../engine/index.ts';
import { workbook } from '../../store/workbook.ts';
import { LinesPicture } from '../kit/lines-picture.tsx';
import { frostChances } from './frost.ts';

export function FrostPicture() {
  const model = frostChances(workbook());
  if (model === undefined) {
    return (
      <p class="no-picture">
        {`No chances of frost yet: they come from the last and first frosts of several years, on Frost years. Average dates
        do not say how much years differ here; until then Farm takes the usual spread of ${FROST_DATE_DEVIATION} days.`}
      </p>
    );
  }
  return <LinesPicture model={model} height={300} />;
}
