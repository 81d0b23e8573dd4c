// Which of the lists of what is kept in this browser is open: the workbooks, or the versions of one of them. Commands and
// notices open them; kept/kept-dialog.tsx, fetched then, draws them.

import { signal } from '@preact/signals';

export type KeptList =
  | { readonly shows: 'workbooks' }
  /** Of the workbook on screen where no other is named. */
  | { readonly shows: 'versions'; readonly workbook?: { readonly id: string; readonly title: string } };

export const keptList = signal<KeptList | undefined>(undefined);

export function shut(): void {
  keptList.value = undefined;
}
