// Lines with the bands they lie in and points on them. Draws any LinesModel.

import type { ComponentChildren } from 'preact';
import { Reader } from '../../drawing/reader.tsx';
import { linearScale, linePath } from '../../drawing/scale.ts';
import { widthOfText } from '../../drawing/text-width.ts';
import { Frame } from './frame.tsx';
import type { Band, LinesModel } from './model.ts';

const TOP = 24;
const BOTTOM = 40;
const RIGHT = 10;
const DIGIT = 7.4;

export interface LinesProps {
  readonly model: LinesModel;
  readonly height?: number;
  readonly choices?: ComponentChildren;
}

export function LinesPicture({ model, height = 260, choices }: LinesProps) {
  const { title, says, table, bands, lines, dots, dotsAre } = model;
  const legend = [...bands, ...lines.filter(({ quiet }) => quiet !== true)].map(({ name, mark }) => ({
    mark: `legend-${mark}`,
    words: name,
  }));
  if (dotsAre !== undefined && dots.length > 0) legend.push({ mark: 'picture-dot legend-dot', words: dotsAre });
  return (
    <Frame
      title={title}
      says={says}
      table={table}
      legend={legend}
      choices={choices}
      draw={(width) => <Drawing model={model} width={width} height={height} />}
    />
  );
}

function Drawing({
  model,
  width,
  height,
}: {
  readonly model: LinesModel;
  readonly width: number;
  readonly height: number;
}) {
  const { title, says, readings, today, bands, lines, dots } = model;
  const left = 12 + DIGIT * Math.max(1, ...model.y.marks.map(({ text }) => text.length));
  const right = width - RIGHT;
  const bottom = height - BOTTOM;
  const x = linearScale(model.x.from, model.x.to, left, right);
  const y = linearScale(model.y.from, model.y.to, bottom, TOP);
  const inside = (figure: number): number => Math.max(TOP, Math.min(bottom, y.at(figure)));
  const room = (right - left) / Math.max(1, model.x.marks.length);
  return (
    <Reader title={title} says={says} readings={readings} width={width} height={height} x={x} top={TOP} bottom={bottom}>
      <text x={0} y={13}>
        {model.y.label}
      </text>
      {bands.map((band) => (
        <path key={band.name} class={band.mark} d={bandPath(band, x.at, inside)} />
      ))}
      {model.y.marks.map(({ figure, text }) => (
        <g key={figure}>
          <line class="axis-rule" x1={left} x2={right} y1={y.at(figure)} y2={y.at(figure)} />
          <text x={left - 6} y={y.at(figure) + 4} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      {lines.map(({ name, mark, points }) => (
        <path
          key={name}
          class={`picture-line ${mark}`}
          d={linePath(points.map((point) => ({ x: x.at(point.x), y: inside(point.y) })))}
        />
      ))}
      {dots.map(({ name, x: at, y: figure }) => (
        <circle key={`${name} ${at}`} class="picture-dot" cx={x.at(at)} cy={inside(figure)} r={4}>
          <title>{name}</title>
        </circle>
      ))}
      <line class="axis-line" x1={left} x2={right} y1={bottom} y2={bottom} />
      {model.x.marks.map(({ figure, text }, index) =>
        room < widthOfText(text) + 6 && index % 2 === 1 ? null : (
          <g key={figure}>
            <line class="axis-line" x1={x.at(figure)} x2={x.at(figure)} y1={bottom} y2={bottom + 4} />
            <text x={x.at(figure)} y={bottom + 17} text-anchor={x.at(figure) > right - 16 ? 'end' : 'middle'}>
              {text}
            </text>
          </g>
        ),
      )}
      <text x={right} y={bottom + 34} text-anchor="end">
        {model.x.label}
      </text>
      {today !== undefined && today >= model.x.from && today <= model.x.to ? (
        <line class="now-rule" x1={x.at(today)} x2={x.at(today)} y1={TOP - 6} y2={bottom} />
      ) : null}
    </Reader>
  );
}

function bandPath({ points }: Band, x: (figure: number) => number, y: (figure: number) => number): string {
  if (points.length === 0) return '';
  const upper = points.map((point) => `${x(point.x).toFixed(1)} ${y(point.high).toFixed(1)}`);
  const lower = points.toReversed().map((point) => `${x(point.x).toFixed(1)} ${y(point.low).toFixed(1)}`);
  return `M${upper.join('L')}L${lower.join('L')}Z`;
}
