// What is typed beside the rows of a document, as the season to come takes it along: on rows that follow from others, and how far
// figures and days may be off. What of it stays behind is told.

import { byCell, type Content, type DocumentData, sheetView, type Workbook } from '../../engine/index.ts';
import { contentInWords, counted } from './act.ts';
import type { HeirsOf } from './heirs.ts';
import { contentLater } from './rows.ts';

type Aside = DocumentData['aside'];
type Ranges = NonNullable<DocumentData['ranges']>;

/** Sheets of the template on whose made rows what is typed lasts; on others it is of the season alone. */
const LASTING: readonly string[] = ['bed-nitrogen'];

interface AsideAlong {
  readonly aside: Aside;
  /** Cells left behind, by sheet. */
  readonly left: ReadonlyMap<string, number>;
}

/**
 * What is typed on made rows goes where their rows live on, if it is in a sheet or column of a person's own or lasts anyway. `stays`
 * says of which rows all is taken along as it is.
 */
export function asideAlong(
  workbook: Workbook,
  data: DocumentData,
  { heirs, years, stays }: { readonly heirs: HeirsOf; readonly years: number; stays(row: string): boolean },
): AsideAlong {
  const along: Cell<Content>[] = [];
  const left = new Map<string, number>();
  for (const { sheet, row, column, content } of cellsOf(data.aside)) {
    const into = lasts(workbook, sheet, column) ? heirs(sheet, row) : [];
    for (const { id, isMoved } of into)
      along.push({ sheet, row: id, column, content: isMoved ? contentLater(content, years) : content });
    if (stays(row)) along.push({ sheet, row, column, content });
    else if (into.length === 0) left.set(sheet, (left.get(sheet) ?? 0) + 1);
  }
  return { aside: byCell(along), left };
}

/** Whether what is typed in a column lasts as long as its row: not where it is of a season, such as a job done. */
function lasts(workbook: Workbook, sheet: string, column: string): boolean {
  const view = sheetView(workbook, sheet);
  const found = view?.columns.find(({ id }) => id === column);
  const isMade = view !== undefined && !view.entered && !view.oneRow;
  return !isMade || view.own || found === undefined || found.own || LASTING.includes(sheet);
}

/** Ranges go with the cells that they are of, and not where something else stands in the season to come. */
export function rangesAlong(
  ranges: Ranges,
  {
    data,
    next,
    heirs,
    years,
  }: { readonly data: DocumentData; readonly next: DocumentData; readonly heirs: HeirsOf; readonly years: number },
): Ranges {
  const along: Cell<Ranges[string][string][string]>[] = [];
  const [before, after] = [contentsOf(data), contentsOf(next)];
  for (const { sheet, row, column, content: range } of cellsOf(ranges)) {
    const was = before(sheet, row, column);
    for (const { id, isMoved } of heirs(sheet, row)) {
      const on = (content: Content): Content => (isMoved ? contentLater(content, years) : content);
      if (contentInWords(on(was)) !== contentInWords(after(sheet, id, column))) continue;
      along.push({ sheet, row: id, column, content: { low: on(range.low), high: on(range.high) } });
    }
  }
  return byCell(along);
}

/** Answers what a document holds in a cell. */
function contentsOf({ rows, aside }: DocumentData): (sheet: string, row: string, column: string) => Content {
  const bySheet = new Map(
    Object.entries(rows).map(([sheet, list]) => [sheet, new Map(list.map((one) => [one.id, one]))]),
  );
  return (sheet, row, column) => bySheet.get(sheet)?.get(row)?.cells[column] ?? aside[sheet]?.[row]?.[column] ?? null;
}

/** 'What is typed on rows of 2027 alone stays with it (Tasks: 3 cells).'; '' where there is nothing such. */
export function toldLeft(workbook: Workbook, left: AsideAlong['left'], ending: number): string {
  if (left.size === 0) return '';
  const parts = [...left].map(
    ([sheet, count]) => `${sheetView(workbook, sheet)?.name ?? sheet}: ${counted(count, 'cell')}`,
  );
  return ` What is typed on rows of ${ending} alone stays with it (${parts.join(', ')}).`;
}

type ByCell<T> = Readonly<Record<string, Readonly<Record<string, Readonly<Record<string, T>>>>>>;

interface Cell<T> {
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
  readonly content: T;
}

function cellsOf<T>(all: ByCell<T>): readonly Cell<T>[] {
  return Object.entries(all).flatMap(([sheet, rows]) =>
    Object.entries(rows).flatMap(([row, cells]) =>
      Object.entries(cells).map(([column, content]) => ({ sheet, row, column, content })),
    ),
  );
}
