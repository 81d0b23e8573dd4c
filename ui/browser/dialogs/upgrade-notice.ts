// Says that there are newer sheets than those of the workbook that is opened. Fetched where there are.

import { tell } from '../store/notices.ts';
import { offerUpgrade } from './upgrade-offer.ts';

/** Says that there are newer sheets, with the way to see what they would change. */
export function upgradeNotice(): void {
  tell('The sheets of this workbook are those of an earlier Dibble, and they work on as they are.', 'done', {
    label: 'See what today’s would change',
    run: () => void offerUpgrade(),
  });
}
