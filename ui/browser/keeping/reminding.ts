// The reminder that a workbook's file is older than the work, or that there is none: browsers lose what they keep when their
// data is cleared or a computer breaks, so the work belongs in a file too. At most once a day, and never over another notice.

import type { Workbook } from '../../../engine/index.ts';
import { notices, tell } from '../store/notices.ts';
import { contentSum } from './entries.ts';
import type { WorkbookRecord } from './records.ts';
import { noteWorkbook } from './workbooks.ts';

const DAY = 86_400_000;

/** Says so where it is time to, with the way to save it. */
export function remindOfFile(workbook: Workbook, record: WorkbookRecord, save: () => void): void {
  const words = reminder(workbook, record, Date.now());
  if (words === undefined || notices.peek().length > 0) return;
  tell(words, 'refusal', { label: 'Save it now', run: save });
  void noteWorkbook(record.id, { reminded: Date.now() }).catch(() => undefined);
}

/** A clock that was set back reminds of nothing that isn't there yet. */
function reminder(workbook: Workbook, { begun, file, reminded }: WorkbookRecord, now: number): string | undefined {
  if (reminded !== undefined && Math.abs(now - reminded) < DAY) return undefined;
  const days = Math.floor((now - (file?.at ?? begun)) / DAY);
  if (days < 1) return undefined;
  const count = days === 1 ? 'a day' : `${days} days`;
  if (file === undefined)
    return `For ${count} this workbook has been kept in this browser only. It belongs in a file too.`;
  return file.sum === contentSum(workbook) ? undefined : `${file.name} is ${count} older than the work.`;
}
