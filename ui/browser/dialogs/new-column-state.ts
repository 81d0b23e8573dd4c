// A column that a person is about to add to a sheet, as far as it was typed. The dialog draws it; what the checker says of it and
// adding it is fetched with the dialog (new-column-acts.ts).

import { signal } from '@preact/signals';
import { sheetView, sheetViews } from '../../../engine/index.ts';
import { workbookNow } from '../store/workbook.ts';

export type ColumnKind = 'formula' | 'number' | 'text' | 'date' | 'yesno' | 'choice' | 'link';

export interface NewColumn {
  readonly sheet: string;
  readonly sheetName: string;
  readonly name: string;
  readonly kind: ColumnKind;
  readonly formula: string;
  /** Of a number typed by hand; '' for a plain number. */
  readonly unit: string;
  /** What can be chosen, parted by semicolons. */
  readonly options: string;
  /** The sheet whose rows a link leads to. */
  readonly linked: string;
  /** Why it could not be added, in a sentence. */
  readonly refused: string | undefined;
}

/** The column being described; undefined while none is. */
export const newColumn = signal<NewColumn | undefined>(undefined);

export function beginColumn(sheet: string): void {
  const book = workbookNow();
  const view = book === undefined ? undefined : sheetView(book, sheet);
  if (view === undefined) return;
  newColumn.value = {
    sheet,
    sheetName: view.name,
    name: '',
    kind: 'formula',
    formula: '',
    unit: '',
    options: '',
    linked: linkable(sheet)[0]?.id ?? '',
    refused: undefined,
  };
}

/** The sheets to whose rows a column can lead: those whose rows have names. */
export function linkable(sheet: string): readonly { readonly id: string; readonly name: string }[] {
  const book = workbookNow();
  return book === undefined ? [] : sheetViews(book).filter((one) => one.id !== sheet && one.entered && !one.oneRow);
}
