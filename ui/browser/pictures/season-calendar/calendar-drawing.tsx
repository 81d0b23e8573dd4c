// The season calendar drawn: beds down, the year across, a bar a planting with soft ends where its end is not sure, hatching
// where more stands than there is room, a rule for today, and the outline of what is being moved.

import type { SVGAttributes } from 'preact';
import { useId } from 'preact/hooks';
import type { Book } from '../../../../engine/index.ts';
import { monthsBetween } from '../../drawing/scale.ts';
import { fitted, namedMonths } from '../../drawing/text-width.ts';
import { Hatches } from '../kit/frame.tsx';
import {
  barKey,
  barPlace,
  depthAt,
  HARVEST,
  HEAD,
  isSame,
  type LaidCalendar,
  type LaidLine,
} from './calendar-layout.ts';
import { namesOfBars } from './calendar-names.ts';
import { barWords, type CalendarBar, type SeasonCalendar } from './season-calendar.ts';

export interface DrawingProps {
  readonly book: Book;
  readonly calendar: SeasonCalendar;
  readonly laid: LaidCalendar;
  readonly width: number;
  /** What a person does with the bars; undefined on paper. */
  readonly acts?: BarActs;
}

export interface BarActs {
  /** The bar that has the tab stop. */
  readonly current: CalendarBar | undefined;
  /** The planting in hand, and where its bar would stand. */
  readonly hand: { readonly planting: string; readonly outline: CalendarBar; readonly bed: string } | undefined;
  readonly onPress: (bar: CalendarBar, event: PointerEvent) => void;
  readonly onTake: (bar: CalendarBar) => void;
  readonly onFocus: (bar: CalendarBar) => void;
}

export function CalendarDrawing(props: DrawingProps) {
  const { calendar, laid, width, book } = props;
  const id = useId();
  const { season, today, writing } = calendar;
  const { x, height } = laid;
  const named = new Map(namedMonths(season.first, season.last, x, writing).map(({ day, name }) => [day, name]));
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing has no element of its own for parts that belong together
    <svg
      class="season-calendar"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="group"
      aria-label={calendar.says}
    >
      <Hatches id={id} />
      {monthsBetween(season.first, season.last).map(({ day }) => (
        <g key={day}>
          <line class="axis-rule" x1={x.at(day)} x2={x.at(day)} y1={HEAD - 6} y2={height} />
          <text x={x.at(day) + 3} y={14}>
            {named.get(day)}
          </text>
        </g>
      ))}
      {laid.lines.map((place) => (
        <Line key={place.line.bed} {...props} place={place} id={id} book={book} />
      ))}
      {today >= season.first && today <= season.last ? (
        <g>
          <line class="now-rule" x1={x.at(today)} x2={x.at(today)} y1={HEAD - 6} y2={height} />
          <circle class="today-point" cx={x.at(today)} cy={HEAD - 6} r={4} />
        </g>
      ) : null}
    </svg>
  );
}

type LineProps = DrawingProps & { readonly place: LaidLine; readonly id: string };

function Line(props: LineProps) {
  const { laid, place, id, acts } = props;
  const hand = acts?.hand;
  const { line, top, height } = place;
  const { x, left, right } = laid;
  return (
    <g>
      <line class="axis-rule" x1={0} x2={right} y1={top + height} y2={top + height} />
      <text
        class={line.bed === '' ? 'bed-name no-bed' : 'bed-name'}
        x={left - 8}
        y={top + height / 2 + 4.5}
        text-anchor="end"
      >
        {fitted(line.name, left - 8)}
      </text>
      {line.bars.map((bar) => (
        <Bar key={barKey(bar)} {...props} bar={bar} />
      ))}
      {line.overfull.map(({ from, until }) => (
        <rect
          key={from}
          class="overfull"
          fill={`url(#${id}-over)`}
          x={x.at(from)}
          y={depthAt(place, line.length)}
          width={Math.max(2, x.at(until) - x.at(from))}
          height={top + height - 1 - depthAt(place, line.length)}
        />
      ))}
      <Names laid={laid} place={place} />
      {hand !== undefined && hand.bed === line.bed ? <Outline laid={laid} place={place} bar={hand.outline} /> : null}
    </g>
  );
}

function Outline({
  laid,
  place,
  bar,
}: {
  readonly laid: LaidCalendar;
  readonly place: LaidLine;
  readonly bar: CalendarBar;
}) {
  const at = barPlace(laid, place, bar);
  return <rect class="bar-outline" x={at.x} y={at.y} width={at.width} height={at.height} rx={3} />;
}

function Bar(props: LineProps & { readonly bar: CalendarBar }) {
  const { book, laid, place, bar, acts, id } = props;
  const at = barPlace(laid, place, bar);
  const { x, right } = laid;
  const soft = { from: x.at(bar.untilEarly), until: Math.min(right, x.at(bar.untilLate)) };
  const inHand = acts?.hand?.planting === bar.planting;
  const words = barWords(book, bar, place.line);
  const classes = `bar${bar.proposed ? ' is-proposed' : ''}${inHand ? ' is-in-hand' : ''}`;
  return (
    <g
      class={classes}
      data-planting={bar.planting}
      data-spreading={bar.spreading ? 'yes' : undefined}
      aria-label={`${words}${bar.proposed ? ', proposed dates' : ''}`}
      {...(acts === undefined ? { role: 'img' } : handles(bar, acts, inHand))}
    >
      <title>{words}</title>
      {soft.until > at.x + at.width + 1 ? (
        <rect
          fill={`url(#${id}-soft)`}
          x={at.x + at.width}
          y={at.y}
          width={soft.until - at.x - at.width}
          height={at.height}
        />
      ) : null}
      <rect class="bar-body" x={at.x} y={at.y} width={at.width} height={at.height} rx={2} />
      {bar.harvest === undefined ? null : <Harvest laid={laid} bar={bar} at={at} />}
    </g>
  );
}

/** What makes a button of a bar. */
function handles(
  bar: CalendarBar,
  { current, onPress, onTake, onFocus }: BarActs,
  inHand: boolean,
): SVGAttributes<SVGGElement> {
  return {
    role: 'button',
    tabindex: current !== undefined && isSame(current, bar) ? 0 : -1,
    'aria-pressed': inHand,
    onPointerDown: (event) => onPress(bar, event),
    onFocus: () => onFocus(bar),
    onKeyDown: (event) => {
      if (event.key !== 'Enter' && event.key !== ' ') return;
      event.preventDefault();
      onTake(bar);
    },
  };
}

/** Over all that is drawn on a line; the bars themselves have their names in full. */
function Names({ laid, place }: { readonly laid: LaidCalendar; readonly place: LaidLine }) {
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus
    <g aria-hidden="true">
      {namesOfBars(laid, place).map(({ bar, x, y, anchor, text }) => (
        <text key={barKey(bar)} class="bar-name" x={x} y={y} text-anchor={anchor}>
          {text}
        </text>
      ))}
    </g>
  );
}

/** When it is picked: a thick line along the bar's foot. */
function Harvest({
  laid: { x, right },
  bar: { harvest },
  at,
}: {
  readonly laid: LaidCalendar;
  readonly bar: CalendarBar;
  readonly at: ReturnType<typeof barPlace>;
}) {
  if (harvest === undefined) return null;
  const from = Math.max(at.x, x.at(harvest.from));
  const until = Math.min(right, at.x + at.width, x.at(harvest.until));
  if (until <= from) return null;
  return <rect class="mark-harvest" x={from} y={at.y + at.height - HARVEST} width={until - from} height={HARVEST} />;
}
