// Writes down what is in hand a moment after it changes, for the next visit (hand.ts). Once the page stands.

import { effect } from '@preact/signals';
import { selection } from '../store/selection.ts';
import { view } from '../store/view.ts';
import { transact } from './storage.ts';

const SOON = 300;

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
