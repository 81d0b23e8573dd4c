// Below the grid of a sheet without rows: what it waits for.

import type { SheetView } from '../../../engine/index.ts';
import { workbook } from '../store/workbook.ts';
import { emptyWords } from './empty-words.ts';

export function EmptySheet({ sheet }: { readonly sheet: SheetView }) {
  return <p class="empty">{emptyWords(workbook(), sheet)}</p>;
}
