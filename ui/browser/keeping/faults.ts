// What is wrong with the browser's storage, in words, and what a person can do.

import type { FaultKind, StorageFault } from './storage.ts';

const WORDS: Readonly<Record<FaultKind, string>> = {
  blocked: 'This browser lets the page keep nothing on this computer',
  hung: 'The browser’s storage does not answer',
  full: 'The browser’s storage is full',
  newer: 'A newer Dibble has been opened in another tab, and this one can keep nothing any more',
  taken: 'Another tab writes this workbook at the same time',
  refused: 'The browser’s storage takes nothing',
};

/** 'The browser’s storage is full: what you change is not kept on this computer. Save it to a file.' */
export function faultWords(fault: StorageFault): string {
  const own = fault.message !== fault.kind ? ` (${fault.message})` : '';
  const todo = fault.kind === 'newer' ? 'Save it to a file, then load this page again.' : 'Save it to a file.';
  return `${WORDS[fault.kind]}${own}: what you change is not kept on this computer. ${todo}`;
}
