// One row as a card: what needs attention, its picture at full width, its fields under their questions, and ways to copy or
// remove it.

import { rowWithId } from '../../../engine/index.ts';
import { duplicateRow, removeRows } from '../commands/rows.ts';
import type { PanelProps } from '../panels/panel.ts';
import { Fields } from '../panels/row/fields.tsx';
import { RowFindings } from '../panels/row/findings.tsx';
import { RowPictures } from '../panels/row/row-panel.tsx';
import { workbookNow } from '../store/workbook.ts';
import { visit } from './places.ts';

export function Card({ sheet, row }: PanelProps) {
  return (
    <article class="card" key={`${sheet.id} ${row.id}`}>
      <h2 class="spoken">What stands in it</h2>
      <RowFindings sheet={sheet.id} row={row} />
      <RowPictures sheet={sheet} row={row} />
      <Fields sheet={sheet} row={row} arrives />
      {sheet.entered && !sheet.oneRow ? (
        <div class="phone-acts">
          <button type="button" onClick={() => duplicateRow(sheet.id, row.id)}>
            Duplicate
          </button>
          <button
            type="button"
            onClick={() => {
              removeRows(sheet, [row.id]);
              const book = workbookNow();
              const gone = book !== undefined && rowWithId(book, sheet.id, row.id) === undefined;
              if (gone) visit({ at: 'sheet', sheet: sheet.id });
            }}
          >
            Remove
          </button>
        </div>
      ) : null}
    </article>
  );
}
