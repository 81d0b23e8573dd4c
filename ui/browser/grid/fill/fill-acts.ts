// Filling cells from those beside them: by the fill handle, down, to the right, or one entry into all that are selected. What
// formulas fill stays with them, unless what is filled from was typed over its own. The notice offers the other ways.

import { type ColumnView, type Command, message, settings, tryEntry } from '../../../../engine/index.ts';
import { UNDO } from '../../store/change.ts';
import { announce, type NoticeAct, tell } from '../../store/notices.ts';
import { type Corner, cellsOf, contains, type Rectangle, rectangleOf } from '../ranges.ts';
import { isHead } from '../row-handle.ts';
import type { SheetCells } from '../sheet-cells.ts';
import { inColumn } from '../typed-here.ts';
import { filledEntry } from './filled-entry.ts';
import { type Filled, type Source, seriesOf, type Way, waysFor } from './series.ts';
import { sourceOf } from './sources.ts';

const OFFERS: Readonly<Record<Way, string>> = {
  count: 'Count on',
  copy: 'Copy instead',
  day: 'By the day',
  week: 'By the week',
  month: 'By the month',
};

/** Where a filling goes from the cells it begins with. */
export type Direction = 'down' | 'up' | 'right' | 'left';

/** The cells that a drag of the handle to a cell would fill, and which way that is; undefined inside the selection. */
export function fillTarget(
  source: Rectangle,
  to: Corner,
): { readonly area: Rectangle; readonly direction: Direction } | undefined {
  if (contains(source, to)) return undefined;
  const down = to.row > source.bottom ? to.row - source.bottom : to.row < source.top ? to.row - source.top : 0;
  const over =
    to.column > source.right ? to.column - source.right : to.column < source.left ? to.column - source.left : 0;
  if (Math.abs(down) >= Math.abs(over)) {
    return down > 0
      ? { area: { ...source, top: source.bottom + 1, bottom: to.row }, direction: 'down' }
      : { area: { ...source, top: to.row, bottom: source.top - 1 }, direction: 'up' };
  }
  return over > 0
    ? { area: { ...source, left: source.right + 1, right: to.column }, direction: 'right' }
    : { area: { ...source, left: to.column, right: source.left - 1 }, direction: 'left' };
}

interface Line {
  /** Cells to go on from, in the direction of the filling, and those to fill. */
  readonly sources: readonly Corner[];
  readonly targets: readonly Corner[];
}

/** What goes into the cell of a column in the row at a position. */
interface FilledCell {
  readonly at: number;
  readonly column: string;
  readonly entry: string;
}

export class FillActs {
  readonly #cells: SheetCells;

  constructor(cells: SheetCells) {
    this.#cells = cells;
  }

  /** Whether these cells filled on past the last row make rows: all that a row needs is among them. */
  makesRows({ left, right }: Rectangle): boolean {
    const { sheet, layer } = this.#cells;
    const { rows, filledRows } = layer.bounds();
    const filled = new Set(Array.from({ length: right - left + 1 }, (_, at) => layer.columnAt(left + at)));
    return rows > filledRows && sheet.columns.every(({ id, required }) => !required || filled.has(id));
  }

