// How a bulb crop falls into the size grades: the marketable mass of each, as bars of one length for one mass with their
// figures in words beside them. Draws nothing where the crop has no grades.

import type { TableView } from '../../../engine/index.ts';
import { workbook } from '../state.ts';
import { inWords } from './shown.ts';

const GROUP = 'Bulb sizes';
const MASS = 'Mass ';

export function Sizes({ table, row }: { readonly table: TableView; readonly row: number }) {
  const book = workbook();
  const grades = table.columns
    .filter(({ group, name }) => group === GROUP && name.startsWith(MASS))
    .map((column) => {
      const cell = book.cell(table.name, row, column.name);
      return { name: column.name.slice(MASS.length), mass: cell.number, text: inWords(cell, column) };
    })
    .filter(({ mass }) => mass !== undefined);
  const most = Math.max(0, ...grades.map(({ mass }) => mass ?? 0));
  const diameter = table.columns.find(({ name }) => name === 'Mean diameter');
  if (most === 0) return null;
  return (
    <section class="sizes" aria-label="Sizes">
      <h3>Sizes</h3>
      <ul>
        {grades.map(({ name, mass, text }) => (
          <li key={name}>
            <span class="size-name">{name}</span>
            <svg class="size-bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
              <rect x="0" y="0" width={((mass ?? 0) / most) * 100} height="10" />
            </svg>
            <span class="size-mass">{text}</span>
          </li>
        ))}
      </ul>
      {diameter === undefined ? null : (
        <p class="picture-says">Mean diameter {inWords(book.cell(table.name, row, diameter.name), diameter)}.</p>
      )}
    </section>
  );
}
