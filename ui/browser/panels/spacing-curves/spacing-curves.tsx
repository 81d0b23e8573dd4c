// Yield of the bed and mean size of a plant against spacing, as curves with today's point on each, a sentence under each
// and the same figures as a table. Where the crop has no figures for crowding, it says what is missing.

import { useMemo } from 'preact/hooks';
import { cellView, type SheetView, settings, whyNone } from '../../../../engine/index.ts';
import { type Axis, Chart, type Field, type TableTwin } from '../../drawing/chart.tsx';
import { linePath, roundMarks, roundTop } from '../../drawing/scale.ts';
import { columnOf } from '../../store/sheets.ts';
import { plainFigure } from '../../store/shown.ts';
import { workbook } from '../../store/workbook.ts';
import { PLANTING, PLANTINGS } from '../columns.ts';
import type { PanelProps } from '../panel.ts';
import {
  brief,
  CURVES_WITH_MONEY,
  type CurvePoint,
  curveReadings,
  curveSentence,
  hasFigures,
  series,
} from '../spacing/curve.ts';
import { type Study, useStudy } from '../spacing/study.ts';

const { spacing: SPACING, mass: MASS, yield: YIELD } = PLANTING;

const DRAWN = [
  { column: YIELD, title: 'Marketable yield of this bed against spacing' },
  { column: MASS, title: 'Mean plant mass against spacing' },
];

export function SpacingCurves({ sheet, row }: PanelProps) {
  const study = useStudy(row);
  if (study === undefined) return null;
  return (
    <section aria-label="Against spacing">
      {study.range === undefined || !hasFigures(study.points, MASS) ? (
        <p class="no-curve">{whyNoCurve(row.slot)}</p>
      ) : (
        <div class="curves">
          {DRAWN.filter(({ column }) => hasFigures(study.points, column)).map(({ column, title }) => (
            <Curve key={column} {...{ sheet, row, study, column, title }} />
          ))}
        </div>
      )}
    </section>
  );
}

function whyNoCurve(slot: number): string {
  const why = whyNone(workbook(), PLANTINGS, slot, MASS);
  return `No curve of yield against spacing. ${why === '' ? 'Enter a spacing first.' : why}`;
}

interface CurveProps extends PanelProps {
  readonly study: Study;
  readonly column: string;
  readonly title: string;
}

function Curve({ sheet, row, study, column, title }: CurveProps) {
  const { points } = study;
  const unit = columnOf(sheet, column)?.unit ?? '';
  const { writing } = settings(workbook());
  const spacing = columnOf(sheet, SPACING);
  const spacingUnit = spacing?.unit ?? '';
  const today = cellView(workbook(), PLANTINGS, row.slot, SPACING).number;
  const line = series(points, column);
  const first = points[0]?.spacing ?? 0;
  const last = points.at(-1)?.spacing ?? 1;
  const figure = cellView(workbook(), PLANTINGS, row.slot, column).number;
  const top = roundTop([...line.map((point) => point.figure), figure ?? 0]);
  const x: Axis = {
    label: `${(spacing?.name ?? '').toLowerCase()}, ${spacingUnit}`,
    from: first,
    to: last,
    marks: roundMarks(first, last, 6).map((mark) => ({ figure: mark, text: plainFigure(mark, 3, writing) })),
  };
  const y: Axis = {
    label: unit,
    from: 0,
    to: top,
    marks: roundMarks(0, top, 4).map((mark) => ({ figure: mark, text: plainFigure(mark, 3, writing) })),
  };
  const inUnits = { spacing: spacingUnit, figure: unit, writing };
  // While a spacing is dragged the curve stays as it is, and only the point on it moves.
  const readings = useMemo(() => curveReadings(points, column, inUnits), [points, column, spacingUnit, unit, writing]);
  const says = today === undefined ? '' : curveSentence(points, today, column, inUnits);
  return (
    <Chart
      title={title}
      says={says}
      x={x}
      y={y}
      table={tableOf(sheet, points, today)}
      readings={readings}
      draw={(field) => (
        <>
          <path
            class="curve"
            d={linePath(line.map((point) => ({ x: field.x.at(point.spacing), y: field.y.at(point.figure) })))}
          />
          {today === undefined || figure === undefined ? null : (
            <Today
              field={field}
              at={today}
              figure={figure}
              text={`${brief(figure, writing)} ${unit}`}
              rises={(line.at(-1)?.figure ?? 0) > (line[0]?.figure ?? 0)}
            />
          )}
        </>
      )}
    />
  );
}

interface TodayProps {
  readonly field: Field;
  readonly at: number;
  readonly figure: number;
  readonly text: string;
  readonly rises: boolean;
}

/** About the width of a letter at 13 px. */
const LETTER = 7.4;

/** The words stand above the point on the side away from the curve; at the left end under it, where there is no room. */
function Today({ field, at, figure, text, rises }: TodayProps) {
  const x = field.x.at(at);
  const y = field.y.at(figure);
  const wide = text.length * LETTER + 10;
  const leftOf = rises ? x - wide > field.left : x + wide > field.right;
  const under = rises && !leftOf;
  return (
    <g>
      <line class="today-rule" x1={x} x2={x} y1={y} y2={field.bottom} />
      <circle class="today-point" cx={x} cy={y} r={6} />
      <text
        class="today-text"
        x={leftOf ? x - 10 : x + 10}
        y={under ? y + 18 : y - 8}
        text-anchor={leftOf ? 'end' : 'start'}
      >
        {text}
      </text>
    </g>
  );
}

/** At most about so many rows in the table; today's is always one. */
const ROWS = 24;

function tableOf(sheet: SheetView, points: readonly CurvePoint[], today: number | undefined): TableTwin {
  const { writing } = settings(workbook());
  const columns = CURVES_WITH_MONEY.filter((id) => hasFigures(points, id));
  const every = Math.max(1, Math.ceil(points.length / ROWS));
  const head = (id: string): string => {
    const { name = '', unit = '' } = columnOf(sheet, id) ?? {};
    return unit === '' ? name : `${name}, ${unit}`;
  };
  return {
    head: [SPACING, ...columns].map(head),
    rows: points
      .filter(({ spacing }, index) => index % every === 0 || spacing === today)
      .map(({ spacing, figures }) => [
        plainFigure(spacing, 3, writing),
        ...columns.map((id) => {
          const figure = figures.get(id);
          return figure === undefined ? '' : brief(figure, writing);
        }),
      ]),
  };
}
