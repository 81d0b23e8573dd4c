// Reads out what a change did to the planting in hand, once it has come to rest: a drag is read once, at its end. Steps taken
// back are left to the page, which says what they were.

import { useEffect } from 'preact/hooks';
import { type Book, type ChangeSet, cellView, sheetView } from '../../../../engine/index.ts';
import { followed, haveFollowed } from '../../store/findings.ts';
import { announce } from '../../store/notices.ts';
import type { RowAt } from '../../store/selection.ts';
import { columnOf } from '../../store/sheets.ts';
import { inWords } from '../../store/shown.ts';
import { followChanges, followFrames, workbookNow } from '../../store/workbook.ts';
import { PLANTING, PLANTINGS } from '../columns.ts';
import { moving } from './spacing-edit.ts';

const READ_OUT: readonly string[] = [
  PLANTING.stations,
  PLANTING.density,
  PLANTING.mass,
  PLANTING.yield,
  PLANTING.margin,
];

export function useOutcome({ slot }: RowAt): void {
  useEffect(() => {
    let worked = false;
    let touched = false;
    const say = (): void => {
      const book = workbookNow();
      if (!worked || !touched || moving.peek() || book === undefined || !haveFollowed()) return;
      worked = false;
      touched = false;
      announce(outcomeOf(book, slot));
    };
    const stops = [
      followChanges(({ transaction }) => {
        worked = transaction.undoes === undefined && transaction.redoes === undefined;
        touched = false;
      }),
      // Figures that the view on screen leaves out come frames later than the change that moved them.
      followFrames((change) => {
        touched ||= touches(change, slot);
        say();
      }),
      moving.subscribe(say),
      followed.subscribe(say),
    ];
    return () => {
      for (const stop of stops) stop();
    };
  }, [slot]);
}

function touches({ cells }: ChangeSet, slot: number): boolean {
  return cells.some(
    ({ sheet, column, rows }) =>
      sheet === PLANTINGS && READ_OUT.includes(column) && (rows === 'all' || rows.includes(slot)),
  );
}

/** 'In-row spacing 6 in: Stations 400, Plant density 9.57 plants/ft², ...'; figures that are blank are left out. */
export function outcomeOf(book: Book, slot: number): string {
  const sheet = sheetView(book, PLANTINGS);
  const words = (id: string): string => {
    const name = columnOf(sheet, id)?.name ?? '';
    const text = inWords(cellView(book, PLANTINGS, slot, id));
    return text === '' ? '' : `${name} ${text}`;
  };
  const figures = READ_OUT.map(words).filter((text) => text !== '');
  return `${words(PLANTING.spacing)}: ${figures.join(', ')}.`;
}
