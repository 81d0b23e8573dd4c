// Room and hands by week: bench, curing racks, stores and hours, each beside what there is. Figures in the sheets' own units.
// Pure: from the engine's queries to picture models; the picture and the tests call it.

import {
  type Book,
  type ColumnView,
  ONLY_ROW,
  rowName,
  rows,
  rowWithId,
  settings,
  sheetView,
} from '../../../../engine/index.ts';
import { FARM, PLANTINGS } from '../../panels/columns.ts';
import { type Season, seasonOf } from '../../panels/read.ts';
import { dayWords } from '../../store/day-words.ts';
import { columnOf } from '../../store/sheets.ts';
import { askRow, askRows, bareFigure, hasColumns, type Needs } from '../kit/ask.ts';
import { type Column, type ColumnsModel, overLimit, type Part, totalOf, withSaidUnit } from '../kit/model.ts';
import { mostInWeek, type Span, weeksOf, weekWords } from '../kit/weeks.ts';

const BENCH: Needs = { [PLANTINGS]: ['bench-area', 'on-bench-from', 'on-bench-until'], [FARM]: ['bench-area'] };
const RAISED: Needs = {
  raising: ['area', 'on-bench-from', 'first-trays-until', 'area-potted-on', 'pot-on', 'on-bench-until'],
};
const CURING: Needs = { 'harvest-and-curing': ['rack-area', 'brought-in', 'cured-on'], [FARM]: ['curing-area'] };
const STORES: Needs = { 'stores-by-week': ['store', 'week-starts', 'left', 'room'] };
const HOURS: Needs = { labour: ['monday', 'hours'] };

/** Those that the workbook has sheets and rows for: bench, racks, each store, hours. */
export function roomPictures(book: Book): readonly ColumnsModel[] {
  return [benchByWeek(book), racksByWeek(book), ...storesByWeek(book), hoursByWeek(book)].flatMap((one) => one ?? []);
}

export function hasRoom(book: Book): boolean {
  return [BENCH, CURING, STORES, HOURS].some((needs) => hasColumns(book, needs));
}

/** Room is short where it is short for a day; the sheet of the weeks looks at one day of each. */
const RACKS_COUNT = 'A week is as full as its fullest day.';
const BENCH_COUNTS = 'A week is as full as its fullest day, where Propagation has what stands on the Thursday.';

const ONE: readonly Part[] = [{ name: 'taken', mark: 'mark-second' }];

export function benchByWeek(book: Book): ColumnsModel | undefined {
  if (!hasColumns(book, BENCH)) return undefined;
  const about = {
    title: 'Bench by week',
    what: 'of bench',
    sheet: PLANTINGS,
    column: 'bench-area',
    counts: BENCH_COUNTS,
  };
  return spansByWeek(book, about, benchSpans(book), farmRoom(book, 'bench-area'), 'the bench there is');
}

/** Trays as sown and what is potted on, as the sheet of raising has them; without that sheet, trays from sowing to planting out. */
function benchSpans(book: Book): readonly Span[] {
  if (!hasColumns(book, RAISED)) return spansOf(book, PLANTINGS, 'bench-area', 'on-bench-from', 'on-bench-until');
  return [
    ...spansOf(book, 'raising', 'area', 'on-bench-from', 'first-trays-until'),
    ...spansOf(book, 'raising', 'area-potted-on', 'pot-on', 'on-bench-until'),
  ];
}

function spansOf(book: Book, sheet: string, area: string, begins: string, ends: string): readonly Span[] {
  return askRows(book, sheet).flatMap((row): readonly Span[] => {
    const [amount, from, until] = [row.figure(area), row.figure(begins), row.figure(ends)];
    return amount === undefined || from === undefined || until === undefined ? [] : [{ from, until, amount }];
  });
}

