// The season that ends made into the one that comes: lots aged and what is left of them, what stood on each bed into its history, what
// was picked into past results, dates a year on, what still stands in the ground carried along, the plan copied by choice. Gives a
// new document; the old one stays as it is.

import {
  type Content,
  cellValue,
  civilDayOfIso,
  type DocumentData,
  isoDate,
  rowId,
  rows,
  rowWithId,
  type Workbook,
} from '../../engine/index.ts';
import { counted, rowAt, rowNamed } from './act.ts';
import { turnedRows, withHeirs } from './heirs.ts';
import { asLaid } from './lay-succession.ts';
import { lotsLeft } from './lots-left.ts';
import { ownNaming, toldNaming } from './own-rows.ts';
import { type Cells, isoLater, movedOn, numberOf, placed, type Row, rowsIn, without } from './rows.ts';
import { carried, idsOnce, isNotedOf, nameAnew, recordsAlong, type Standing, standingOn } from './still-standing.ts';
import { asideAlong, rangesAlong, toldLeft } from './typed-beside.ts';

/** Which plantings come along: those typed by hand, those that successions laid too, or none. */
export const PLANS = ['own', 'all', 'none'] as const;

/**
 * What comes along besides: of plantings the beds they stood on and the seed lots of which something is left, and the rows of own
 * sheets that name plantings.
 */
export const ALONG = ['beds', 'lots', 'own-rows'] as const;

export interface RollOverOptions {
  /** The season to come. */
  readonly season: number;
  readonly plan: (typeof PLANS)[number];
  /** Nothing where absent: beds then follow from the rotation, seed is bought, and what own sheets say of plantings is of their season. */
  readonly along?: readonly (typeof ALONG)[number][];
}

export type RolledOver =
  | { readonly ok: true; readonly data: DocumentData; readonly said: string }
  | { readonly ok: false; readonly why: string };

/** Days before a season from which what was given to a bed still counts. */
const HALF_A_YEAR = 182;

/** Sheets whose typed dates move on by the years between the seasons. */
const MOVING: readonly string[] = ['outlets', 'demand', 'own-costs', 'own-jobs', 'hands', 'successions'];
/** Sheets of the season alone, left behind. */
const LEFT_BEHIND: readonly string[] = ['records', 'budget'];

/** The year that a workbook plans; 0 where Farm has none. */
export function seasonOf(workbook: Workbook): number {
  return rowAt(workbook, 'farm', '', 0).number('season') ?? 0;
}

