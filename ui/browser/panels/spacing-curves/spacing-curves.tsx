// Yield of the bed and mean size of a plant against spacing, as curves with today's point on each, a sentence under each
// and the same figures as a table. Where the crop has no figures for crowding, it says what is missing.

import type { TableView } from '../../../engine/index.ts';
import { type Axis, Chart, type Field, type TableTwin } from '../drawing/chart.tsx';
import { linePath, roundMarks, roundTop } from '../drawing/scale.ts';
import { workbook } from '../state.ts';
import { brief, CURVES, type CurvePoint, curveSentence, hasFigures, series } from './curve.ts';
import { columnOf, PLANTINGS, SPACING } from './planting.ts';
import { plainFigure } from './shown.ts';
import type { Study } from './study.ts';

export interface CurvesWishes {
  readonly table: TableView;
  readonly row: number;
  readonly study: Study;
}

const DRAWN = [
  { column: 'Marketable yield', title: 'Marketable yield of this bed against spacing' },
  { column: 'Mean plant mass', title: 'Mean plant mass against spacing' },
];

export function SpacingCurves({ table, row, study }: CurvesWishes) {
  const today = workbook().cell(PLANTINGS, row, SPACING).number;
  if (study.range === undefined || !hasFigures(study.points, 'Mean plant mass')) {
    return <p class="no-curve">{whyNoCurve(row)}</p>;
  }
  return (
    <div class="curves">
      {DRAWN.filter(({ column }) => hasFigures(study.points, column)).map(({ column, title }) => (
        <Curve key={column} {...{ table, row, study, column, title, today }} />
      ))}
    </div>
  );
}

function whyNoCurve(row: number): string {
  const { why } = workbook().explain(PLANTINGS, row, 'Mean plant mass');
  return `No curve of yield against spacing. ${why === '' ? 'Enter a spacing first.' : why}`;
}

interface CurveWishes extends CurvesWishes {
  readonly column: string;
  readonly title: string;
  readonly today: number | undefined;
}

function Curve({ table, row, study, column, title, today }: CurveWishes) {
  const { points } = study;
  const unit = columnOf(table, column)?.unit ?? '';
  const spacingUnit = columnOf(table, SPACING)?.unit ?? '';
  const line = series(points, column);
  const first = points[0]?.spacing ?? 0;
  const last = points.at(-1)?.spacing ?? 1;
  const figure = workbook().cell(PLANTINGS, row, column).number;
  const top = roundTop([...line.map((point) => point.figure), figure ?? 0]);
  const x: Axis = {
    label: `${SPACING.toLowerCase()}, ${spacingUnit}`,
    from: first,
    to: last,
    marks: roundMarks(first, last, 6).map((mark) => ({ figure: mark, text: plainFigure(mark, 3) })),
  };
  const y: Axis = {
    label: unit,
    from: 0,
    to: top,
    marks: roundMarks(0, top, 4).map((mark) => ({ figure: mark, text: plainFigure(mark, 3) })),
  };
  const says = today === undefined ? '' : curveSentence(points, today, column, { spacing: spacingUnit, figure: unit });
  return (
    <Chart
      title={title}
      says={says}
      x={x}
      y={y}
      table={tableOf(table, points, today)}
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
              text={`${brief(figure)} ${unit}`}
              rises={(line.at(-1)?.figure ?? 0) > (line[0]?.figure ?? 0)}
            />
          )}
        </>
      )}
    />
  );
}

interface TodayWishes {
  readonly field: Field;
  readonly at: number;
  readonly figure: number;
  readonly text: string;
  readonly rises: boolean;
}

/** About the width of a letter at 13 px. */
const LETTER = 7.4;

/** The words stand above the point on the side away from the curve; at the left end under it, where there is no room. */
function Today({ field, at, figure, text, rises }: TodayWishes) {
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

function tableOf(table: TableView, points: readonly CurvePoint[], today: number | undefined): TableTwin {
  const columns = CURVES.filter((name) => hasFigures(points, name));
  const every = Math.max(1, Math.ceil(points.length / ROWS));
  const head = (name: string): string => {
    const unit = columnOf(table, name)?.unit ?? '';
    return unit === '' ? name : `${name}, ${unit}`;
  };
  return {
    head: [SPACING, ...columns].map(head),
    rows: points
      .filter(({ spacing }, index) => index % every === 0 || spacing === today)
      .map(({ spacing, figures }) => [
        plainFigure(spacing, 3),
        ...columns.map((name) => {
          const figure = figures.get(name);
          return figure === undefined ? '' : brief(figure);
        }),
      ]),
  };
}
