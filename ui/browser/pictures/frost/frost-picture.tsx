// Chances of frost in the page.

import { workbook } from '../../store/workbook.ts';
import { LinesPicture } from '../kit/lines-picture.tsx';
import { frostChances } from './frost.ts';

export function FrostPicture() {
  const model = frostChances(workbook());
  if (model === undefined) {
    return (
      <p class="no-picture">
        No chances of frost yet: average dates do not say how much years differ. Enter the last and first frosts of
        several years on Frost years.
      </p>
    );
  }
  return <LinesPicture model={model} height={300} />;
}