/** The document of the next season. */
export function rollOver(workbook: Workbook, { season, plan, along = [] }: RollOverOptions): RolledOver {
  const farm = rowAt(workbook, 'farm', '', 0);
  const [ending, starts] = [farm.number('season'), farm.number('season-starts')];
  if (ending === undefined || starts === undefined) {
    return { ok: false, why: 'Farm has no season: enter its year first.' };
  }
  if (season <= ending) {
    return {
      ok: false,
      why: `The season ${season} does not come after ${ending}, the one of this workbook: name a later one.`,
    };
  }
  const { branches = {}, ranges = {}, ...data }: DocumentData = workbook.data();
  const left = Object.keys(branches).length;
  const years = season - ending;
  const on = (cells: Cells): Cells => movedOn(cells, years);
  const known = new Set([...MOVING, ...LEFT_BEHIND]);
  const newStart = civilDayOfIso(isoLater(isoDate(starts), years)) ?? starts;
  const standing = standingOn(workbook, data, newStart);
  const naming = ownNaming(workbook, data, idsOnce(standing));
  const ownAlong = along.includes('own-rows');
  const kept = Object.entries(data.rows)
    .filter(([sheet]) => !known.has(sheet))
    .map(([sheet, list]): [string, readonly Row[]] => {
      const behind = ownAlong ? undefined : naming.get(sheet)?.rows;
      return [sheet, behind === undefined ? list : list.filter(({ id }) => !behind.has(id))];
    });
  const sheets: Record<string, readonly Row[]> = {
    ...Object.fromEntries(kept),
    ...Object.fromEntries(
      MOVING.flatMap((sheet) => {
        const given = data.rows[sheet];
        return given === undefined ? [] : [[sheet, given.map((row) => ({ ...row, cells: on(row.cells) }))]];
      }),
    ),
  };
  const lots = lotsLeft(workbook, data, ending);
  const leftLots = new Set(lots.map(({ id }) => id));
  const taken = new Set((data.rows['own-jobs'] ?? []).map(({ cells }) => String(cells.job).toLowerCase()));
  const still = standing.map((one) => carried(workbook, one, ending, leftLots));
  const copies = plan === 'none' ? [] : copiesOf(workbook, data, { plan, years, season, along, leftLots, standing });
  const results = resultsOf(workbook, data, ending, idsOnce(standing));
  const jobs = (data.rows['own-jobs'] ?? []).map((row) => ({
    row,
    into: ownJobs(workbook, row, { copies, standing, newStart, years, season, taken }),
  }));
  const changed: Record<string, readonly Row[]> = {
    farm: (data.rows.farm ?? []).map((row) => ({ ...row, cells: begunOn(data.today, { ...on(row.cells), season }) })),
    beds: bedsOf(workbook, data, years),
    'seed-lots': lots,
    plantings: placed([...still, ...copies.map(({ row }) => row)]),
    records: recordsAlong(data, standing),
    successions: plan === 'none' ? [] : (sheets.successions ?? []).map(unlaid),
    'cover-crops': (data.rows['cover-crops'] ?? []).filter(({ cells }) => lastsTo(cells.ended, newStart)),
    inputs: (data.rows.inputs ?? []).filter(({ cells }) => lastsTo(cells['given-on'], newStart - HALF_A_YEAR)),
    'past-results': results,
    'own-jobs': placed(jobs.flatMap(({ into }) => into)),
  };
  const all = Object.entries({ ...sheets, ...changed }).filter(([, list]) => list.length > 0);
  const title = data.title.includes(String(ending))
    ? data.title.replaceAll(String(ending), String(season))
    : `${data.title} ${season}`;
  const learned = results.length - (data.rows['past-results'] ?? []).length;
  const bare: DocumentData = { ...data, title, rows: Object.fromEntries(all), aside: {} };
  const turned = turnedRows(data, bare, { moving: [...MOVING, 'farm'], still, copies, jobs });
  const { next, notAlong } = withHeirs(workbook, bare, turned, (heirs) => {
    const { aside, left } = asideAlong(workbook, data, { heirs, years, stays: isNotedOf(standing) });
    const withAside = { ...bare, aside };
    const off = rangesAlong(ranges, { data, next: withAside, heirs, years });
    return { next: Object.keys(off).length === 0 ? withAside : { ...withAside, ranges: off }, notAlong: left };
  });
  const withTheirs = along.filter((one) => one !== 'own-rows').join(' and ');
  return {
    ok: true,
    data: next,
    said: `Season ${season}: ${toldStanding(still)}${counted(copies.length, 'planting')} copied${withTheirs === '' ? '' : ` with their ${withTheirs}`}, ${counted(lots.length, 'seed lot')} left, ${counted(learned, 'result')} kept of ${ending}${left === 0 ? '' : `, ${counted(left, 'branch', 'branches')} left behind with the season of which ${left === 1 ? 'it is a plan' : 'they are plans'}`}. ${along.includes('beds') ? 'Look at what Attention says of rotation' : 'Propose beds'}, and lay the successions anew.${toldNaming(naming, ending, ownAlong)}${toldLeft(workbook, notAlong, ending)}`,
  };
}

/** '2 plantings carried along that still stand (Asparagus, Garlic), '; '' where nothing stands. */
function toldStanding(still: readonly Row[]): string {
  if (still.length === 0) return '';
  const names = still.map(({ cells }) => String(cells.planting)).join(', ');
  return `${counted(still.length, 'planting')} carried along that still ${still.length === 1 ? 'stands' : 'stand'} (${names}), `;
}

