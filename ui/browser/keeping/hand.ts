// What was in hand when a workbook was last on screen, sheet and cell, so that it is there again after a reload. Lost with no
// harm: it is written a moment after it changes, and read with a short patience.

import { effect } from '@preact/signals';
import { rowWithId, sheetView } from '../../../engine/index.ts';
import { selection } from '../store/selection.ts';
import { view } from '../store/view.ts';
import { workbookNow } from '../store/workbook.ts';
import type { HandRecord } from './records.ts';
import { transact, within } from './storage.ts';

const SOON = 300;
const PATIENCE = 600;

/** Follows what is in hand from now on. */
export function followHand(workbook: () => string | undefined): void {
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const keep = (): void => {
    clearTimeout(waiting);
    waiting = undefined;
    const id = workbook();
    const { sheet, row, column } = selection.peek();
    if (id === undefined || sheet === '') return;
    const hand = {
      workbook: id,
      onScreen: view.peek().at === 'sheet',
      sheet,
      ...(row === undefined ? {} : { row }),
      ...(column === undefined ? {} : { column }),
    };
    void transact(
      ['hands'],
      'readwrite',
      (transaction) => {
        const put = transaction.objectStore('hands').put(hand);
        transaction.commit();
        return put;
      },
      'relaxed',
    ).catch(() => undefined);
  };
  effect(() => {
    selection.value;
    view.value;
    waiting ??= setTimeout(keep, SOON);
  });
  window.addEventListener('pagehide', () => {
    if (waiting !== undefined) keep();
  });
}

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
