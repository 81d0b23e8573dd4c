// Columns through the year, stacked, with the line of what limits them; what goes past the limit is hatched. Draws any ColumnsModel.

import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import { Reader } from '../../drawing/reader.tsx';
import { linearScale, monthsBetween } from '../../drawing/scale.ts';
import { namedMonths } from '../../drawing/text-width.ts';
import { Frame, Hatches } from './frame.tsx';
import { type Column, type ColumnsModel, figureMarks, legendOf, topOf, totalOf } from './model.ts';

const TOP = 22;
const BOTTOM = 22;
const RIGHT = 8;
const DIGIT = 7.4;

export interface ColumnsProps {
  readonly model: ColumnsModel;
  readonly height?: number;
  readonly choices?: ComponentChildren;
}

export function ColumnsPicture({ model, height = 190, choices }: ColumnsProps) {
  const id = useId();
  const { title, unit, says, table } = model;
  return (
    <Frame
      title={unit === '' ? title : `${title}, ${unit}`}
      says={says}
      table={table}
      legend={legendOf(model)}
      choices={choices}
      draw={(width) => <Drawing model={model} width={width} height={height} id={id} />}
    />
  );
}

interface DrawingProps {
  readonly model: ColumnsModel;
  readonly width: number;
  readonly height: number;
  readonly id: string;
}

function Drawing({ model, width, height, id }: DrawingProps) {
  const { title, says, readings, from, to, today, columns, parts, limitIs, writing } = model;
  const top = topOf(model);
  const marks = figureMarks(0, top, 4, writing);
  const left = 10 + DIGIT * Math.max(1, ...marks.map(({ text }) => text.length));
  const right = width - RIGHT;
  const x = linearScale(from, to, left, right);
  const y = linearScale(0, top, height - BOTTOM, TOP);
  return (
    <Reader
      title={title}
      says={says}
      readings={readings}
      width={width}
      height={height}
      x={x}
      top={TOP}
      bottom={height - BOTTOM}
    >
      <Hatches id={id} />
      {marks.map(({ figure, text }) => (
        <g key={figure}>
          <line class="axis-rule" x1={left} x2={right} y1={y.at(figure)} y2={y.at(figure)} />
          <text x={left - 6} y={y.at(figure) + 4} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      {columns.map((column) => (
        <g key={column.from}>
          {stack(column).map(({ index, low, high }) =>
            high > low ? (
              <rect
                key={index}
                class={parts[index]?.mark}
                x={x.at(Math.max(column.from, from)) + 0.5}
                y={y.at(Math.min(high, top))}
                width={Math.max(1, x.at(Math.min(column.until, to)) - x.at(Math.max(column.from, from)) - 1)}
                height={Math.max(0, y.at(low) - y.at(Math.min(high, top)))}
              />
            ) : null,
          )}
          {limitIs === 'room' && column.limit !== undefined && totalOf(column) > column.limit ? (
            <rect
              class="overfull"
              fill={`url(#${id}-over)`}
              x={x.at(Math.max(column.from, from)) + 0.5}
              y={y.at(totalOf(column))}
              width={Math.max(1, x.at(Math.min(column.until, to)) - x.at(Math.max(column.from, from)) - 1)}
              height={y.at(column.limit) - y.at(totalOf(column))}
            />
          ) : null}
        </g>
      ))}
      <path class="mark-limit" d={limitPath(columns, top, x.at, y.at, from, to)} />
      <line class="axis-line" x1={left} x2={right} y1={height - BOTTOM} y2={height - BOTTOM} />
      {monthsBetween(from, to).map(({ day }) => (
        <line key={day} class="axis-line" x1={x.at(day)} x2={x.at(day)} y1={height - BOTTOM} y2={height - BOTTOM + 4} />
      ))}
      {namedMonths(from, to, x, writing).map(({ day, name }) => (
        <text key={day} x={x.at(day) + 3} y={height - 6}>
          {name}
        </text>
      ))}
      {today !== undefined && today >= from && today <= to ? (
        <line class="now-rule" x1={x.at(today)} x2={x.at(today)} y1={TOP - 8} y2={height - BOTTOM} />
      ) : null}
    </Reader>
  );
}

function stack({ parts }: Column): readonly { readonly index: number; readonly low: number; readonly high: number }[] {
  let low = 0;
  return parts.map((part, index) => {
    const piece = { index, low, high: low + part };
    low += part;
    return piece;
  });
}

/** The limit as steps; broken where it isn't known, left out where it is above the picture. */
function limitPath(
  columns: readonly Column[],
  top: number,
  x: (figure: number) => number,
  y: (figure: number) => number,
  first: number,
  last: number,
): string {
  let path = '';
  let open = false;
  for (const { from, until, limit } of columns) {
    if (limit === undefined || limit > top) {
      open = false;
      continue;
    }
    const [start, end] = [x(Math.max(from, first)), x(Math.min(until, last))];
    path += `${open ? 'L' : 'M'}${start.toFixed(1)} ${y(limit).toFixed(1)}L${end.toFixed(1)} ${y(limit).toFixed(1)}`;
    open = true;
  }
  return path;
}
