// A job opened on the phone: how long it took, a note, another day, who; the fields of the sheet of jobs themselves.

import { settings, sheetView } from '../../../../engine/index.ts';
import { FormField } from '../../form/form-field.tsx';
import { TASKS } from '../../glance/week-jobs.ts';
import { rowAt } from '../../store/selection.ts';
import { columnOf } from '../../store/sheets.ts';
import { workbook } from '../../store/workbook.ts';
import { Photo } from './photo.tsx';

const FIELDS = ['hours-taken', 'note', 'moved-to', 'who'];

export function JobDetails({ row: id, on }: { readonly row: string; readonly on: number }) {
  const book = workbook();
  const row = rowAt(book, TASKS, id);
  const sheet = sheetView(book, TASKS);
  if (row === undefined || sheet === undefined) return null;
  return (
    <div class="today-details">
      <div class="fields">
        {FIELDS.flatMap((column) => columnOf(sheet, column) ?? []).map((column) => (
          <FormField key={column.id} sheet={TASKS} row={row} column={column} />
        ))}
      </div>
      <Photo job={id} past={on <= settings(book).today} />
    </div>
  );
}
