// The grid as a part of the page: one SheetGrid for the sheet on screen, told of changes, of findings and of arrivals.

import { useSignalEffect } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { sheetView } from '../../../engine/index.ts';
import { desk } from '../store/device.ts';
import { finding } from '../store/find.ts';
import { findings } from '../store/findings.ts';
import { arrival, selection, takesFocus } from '../store/selection.ts';
import { followFrames, rests, workbookNow } from '../store/workbook.ts';
import { cut } from './clipboard/cut.ts';
import { bringIntoSight } from './into-sight.ts';
import { SheetGrid } from './sheet-grid.ts';
import './summing.ts';

/** The rows of a sheet; `key` it by the workbook and the sheet, since it is made anew for another one. */
export function Grid({ sheet }: { readonly sheet: string }) {
  const host = useRef<HTMLDivElement>(null);
  const grid = useRef<SheetGrid | undefined>(undefined);
  const arrivedAt = useRef(arrival.peek());
  const marked = useRef(finding.peek().matches);
  const cutShown = useRef(cut.peek());

  useLayoutEffect(() => {
    const book = workbookNow();
    const view = book === undefined ? undefined : sheetView(book, sheet);
    if (host.current === null || book === undefined || view === undefined) return undefined;
    const made = new SheetGrid(host.current, book, view, findings.peek());
    grid.current = made;
    const { row, column } = selection.peek();
    made.arrive(row, column, row !== undefined && !isTyping());
    arrivedAt.current = arrival.peek();
    const unfollow = followFrames((change) => {
      // The effect below comes after the frame: what somebody went to meanwhile must not give way to what was in hand before.
      const wanted = arrival.peek() === arrivedAt.current ? undefined : selection.peek();
      made.follow(change);
      if (wanted?.sheet === sheet) selection.value = wanted;
    });
    return () => {
      unfollow();
      grid.current = undefined;
      made.destroy();
    };
  }, [sheet]);

  useSignalEffect(() => {
    grid.current?.showFindings(findings.value);
  });
  useSignalEffect(() => {
    rests.value;
    grid.current?.atRest();
  });
  useSignalEffect(() => {
    const { matches } = finding.value;
    if (matches === marked.current) return;
    marked.current = matches;
    grid.current?.showMatches();
  });
  useSignalEffect(() => {
    if (cut.value === cutShown.current) return;
    cutShown.current = cut.value;
    grid.current?.showMatches();
  });
  useSignalEffect(() => {
    const { views, questions } = desk.value;
    grid.current?.showView(views[sheet], questions[sheet]);
  });
  useSignalEffect(() => {
    const count = arrival.value;
    const { sheet: to, row, column } = selection.peek();
    if (to !== sheet || count === arrivedAt.current) return;
    arrivedAt.current = count;
    grid.current?.arrive(row, column, row !== undefined && takesFocus());
    bringIntoSight(host.current);
  });

  return <div class={`grid-host${isAllComputed(sheet) ? ' all-computed' : ''}`} ref={host} />;
}

/** Where a formula gives every cell a mark on each of them says nothing. */
function isAllComputed(sheet: string): boolean {
  const book = workbookNow();
  const columns = book === undefined ? undefined : sheetView(book, sheet)?.columns;
  return columns?.every(({ role }) => role === 'computed' || role === 'made') === true;
}

/** Who began to type elsewhere while the grid was on its way keeps the focus. */
function isTyping(): boolean {
  return document.activeElement instanceof HTMLInputElement || document.activeElement instanceof HTMLTextAreaElement;
}
