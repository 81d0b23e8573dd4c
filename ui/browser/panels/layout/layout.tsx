// What else lays a planting out on its bed: rows, pattern, seeds in a place, length; and how its picture is to be read.

import { cellView, offsetVerdict } from '../../../../engine/index.ts';
import { FormField } from '../../form/form-field.tsx';
import { columnOf } from '../../store/sheets.ts';
import { inWords } from '../../store/shown.ts';
import { workbook } from '../../store/workbook.ts';
import type { PlantedBed } from '../bed-picture/bed-layout.ts';
import { PLANTING } from '../columns.ts';
import type { PanelProps } from '../panel.ts';
import { readBed } from '../read.ts';

const FIELDS = [PLANTING.rows, PLANTING.pattern, PLANTING.perStation, PLANTING.lengthUsed];

export function Layout({ sheet, row }: PanelProps) {
  const book = workbook();
  const bed = readBed(book, row.slot);
  return (
    <section class="layout-fields" aria-label="Layout">
      {FIELDS.flatMap((id) => columnOf(sheet, id) ?? []).map((column) => (
        <FormField key={column.id} sheet={sheet.id} row={row} column={column} />
      ))}
      {bed === undefined ? null : (
        <BedNotes bed={bed} spacing={inWords(cellView(book, sheet.id, row.slot, PLANTING.spacing))} />
      )}
    </section>
  );
}

/** How the picture is to be read, and what offset rows really do on this bed. */
function BedNotes({ bed, spacing }: { readonly bed: PlantedBed; readonly spacing: string }) {
  const offset = offsetWords(bed, spacing);
  return (
    <div class="bed-notes">
      {offset === '' ? null : <p class="picture-says">{offset}</p>}
      <p class="picture-says">
        {bed.diameter === undefined
          ? 'In the picture, dots mark the places, not the size of the plants.'
          : 'In the picture, circles are bulbs of the mean size, to scale.'}{' '}
        Half a spacing stays free at each end of a row.
      </p>
    </div>
  );
}

/** What offset rows do on this bed, whether they are chosen or not. */
function offsetWords(bed: PlantedBed, spacing: string): string {
  const verdict = offsetVerdict(bed.length, bed.spacing, bed.rows);
  return bed.rows < 2 || verdict === '' ? '' : `At ${spacing}: ${verdict.charAt(0).toLowerCase()}${verdict.slice(1)}`;
}