/** Dates are proposed from the day on which the season to come is begun, where they were from the day of the one that ends. */
function begunOn(today: number, cells: Cells): Cells {
  const column = 'nothing-sown-before';
  return column in cells ? { ...cells, [column]: { date: isoDate(today) } } : cells;
}

/** Whether something without an end, or with an end on or after a day, is still there on it. */
function lastsTo(end: Content | undefined, day: number): boolean {
  if (typeof end !== 'object' || end === null || !('date' in end)) return true;
  return (civilDayOfIso(end.date) ?? Number.NEGATIVE_INFINITY) >= day;
}

function unlaid(row: Row): Row {
  return { ...row, cells: without(row.cells, 'laid-as', 'not-laid') };
}

const PAST = ['family-last-year', 'family-two-years-ago', 'family-three-years-ago', 'family-four-years-ago'] as const;

/** What stood on each bed becomes its last year; where seasons were left out, those years are not known. */
function bedsOf(workbook: Workbook, data: DocumentData, years: number): readonly Row[] {
  return rowsIn(workbook, data, 'beds').map(({ row, of }) => {
    const stood = [of.text('families-this-season'), ...PAST.map((column) => of.text(column))];
    const past = [...Array.from({ length: years - 1 }, () => ''), ...stood].slice(0, PAST.length);
    const history = PAST.flatMap((column, at) =>
      past[at] === '' || past[at] === undefined ? [] : [[column, past[at]]],
    );
    return { ...row, cells: { ...without(row.cells, ...PAST), ...Object.fromEntries(history) } };
  });
}

const OF_BEDS = ['bed', 'spreads-over', 'proposed-bed', 'proposed-bed-beside'] as const;

/** A planting a year on, and the id of the one it is like: its own where that is over. */
interface Copy {
  readonly from: string;
  readonly row: Row;
}

interface Copied {
  readonly plan: 'own' | 'all';
  readonly years: number;
  readonly season: number;
  readonly along: readonly (typeof ALONG)[number][];
  /** Ids of the lots of the season to come. */
  readonly leftLots: ReadonlySet<string>;
  readonly standing: readonly Standing[];
}

/**
 * Plantings a year on; without beds, which follow from the rotation, and without lots, unless they are to come along. A lot of which
 * nothing is left goes in any case. What was itself carried along is not planted again, nor what stands for years; of
 * what stands through the winter a new one comes beside it.
 */
function copiesOf(workbook: Workbook, data: DocumentData, copied: Copied): readonly Copy[] {
  const { plan, years, season, along, leftLots, standing } = copied;
  const withBeds = along.includes('beds');
  const stands = new Map(standing.map((one) => [one.row.id, one]));
  const taken = new Set((data.rows.plantings ?? []).map(({ cells }) => String(cells.planting).toLowerCase()));
  return rowsIn(workbook, data, 'plantings')
    .filter(({ row }) => plan === 'all' || row.cells.succession === undefined)
    .filter(({ row, of }) => of.number('carried-from') === undefined && stands.get(row.id)?.forYears !== true)
    .map(({ row, of }): Copy => {
      const takesLot = along.includes('lots') && leftLots.has(rowNamed(row.cells['seed-lot']) ?? '');
      const gone = [...(withBeds ? [] : OF_BEDS), ...(takesLot ? [] : ['seed-lot'])];
      const cells = movedOn(without(row.cells, 'not-placed', ...gone), years);
      const long = of.number('bed-length-used');
      const fromBed =
        !withBeds && row.cells.bed !== undefined && cells['bed-length-used'] === undefined && long !== undefined;
      const isWanted = cells.wanted !== undefined || cells['wanted-pieces'] !== undefined;
      const whole: Cells =
        fromBed && !isWanted ? { ...cells, 'bed-length-used': { number: long, unit: 'm', follows: true } } : cells;
      const wasAsLaid = row.cells['as-laid'] === asLaid(new Map(Object.entries(row.cells)));
      const laid = wasAsLaid ? { ...whole, 'as-laid': asLaid(new Map(Object.entries(whole))) } : whole;
      if (!stands.has(row.id)) return { from: row.id, row: { ...row, cells: laid } };
      const planting = nameAnew(of.text('planting'), season - years, season, taken);
      taken.add(planting.toLowerCase());
      return { from: row.id, row: { id: workbook.newId(), at: '', cells: { ...laid, planting } } };
    });
}

