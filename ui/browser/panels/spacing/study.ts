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
import { whenIdle } from '../../store/idle.ts';
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
/** So many spacings are tried together, since a branch is made for them; and after how many milliseconds though the page is busy. */
const [TOGETHER, LATEST] = [8, 400];

/** The planting that is looked at; undefined while none is. */
const wanted = signal<string | undefined>(undefined);
const latest = signal<Study | undefined>(undefined);
let users = 0;
/** How many of the users want money too. */
const moneyWanted = signal(0);
let waiting: ReturnType<typeof setTimeout> | undefined;
/** Another for every study begun, so that one overtaken by a change goes no further. */
let turn = 0;

effect(() => {
  const id = wanted.value;
  const curves = moneyWanted.value > 0 ? CURVES_WITH_MONEY : CURVES;
  revision.value;
  followed.value;
  clearTimeout(waiting);
  turn += 1;
  // A branch takes over all that still waits to be worked out: it is made when nothing does.
  if (id === undefined || moving.value || !haveFollowed()) return;
  waiting = setTimeout(() => study(id, curves), latest.peek()?.row === id ? WAIT : 0);
});

function study(id: string, curves: readonly string[]): void {
  const book = workbookNow();
  const sheet = book === undefined ? undefined : sheetView(book, PLANTINGS);
  const row = book === undefined ? undefined : rowAt(book, PLANTINGS, id);
  if (book === undefined || sheet === undefined || row === undefined) return;
  const { spacings, ...about } = offeredTo(book, sheet, row);
  const mine = turn;
  let points: readonly CurvePoint[] = [];
  // A few spacings at a time while the page has nothing else to do; the curve as it was stands until all are there.
  const goOn = (left: number | undefined): void => {
    if (mine !== turn || book !== workbookNow()) return;
    const until = performance.now() + (left ?? 0);
    do {
      const next = spacings.slice(points.length, points.length + TOGETHER);
      points = [...points, ...curveOf(book, sheet, row, next, curves)];
    } while (points.length < spacings.length && performance.now() < until);
    if (points.length < spacings.length) whenIdle(goOn, LATEST);
    else latest.value = { ...about, points };
  };
  goOn(0);
}

/** The study of the planting in hand, with its money where that is wanted; undefined until it is worked out. */
export function useStudy({ id }: RowAt, withMoney = false): Study | undefined {
  useEffect(() => {
    users += 1;
    wanted.value = id;
    if (withMoney) moneyWanted.value += 1;
    return () => {
      users -= 1;
      if (withMoney) moneyWanted.value -= 1;
      if (users === 0) wanted.value = undefined;
    };
  }, [id, withMoney]);
  const found = latest.value;
  return found?.row === id && found.units === units.value ? found : undefined;
}

/** Spacings offered and figures at each of them, for one planting. */
export function studyOf(book: Workbook, sheet: SheetView, row: RowAt, curves: readonly string[]): Study {
  const { spacings, ...about } = offeredTo(book, sheet, row);
  return { ...about, points: curveOf(book, sheet, row, spacings, curves) };
}

type Offered = Omit<Study, 'points'> & { readonly spacings: readonly number[] };

function offeredTo(book: Workbook, sheet: SheetView, row: RowAt): Offered {
  const { units: system } = settings(book);
  const unit = unitOf(columnOf(sheet, PLANTING.spacing));
  const today = figureAt(book, PLANTINGS, row.slot, PLANTING.spacing);
  const usual = usualSpacing(book, sheet, row);
  const about = { row: row.id, units: system, usual };
  if (unit === undefined) return { ...about, range: undefined, spacings: [] };
  const inUnit = (metres: number | undefined): number | undefined =>
    metres === undefined ? undefined : Number(fromCanonical(unit, metres).toFixed(12));
  const range = spacingRange(inUnit(usual), inUnit(today), system);
  return { ...about, range, spacings: range === undefined ? [] : spacingsOf(range, inUnit(today)) };
}
