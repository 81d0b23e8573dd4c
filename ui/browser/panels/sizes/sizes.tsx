// How a bulb crop falls into the size grades: the marketable mass of each, as bars of one length for one mass with their
// figures in words beside them. Draws nothing where the crop has no grades.

import { cellView } from '../../../../engine/index.ts';
import { columnOf } from '../../store/sheets.ts';
import { inWords } from '../../store/shown.ts';
import { workbook } from '../../store/workbook.ts';
import { PLANTING } from '../columns.ts';
import type { PanelProps } from '../panel.ts';

const MASSES = [PLANTING.small, PLANTING.medium, PLANTING.large, PLANTING.extraLarge];

export function Sizes({ sheet, row: { slot } }: PanelProps) {
  const book = workbook();
  const grades = MASSES.flatMap((id) => columnOf(sheet, id) ?? [])
    .map(({ id, name }) => ({ id, name, cell: cellView(book, sheet.id, slot, id) }))
    .filter(({ cell }) => cell.number !== undefined);
  const most = Math.max(0, ...grades.map(({ cell }) => cell.number ?? 0));
  const diameter = columnOf(sheet, PLANTING.diameter);
  if (most === 0) return null;
  return (
    <section class="sizes" aria-label="Sizes">
      <h3>Sizes</h3>
      <ul>
        {grades.map(({ id, name, cell }) => (
          <li key={id}>
            <span class="size-name">{name}</span>
            <svg class="size-bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
              <rect x="0" y="0" width={((cell.number ?? 0) / most) * 100} height="10" />
            </svg>
            <span class="size-mass">{inWords(cell)}</span>
          </li>
        ))}
      </ul>
      {diameter === undefined ? null : (
        <p class="picture-says">
          {diameter.name} {inWords(cellView(book, sheet.id, slot, diameter.id))}.
        </p>
      )}
    </section>
  );
}
