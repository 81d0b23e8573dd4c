// A sheet as a person looks at it on this screen, for paper: its view, what was found in its rows, the widths drawn there.

import type { FindingLevel, FoundIn, SheetView, View } from '../../../engine/index.ts';
import { desk } from '../store/device.ts';
import { findingsOf } from '../store/findings.ts';
import type { Look } from './sheet-pages.ts';

export function lookNow(sheet: SheetView, view: View): Look {
  const widths = desk.value.widths[sheet.id];
  return { view, found: foundOn(sheet.id), ...(widths === undefined ? {} : { widths }) };
}

function foundOn(sheet: string): FoundIn {
  const levels = new Map<string, Set<FindingLevel>>();
  for (const { rowId, level } of findingsOf(sheet)) levels.set(rowId, (levels.get(rowId) ?? new Set()).add(level));
  return (row, level) => (level === 'any' ? levels.has(row) : levels.get(row)?.has(level) === true);
}
