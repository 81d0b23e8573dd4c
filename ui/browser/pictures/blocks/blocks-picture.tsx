// How many plants stand in a block in the page: a planting is chosen, a bar for each number of plants.

import { useState } from 'preact/hooks';
import { settings } from '../../../../engine/index.ts';
import { Reader } from '../../drawing/reader.tsx';
import { linearScale, roundTop } from '../../drawing/scale.ts';
import { widthOfText } from '../../drawing/text-width.ts';
import { workbook } from '../../store/workbook.ts';
import { Choice } from '../kit/choice.tsx';
import { Frame } from '../kit/frame.tsx';
import { figureMarks } from '../kit/model.ts';
import { type Blocks, plantsPerBlock, sownPlantings } from './blocks.ts';

const HEIGHT = 280;
const TOP = 24;
const BOTTOM = 26;
const LEFT = 40;
/** Between what is written under two bars. */
const APART = 6;

export function BlocksPicture() {
  const book = workbook();
  const plantings = sownPlantings(book);
  const [chosen, choose] = useState('');
  const planting = plantings.find(({ id }) => id === chosen) ?? plantings[0];
  if (planting === undefined) {
    return <p class="no-picture">No planting is sown in blocks, cells or places yet.</p>;
  }
  const blocks = plantsPerBlock(book, planting);
  const options = plantings.map(({ id, name }) => ({ value: id, words: name }));
  return (
    <Frame
      title={blocks.title}
      says={blocks.says}
      table={blocks.table}
      legend={[]}
      choices={<Choice label="Planting" value={planting.id} options={options} onChoose={choose} />}
      draw={(width) => <Drawing blocks={blocks} width={width} />}
    />
  );
}

function Drawing({
  blocks: { title, says, bars, readings },
  width,
}: {
  readonly blocks: Blocks;
  readonly width: number;
}) {
  const right = Math.min(width, LEFT + bars.length * 110);
  const bottom = HEIGHT - BOTTOM;
  const top = Math.min(100, roundTop(bars.map(({ percent }) => percent)));
  const x = linearScale(-0.5, bars.length - 0.5, LEFT, right);
  const y = linearScale(0, top, bottom, TOP);
  const wide = Math.max(4, (x.at(1) - x.at(0)) * 0.62);
  return (
    <Reader {...{ title, says, readings, width, x, top: TOP, bottom }} height={HEIGHT}>
      <text x={0} y={13}>
        %
      </text>
      {figureMarks(0, top, 4, settings(workbook()).writing).map(({ figure, text }) => (
        <g key={figure}>
          <line class="axis-rule" x1={LEFT} x2={right} y1={y.at(figure)} y2={y.at(figure)} />
          <text x={LEFT - 6} y={y.at(figure) + 4} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      {bars.map(({ name, percent }, at) => (
        <g key={name}>
          <rect
            class="mark-first"
            x={x.at(at) - wide / 2}
            y={y.at(percent)}
            width={wide}
            height={bottom - y.at(percent)}
          />
          <text x={x.at(at)} y={y.at(percent) - 5} text-anchor="middle">
            {percent >= 0.5 ? `${percent.toFixed(0)}%` : ''}
          </text>
          <text x={x.at(at)} y={bottom + 18} text-anchor="middle">
            {widthOfText(name) < x.at(1) - x.at(0) - APART ? name : name.replace(/ or more$/, '+')}
          </text>
        </g>
      ))}
      <line class="axis-line" x1={LEFT} x2={right} y1={bottom} y2={bottom} />
    </Reader>
  );
}
