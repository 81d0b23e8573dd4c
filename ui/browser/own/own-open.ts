// Which dialog of one's own sheets and formulas is open. The commands open them, the page shows them; what they do is fetched then.

import { signal } from '@preact/signals';

/** Sheets and columns of the workbook, with one sheet in hand; undefined while the dialog is shut. */
export const ownSheets = signal<{ readonly sheet: string } | undefined>(undefined);

/** The column whose formula is tried side by side. */
export const formulaTried = signal<{ readonly sheet: string; readonly column: string } | undefined>(undefined);