interface JobsOn {
  readonly copies: readonly Copy[];
  readonly standing: readonly Standing[];
  /** First day of the season to come. */
  readonly newStart: number;
  readonly years: number;
  readonly season: number;
  /** Names of own jobs, in small letters. */
  readonly taken: ReadonlySet<string>;
}

/**
 * An own job a year on, of what is planted anew where its planting stands once. What of the job is still to come on the one that
 * stands stays as it is, at its own day, and none is made a year on where nothing is planted anew.
 */
function ownJobs(
  workbook: Workbook,
  row: Row,
  { copies, standing, newStart, years, season, taken }: JobsOn,
): readonly Row[] {
  const planting = rowNamed(row.cells.planting);
  const moved = { ...row, cells: movedOn(row.cells, years) };
  if (!idsOnce(standing).has(planting ?? '')) return [moved];
  const slot = rowWithId(workbook, 'own-jobs', row.id);
  const last = slot === undefined ? undefined : rowAt(workbook, 'own-jobs', row.id, slot).number('until');
  const still = last !== undefined && last >= newStart ? [row] : [];
  const copy = copies.find(({ from }) => from === planting);
  if (copy === undefined) return still;
  const cells = { ...moved.cells, planting: { row: copy.row.id } };
  if (still.length === 0) return [{ ...row, cells }];
  const job = nameAnew(String(row.cells.job), season - years, season, taken);
  return [...still, { id: workbook.newId(), at: '', cells: { ...cells, job } }];
}

/** The figures that are learned from: in which unit they are kept, and canonical figures to one of it. */
const FIGURES: readonly (readonly [column: string, unit: string, canonical: number])[] = [
  ['germination', '%', 0.01],
  ['field-survival', '%', 0.01],
  ['yield', 'kg/m2', 1],
  ['warmth-to-harvest', 'degC day', 1],
  ['warmth-to-harvest-direct', 'degC day', 1],
  ['picking-rate', 'kg/h', 24],
  ['packing-rate', 'kg/h', 24],
  ['weeding-time', 'min/m2', 1 / 1440],
  ['blocks-sown', '1/h', 24],
  ['plants-set-out', '1/h', 24],
  ['row-sown', 'm/h', 24],
];

/** Past results with those of the season that ends; of plantings that are not over yet they come when they are. */
function resultsOf(
  workbook: Workbook,
  data: DocumentData,
  ending: number,
  notOver: ReadonlySet<string>,
): readonly Row[] {
  const now = [...rows(workbook, 'planting-results')].flatMap((slot): Row[] => {
    const of = rowAt(workbook, 'planting-results', '', slot);
    const planting = of.value('planting');
    const variety = typeof planting === 'number' ? cellValue(workbook, 'plantings', planting, 'variety') : null;
    const figures = FIGURES.flatMap(([column, unit, canonical]): [string, Content][] => {
      const value = of.number(column);
      return value === undefined ? [] : [[column, numberOf(value / canonical, unit)]];
    });
    const isOver = typeof planting === 'number' && !notOver.has(rowId(workbook, 'plantings', planting));
    if (typeof variety !== 'number' || !isOver || figures.length === 0) return [];
    const named = {
      season: ending,
      planting: of.text('planting'),
      variety: { row: rowId(workbook, 'varieties', variety) },
    };
    return [{ id: workbook.newId(), at: '', cells: { ...named, ...Object.fromEntries(figures) } }];
  });
  return placed([...(data.rows['past-results'] ?? []), ...now]);
}
