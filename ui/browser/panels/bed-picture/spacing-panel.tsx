// The spacing of a planting: typed in any unit, slid, or taken a step closer or wider by a button; under it the pattern on
// its bed, whose handle does the same. Every move is a real change of the workbook.

import { cellView, fromCanonical, settings } from '../../../../engine/index.ts';
import { FormField } from '../../form/form-field.tsx';
import type { RowAt } from '../../store/selection.ts';
import { columnOf, unitOf } from '../../store/sheets.ts';
import { inWords, withUnit } from '../../store/shown.ts';
import { workbook } from '../../store/workbook.ts';
import { PLANTING, PLANTINGS } from '../columns.ts';
import type { PanelProps } from '../panel.ts';
import { figureAt, readBed } from '../read.ts';
import { holdSpacing, moveSpacing, restSpacing } from '../spacing/spacing-edit.ts';
import { type SpacingRange, snapped, stepped } from '../spacing/spacing-steps.ts';
import { type Study, useStudy } from '../spacing/study.ts';
import { BedPicture } from './bed-picture.tsx';

const { spacing: SPACING } = PLANTING;

export function SpacingPanel({ sheet, row }: PanelProps) {
  const study = useStudy(row);
  const column = columnOf(sheet, SPACING);
  if (column === undefined) return null;
  return (
    <section class="spacing" aria-label="Spacing">
      <FormField sheet={sheet.id} row={row} column={column} />
      {study?.range === undefined ? null : (
        <Slide row={row} range={study.range} name={column.name} unit={column.unit} />
      )}
      <Picture sheet={sheet} row={row} study={study} />
    </section>
  );
}

interface SlideProps {
  readonly row: RowAt;
  readonly range: SpacingRange;
  readonly name: string;
  readonly unit: string;
}

function Slide({ row, range, name, unit }: SlideProps) {
  const cell = cellView(workbook(), PLANTINGS, row.slot, SPACING);
  const now = cell.number ?? range.least;
  const step = withUnit(String(range.step), unit);
  return (
    <div class="slide">
      <button
        type="button"
        disabled={now <= range.least}
        aria-label={`${step} closer`}
        title={`${step} closer`}
        onClick={() => moveSpacing(row, stepped(now, -1, range))}
      >
        &minus;
      </button>
      <input
        type="range"
        aria-label={name}
        aria-valuetext={inWords(cell)}
        min={range.least}
        max={range.most}
        step={range.step}
        value={now}
        onPointerDown={holdSpacing}
        onPointerUp={restSpacing}
        onPointerCancel={restSpacing}
        onInput={({ currentTarget }) => moveSpacing(row, snapped(Number(currentTarget.value), range))}
      />
      <button
        type="button"
        disabled={now >= range.most}
        aria-label={`${step} wider`}
        title={`${step} wider`}
        onClick={() => moveSpacing(row, stepped(now, 1, range))}
      >
        +
      </button>
    </div>
  );
}

function Picture({ sheet, row, study }: PanelProps & { readonly study: Study | undefined }) {
  const book = workbook();
  const bed = readBed(book, row.slot);
  const unit = unitOf(columnOf(sheet, SPACING));
  if (bed === undefined || unit === undefined) {
    return <p class="no-picture">The picture waits for the bed's length and width, the rows and the spacing.</p>;
  }
  const words = (column: string): string => inWords(cellView(book, PLANTINGS, row.slot, column));
  const range = study?.range;
  return (
    <BedPicture
      bed={bed}
      usual={study?.usual}
      units={settings(book).units}
      words={{
        spacing: words(SPACING),
        length: words(PLANTING.lengthUsed),
        width: words(PLANTING.bedWidth),
      }}
      stations={figureAt(book, PLANTINGS, row.slot, PLANTING.stations)}
      onSpacing={
        range === undefined ? undefined : (metres) => moveSpacing(row, snapped(fromCanonical(unit, metres), range))
      }
      onHold={holdSpacing}
      onRest={restSpacing}
    />
  );
}
