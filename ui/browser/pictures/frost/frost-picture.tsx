// Chances of frost in the page.

import { workbook } from '../../store/workbook.ts';
import { LinesPicture } from '../kit/lines-picture.tsx';
import { frostChances } from './frost.ts';

export function FrostPicture() {
  const model = frostChances(workbook());
  if (model === undefined) {
    return (
      <p class="no-picture">No chances of frost yet: enter frost dates of some years, or the average frosts on Farm.</p>
    );
  }
  return <LinesPicture model={model} height={300} />;
}
