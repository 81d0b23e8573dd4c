// The cells of a scratch paper: those in sight are drawn, the rest is room to scroll in. One element has the focus and tells
// which cell is in hand; keys move it, letters begin an entry, an entry stands in its cell.

import { useSignalEffect } from '@preact/signals';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { PAPER_COLUMNS, PAPER_ROWS, type Workbook } from '../../../engine/index.ts';
import { type At, cellName, cellNamed, columnLetters } from '../../scratch/addresses.ts';
import type { ScratchRoom } from '../../scratch/room.ts';
import { tell } from '../store/notices.ts';
import { workbookNow } from '../store/workbook.ts';
import { copyBlock, movedFromStart, pastedRows } from './paper-clipboard.ts';
import { onEntryKey, PaperEntry } from './paper-entry.tsx';
import {
  beginTyping,
  clearSelected,
  corner,
  entriesOf,
  entryAt,
  extentOf,
  goTo,
  hand,
  type PaperName,
  paperInHand,
  putRows,
  selected,
  takeTyped,
  typing,
  watched,
} from './paper-hand.ts';
import { paperKey } from './paper-keys.ts';
import { pointAt } from './pointing.ts';

const HEAD = 26;
const SIDE = 46;
const HEIGHT = 27;
const WIDTH = 108;
/** Cells drawn beyond what is in sight. */
const BEYOND = 3;

interface GridProps {
  readonly book: Workbook;
  readonly room: ScratchRoom;
  readonly paper: PaperName | undefined;
}

interface Sight {
  readonly top: number;
  readonly left: number;
  readonly height: number;
  readonly width: number;
}

