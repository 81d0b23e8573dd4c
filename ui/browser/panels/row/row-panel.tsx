// The panel beside the grid for the row in hand: what was found in it, its pictures, and its fields. The page mounts it in its
// right column and in the drawer; the phone's cards use the same pictures.

import { useRef } from 'preact/hooks';
import { rowName } from '../../../../engine/index.ts';
import { rowInHand, selection } from '../../store/selection.ts';
import { workbook } from '../../store/workbook.ts';
import { PANELS } from '../list.ts';
import { hasNeeds, type Panel, type PanelProps } from '../panel.ts';
import { Fields } from './fields.tsx';
import { RowFindings } from './findings.tsx';
import { KeyFigures } from './key-figures.tsx';

export function RowPanel() {
  const inHand = rowInHand();
  if (inHand === undefined) return <p class="row-panel nothing-in-hand">Put a row in hand to see it here.</p>;
  const { sheet, row } = inHand;
  const book = workbook();
  const key = `${sheet.id} ${row.id}`;
  const listed = !sheet.oneRow && !standInForFields(panelsOf(sheet.id));
  return (
    <div class="row-panel">
      <header>
        <p class="panel-sheet">{sheet.oneRow ? sheet.question : sheet.name}</p>
        <h2>{sheet.oneRow ? sheet.name : rowName(book, sheet.id, row.slot)}</h2>
      </header>
      <CellInHand key={`cell ${key}`} sheet={sheet} row={row} />
      <RowFindings sheet={sheet.id} row={row} />
      <RowPictures key={key} sheet={sheet} row={row} />
      {listed ? <Fields key={`fields ${key}`} sheet={sheet} row={row} /> : null}
    </div>
  );
}

/** The pictures of a sheet's rows, those that the workbook has the columns for. */
function panelsOf(sheet: string): readonly Panel[] {
  const book = workbook();
  return PANELS.filter((panel) => panel.of === sheet && hasNeeds(book, panel));
}

function standInForFields(panels: readonly Panel[]): boolean {
  return panels.some(({ inPlaceOfFields }) => inPlaceOfFields === true);
}

/**
 * The cell in hand with its reasons; where a row's own figures stand below, they are folded. A field of the panel that takes
 * the focus leaves it as it is: nothing may move under the finger that presses it.
 */
function CellInHand({ sheet, row }: PanelProps) {
  const shown = useRef<string | undefined>(undefined);
  const { column } = selection.value;
  if (!panelHasFocus()) shown.current = column;
  const id = shown.current;
  if (id === undefined || id === sheet.key) return null;
  return (
    <section aria-label="The cell in hand">
      <KeyFigures key={id} sheet={sheet} row={row} columns={[id]} opened={!standInForFields(panelsOf(sheet.id))} />
    </section>
  );
}

function panelHasFocus(): boolean {
  return (document.activeElement?.closest('.row-panel') ?? null) !== null;
}

/** The pictures of a row; nothing for sheets that have none. */
export function RowPictures({ sheet, row }: PanelProps) {
  return (
    <>
      {panelsOf(sheet.id).map(({ name, Show }) => (
        <Show key={name} sheet={sheet} row={row} />
      ))}
    </>
  );
}
