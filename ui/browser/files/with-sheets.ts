// The way to what hands sheets over as files, which is fetched when one is wanted. Menus call it.

import { tell } from '../store/notices.ts';

/** Does what hands over sheets, once it is fetched; says so where it doesn't come. */
export function withSheets(work: (part: typeof import('./download-sheets.ts')) => Promise<void>): void {
  void import('./download-sheets.ts').then(work).catch((fault: unknown) => tell(String(fault), 'refusal'));
}
