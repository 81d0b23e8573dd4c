// A planting studied against spacing: which spacings are offered and the curve over them. Worked out when another planting
// comes in hand and shortly after anything changes, but not while the spacing itself is being moved. The pictures of a
// planting share one study.

import { effect, signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import {
  fromCanonical,
  type SheetView,
  settings,
  sheetView,
  type UnitSystem,
  type Workbook,
} from '../../../../engine/index.ts';
import { followed, haveFollowed } from '../../store/findings.ts';
import { inSlice } from '../../store/idle.ts';
import { type RowAt, rowAt } from '../../store/selection.ts';
import { columnOf, unitOf } from '../../store/sheets.ts';
import { revision, units, workbookNow } from '../../store/workbook.ts';
import { PLANTING, PLANTINGS } from '../columns.ts';
import { figureAt, usualSpacing } from '../read.ts';
import { CURVES, CURVES_WITH_MONEY, type CurvePoint, curveOf } from './curve.ts';
import { moving } from './spacing-edit.ts';
import { type SpacingRange, spacingRange, spacingsOf } from './spacing-steps.ts';

export interface Study {
  /** The planting's id. */
  readonly row: string;
  /** The workbook's units when it was worked out. */
  readonly units: UnitSystem;
  /** In metres; undefined where the crop has none. */
  readonly usual: number | undefined;
  readonly range: SpacingRange | undefined;
  readonly points: readonly CurvePoint[];
}

/** A change waits this long for the next one before the curve is worked out again. */
const WAIT = 60;
/** A part of the curve waits at most so long: milliseconds. */
const AT_MOST = 100;

/** The planting that is looked at; undefined while none is. */
const wanted = signal<string | undefined>(undefined);
const latest = signal<Study | undefined>(undefined);
let users = 0;
/** How many of the users draw money too. */
const withMoney = signal(0);
let waiting: ReturnType<typeof setTimeout> | undefined;
/** Goes up when a study that is being made is not wanted any more. */
let round = 0;

effect(() => {
  const id = wanted.value;
  const curves = withMoney.value > 0 ? CURVES_WITH_MONEY : CURVES;
  revision.value;
  followed.value;
  clearTimeout(waiting);
  round += 1;
  // A branch takes over all that still waits to be worked out: it is made when nothing does.
  if (id === undefined || moving.value || !haveFollowed()) return;
  waiting = setTimeout(() => study(id, curves), latest.peek()?.row === id ? WAIT : 0);
});

function study(id: string, curves: readonly string[]): void {
  const book = workbookNow();
  const sheet = book === undefined ? undefined : sheetView(book, PLANTINGS);
  const row = book === undefined ? undefined : rowAt(book, PLANTINGS, id);
  if (book !== undefined && sheet !== undefined && row !== undefined) make(round, studying(book, sheet, row, curves));
}

/** Makes a study in parts between which the page does what it has to do: keeps what was typed, takes the next key, draws. */
function make(of: number, parts: Generator<void, Study | undefined>): void {
  inSlice((goOn) => {
    // What is not wanted any more lets its branch go.
    if (of !== round) return void parts.return(undefined);
    do {
      const part = parts.next();
      if (part.done) {
        if (part.value !== undefined) latest.value = part.value;
        return;
      }
    } while (goOn());
    make(of, parts);
  }, AT_MOST);
}

/** The study of the planting in hand, with its money where that is drawn; undefined until it is worked out. */
export function useStudy({ id }: RowAt, money = false): Study | undefined {
  useEffect(() => {
    users += 1;
    wanted.value = id;
    if (money) withMoney.value += 1;
    return () => {
      users -= 1;
      if (money) withMoney.value -= 1;
      if (users === 0) wanted.value = undefined;
    };
  }, [id, money]);
  const found = latest.value;
  return found?.row === id && found.units === units.value ? found : undefined;
}

/** Spacings offered and figures at each of them, for one planting, a spacing at a time. */
export function* studying(
  book: Workbook,
  sheet: SheetView,
  row: RowAt,
  curves: readonly string[],
): Generator<void, Study> {
  const { units: system } = settings(book);
  const unit = unitOf(columnOf(sheet, PLANTING.spacing));
  const today = figureAt(book, PLANTINGS, row.slot, PLANTING.spacing);
  const usual = usualSpacing(book, sheet, row);
  const about = { row: row.id, units: system, usual };
  if (unit === undefined) return { ...about, range: undefined, points: [] };
  const inUnit = (metres: number | undefined): number | undefined =>
    metres === undefined ? undefined : Number(fromCanonical(unit, metres).toFixed(12));
  const range = spacingRange(inUnit(usual), inUnit(today), system);
  if (range === undefined) return { ...about, range, points: [] };
  const points: CurvePoint[] = [];
  for (const point of curveOf(book, sheet, row, spacingsOf(range, inUnit(today)), curves)) {
    points.push(point);
    yield;
  }
  return { ...about, range, points };
}
