// Puts a workbook on screen in place of the one before, at the same sheet where it has one.

import { batch } from '@preact/signals';
import { sheetView, sheetViews, type Workbook } from '../../../engine/index.ts';
import { selectedCells, selection } from './selection.ts';
import { takeWorkbook } from './workbook.ts';

export function showWorkbook(next: Workbook): void {
  batch(() => {
    takeWorkbook(next);
    const sheet = sheetView(next, selection.peek().sheet) ?? sheetViews(next)[0];
    selection.value = { sheet: sheet?.id ?? '', row: undefined, column: undefined };
    selectedCells.value = undefined;
  });
}
