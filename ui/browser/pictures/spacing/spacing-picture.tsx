// Yield, sizes and money against spacing in the page: a planting is chosen; its curves, its grades and its money are drawn.

import { useState } from 'preact/hooks';
import { type Book, cellView, rowId, rowName, rows, settings, sheetView, whyNone } from '../../../../engine/index.ts';
import { PLANTING, PLANTINGS } from '../../panels/columns.ts';
import { figureAt } from '../../panels/read.ts';
import { Sizes } from '../../panels/sizes/sizes.tsx';
import { type CurvePoint, series } from '../../panels/spacing/curve.ts';
import { useStudy } from '../../panels/spacing/study.ts';
import { SpacingCurves } from '../../panels/spacing-curves/spacing-curves.tsx';
import { type RowAt, rowAt } from '../../store/selection.ts';
import { columnOf } from '../../store/sheets.ts';
import { workbook } from '../../store/workbook.ts';
import { Choice } from '../kit/choice.tsx';
import { LinesPicture } from '../kit/lines-picture.tsx';
import { moneyAgainstSpacing } from './money.ts';

export function SpacingPicture() {
  const book = workbook();
  const plantings = spacedPlantings(book);
  const [chosen, choose] = useState('');
  const id = plantings.find((each) => each.id === chosen)?.id ?? plantings[0]?.id;
  const sheet = sheetView(book, PLANTINGS);
  const row = rowAt(book, PLANTINGS, id);
  if (row === undefined || sheet === undefined) {
    return <p class="no-picture">No planting has a spacing and a yield yet.</p>;
  }
  return (
    <div class="picture-stack">
      <Choice
        label="Planting"
        value={row.id}
        options={plantings.map((each) => ({ value: each.id, words: each.name }))}
        onChoose={choose}
      />
      <SpacingCurves key={`curves ${row.id}`} sheet={sheet} row={row} />
      <Money key={`money ${row.id}`} row={row} />
      <Sizes sheet={sheet} row={row} />
    </div>
  );
}

function spacedPlantings(book: Book): readonly { readonly id: string; readonly name: string }[] {
  return Array.from(rows(book, PLANTINGS)).flatMap((slot) => {
    const has = (column: string): boolean => figureAt(book, PLANTINGS, slot, column) !== undefined;
    return has(PLANTING.spacing) && has(PLANTING.mass)
      ? [{ id: rowId(book, PLANTINGS, slot), name: rowName(book, PLANTINGS, slot) }]
      : [];
  });
}

/** In the column's unit. */
function figureNow({ slot }: RowAt, column: string): number | undefined {
  return cellView(workbook(), PLANTINGS, slot, column).number;
}

function Money({ row }: { readonly row: RowAt }) {
  const study = useStudy(row, true);
  const book = workbook();
  const sheet = sheetView(book, PLANTINGS);
  const margin = columnOf(sheet, PLANTING.margin);
  const spacing = columnOf(sheet, PLANTING.spacing);
  const points: readonly CurvePoint[] = study?.row === row.id ? study.points : [];
  const today = { x: figureNow(row, PLANTING.spacing), y: figureNow(row, PLANTING.margin) };
  const model = moneyAgainstSpacing({
    points: series(points, PLANTING.margin).map(({ spacing: x, figure: y }) => ({ x, y })),
    today: today.x === undefined || today.y === undefined ? undefined : { x: today.x, y: today.y },
    spacingUnit: spacing?.unit ?? '',
    money: margin?.unit ?? '',
    writing: settings(book).writing,
  });
  if (model !== undefined) return <LinesPicture model={model} height={190} />;
  if (margin === undefined || study === undefined) return null;
  const why = whyNone(book, PLANTINGS, row.slot, PLANTING.margin);
  return (
    <p class="no-curve">
      {`No curve of money against spacing. ${why === '' ? 'Enter a price for this planting first.' : why}`}
    </p>
  );
}
