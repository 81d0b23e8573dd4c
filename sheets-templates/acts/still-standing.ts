// What still stands in the ground when the season to come begins: overwintering garlic and onions, the last leeks, perennials. It goes
// into that season as what it is: at its true dates, on its bed, with what was noted of it. What stands for years is noted of
// anew each season.

import { type Content, type DocumentData, isoDate, rowId, rows, type Workbook } from '../../engine/index.ts';
import { type RowOf, rowAt, rowNamed } from './act.ts';
import { type Cells, type Row, rowsIn, without } from './rows.ts';

/** A planting that stands. */
export interface Standing {
  readonly row: Row;
  readonly of: RowOf;
  /** It comes again in spring, so none is planted anew. */
  readonly forYears: boolean;
}

/** Plantings that stand in the ground on a day, in the order of their rows; none that Records say was cleared. */
export function standingOn(workbook: Workbook, data: DocumentData, day: number): readonly Standing[] {
  const cleared = new Set(
    (data.rows.records ?? []).flatMap(({ cells }) =>
      cells.what === 'cleared' ? (rowNamed(cells.planting) ?? []) : [],
    ),
  );
  return rowsIn(workbook, data, 'plantings').flatMap(({ row, of }): Standing[] => {
    const forYears = comesAgain(workbook, of);
    return !cleared.has(row.id) && standsOn(workbook, of, day, forYears) ? [{ row, of, forYears }] : [];
  });
}

function comesAgain(workbook: Workbook, of: RowOf): boolean {
  const variety = of.number('variety');
  if (variety === undefined) return false;
  return rowAt(workbook, 'varieties', '', variety).value('comes-again-in-spring') === true;
}

function standsOn(workbook: Workbook, of: RowOf, day: number, forYears: boolean): boolean {
  const [from, free] = [plantedOn(workbook, of), of.number('bed-free')];
  if (from === undefined || from >= day) return false;
  if (forYears && of.view('bed-free').origin !== 'override') return true;
  return free !== undefined && free > day;
}

/** In the bed from: as noted in Records, where no error is found in it, else as planned. */
function plantedOn(workbook: Workbook, of: RowOf): number | undefined {
  const sown = of.text('start') === 'direct seed' ? notedOn(workbook, of, 'sown') : undefined;
  return notedOn(workbook, of, 'set out') ?? sown ?? of.number('planted-out');
}

/** The first day on which Records have it, of the lines that count for the planting. */
function notedOn(workbook: Workbook, of: RowOf, what: string): number | undefined {
  const days = [...rows(workbook, 'records')].flatMap((slot) => {
    const line = rowAt(workbook, 'records', '', slot);
    return line.number('counts-for') === of.slot && line.text('what') === what ? (line.number('on') ?? []) : [];
  });
  return days.length === 0 ? undefined : Math.min(...days);
}

/** Its row in the season to come. `lots` are the ids of the lots that are left. */
export function carried(workbook: Workbook, { row, of }: Standing, ending: number, lots: ReadonlySet<string>): Row {
  const lotIsGone = row.cells['seed-lot'] !== undefined && !lots.has(rowNamed(row.cells['seed-lot']) ?? '');
  const germination = of.number('germination');
  const stood: Readonly<Record<string, Content | undefined>> = {
    'carried-from': of.number('carried-from') ?? ending,
    sown: dateOf(notedOn(workbook, of, 'sown') ?? of.number('sown')),
    'planted-out': dateOf(plantedOn(workbook, of)),
    bed: bedOf(workbook, of, 'bed'),
    'spreads-over': bedOf(workbook, of, 'spreads-over'),
    'bed-length-used': row.cells['bed-length-used'] ?? numberOf(of.number('bed-length-used'), 'm'),
    germination: lotIsGone && germination !== undefined ? numberOf(germination * 100, '%') : row.cells.germination,
  };
  const cells = without(
    row.cells,
    ...['succession', 'as-laid', 'not-placed', 'proposed-bed', 'proposed-bed-beside'],
    ...(lotIsGone ? ['seed-lot'] : []),
  );
  return { ...row, cells: { ...cells, ...known(stood) } };
}

function known(cells: Readonly<Record<string, Content | undefined>>): Cells {
  return Object.fromEntries(
    Object.entries(cells).flatMap(([column, content]) => (content === undefined ? [] : [[column, content]])),
  );
}

function dateOf(day: number | undefined): Content | undefined {
  return day === undefined ? undefined : { date: isoDate(day) };
}

function numberOf(number: number | undefined, unit: string): Content | undefined {
  return number === undefined ? undefined : { number: Number(number.toPrecision(12)), unit, follows: true };
}

function bedOf(workbook: Workbook, of: RowOf, column: string): Content | undefined {
  const bed = of.number(column);
  return bed === undefined ? undefined : { row: rowId(workbook, 'beds', bed) };
}

/** A year, and the letter that set a name apart from another, at the end of a name. */
const YEAR_AT_THE_END = / \d{4}( [b-z])?$/;

/**
 * The name under which the same is planted again: 'Garlic 2028', where that is taken 'Garlic 2028 b' and on. A year at the end of
 * the name gives way to the new one, whichever it is.
 */
export function nameAnew(name: string, ending: number, season: number, taken: ReadonlySet<string>): string {
  const bare = name.replace(YEAR_AT_THE_END, '');
  const named =
    bare === name && name.includes(String(ending))
      ? name.replaceAll(String(ending), String(season))
      : `${bare} ${season}`;
  const free = ['', ...'bcdefghijklmnopqrstuvwxyz'].map((letter) => (letter === '' ? named : `${named} ${letter}`));
  return free.find((one) => !taken.has(one.toLowerCase())) ?? named;
}

/** Records of the plantings that are told of as one when they are over: not of those that stand for years. */
export function recordsAlong(data: DocumentData, standing: readonly Standing[]): readonly Row[] {
  const along = idsOnce(standing);
  return (data.rows.records ?? []).filter(({ cells }) => along.has(rowNamed(cells.planting) ?? ''));
}

/** What is typed on made rows of those plantings, such as jobs done and hours taken. */
export function notesAlong(data: DocumentData, standing: readonly Standing[]): DocumentData['aside'] {
  const along = idsOnce(standing);
  const isOf = (id: string): boolean => id.split(/[~()]+/).some((part) => along.has(part));
  return Object.fromEntries(
    Object.entries(data.aside).flatMap(([sheet, made]) => {
      const kept = Object.entries(made).filter(([id]) => isOf(id));
      return kept.length === 0 ? [] : [[sheet, Object.fromEntries(kept)]];
    }),
  );
}

/** Ids of the plantings that stand once and then are over. */
export function idsOnce(standing: readonly Standing[]): ReadonlySet<string> {
  return new Set(standing.flatMap(({ row, forYears }) => (forYears ? [] : [row.id])));
}
