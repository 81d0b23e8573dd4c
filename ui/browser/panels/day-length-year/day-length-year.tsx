// A variety against the days of the year here: the day length at the farm's latitude as a curve, the length the variety
// needs as a line, and the date on which it is reached. For varieties that wait for no day length, nothing.

import { type Book, dayLength, decimalText, isoDate, settings } from '../../../../engine/index.ts';
import { Chart, type Field, type TableTwin } from '../../drawing/chart.tsx';
import { linePath } from '../../drawing/scale.ts';
import { dayWords } from '../../store/day-words.ts';
import { plainFigure } from '../../store/shown.ts';
import { workbook } from '../../store/workbook.ts';
import { FARM_COLUMN, VARIETIES, VARIETY } from '../columns.ts';
import type { PanelProps } from '../panel.ts';
import { farmFigure, figureAt, monthMarks, type Season, seasonOf } from '../read.ts';

const HOUR = 1 / 24;

export function DayLengthYear({ row: { slot } }: PanelProps) {
  const book = workbook();
  const latitude = farmFigure(book, FARM_COLUMN.latitude);
  const critical = hours(book, slot, VARIETY.critical);
  if (critical === undefined) return null;
  if (latitude === undefined)
    return <p class="no-curve">Enter the latitude in Farm to see the days of the year here.</p>;
  const season = seasonOf(book);
  const days = curveOfDays(latitude, season);
  const reached = figureAt(book, VARIETIES, slot, VARIETY.reached);
  const lengths = [...days.map((point) => point.hours), critical];
  const from = Math.floor(Math.min(...lengths));
  const to = Math.max(from + 1, Math.ceil(Math.max(...lengths)));
  return (
    <Chart
      title="Day length through the year"
      says={daysSentence(book, slot, critical, reached)}
      x={{
        label: 'first of the month',
        from: season.first,
        to: season.last,
        marks: monthMarks(season, settings(book).writing),
      }}
      y={{ label: 'hours from sunrise to sunset', from, to, marks: hourMarks(from, to) }}
      height={210}
      table={tableOf(book, latitude, season)}
      draw={(field) => (
        <>
          <path
            class="curve"
            d={linePath(days.map((point) => ({ x: field.x.at(point.day), y: field.y.at(point.hours) })))}
          />
          <Needed {...{ book, field, critical, reached, season }} />
        </>
      )}
    />
  );
}

function hours(book: Book, slot: number, column: string): number | undefined {
  const days = figureAt(book, VARIETIES, slot, column);
  return days === undefined ? undefined : days / HOUR;
}

interface DayPoint {
  readonly day: number;
  readonly hours: number;
}

/** Every third day is as smooth as every day. */
function curveOfDays(latitude: number, { first, last }: Season): readonly DayPoint[] {
  const days: DayPoint[] = [];
  for (let day = first; day <= last; day += 3) days.push({ day, hours: dayLength(latitude, day) });
  days.push({ day: last, hours: dayLength(latitude, last) });
  return days;
}

function hourMarks(from: number, to: number) {
  const step = to - from > 10 ? 4 : to - from > 5 ? 2 : 1;
  const marks: { figure: number; text: string }[] = [];
  for (let hour = from; hour <= to; hour += step) marks.push({ figure: hour, text: String(hour) });
  return marks;
}

interface NeededProps {
  readonly book: Book;
  readonly field: Field;
  readonly critical: number;
  readonly reached: number | undefined;
  readonly season: Season;
}

function Needed({ book, field, critical, reached, season }: NeededProps) {
  const y = field.y.at(critical);
  const inSeason = reached !== undefined && reached >= season.first && reached <= season.last;
  const x = inSeason ? field.x.at(reached) : undefined;
  return (
    <g>
      <line class="today-rule" x1={field.left} x2={field.right} y1={y} y2={y} />
      <text class="today-text" x={field.right} y={y - 6} text-anchor="end">
        needs {plainFigure(critical, 2, settings(book).writing)} h
      </text>
      {x === undefined ? null : (
        <>
          <line class="today-rule" x1={x} x2={x} y1={y} y2={field.bottom} />
          <circle class="today-point" cx={x} cy={y} r={6} />
          <text class="today-text" x={x - 10} y={y - 8} text-anchor="end">
            {reached === undefined ? '' : shortDate(book, reached)}
          </text>
        </>
      )}
    </g>
  );
}

/** '15 Mar'; with its year where that does not stand last. */
function shortDate(book: Book, day: number): string {
  return dayWords(book, day).replace(/ \d+(?=\u2069?$)/, '');
}

function daysSentence(book: Book, slot: number, critical: number, reached: number | undefined): string {
  const longest = hours(book, slot, VARIETY.longest);
  const { writing } = settings(book);
  const here = longest === undefined ? '' : ` The longest day here is ${plainFigure(longest, 1, writing)} h.`;
  return reached === undefined
    ? `It needs days of ${plainFigure(critical, 2, writing)} h, which are never reached here.${here}`
    : `It needs days of ${plainFigure(critical, 2, writing)} h, reached here on ${shortDate(book, reached)}.${here}`;
}

function tableOf(book: Book, latitude: number, season: Season): TableTwin {
  const rows: (readonly string[])[] = [];
  for (let day = season.first; day <= season.last; day += 1) {
    const ofMonth = isoDate(day).slice(8);
    if (ofMonth !== '01' && ofMonth !== '15') continue;
    rows.push([dayWords(book, day), decimalText(dayLength(latitude, day), 2, 2, settings(book).writing)]);
  }
  return { head: ['Day', 'Day length, h'], rows };
}