  /**
   * Fills an area from the source beside it; `way` undefined: as usual for what stands there. What lies past the last row,
   * from `firstNew` on, becomes rows.
   */
  fill(
    source: Rectangle,
    area: Rectangle,
    direction: Direction,
    way?: Way,
    firstNew = this.#cells.layer.bounds().filledRows,
  ): void {
    const lines = this.#lines(source, area, direction);
    const forward = direction === 'down' || direction === 'right';
    const offered = new Set(lines.flatMap(({ sources }) => this.#ways(sources)));
    const entries = lines.flatMap((line) => this.#fillLine(line, forward, way));
    const { commands, filled, made } = this.#commands(entries, firstNew);
    if (commands.length === 0) {
      tell('Nothing filled: these cells are filled by their formulas.', 'refusal');
      return;
    }
    const done = way ?? lines.map(({ sources }) => this.#ways(sources)[0]).find((one) => one !== 'copy') ?? 'copy';
    const others = [...offered].filter((one) => one !== done);
    this.#do(commands, () => {
      this.#cells.layer.select(unionOf(source, area));
      this.#cells.layer.focusAnchor();
      const stood = this.#standing(source, area);
      const again = others.map(
        (other): NoticeAct => ({
          label: OFFERS[other],
          run: () => {
            if (this.#standing(source, area) !== stood) {
              tell('The cells stand in other places now: undo the filling, then fill them again.', 'refusal');
              return;
            }
            UNDO.run();
            this.fill(source, area, direction, other, firstNew);
          },
          undoes: true,
        }),
      );
      tell(filledWords(filled, made), 'done', ...again);
    });
  }

  /** Which rows and columns stand at the places that are filled: another view has others there. */
  #standing(source: Rectangle, area: Rectangle): string {
    const { layer } = this.#cells;
    const all = rectangleOf(unionOf(source, area));
    return [...layer.rowsIn(all).map(({ id }) => id), ...layer.columnsIn(all)].join(' ');
  }

  /** Entries typed into the rows that are there, and rows made of the others; how many cells are filled, in how many new rows. */
  #commands(entries: readonly FilledCell[], firstNew: number) {
    const { sheet } = this.#cells;
    const made = new Map<number, Record<string, string>>();
    const commands: Command[] = [];
    let filled = 0;
    for (const { at, column, entry } of entries) {
      const row = this.#cells.row(at);
      if (at >= firstNew && entry !== '') made.set(at, { ...made.get(at), [column]: entry });
      else if (at < firstNew && row !== undefined) commands.push(this.#cells.typing(row, column, entry));
      else continue;
      filled += 1;
    }
    for (const cells of made.values()) commands.push({ command: 'insert row', sheet: sheet.id, entries: cells });
    return { commands, filled, made: made.size };
  }

  /** The other of counting and copying, for a drag with Ctrl held. */
  otherWay(source: Rectangle, direction: Direction): Way {
    const [first] = this.#lines(source, source, direction);
    const ways = this.#ways(first?.sources ?? []);
    return ways[0] === 'copy' ? (ways[1] ?? 'copy') : 'copy';
  }

  /** The first row of the selection into the others; a row alone takes what stands above it. Heads of groups are passed over. */
  fillDown(): void {
    for (const area of this.#cells.layer.rectangles()) {
      const rows = Array.from({ length: area.bottom - area.top + 1 }, (_, at) => area.top + at);
      const [first, second] = rows.filter((row) => !this.#isHead(row));
      if (first === undefined) continue;
      const top = second === undefined ? this.#rowAbove(first) : first;
      if (top >= 0) this.#copyInto({ ...area, top, bottom: top }, { ...area, top: top + 1 }, 'down');
    }
  }

  /** The nearest row above a position that is no head of a group; -1 where there is none. */
  #rowAbove(row: number): number {
    let above = row - 1;
    while (above >= 0 && this.#isHead(above)) above -= 1;
    return above;
  }

  #isHead(row: number): boolean {
    const handle = this.#cells.layer.rowAt(row);
    return handle !== undefined && isHead(handle);
  }

  /** The lines of a filling without heads of groups: nothing is filled from them or into them, and no step is counted for them. */
  #lines(source: Rectangle, area: Rectangle, direction: Direction): readonly Line[] {
    const rowsOf = (corners: readonly Corner[]): readonly Corner[] => corners.filter(({ row }) => !this.#isHead(row));
    return linesOf(source, area, direction).flatMap(({ sources, targets }): readonly Line[] => {
      const line: Line = { sources: rowsOf(sources), targets: rowsOf(targets) };
      return line.sources.length === 0 ? [] : [line];
    });
  }

  /** The first column of the selection into the others; a column alone takes what stands to its left. */
  fillRight(): void {
    for (const area of this.#cells.layer.rectangles()) {
      const left = area.left === area.right ? area.left - 1 : area.left;
      if (left >= 0) this.#copyInto({ ...area, left, right: left }, { ...area, left: left + 1 }, 'right');
    }
  }

  #copyInto(source: Rectangle, area: Rectangle, direction: Direction): void {
    const entries = this.#lines(source, area, direction).flatMap((line) => this.#fillLine(line, true, 'copy'));
    const { commands } = this.#commands(entries, Number.POSITIVE_INFINITY);
    if (commands.length > 0) this.#do(commands, () => announce(filledWords(commands.length)));
  }

