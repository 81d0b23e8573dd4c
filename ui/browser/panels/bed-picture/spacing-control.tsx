// The spacing of a planting: typed in any unit, slid, or taken a step closer or wider by a button; under it the pattern on
// its bed, whose handle does the same. Every move is a real edit of the workbook.

import { fromCanonical, type TableView } from '../../../engine/index.ts';
import { FormField } from '../form/form-field.tsx';
import { readOnly, workbook } from '../state.ts';
import { BedNotes, BedPicture } from './bed-picture.tsx';
import { columnOf, figure, PLANTINGS, readBed, SPACING, unitOf } from './planting.ts';
import { inWords, withUnit } from './shown.ts';
import { holdSpacing, moveSpacing, restSpacing } from './spacing-edit.ts';
import { type SpacingRange, snapped, stepped } from './spacing-steps.ts';
import type { Study } from './study.ts';

export interface SpacingWishes {
  readonly table: TableView;
  readonly row: number;
  readonly study: Study | undefined;
}

export function SpacingControl({ table, row, study }: SpacingWishes) {
  const column = columnOf(table, SPACING);
  if (column === undefined) return null;
  return (
    <section class="spacing" aria-label="Spacing">
      <FormField table={PLANTINGS} row={row} column={column} />
      {study?.range === undefined ? null : <Slide row={row} range={study.range} unit={column.unit} />}
      <Picture table={table} row={row} study={study} />
    </section>
  );
}

/** What else lays the bed out. */
const LAYOUT = ['Rows', 'Pattern', 'Seeds per station', 'Bed length used'];

export function Layout({ table, row }: { readonly table: TableView; readonly row: number }) {
  const bed = readBed(workbook(), row);
  const column = columnOf(table, SPACING);
  return (
    <section class="layout-fields" aria-label="Layout">
      {LAYOUT.flatMap((name) => columnOf(table, name) ?? []).map((each) => (
        <FormField key={each.name} table={PLANTINGS} row={row} column={each} />
      ))}
      {bed === undefined || column === undefined ? null : (
        <BedNotes bed={bed} spacing={inWords(workbook().cell(PLANTINGS, row, SPACING), column)} />
      )}
    </section>
  );
}

function Slide({ row, range, unit }: { readonly row: number; readonly range: SpacingRange; readonly unit: string }) {
  const cell = workbook().cell(PLANTINGS, row, SPACING);
  const now = cell.number ?? range.least;
  const locked = readOnly.value !== undefined;
  const step = withUnit(String(range.step), unit);
  return (
    <div class="slide">
      <button
        type="button"
        disabled={locked || now <= range.least}
        aria-label={`${step} closer`}
        title={`${step} closer`}
        onClick={() => moveSpacing(row, stepped(now, -1, range))}
      >
        &minus;
      </button>
      <input
        type="range"
        aria-label={SPACING}
        aria-valuetext={withUnit(cell.text, unit)}
        min={range.least}
        max={range.most}
        step={range.step}
        value={now}
        disabled={locked}
        onPointerDown={holdSpacing}
        onPointerUp={restSpacing}
        onPointerCancel={restSpacing}
        onInput={({ currentTarget }) => moveSpacing(row, snapped(Number(currentTarget.value), range))}
      />
      <button
        type="button"
        disabled={locked || now >= range.most}
        aria-label={`${step} wider`}
        title={`${step} wider`}
        onClick={() => moveSpacing(row, stepped(now, 1, range))}
      >
        +
      </button>
    </div>
  );
}

function Picture({ table, row, study }: SpacingWishes) {
  const book = workbook();
  const bed = readBed(book, row);
  const unit = unitOf(columnOf(table, SPACING));
  if (bed === undefined || unit === undefined) {
    return <p class="no-picture">The picture waits for the bed's length and width, the rows and the spacing.</p>;
  }
  const words = (name: string): string => {
    const column = columnOf(table, name);
    return column === undefined ? '' : inWords(book.cell(PLANTINGS, row, name), column);
  };
  const range = study?.range;
  const free = readOnly.value === undefined && range !== undefined;
  return (
    <BedPicture
      bed={bed}
      usual={study?.usual}
      units={book.units}
      words={{ spacing: words(SPACING), length: words('Bed length used'), width: words('Bed width') }}
      stations={figure(book, PLANTINGS, row, 'Stations')}
      onSpacing={free ? (metres) => moveSpacing(row, snapped(fromCanonical(unit, metres), range)) : undefined}
      onHold={holdSpacing}
      onRest={restSpacing}
    />
  );
}