export function racksByWeek(book: Book): ColumnsModel | undefined {
  if (!hasColumns(book, CURING)) return undefined;
  const sheet = 'harvest-and-curing';
  const spans = spansOf(book, sheet, 'rack-area', 'brought-in', 'cured-on');
  const about = { title: 'Curing racks by week', what: 'of racks', sheet, column: 'rack-area', counts: RACKS_COUNT };
  return spansByWeek(book, about, spans, farmRoom(book, 'curing-area'), 'the racks there are');
}

function farmRoom(book: Book, column: string): number | undefined {
  const slot = rowWithId(book, FARM, ONLY_ROW);
  return slot === undefined ? undefined : askRow(book, FARM, slot).figure(column);
}

interface About {
  readonly title: string;
  /** 'of bench': after the figure and its unit. */
  readonly what: string;
  /** Which day of a week counts, in a sentence. */
  readonly counts: string;
  /** The column whose unit it is shown in. */
  readonly sheet: string;
  readonly column: string;
}

/** The fullest day of each week. */
function spansByWeek(
  book: Book,
  about: About,
  spans: readonly Span[],
  room: number | undefined,
  limitName: string,
): ColumnsModel | undefined {
  if (spans.length === 0) return undefined;
  const season = wide(seasonOf(book), spans);
  const view = columnOf(sheetView(book, about.sheet), about.column);
  const limit = room === undefined ? undefined : bareFigure(view, room);
  const columns = weeksOf(season).map(
    (week): Column => ({ ...week, parts: [bareFigure(view, mostInWeek(spans, week))], limit }),
  );
  const model = weekly(book, { ...about, view }, { season, columns, parts: ONE, limitName });
  return { ...model, says: `${model.says} ${about.counts}` };
}

/** The season, with what began before it. */
function wide({ first, last }: Season, spans: readonly Span[]): Season {
  return { first: Math.min(first, ...spans.map(({ from }) => from)), last };
}

function storesByWeek(book: Book): readonly ColumnsModel[] {
  if (!hasColumns(book, STORES)) return [];
  const sheet = 'stores-by-week';
  const view = columnOf(sheetView(book, sheet), 'left');
  const asked = askRows(book, sheet);
  return Array.from(rows(book, 'stores')).flatMap((store) => {
    const columns = asked.flatMap((row): readonly Column[] => {
      const from = row.figure('week-starts');
      if (row.figure('store') !== store || from === undefined) return [];
      const room = row.figure('room');
      const limit = room === undefined ? undefined : bareFigure(view, room);
      return [{ from, until: from + 7, parts: [bareFigure(view, row.figure('left') ?? 0)], limit }];
    });
    const [first, last] = [columns[0]?.from, columns.at(-1)?.until];
    if (first === undefined || last === undefined) return [];
    const name = rowName(book, 'stores', store);
    const about = { title: `${name} by week`, what: 'in it', view };
    return [weekly(book, about, { season: { first, last }, columns, parts: ONE, limitName: 'what it holds' })];
  });
}

/** Kinds of work, joined to what one can tell apart. */
const WORK: readonly { readonly part: Part; readonly columns: readonly string[] }[] = [
  {
    part: { name: 'raising, ground and planting', mark: 'mark-second' },
    columns: ['raising', 'ground', 'planting'],
  },
  { part: { name: 'care and water', mark: 'mark-third' }, columns: ['care', 'water'] },
  {
    part: { name: 'picking and after', mark: 'mark-harvest' },
    columns: ['picking', 'packing', 'storing', 'selling', 'other'],
  },
];

export function hoursByWeek(book: Book): ColumnsModel | undefined {
  if (!hasColumns(book, HOURS)) return undefined;
  const view = columnOf(sheetView(book, 'labour'), 'hours');
  const { first, last } = seasonOf(book);
  const all = askRows(book, 'labour').flatMap((row): readonly Column[] => {
    const from = row.figure('monday');
    if (from === undefined || from > last) return [];
    const parts = WORK.map(({ columns: kinds }) =>
      bareFigure(
        view,
        kinds.reduce((sum, kind) => sum + (row.figure(kind) ?? 0), 0),
      ),
    );
    const available = row.figure('available');
    return [{ from, until: from + 7, parts, limit: available === undefined ? undefined : bareFigure(view, available) }];
  });
  // What is sown for the season before its first day is work too.
  const begins = Math.min(first, ...all.flatMap((column) => (totalOf(column) > 0 ? [column.from] : [])));
  const columns = all.filter(({ until }) => until > begins);
  if (columns.length === 0) return undefined;
  const about = { title: 'Hours of work by week', what: 'of work', view };
  return weekly(book, about, {
    season: { first: begins, last },
    columns,
    parts: WORK.map(({ part }) => part),
    limitName: 'the hours there are',
  });
}

