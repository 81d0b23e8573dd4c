// What a grid that stands on screen can do for the table of commands. Made by sheet-grid.ts from its parts.

import type { CopyActs } from './clipboard/copy-acts.ts';
import { cut, forgetCut } from './clipboard/cut.ts';
import type { PasteActs } from './clipboard/paste-acts.ts';
import type { FillActs } from './fill/fill-acts.ts';
import type { GridEntry } from './grid-entry.ts';
import type { GridSurface } from './grid-surface.ts';
import type { RangeLayer } from './range-layer.ts';
import type { RowActs } from './row-acts.ts';

export interface GridParts {
  readonly layer: RangeLayer;
  readonly entry: GridEntry;
  readonly rows: RowActs;
  readonly copies: CopyActs;
  readonly pastes: PasteActs;
  readonly fills: FillActs;
}

type Rest = Pick<GridSurface, 'fitColumn' | 'rowsOf' | 'columnsDrawn' | 'arrangeAgain' | 'foldGroups'>;

export function surfaceOf({ layer, entry, rows, copies, pastes, fills }: GridParts, rest: Rest): GridSurface {
  return {
    startEditing: (typed) => entry.start(typed),
    isEditing: () => entry.editor() !== undefined,
    isQuickEntry: () => entry.editor()?.isQuick() === true,
    takeEntry: (to) => entry.take(to),
    takeIntoAll: () => entry.takeIntoAll(),
    leaveEntry: () => entry.leave(),
    typeIn: (typed, unit) => fills.fillAll(typed, unit),
    startNewRow: () => rows.startNew(),
    putRowIn: (where) => rows.putIn(where),
    moveRows: (by) => rows.move(by),
    move: (to, how = {}) => layer.move(to, how),
    page: (by, stretch) => layer.page(by, stretch),
    canTab: (by) => layer.canTab(by),
    tab: (by) => void layer.tab(by),
    selectRows: () => layer.selectRows(),
    selectColumns: () => layer.selectWholeColumns(),
    selectAll: () => layer.selectAll(),
    isWide: () => layer.isWide(),
    shrink: () => layer.shrink(),
    hasCut: () => cut.peek() !== undefined,
    forgetCut,
    copied: (withHeaders) => copies.copied(withHeaders),
    cut: () => copies.cut(),
    paste: (text, html, keepFormulas) => pastes.paste(text, html, keepFormulas),
    fillDown: () => fills.fillDown(),
    fillRight: () => fills.fillRight(),
    focus: () => layer.focusAnchor(),
    ...rest,
  };
}
