// The panel beside the grid for the row in hand: a planting with its bed and curves, a variety with the days of its year, a
// bed with what stands on it, a seed lot with how it ages, any other row with its fields. The page mounts it in its right
// column and in the drawer; the phone's cards use the same pictures.

import { useRef } from 'preact/hooks';
import type { TableView } from '../../../engine/index.ts';
import { selection, workbook } from '../state.ts';
import { BedSeason } from './bed-season.tsx';
import { DayLengthYear } from './day-length-year.tsx';
import { Fields } from './fields.tsx';
import { Findings } from './findings.tsx';
import { KeyFigures } from './key-figures.tsx';
import { isPlantings } from './planting.ts';
import { PlantingPanel } from './planting-panel.tsx';
import './row-panel.css';
import { SeedAgeing } from './seed-ageing.tsx';

export function RowPanel() {
  const { table: name, row } = selection.value;
  const book = workbook();
  const table = book.table(name);
  const inHand = table?.oneRow ? book.rows(name)[0] : row;
  if (table === undefined || inHand === undefined || !book.rows(name).includes(inHand)) {
    return <p class="row-panel nothing-in-hand">Put a row in hand to see it here.</p>;
  }
  return (
    <div class="row-panel">
      <header>
        <p class="panel-sheet">{table.oneRow ? table.question : table.name}</p>
        <h2>{table.oneRow ? table.name : book.rowName(name, inHand)}</h2>
      </header>
      <CellInHand key={`cell ${name} ${inHand}`} table={table} row={inHand} />
      <Findings table={name} row={inHand} />
      <RowPictures key={`${name} ${inHand}`} table={table} row={inHand} />
      {isPlantings(table) || table.oneRow ? null : (
        <Fields key={`fields ${name} ${inHand}`} table={table} row={inHand} />
      )}
    </div>
  );
}

/**
 * The cell in hand with its reasons; a planting's own figures stand below, so there they are folded. A field of the panel
 * that takes the focus leaves it as it is: nothing may move under the finger that presses it.
 */
function CellInHand({ table, row }: { readonly table: TableView; readonly row: number }) {
  const shown = useRef<string | undefined>(undefined);
  const { column } = selection.value;
  if (!panelHasFocus()) shown.current = column;
  const name = shown.current;
  if (name === undefined || name === table.key) return null;
  return (
    <section aria-label="The cell in hand">
      <KeyFigures key={name} table={table} row={row} columns={[name]} opened={!isPlantings(table)} />
    </section>
  );
}

function panelHasFocus(): boolean {
  return (document.activeElement?.closest('.row-panel') ?? null) !== null;
}

/** The pictures of a row; nothing for sheets that have none. */
export function RowPictures({ table, row }: { readonly table: TableView; readonly row: number }) {
  if (isPlantings(table)) return <PlantingPanel table={table} row={row} />;
  switch (table.name) {
    case 'Varieties':
      return <DayLengthYear row={row} />;
    case 'Beds':
      return <BedSeason row={row} />;
    case 'Seed lots':
      return <SeedAgeing table={table} row={row} />;
    default:
      return null;
  }
}
