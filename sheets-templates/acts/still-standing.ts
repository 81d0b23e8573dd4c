// What still stands in the ground when the season to come begins: overwintering garlic and onions, the last leeks, perennials. It goes
// into that season as what it is: at its true dates, on its bed, with what was noted of it. What stands for years is noted of
// anew each season.

import { type Content, type DocumentData, isoDate, rowId, rows, type Workbook } from '../../engine/index.ts';
import { partsOfId, type RowOf, rowAt, rowNamed } from './act.ts';
import { type Cells, numberOf, type Row, rowsIn, without } from './rows.ts';

/** A planting that stands. */
export interface Standing {
  readonly row: Row;
  readonly of: RowOf;
  /** It comes again in spring, so none is planted anew. */
  readonly forYears: boolean;
  readonly noted: NotedDays;
}

/** The first day on which Records have each thing that is done, of the lines that count for a planting. */
type NotedDays = ReadonlyMap<string, number>;

/** Plantings that stand in the ground on a day, in the order of their rows; none that Records say was cleared. */
export function standingOn(workbook: Workbook, data: DocumentData, day: number): readonly Standing[] {
  const cleared = new Set(
    (data.rows.records ?? []).flatMap(({ cells }) =>
      cells.what === 'cleared' ? (rowNamed(cells.planting) ?? []) : [],
    ),
  );
  const days = notedDays(workbook);
  return rowsIn(workbook, data, 'plantings').flatMap(({ row, of }): Standing[] => {
    const standing = { row, of, forYears: comesAgain(workbook, of), noted: days.get(of.slot) ?? new Map() };
    return !cleared.has(row.id) && standsOn(standing, day) ? [standing] : [];
  });
}

/** By the slot of the planting. */
function notedDays(workbook: Workbook): ReadonlyMap<number, NotedDays> {
  const days = new Map<number, Map<string, number>>();
  for (const slot of rows(workbook, 'records')) {
    const line = rowAt(workbook, 'records', '', slot);
    const [planting, on, what] = [line.number('counts-for'), line.number('on'), line.text('what')];
    if (planting === undefined || on === undefined) continue;
    const noted = days.get(planting) ?? new Map<string, number>();
    days.set(planting, noted.set(what, Math.min(on, noted.get(what) ?? on)));
  }
  return days;
}

function comesAgain(workbook: Workbook, of: RowOf): boolean {
  const variety = of.number('variety');
  if (variety === undefined) return false;
  return rowAt(workbook, 'varieties', '', variety).value('comes-again-in-spring') === true;
}

function standsOn(standing: Standing, day: number): boolean {
  const { of, forYears } = standing;
  const [from, free] = [plantedOn(standing), of.number('bed-free')];
  if (from === undefined || from >= day) return false;
  if (forYears && of.view('bed-free').origin !== 'override') return true;
  return free !== undefined && free > day;
}

/** In the bed from: as noted in Records, where no error is found in it, else as planned. */
function plantedOn({ of, noted }: Standing): number | undefined {
  const sown = of.text('start') === 'direct seed' ? noted.get('sown') : undefined;
  return noted.get('set out') ?? sown ?? of.number('planted-out');
}

/** Its row in the season to come. `lots` are the ids of the lots that are left. */
export function carried(workbook: Workbook, standing: Standing, ending: number, lots: ReadonlySet<string>): Row {
  const { row, of, noted } = standing;
  const lotIsGone = row.cells['seed-lot'] !== undefined && !lots.has(rowNamed(row.cells['seed-lot']) ?? '');
  const germination = of.number('germination');
  const stood: Readonly<Record<string, Content | undefined>> = {
    'carried-from': of.number('carried-from') ?? ending,
    sown: dateOf(noted.get('sown') ?? of.number('sown')),
    'planted-out': dateOf(plantedOn(standing)),
    bed: bedOf(workbook, of, 'bed'),
    'spreads-over': bedOf(workbook, of, 'spreads-over'),
    'bed-length-used': row.cells['bed-length-used'] ?? metresOf(of.number('bed-length-used')),
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

function metresOf(metres: number | undefined): Content | undefined {
  return metres === undefined ? undefined : numberOf(metres, 'm');
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

/** Whether a made row is of those plantings, so that what is typed on it, such as jobs done and hours taken, stays. */
export function isNotedOf(standing: readonly Standing[]): (row: string) => boolean {
  const along = idsOnce(standing);
  return (row) => partsOfId(row).some((part) => along.has(part));
}

/** Ids of the plantings that stand once and then are over. */
export function idsOnce(standing: readonly Standing[]): ReadonlySet<string> {
  return new Set(standing.flatMap(({ row, forYears }) => (forYears ? [] : [row.id])));
}
