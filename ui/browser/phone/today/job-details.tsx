// A job opened on the phone: how much was done, how long it took, a note, another day, who, and a photo. The amount stands in the
// sheet of records, the rest in the sheet of jobs itself.

import { settings, sheetView } from '../../../../engine/index.ts';
import { FormField } from '../../form/form-field.tsx';
import { TASKS } from '../../glance/week-jobs.ts';
import { rowAt } from '../../store/selection.ts';
import { columnOf } from '../../store/sheets.ts';
import { workbook } from '../../store/workbook.ts';
import { leaveNote, noteAmountOf, phonePlace } from '../places.ts';
import { RECORDS } from './day.ts';
import { HowMuch } from './how-much.tsx';
import { type JobAmount, jobAmount } from './job-amount.ts';
import { Photo } from './photo.tsx';

const FIELDS = ['hours-taken', 'note', 'moved-to', 'who'];

export function JobDetails({ row: id, on }: { readonly row: string; readonly on: number }) {
  const book = workbook();
  const row = rowAt(book, TASKS, id);
  const sheet = sheetView(book, TASKS);
  if (row === undefined || sheet === undefined) return null;
  const { today } = settings(book);
  const amount = jobAmount(book, row.slot, today);
  return (
    <div class="today-details">
      {amount === undefined ? null : <Amount job={id} amount={amount} />}
      <div class="fields">
        {FIELDS.flatMap((column) => columnOf(sheet, column) ?? []).map((column) => (
          <FormField key={column.id} sheet={TASKS} row={row} column={column} />
        ))}
      </div>
      <Photo job={id} past={on <= today} />
    </div>
  );
}

interface AmountProps {
  /** By its row. */
  readonly job: string;
  readonly amount: JobAmount;
}

/** What the records say of the job on its day, to be changed there; else the box in which it is typed. */
function Amount({ job, amount: { note, planting, on, noted } }: AmountProps) {
  // Its box is a place of the phone, so that the browser's own way back closes it and no more.
  const place = phonePlace.value;
  const book = workbook();
  const sheet = sheetView(book, RECORDS);
  if (noted.length > 0) {
    return (
      <div class="fields">
        {noted.flatMap((line) => {
          const [row, column] = [rowAt(book, RECORDS, line.row), columnOf(sheet, line.column)];
          return row === undefined || column === undefined
            ? []
            : [<FormField key={line.row} sheet={RECORDS} row={row} column={column} />];
        })}
      </div>
    );
  }
  if (place.at === 'today' && place.amountOf === job) {
    return <HowMuch note={note} planting={planting} on={on} onLeave={leaveNote} />;
  }
  return (
    <button type="button" onClick={() => noteAmountOf(job)}>
      Note how much
    </button>
  );
}
