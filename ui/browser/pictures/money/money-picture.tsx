// Money by month in the page.

import { workbook } from '../../store/workbook.ts';
import { LinesPicture } from '../kit/lines-picture.tsx';
import { moneyByMonth } from './money.ts';

export function MoneyPicture() {
  const model = moneyByMonth(workbook());
  if (model === undefined) return <p class="no-picture">There are no months of money yet.</p>;
  return <LinesPicture model={model} height={300} />;
}
