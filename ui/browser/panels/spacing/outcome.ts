// Reads out what a change did to the planting in hand, once it has come to rest: a drag is read once, at its end. Steps taken
// back are left to the page, which says what they were.

import { useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { ChangeSet, WorkbookFace } from '../../../engine/index.ts';
import { announce } from '../messages.ts';
import { latestChange, workbookNow } from '../state.ts';
import { columnOf, PLANTINGS, SPACING } from './planting.ts';
import { inWords } from './shown.ts';
import { moving } from './spacing-edit.ts';

const READ_OUT = ['Stations', 'Plant density', 'Mean plant mass', 'Marketable yield', 'Margin'];

export function useOutcome(row: number): void {
  const said = useRef(latestChange.peek());
  useSignalEffect(() => {
    const change = latestChange.value;
    const workbook = workbookNow();
    if (moving.value || change === undefined || change === said.current || workbook === undefined) return;
    said.current = change;
    // A fresh edit leaves nothing to redo; a step taken back or done again has been read out already.
    if (workbook.undoState().redo === undefined && touches(change, row)) announce(outcomeOf(workbook, row));
  });
}

function touches(change: ChangeSet, row: number): boolean {
  return change.cells.some(
    ({ table, column, rows }) =>
      table === PLANTINGS && READ_OUT.includes(column) && (rows === 'all' || rows.includes(row)),
  );
}

/** 'In-row spacing 6 in: Stations 400, Plant density 9.57 plants/ft², ...'; figures that are blank are left out. */
export function outcomeOf(workbook: WorkbookFace, row: number): string {
  const table = workbook.table(PLANTINGS);
  const words = (name: string): string => {
    const column = table === undefined ? undefined : columnOf(table, name);
    return column === undefined ? '' : inWords(workbook.cell(PLANTINGS, row, name), column);
  };
  const figures = READ_OUT.map((name) => ({ name, text: words(name) })).filter(({ text }) => text !== '');
  return `${SPACING} ${words(SPACING)}: ${figures.map(({ name, text }) => `${name} ${text}`).join(', ')}.`;
}
