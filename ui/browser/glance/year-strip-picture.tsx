// The strip of the year, drawn: hours by week as columns, the days between the frosts as a band, today as a rule.

import { showDate } from '../../../engine/index.ts';
import { linearScale, monthsBetween } from '../drawing/scale.ts';
import { useWidth } from '../drawing/width.ts';
import type { YearStrip } from './year-strip.ts';

const TALL = 54;
const FOOT = 16;
const HEAD = 4;

export function YearStripPicture({ strip }: { readonly strip: YearStrip }) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const { season, today, frostFree, weeks, says } = strip;
  const x = linearScale(season.first, season.last + 1, 1, Math.max(2, width - 1));
  const most = Math.max(0, ...weeks.map(({ hours }) => hours));
  const y = linearScale(0, most === 0 ? 1 : most, TALL - FOOT, HEAD);
  const inSeason = today >= season.first && today <= season.last;
  return (
    <div class="year-strip chart" ref={ref}>
      {width > 0 ? (
        <svg viewBox={`0 0 ${width} ${TALL}`} width={width} height={TALL} role="img" aria-label={`The year. ${says}`}>
          {frostFree === undefined ? null : (
            <g>
              <rect
                class="mark-band"
                x={x.at(frostFree.from)}
                y={HEAD - 3}
                width={x.at(frostFree.until) - x.at(frostFree.from)}
                height={TALL - FOOT - HEAD + 3}
              />
            </g>
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
          {frostFree !== undefined && width > 500 ? (
            <text x={x.at(frostFree.from) + 5} y={HEAD + 11}>
              between the average frosts, {showDate(frostFree.from)} to {showDate(frostFree.until)}
            </text>
          ) : null}
          {monthsBetween(season.first, season.last).map(({ day, name }) => (
            <g key={day}>
              <line class="axis-line" x1={x.at(day)} x2={x.at(day)} y1={TALL - FOOT} y2={TALL - FOOT + 5} />
              <text x={x.at(day) + 3} y={TALL - 3}>
                {name}
              </text>
            </g>
          ))}
          <line class="axis-line" x1={0} x2={width} y1={TALL - FOOT} y2={TALL - FOOT} />
          {inSeason ? (
            <g>
              <line class="now-rule" x1={x.at(today)} x2={x.at(today)} y1={0} y2={TALL - FOOT + 6} />
              <text
                class="now-text"
                x={x.at(today) + (x.at(today) > width - 60 ? -5 : 5)}
                y={HEAD + 24}
                text-anchor={x.at(today) > width - 60 ? 'end' : 'start'}
              >
                today
              </text>
            </g>
          ) : null}
        </svg>
      ) : null}
    </div>
  );
}
