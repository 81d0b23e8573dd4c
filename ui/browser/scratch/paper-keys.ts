// What keys do on the cells of a scratch paper: one table, which the paper obeys and the page of keys shows.

import type { Workbook } from '../../../engine/index.ts';
import type { At } from '../../scratch/addresses.ts';
import { beginTyping, clearSelected, corner, entryAt, extentOf, fillSelected, goTo, hand } from './paper-hand.ts';

/** The paper when a key is pressed. */
export interface PaperNow {
  readonly book: Workbook;
  /** The cell from which the key moves on. */
  readonly at: At;
  /** Rows that a page of it shows. */
  readonly page: number;
  readonly go: (row: number, column: number) => void;
}

export interface PaperKey {
  readonly label: string;
  readonly keys: readonly string[];
  readonly run: (now: PaperNow) => void;
}

const extentRow = ({ book, at }: PaperNow): number => Math.max(at.row, extentOf(book).row);
const extentColumn = ({ book, at }: PaperNow): number => Math.max(at.column, extentOf(book).column);
const open = ({ book }: PaperNow): void => beginTyping(entryAt(book, hand.peek()));

export const PAPER_KEYS: readonly PaperKey[] = [
  { label: 'Type on in the cell', keys: ['Enter', 'F2'], run: open },
  { label: 'Clear', keys: ['Delete', 'Backspace'], run: clearSelected },
  { label: 'Fill down', keys: ['Ctrl D'], run: () => fillSelected('down') },
  { label: 'Fill to the right', keys: ['Ctrl R'], run: () => fillSelected('right') },
  {
    label: 'Select all that is used',
    keys: ['Ctrl A'],
    run: ({ book }) => {
      goTo({ row: 0, column: 0 });
      corner.value = extentOf(book);
    },
  },
  { label: 'Up', keys: ['ArrowUp'], run: ({ at, go }) => go(at.row - 1, at.column) },
  { label: 'Down', keys: ['ArrowDown'], run: ({ at, go }) => go(at.row + 1, at.column) },
  { label: 'Left', keys: ['ArrowLeft'], run: ({ at, go }) => go(at.row, at.column - 1) },
  { label: 'Right', keys: ['ArrowRight'], run: ({ at, go }) => go(at.row, at.column + 1) },
  { label: 'To the top', keys: ['Ctrl ArrowUp'], run: ({ at, go }) => go(0, at.column) },
  { label: 'To the last used row', keys: ['Ctrl ArrowDown'], run: (now) => now.go(extentRow(now), now.at.column) },
  { label: 'To the first column', keys: ['Home', 'Ctrl ArrowLeft'], run: ({ at, go }) => go(at.row, 0) },
  { label: 'To the last used column', keys: ['Ctrl ArrowRight'], run: (now) => now.go(now.at.row, extentColumn(now)) },
  { label: 'To the end of the row', keys: ['End'], run: ({ book, at, go }) => go(at.row, extentOf(book).column) },
  { label: 'To the first cell', keys: ['Ctrl Home'], run: ({ go }) => go(0, 0) },
  {
    label: 'To the last used cell',
    keys: ['Ctrl End'],
    run: ({ book, go }) => go(extentOf(book).row, extentOf(book).column),
  },
  { label: 'A page down', keys: ['PageDown'], run: ({ at, page, go }) => go(at.row + page, at.column) },
  { label: 'A page up', keys: ['PageUp'], run: ({ at, page, go }) => go(at.row - page, at.column) },
  {
    label: 'Back to one cell',
    keys: ['Escape'],
    run: ({ go }) => go(hand.peek().row, hand.peek().column),
  },
];

/** What a key does on the cells; undefined where it does nothing of its own. */
export function paperKey({ key, ctrlKey, metaKey }: KeyboardEvent): PaperKey | undefined {
  const named = key.length === 1 ? key.toUpperCase() : key;
  const pressed = ctrlKey || metaKey ? `Ctrl ${named}` : named;
  return PAPER_KEYS.find(({ keys }) => keys.includes(pressed));
}
