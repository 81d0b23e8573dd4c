// The grid as a part of the page: one SheetGrid for the sheet on screen, told of changes, of findings and of arrivals.

import { useSignalEffect } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { arrival, attention, latestChange, selection, workbookNow } from '../state.ts';
import { newRowWish } from './selected.ts';
import { SheetGrid } from './sheet-grid.ts';

/** The rows of a sheet; `key` it by the workbook and the sheet, since it is made anew for another one. */
export function Grid({ table }: { readonly table: string }) {
  const host = useRef<HTMLDivElement>(null);
  const grid = useRef<SheetGrid | undefined>(undefined);
  const arrivedAt = useRef(arrival.peek());
  const wished = useRef(newRowWish.peek());

  useLayoutEffect(() => {
    const workbook = workbookNow();
    const view = workbook?.table(table);
    if (host.current === null || workbook === undefined || view === undefined) return undefined;
    const made = new SheetGrid(host.current, workbook, view, attention.peek());
    grid.current = made;
    const { row, column } = selection.peek();
    made.arrive(row, column, row !== undefined);
    arrivedAt.current = arrival.peek();
    return () => {
      grid.current = undefined;
      made.destroy();
    };
  }, [table]);

  useSignalEffect(() => {
    const change = latestChange.value;
    if (change !== undefined) grid.current?.follow(change);
  });
  useSignalEffect(() => {
    grid.current?.showFindings(attention.value);
  });
  useSignalEffect(() => {
    const count = arrival.value;
    const { table: to, row, column } = selection.peek();
    if (to !== table || count === arrivedAt.current) return;
    arrivedAt.current = count;
    grid.current?.arrive(row, column, row !== undefined);
  });
  useSignalEffect(() => {
    const count = newRowWish.value;
    if (count !== wished.current) grid.current?.startNewRow();
    wished.current = count;
  });

  return <div class="grid-host" ref={host} />;
}
