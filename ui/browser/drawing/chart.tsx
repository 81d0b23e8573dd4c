// A chart in the page: axes with their units, whatever is drawn between them, a sentence that says what it shows, and the
// same figures as a table. Row panels and the phone's cards call it; it knows nothing of what the figures are.

import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import './drawing.css';
import { Reader, type Reading } from './reader.tsx';
import { linearScale, type Scale } from './scale.ts';
import { useWidth } from './width.ts';

export interface Mark {
  readonly figure: number;
  readonly text: string;
}

export interface Axis {
  /** With its unit: 'in-row spacing, in'. */
  readonly label: string;
  readonly from: number;
  readonly to: number;
  readonly marks: readonly Mark[];
}

/** The space between the axes, in pixels. */
export interface Field {
  readonly x: Scale;
  readonly y: Scale;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface ChartProps {
  readonly title: string;
  /** What the picture shows, in a sentence or two. */
  readonly says: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly height?: number;
  readonly table: TableTwin;
  /** Places along the picture and what stands there, for keys and a pointer; left out where the table says it better. */
  readonly readings?: readonly Reading[];
  /** Draws between the axes. */
  readonly draw: (field: Field) => ComponentChildren;
}

export interface TableTwin {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const TOP = 26;
const BOTTOM = 40;
const RIGHT = 12;
/** About the width of a figure at 13 px. */
const DIGIT = 7.4;

export function Chart({ title, says, x, y, height = 190, table, readings = [], draw }: ChartProps) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const left = 12 + DIGIT * Math.max(1, ...y.marks.map((mark) => mark.text.length));
  const field: Field = {
    x: linearScale(x.from, x.to, left, Math.max(left + 1, width - RIGHT)),
    y: linearScale(y.from, y.to, height - BOTTOM, TOP),
    left,
    right: width - RIGHT,
    top: TOP,
    bottom: height - BOTTOM,
  };
  return (
    <figure class="chart">
      <figcaption>{title}</figcaption>
      <div class="chart-picture" ref={ref}>
        {width > 0 ? (
          <Reader
            title={title}
            says={says}
            readings={readings}
            width={width}
            height={height}
            x={field.x}
            top={TOP}
            bottom={field.bottom}
          >
            <Axes x={x} y={y} field={field} />
            {draw(field)}
          </Reader>
        ) : null}
      </div>
      <p class="chart-says">{says}</p>
      <TableOf title={title} table={table} />
    </figure>
  );
}

function Axes({ x, y, field }: { readonly x: Axis; readonly y: Axis; readonly field: Field }) {
  return (
    <g class="axes">
      <text x={0} y={13}>
        {y.label}
      </text>
      {y.marks.map(({ figure, text }) => (
        <g key={figure}>
          <line class="axis-rule" x1={field.left} x2={field.right} y1={field.y.at(figure)} y2={field.y.at(figure)} />
          <text x={field.left - 6} y={field.y.at(figure) + 4} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      <line class="axis-line" x1={field.left} x2={field.right} y1={field.bottom} y2={field.bottom} />
      {x.marks.map(({ figure, text }) => (
        <g key={figure}>
          <line
            class="axis-line"
            x1={field.x.at(figure)}
            x2={field.x.at(figure)}
            y1={field.bottom}
            y2={field.bottom + 4}
          />
          <text x={field.x.at(figure)} y={field.bottom + 17} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      <text x={field.right} y={field.bottom + 34} text-anchor="end">
        {x.label}
      </text>
    </g>
  );
}

/** The figures of a picture as a table, folded away until asked for, and made only then. */
export function TableOf({ title, table }: { readonly title: string; readonly table: TableTwin }) {
  const open = useSignal(false);
  return (
    <details
      class="table-twin"
      onToggle={({ currentTarget }) => {
        open.value = currentTarget.open;
      }}
    >
      <summary>
        Show as table<span class="spoken">: {title}</span>
      </summary>
      {open.value ? <Table title={title} table={table} /> : null}
    </details>
  );
}

function Table({ title, table }: { readonly title: string; readonly table: TableTwin }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reachable by keyboard
    <section class="table-scroll" aria-label={title} tabIndex={0}>
      <table>
        <thead>
          <tr>
            {table.head.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row) => (
            <tr key={row[0]}>
              {row.map((text, index) =>
                index === 0 ? (
                  <th key={table.head[index]} scope="row">
                    {text}
                  </th>
                ) : (
                  <td key={table.head[index]}>{text}</td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
