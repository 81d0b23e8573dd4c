// Puts a workbook on screen in place of the one before, at the same sheet where it has one.

import { batch } from '@preact/signals';
import { rowWithId, sheetView, sheetViews, type Workbook } from '../../../engine/index.ts';
import { selectedCells, selection } from './selection.ts';
import { view } from './view.ts';
import { takeWorkbook } from './workbook.ts';

export function showWorkbook(next: Workbook): void {
  batch(() => {
    takeWorkbook(next);
    const sheet = sheetView(next, selection.peek().sheet) ?? sheetViews(next)[0];
    selection.value = { sheet: sheet?.id ?? '', row: undefined, column: undefined };
    selectedCells.value = undefined;
  });
}

/** Puts the same workbook on screen, made anew: what was in hand stays there where it still is. */
export function showAgain(next: Workbook): void {
  const { sheet, row, column } = selection.peek();
  const seen = view.peek();
  showWorkbook(next);
  batch(() => {
    view.value = seen;
    if (row !== undefined && rowWithId(next, sheet, row) !== undefined) selection.value = { sheet, row, column };
  });
}
