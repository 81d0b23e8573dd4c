// The strip of the year, drawn: hours by week as columns, the days between the frosts as a band, today as a rule.

import { usePrinting } from '../drawing/printing.ts';
import { monthsBetween } from '../drawing/scale.ts';
import { useWidth } from '../drawing/width.ts';
import { UPRIGHT } from '../pictures/kit/paper-size.ts';
import { layStrip } from './strip-layout.ts';
import type { YearStrip } from './year-strip.ts';

export function YearStripPicture({ strip }: { readonly strip: YearStrip }) {
  const { ref, width: onScreen } = useWidth<HTMLDivElement>();
  const width = usePrinting() ? UPRIGHT.width : onScreen;
  return (
    <div class="year-strip chart" ref={ref}>
      {width > 0 ? <Drawing strip={strip} width={width} /> : null}
    </div>
  );
}

function Drawing({ strip, width }: { readonly strip: YearStrip; readonly width: number }) {
  const { season, today, frostFree, weeks, says, frostWords } = strip;
  const { x, y, height, head, foot, frostLine, todayLine, months } = layStrip(strip, width);
  return (
    <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img" aria-label={`The year. ${says}`}>
      {frostFree === undefined ? null : (
        <rect
          class="mark-band"
          x={x.at(frostFree.from)}
          y={head}
          width={x.at(frostFree.until) - x.at(frostFree.from)}
          height={foot - head}
        />
      )}
      {weeks.map(({ monday, hours }) => (
        <rect
          key={monday}
          class="week-hours"
          x={x.at(Math.max(monday, season.first)) + 1}
          y={y.at(hours)}
          width={Math.max(1, x.at(7) - x.at(0) - 2)}
          height={y.at(0) - y.at(hours)}
        />
      ))}
      {frostFree !== undefined && frostLine !== undefined ? (
        <text x={x.at(frostFree.from)} y={frostLine}>
          {frostWords}
        </text>
      ) : null}
      {monthsBetween(season.first, season.last).map(({ day }) => (
        <line key={day} class="axis-line" x1={x.at(day)} x2={x.at(day)} y1={foot} y2={foot + 5} />
      ))}
      {months.map(({ day, name }) => (
        <text key={day} x={x.at(day) + 3} y={height - 3}>
          {name}
        </text>
      ))}
      <line class="axis-line" x1={0} x2={width} y1={foot} y2={foot} />
      {todayLine === undefined ? null : (
        <g>
          <line class="now-rule" x1={x.at(today)} x2={x.at(today)} y1={todayLine - 10} y2={foot + 6} />
          <text
            class="now-text"
            x={x.at(today) + (x.at(today) > width - 60 ? -5 : 5)}
            y={todayLine}
            text-anchor={x.at(today) > width - 60 ? 'end' : 'start'}
          >
            today
          </text>
        </g>
      )}
    </svg>
  );
}
