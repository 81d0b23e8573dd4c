// The six figures of a planting that matter, in sight while its spacing is moved: the fifth is what has to be started, sown or
// bought.

import { type Book, cellValue } from '../../../../engine/index.ts';
import { workbook } from '../../store/workbook.ts';
import { PLANTING, PLANTINGS } from '../columns.ts';
import type { PanelProps } from '../panel.ts';
import { KeyFigures } from '../row/key-figures.tsx';
import { useOutcome } from '../spacing/outcome.ts';

export function PlantingFigures({ sheet, row }: PanelProps) {
  useOutcome(row);
  return (
    <section aria-label="Figures">
      <KeyFigures sheet={sheet} row={row} columns={figuresThatMatter(workbook(), row.slot)} late={LATE} />
    </section>
  );
}

/** Money asks what every week sells and every hour costs. */
const LATE = [PLANTING.margin];

function figuresThatMatter(book: Book, slot: number): readonly string[] {
  const is = (column: string, answer: boolean): boolean => cellValue(book, PLANTINGS, slot, column) === answer;
  const { stations, density, mass, yield: marketable, blocks, sets, seeds, margin } = PLANTING;
  const start = is(PLANTING.raised, true) ? blocks : is(PLANTING.fromSeed, false) ? sets : seeds;
  return [stations, density, mass, marketable, start, margin];
}