export function PaperGrid({ book, room, paper }: GridProps) {
  const box = useRef<HTMLDivElement>(null);
  const cells = useRef<HTMLTableElement>(null);
  const [sight, see] = useState<Sight>({ top: 0, left: 0, height: 600, width: 900 });
  const look = (): void => {
    const { current } = box;
    if (current === null) return;
    const { scrollTop: top, scrollLeft: left, clientHeight: height, clientWidth: width } = current;
    see((was) =>
      was.top === top && was.left === left && was.height === height && was.width === width
        ? was
        : { top, left, height, width },
    );
  };
  useLayoutEffect(() => {
    const { current } = box;
    if (current === null) return undefined;
    look();
    cells.current?.focus({ preventScroll: true });
    const watch = new ResizeObserver(look);
    watch.observe(current);
    return () => watch.disconnect();
  }, [paper?.id]);
  useSignalEffect(() => {
    if (box.current !== null) bringIntoSight(box.current, watched.value);
  });
  /** In the box of an entry the browser's own copying stands. */
  const copy = (event: ClipboardEvent): void => {
    if (typing.peek() !== undefined) return;
    const { text, html } = copyBlock(book, room, paper?.id ?? '', selected.peek());
    event.clipboardData?.setData('text/plain', text);
    event.clipboardData?.setData('text/html', html);
    event.preventDefault();
  };
  const extent = extentOf(book);
  const rows = Math.min(PAPER_ROWS, Math.max(100, extent.row + 30, corner.value.row + 10));
  const columns = Math.min(PAPER_COLUMNS, Math.max(26, extent.column + 6, corner.value.column + 4));
  const down = inSight(sight.top, sight.height - HEAD, HEIGHT, rows);
  const along = inSight(sight.left, sight.width - SIDE, WIDTH, columns);
  return (
    <div ref={box} class="scratch-grid" onScroll={look}>
      <table
        ref={cells}
        class="scratch-room"
        // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table that keys walk through is a grid
        role="grid"
        tabIndex={0}
        aria-label={paper?.name ?? 'Scratch paper'}
        aria-rowcount={rows + 1}
        aria-colcount={columns + 1}
        aria-multiselectable="true"
        aria-activedescendant={`scratch-${cellName(corner.value)}`}
        style={{ height: `${HEAD + rows * HEIGHT}px`, width: `${SIDE + columns * WIDTH}px` }}
        onKeyDown={(event) => onKey(event, book, sight)}
        onCopy={copy}
        onCut={(event) => {
          copy(event);
          if (event.defaultPrevented) clearSelected();
        }}
        onPaste={(event) => {
          if (typing.peek() !== undefined) return;
          event.preventDefault();
          const { clipboardData: held } = event;
          const read = (form: string): string => held?.getData(form) ?? '';
          const [html, block] = [read('text/html'), selected.peek()];
          const rows = pastedRows(read('text/plain'), html, block, entriesOf(book));
          if (rows === undefined || !putRows(rows)) return;
          const moved = movedFromStart(rows, html, block);
          if (moved !== undefined) offerMoved(moved, block.from, paper?.id);
        }}
        onPointerDown={onPress}
        onPointerMove={(event) => {
          if (event.buttons !== 1 || typing.peek() !== undefined || event.pointerType === 'touch') return;
          const at = placeOf(event.target);
          if (at !== undefined) goTo(at, true);
        }}
        onDblClick={(event) => {
          const at = placeOf(event.target);
          if (at !== undefined) beginTyping(entryAt(book, at));
        }}
      >
        <thead>
          <tr class="scratch-head" aria-rowindex={1} style={{ height: `${HEAD}px` }}>
            <th class="scratch-side" scope="col" aria-colindex={1} style={{ width: `${SIDE}px` }}>
              <span class="spoken">Row</span>
            </th>
            {along.map((column) => (
              <th
                key={column}
                scope="col"
                aria-colindex={column + 2}
                class={isWithin(column, 'column') ? 'scratch-letters is-in' : 'scratch-letters'}
                style={{ left: `${SIDE + column * WIDTH}px`, width: `${WIDTH}px` }}
              >
                {columnLetters(column)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {down.map((row) => (
            <tr
              key={row}
              class="scratch-row"
              aria-rowindex={row + 2}
              style={{ top: `${HEAD + row * HEIGHT}px`, height: `${HEIGHT}px` }}
            >
              <th
                class={isWithin(row, 'row') ? 'scratch-side is-in' : 'scratch-side'}
                scope="row"
                aria-colindex={1}
                style={{ width: `${SIDE}px` }}
              >
                {row + 1}
              </th>
              {along.map((column) => (
                <Cell key={column} at={{ row, column }} room={room} paper={paper?.id} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Text alone doesn't say where its formulas stood: says so, and how they would read had they begun in A1. */
function offerMoved(moved: readonly (readonly string[])[], from: At, paper: string | undefined): void {
  const run = (): void => {
    const book = workbookNow();
    if (book === undefined || (paper !== undefined && paperInHand(book)?.id !== paper)) return;
    goTo(from);
    putRows(moved);
  };
  const said = 'Pasted as it reads: where its formulas stood is not on the clipboard.';
  tell(said, 'done', { label: 'They began in A1: move them', run });
}

function inSight(from: number, length: number, size: number, count: number): readonly number[] {
  const first = Math.max(0, Math.floor(from / size) - BEYOND);
  const last = Math.min(count - 1, Math.ceil((from + Math.max(0, length)) / size) + BEYOND);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
}

function isWithin(place: number, way: 'row' | 'column'): boolean {
  const { from, to } = selected.value;
  return place >= from[way] && place <= to[way];
}

interface CellProps {
  readonly at: At;
  readonly room: ScratchRoom;
  readonly paper: string | undefined;
}

function Cell({ at, room, paper }: CellProps) {
  const name = cellName(at);
  const isHand = hand.value.row === at.row && hand.value.column === at.column;
  const isSelected = isWithin(at.row, 'row') && isWithin(at.column, 'column');
  const { is, text, why } = paper === undefined ? NOTHING : room.cell(paper, name);
  const open = isHand && typing.value?.where === 'cell';
  const classes = ['scratch-cell', `is-${is === 'yes or no' ? 'text' : is}`];
  if (isSelected) classes.push('is-selected');
  if (isHand) classes.push('is-hand');
  return (
    // biome-ignore lint/a11y/useAriaPropsSupportedByRole: a cell of a grid can be selected
    <td
      id={`scratch-${name}`}
      class={classes.join(' ')}
      aria-colindex={at.column + 2}
      aria-selected={isSelected}
      aria-label={`${name} ${text}${why === '' ? '' : `. ${why}`}`}
      title={why === '' ? undefined : why}
      data-cell={name}
      style={{ left: `${SIDE + at.column * WIDTH}px`, width: `${WIDTH}px` }}
    >
      {open ? <PaperEntry class="scratch-entry" label={`Entry of ${name}`} /> : text}
    </td>
  );
}

const NOTHING = { is: 'blank', text: '', why: '' } as const;

function placeOf(target: EventTarget | null): At | undefined {
  const name = target instanceof Element ? target.closest('[data-cell]')?.getAttribute('data-cell') : undefined;
  return cellNamed(name ?? '');
}

function onPress(event: PointerEvent): void {
  const at = placeOf(event.target);
  if (at === undefined || event.button !== 0) return;
  if (event.target instanceof HTMLInputElement) return;
  if (typing.peek() !== undefined) {
    // Into a formula that waits for a place goes the place pressed; any other entry is taken.
    if (pointAt(cellName(at))) {
      event.preventDefault();
      return;
    }
    takeTyped();
  }
  goTo(at, event.shiftKey);
}

function bringIntoSight(box: HTMLElement, { row, column }: At): void {
  const [top, left] = [row * HEIGHT, column * WIDTH];
  const [height, width] = [box.clientHeight - HEAD, box.clientWidth - SIDE];
  if (top < box.scrollTop) box.scrollTop = top;
  else if (top + HEIGHT > box.scrollTop + height) box.scrollTop = top + HEIGHT - height;
  if (left < box.scrollLeft) box.scrollLeft = left;
  else if (left + WIDTH > box.scrollLeft + width) box.scrollLeft = left + WIDTH - width;
}

function onKey(event: KeyboardEvent, book: Workbook, { height }: Sight): void {
  if (event.target instanceof HTMLInputElement || event.isComposing || event.altKey) return;
  const { key, shiftKey } = event;
  const held = event.ctrlKey || event.metaKey;
  const open = typing.peek();
  if (open !== undefined) {
    // The entry's box is not drawn yet: fast hands type on.
    if (key.length === 1 && !held) {
      typing.value = { ...open, text: open.text + key };
      event.preventDefault();
    } else onEntryKey(event);
    return;
  }
  const at = shiftKey ? corner.peek() : hand.peek();
  const go = (row: number, column: number): void => goTo({ row, column }, shiftKey && key !== 'Tab');
  const does = paperKey(event);
  if (does !== undefined) {
    event.preventDefault();
    const page = Math.max(1, Math.floor((height - HEAD) / HEIGHT) - 1);
    does.run({ book, at, page, go });
  } else if (held) return;
  else if (key === 'Tab') {
    // Past the last column that is used, and before the first, Tab leads out.
    const next = at.column + (shiftKey ? -1 : 1);
    if (next < 0 || next > extentOf(book).column + 1) return;
    event.preventDefault();
    go(at.row, next);
  } else if (key.length === 1) {
    event.preventDefault();
    beginTyping(key);
  }
}
