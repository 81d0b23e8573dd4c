// Which dialog about the looks of a sheet is open, and on what: the columns of a view, a filter, a colour. dialogs/ draws them.

import { signal } from '@preact/signals';
import type { SheetView } from '../../../engine/index.ts';

export type LookDialog =
  | { readonly what: 'view'; readonly sheet: string; readonly fresh: boolean }
  | { readonly what: 'filter'; readonly sheet: string; readonly column: string }
  | { readonly what: 'colour'; readonly sheet: string; readonly column: string };

export const lookDialog = signal<LookDialog | undefined>(undefined);

export function beginView({ id: sheet }: SheetView, fresh = false): void {
  lookDialog.value = { what: 'view', sheet, fresh };
}

export function beginFilter(sheet: string, column: string): void {
  lookDialog.value = { what: 'filter', sheet, column };
}

export function beginColour(sheet: string, column: string): void {
  lookDialog.value = { what: 'colour', sheet, column };
}

export function closeLooks(): void {
  lookDialog.value = undefined;
}
