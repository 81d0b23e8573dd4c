// What was in hand when a workbook was last on screen, sheet and cell, so that it is there again after a reload. Lost with no
// harm: read here with a short patience; hand-following.ts writes it down.

import { rowWithId, sheetView } from '../../../engine/index.ts';
import { selection } from '../store/selection.ts';
import { view } from '../store/view.ts';
import { workbookNow } from '../store/workbook.ts';
import type { HandRecord } from './records.ts';
import { transact, within } from './storage.ts';

const PATIENCE = 600;

/** What was in hand; undefined where that isn't known. */
export function handOf(workbook: string): Promise<HandRecord | undefined> {
  const asked = transact(['hands'], 'readonly', (transaction) => transaction.objectStore('hands').get(workbook));
  return within(PATIENCE, asked).catch(() => undefined);
}

/** Puts it in hand again, if it is still there. */
export function takeInHand({ sheet, row, column, onScreen }: HandRecord): void {
  const book = workbookNow();
  if (book === undefined || sheetView(book, sheet) === undefined) return;
  const isThere = row !== undefined && rowWithId(book, sheet, row) !== undefined;
  selection.value = { sheet, row: isThere ? row : undefined, column: isThere ? column : undefined };
  if (onScreen) view.value = { at: 'sheet' };
}
