// A figure of the farm, typed where a question asks for it.

import { ONLY_ROW, sheetView } from '../../../engine/index.ts';
import { FormField } from '../form/form-field.tsx';
import { FARM } from '../panels/columns.ts';
import { rowAt } from '../store/selection.ts';
import { columnOf } from '../store/sheets.ts';
import { workbook } from '../store/workbook.ts';

export function FarmField({ column }: { readonly column: string }) {
  const book = workbook();
  const sheet = sheetView(book, FARM);
  const found = columnOf(sheet, column);
  const row = rowAt(book, FARM, ONLY_ROW);
  return found === undefined || row === undefined ? null : <FormField sheet={FARM} row={row} column={found} />;
}
