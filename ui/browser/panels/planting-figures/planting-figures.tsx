// A planting in hand: its spacing and pattern, right under them the six figures that matter, in sight while it is moved, the
// rest of the layout, the curves against spacing and, for bulbs, how the crop falls into sizes.

import type { TableView } from '../../../engine/index.ts';
import { workbook } from '../state.ts';
import { KeyFigures } from './key-figures.tsx';
import { useOutcome } from './outcome.ts';
import { PLANTINGS } from './planting.ts';
import { Sizes } from './sizes.tsx';
import { Layout, SpacingControl } from './spacing-control.tsx';
import { SpacingCurves } from './spacing-curves.tsx';
import { useStudy } from './study.ts';

export function PlantingPanel({ table, row }: { readonly table: TableView; readonly row: number }) {
  const study = useStudy(row);
  useOutcome(row);
  return (
    <>
      <SpacingControl table={table} row={row} study={study} />
      <section aria-label="Figures">
        <KeyFigures table={table} row={row} columns={figuresThatMatter(row)} />
      </section>
      <Layout table={table} row={row} />
      {study === undefined ? null : (
        <section aria-label="Against spacing">
          <SpacingCurves table={table} row={row} study={study} />
        </section>
      )}
      <Sizes table={table} row={row} />
    </>
  );
}

/** Six of them; the fifth is what has to be started, sown or bought. */
function figuresThatMatter(row: number): readonly string[] {
  const book = workbook();
  const start =
    book.value(PLANTINGS, row, 'Raised') === true
      ? 'Blocks to start'
      : book.value(PLANTINGS, row, 'From seed') === false
        ? 'Sets or plants to buy'
        : 'Seeds needed';
  return ['Stations', 'Plant density', 'Mean plant mass', 'Marketable yield', start, 'Margin'];
}
