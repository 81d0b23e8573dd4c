// Money by month in the page.

import { workbook } from '../../store/workbook.ts';
import { LinesPicture } from '../kit/lines-picture.tsx';
import { moneyByMonth } from './money.ts';

export function MoneyPicture() {
  const model = moneyByMonth(workbook());
  if (model === undefined) {
    return (
      <p class="no-picture">
        Nothing is known of money yet. For what comes in, enter prices on Products and what outlets take on Demand; for
        what goes out, the wage on Farm, prices on Packs and what else the season costs on Own costs.
      </p>
    );
  }
  return <LinesPicture model={model} height={300} />;
}
