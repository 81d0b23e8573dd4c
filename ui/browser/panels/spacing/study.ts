// A planting studied against spacing: which spacings are offered and the curve over them. Worked out when another planting
// comes in hand and shortly after anything changes, but not while the spacing itself is being moved.

import { useEffect, useState } from 'preact/hooks';
import { fromCanonical, type TableView, type WorkbookFace } from '../../../engine/index.ts';
import { revision, units, workbookNow } from '../state.ts';
import { type CurvePoint, curveOf } from './curve.ts';
import { columnOf, figure, PLANTINGS, SPACING, unitOf, usualSpacing } from './planting.ts';
import { moving } from './spacing-edit.ts';
import { type SpacingRange, spacingRange, spacingsOf } from './spacing-steps.ts';

export interface Study {
  readonly row: number;
  /** The workbook's units when it was worked out. */
  readonly units: 'us' | 'si';
  /** In metres; undefined where the crop has none. */
  readonly usual: number | undefined;
  readonly range: SpacingRange | undefined;
  readonly points: readonly CurvePoint[];
}

/** A change waits this long for the next one before the curve is worked out again. */
const WAIT = 60;

/** The study of the planting in hand. */
export function useStudy(row: number): Study | undefined {
  const [study, setStudy] = useState<Study | undefined>(undefined);
  const changed = revision.value;
  const busy = moving.value;
  useEffect(() => {
    if (busy) return undefined;
    const wait = study === undefined || study.row !== row ? 0 : WAIT;
    const timer = setTimeout(() => {
      const workbook = workbookNow();
      const table = workbook?.table(PLANTINGS);
      if (workbook !== undefined && table !== undefined) setStudy(studyOf(workbook, table, row));
    }, wait);
    return () => clearTimeout(timer);
  }, [row, changed, busy]);
  return study?.row === row && study.units === units.value ? study : undefined;
}

/** Spacings offered and figures at each of them, for one planting. */
export function studyOf(workbook: WorkbookFace, table: TableView, row: number): Study {
  const unit = unitOf(columnOf(table, SPACING));
  const today = figure(workbook, PLANTINGS, row, SPACING);
  const usual = usualSpacing(workbook, table, row);
  const about = { row, units: workbook.units, usual };
  if (unit === undefined) return { ...about, range: undefined, points: [] };
  const inUnit = (metres: number | undefined): number | undefined =>
    metres === undefined ? undefined : Number(fromCanonical(unit, metres).toFixed(6));
  const range = spacingRange(inUnit(usual), inUnit(today), workbook.units);
  if (range === undefined) return { ...about, range, points: [] };
  return { ...about, range, points: curveOf(workbook, table, row, spacingsOf(range, inUnit(today))) };
}
