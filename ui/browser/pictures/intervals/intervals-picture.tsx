// Low, likely and high of each planting in the page: a bar from low to high, a thick stroke at the likely figure, words at the end.

import { useState } from 'preact/hooks';
import { linearScale, roundTop } from '../../drawing/scale.ts';
import { fitted } from '../../drawing/text-width.ts';
import { PLANTINGS } from '../../panels/columns.ts';
import { goTo } from '../../store/selection.ts';
import { workbook } from '../../store/workbook.ts';
import { Choice } from '../kit/choice.tsx';
import { Frame, inParts } from '../kit/frame.tsx';
import { figureMarks } from '../kit/model.ts';
import { guessesOf, type Intervals, intervalsOf } from './intervals.ts';

const PITCH = 24;
const HEAD = 22;
/** Below so many pixels a name stands over its bar, where it has the whole width. */
const NARROW = 560;
const NAME = 18;

export function IntervalsPicture() {
  const book = workbook();
  const guesses = guessesOf(book);
  const [chosen, choose] = useState('');
  const guess = guesses.find(({ name }) => name === chosen) ?? guesses[0];
  const intervals = guess === undefined ? undefined : intervalsOf(book, guess);
  const choices =
    guess === undefined ? null : (
      <Choice
        label="Figure"
        value={guess.name}
        options={guesses.map(({ name }) => ({ value: name, words: name }))}
        onChoose={choose}
      />
    );
  if (intervals === undefined) return <p class="no-picture">No planting has a low and a high yet.</p>;
  return (
    <Frame
      title={intervals.title}
      says={intervals.says}
      table={intervals.table}
      choices={choices}
      legend={[
        { mark: 'mark-second', words: 'from low to high' },
        { mark: 'mark-first', words: 'likely' },
      ]}
      draw={(width) => <Drawing intervals={intervals} lines={intervals.lines} width={width} />}
      drawOnPaper={({ width, tall }) =>
        inParts(intervals.lines, Math.floor((tall - HEAD - 4) / PITCH)).map((lines) => (
          <Drawing key={lines[0]?.row} intervals={intervals} lines={lines} width={width} />
        ))
      }
    />
  );
}

interface DrawingProps {
  readonly intervals: Intervals;
  /** Those of its lines that are drawn; the scale is that of all. */
  readonly lines: Intervals['lines'];
  readonly width: number;
}

function Drawing({ intervals: { lines: all, says, writing }, lines, width }: DrawingProps) {
  const over = width < NARROW ? NAME : 0;
  const left = over > 0 ? 10 : Math.min(200, width * 0.3);
  const pitch = PITCH + over;
  const words = width > 700 ? 240 : 0;
  const top = roundTop(all.map(({ high }) => high));
  const x = linearScale(0, top, left, width - words - 10);
  const height = HEAD + lines.length * pitch + 4;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing has no element of its own for parts that belong together
    <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="group" aria-label={says}>
      {figureMarks(0, top, 5, writing).map(({ figure, text }) => (
        <g key={figure}>
          <line class="axis-rule" x1={x.at(figure)} x2={x.at(figure)} y1={HEAD - 4} y2={height} />
          <text x={x.at(figure)} y={13} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      {lines.map(({ row, name, low, likely, high, words: said }, index) => {
        const top = HEAD + index * pitch;
        const y = top + over;
        const open = (): void => goTo(PLANTINGS, row);
        return (
          <g key={row}>
            {/* biome-ignore lint/a11y/useSemanticElements: a part of a drawing can't be a button element */}
            <g
              class="interval-line"
              role="button"
              tabindex={0}
              aria-label={`${name}: ${said}`}
              onClick={open}
              onKeyDown={(event) => {
                if (event.key === 'Enter') open();
              }}
            >
              <rect class="hit" x={0} y={top} width={width} height={pitch} />
              <rect
                class="mark-second"
                x={x.at(low)}
                y={y + 7}
                width={Math.max(2, x.at(high) - x.at(low))}
                height={10}
              />
              <rect class="mark-first" x={x.at(likely) - 1.5} y={y + 4} width={3} height={16} />
            </g>
            {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus */}
            <g class="drawn-names" aria-hidden="true">
              {over > 0 ? (
                <text x={0} y={y + 1}>
                  {fitted(name, width)}
                </text>
              ) : (
                <text x={left - 8} y={y + 16} text-anchor="end">
                  {fitted(name, left - 10)}
                </text>
              )}
              {words === 0 ? null : (
                <text x={width - words + 4} y={y + 16}>
                  {said}
                </text>
              )}
            </g>
          </g>
        );
      })}
    </svg>
  );
}