  /** One entry into every selected cell that can be typed in; its bare figures are in `unit`, or in the unit of each column. */
  fillAll(entry: string, unit = ''): void {
    const { layer } = this.#cells;
    const corners = new Map(
      layer.rectangles().flatMap((area) => cellsOf(area).map((cell) => [`${cell.row} ${cell.column}`, cell] as const)),
    );
    const commands = [...corners.values()].flatMap((corner): Command[] => {
      const row = this.#cells.row(corner.row);
      const column = this.#cells.column(corner.column);
      return row === undefined || column === undefined || column.role === 'made'
        ? []
        : [this.#cells.typing(row, column.id, inColumn({ entry, unit }, column))];
    });
    if (commands.length > 0) this.#do(commands, () => announce(filledWords(commands.length)));
  }

  #do(commands: readonly Command[], then: () => void): void {
    const count = commands.length;
    const said = count === 1 ? message('fill cell') : message('fill cells', { count });
    this.#cells.write(commands, said, 'Nothing filled.', then);
  }

  #fillLine({ sources, targets }: Line, forward: boolean, way: Way | undefined): readonly FilledCell[] {
    const from = this.#sources(sources);
    const ways = this.#ways(sources);
    const chosen = way !== undefined && ways.includes(way) ? way : (ways[0] ?? 'copy');
    const series = seriesOf(from, chosen, forward);
    const copied = seriesOf(from, 'copy', forward);
    return targets.flatMap((corner, step): FilledCell[] => {
      const column = this.#cells.column(corner.column);
      if (column === undefined || column.role === 'made') return [];
      const source = sources[step % sources.length];
      const typedOver = source !== undefined && this.#cells.cell(source)?.origin === 'override';
      if (column.role === 'computed' && !typedOver) return [];
      const { unit = '' } = (source === undefined ? undefined : this.#cells.column(source.column)) ?? {};
      const written = (value: Filled): string =>
        inColumn({ entry: filledEntry(value, unit, this.#decimal), unit }, column);
      const entry = written(series(step));
      // A counted name that no row has is no link: what stands there is copied.
      const fits = column.type?.kind !== 'link' || this.#isTaken(column, entry);
      return [{ at: corner.row, column: column.id, entry: fits ? entry : written(copied(step)) }];
    });
  }

  /** The ways that make sense to go on from these cells, the usual one first: figures of several units show no step. */
  #ways(corners: readonly Corner[]): readonly Way[] {
    const units = new Set(corners.map(({ column }) => this.#cells.column(column)?.unit));
    return units.size > 1 ? ['copy'] : waysFor(this.#sources(corners));
  }

  #isTaken(column: ColumnView, entry: string): boolean {
    return tryEntry(this.#cells.book, this.#cells.sheet.id, column.id, entry).ok;
  }

  #sources(corners: readonly Corner[]): readonly Source[] {
    const { book, sheet } = this.#cells;
    return corners.map((corner): Source => {
      const row = this.#cells.row(corner.row);
      const column = this.#cells.column(corner.column);
      if (row === undefined || column === undefined) return { kind: 'blank' };
      return sourceOf(book, sheet.id, row.slot, column, this.#decimal);
    });
  }

  get #decimal(): string {
    return settings(this.#cells.book).writing?.decimal ?? '.';
  }
}

/** Column by column where it goes down or up, row by row where it goes across; nearest cells first. */
function linesOf(source: Rectangle, area: Rectangle, direction: Direction): readonly Line[] {
  const vertical = direction === 'down' || direction === 'up';
  const back = direction === 'up' || direction === 'left';
  const along = (rectangle: Rectangle, line: number): readonly Corner[] => {
    const cells = cellsOf(
      vertical ? { ...rectangle, left: line, right: line } : { ...rectangle, top: line, bottom: line },
    );
    return back ? cells.toReversed() : cells;
  };
  const [from, to] = vertical ? [source.left, source.right] : [source.top, source.bottom];
  return Array.from({ length: to - from + 1 }, (_, at) => ({
    sources: along(source, from + at),
    targets: along(area, from + at),
  }));
}

function unionOf(a: Rectangle, b: Rectangle) {
  return {
    anchor: { row: Math.min(a.top, b.top), column: Math.min(a.left, b.left) },
    head: { row: Math.max(a.bottom, b.bottom), column: Math.max(a.right, b.right) },
  };
}

function filledWords(count: number, rows = 0): string {
  const cells = count === 1 ? 'Filled a cell' : `Filled ${count} cells`;
  return rows === 0 ? `${cells}.` : `${cells}, in ${rows === 1 ? 'a new row' : `${rows} new rows`}.`;
}