interface Weekly {
  readonly season: Season;
  readonly columns: readonly Column[];
  readonly parts: readonly Part[];
  readonly limitName: string;
}

function weekly(
  book: Book,
  { title, what, view }: { readonly title: string; readonly what: string; readonly view: ColumnView | undefined },
  { season, columns, parts, limitName }: Weekly,
): ColumnsModel {
  const known = columns.some(({ limit }) => limit !== undefined);
  const unit = view?.unit ?? '';
  const { today, writing } = settings(book);
  const say = (figure: number, after = unit): string => withSaidUnit(figure, after, view?.decimals, writing);
  const words = (column: Column): string => {
    const of = column.limit === undefined ? '' : ` of ${say(column.limit)}`;
    const pieces =
      parts.length < 2 || totalOf(column) === 0
        ? ''
        : `: ${parts.map(({ name }, index) => `${name} ${say(column.parts[index] ?? 0)}`).join(', ')}`;
    return `${weekWords(book, column)}, ${say(totalOf(column))}${of} ${what}${pieces}.`;
  };
  return {
    kind: 'columns',
    title,
    unit,
    says: sentence({ book, columns, say, what, known }),
    from: season.first,
    to: season.last + 1,
    today,
    parts,
    limitName: known ? limitName : undefined,
    limitIs: 'room',
    columns,
    writing,
    readings: columns.map((column) => ({ x: column.from + 3.5, words: words(column) })),
    table: {
      head: [
        'Week of',
        ...parts.map(({ name }) => withUnitInHead(name, unit)),
        ...(known ? [withUnitInHead(limitName, unit)] : []),
      ],
      rows: columns.map((column) => [
        dayWords(book, column.from),
        ...column.parts.map((part) => say(part, '')),
        ...(known ? [column.limit === undefined ? '' : say(column.limit, '')] : []),
      ]),
    },
  };
}

function withUnitInHead(name: string, unit: string): string {
  return unit === '' ? name : `${name}, ${unit}`;
}

function sentence({
  book,
  columns,
  say,
  what,
  known,
}: {
  readonly book: Book;
  readonly columns: readonly Column[];
  readonly say: (figure: number) => string;
  readonly what: string;
  readonly known: boolean;
}): string {
  const most = columns.reduce<Column | undefined>(
    (best, column) => (totalOf(column) > (best === undefined ? 0 : totalOf(best)) ? column : best),
    undefined,
  );
  if (most === undefined) return 'Nothing is wanted of it this season.';
  const over = overLimit({ columns });
  const fullest = `At its most ${say(totalOf(most))} ${what}, in the week of ${dayWords(book, most.from)}.`;
  if (!known) return `${fullest} How much there is has not been entered.`;
  const [first] = over;
  if (first === undefined) return `${fullest} ${roomWords(columns, most.limit, say)}`;
  return `${fullest} More than there is in ${over.length} ${over.length === 1 ? 'week' : 'weeks'}, first in that of ${dayWords(book, first.from)}.`;
}

/** How much there is, in words as well: a room far above what is in it has no line. */
function roomWords(columns: readonly Column[], room: number | undefined, say: (figure: number) => string): string {
  if (room === undefined) return 'There is room for all of it.';
  const then = columns.every(({ limit }) => limit === room) ? '' : ' then';
  return `There is room for ${say(room)}${then}: no week wants more than there is.`;
}
