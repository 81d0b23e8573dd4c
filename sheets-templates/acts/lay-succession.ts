// Lays the plantings of a succession so that harvests begin evenly, and lays them again when its row changed: those not yet sown and
// not changed by hand follow, the others stay. Each harvest wanted is first tried on a branch of the workbook, so that only
// what frost, heat and day length allow is laid.

import {
  type Command,
  type Content,
  eachPlanting,
  harvestStarts,
  isoDate,
  MOST_PLANTINGS,
  message,
  rowId,
  rows,
  settings,
  startsLeft,
  type Workbook,
} from '../../engine/index.ts';
import {
  type Act,
  contentInWords,
  counted,
  dayInWords,
  notedRows,
  type RowOf,
  refused,
  rowAt,
  rowOf,
  typedIn,
} from './act.ts';

const SUCCESSIONS = 'successions';
const PLANTINGS = 'plantings';

/** Typed on every planting alike, where the succession's row gives it. */
const GIVEN = ['start', 'cover', 'in-row-spacing', 'rows', 'seeds-per-station'] as const;
/** What a grower may change on a planting and it is still as laid: its name, and where the beds were proposed. */
const NOT_COMPARED = new Set([
  'planting',
  'succession',
  'as-laid',
  'proposed-bed',
  'proposed-bed-beside',
  'not-placed',
]);

type Entries = Readonly<Record<string, string>>;

interface Wish {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly every: number;
  /** Typed on each planting besides its date. */
  readonly entries: Entries;
}

/** A planting of the succession that is there. */
interface Laid {
  readonly id: string;
  readonly wanted: number;
  readonly stays: boolean;
}

/** One harvest wanted, as it came out on trial. */
interface Tried {
  readonly start: number;
  readonly because: string;
  readonly asLaid: string;
}

/** The commands that lay a succession anew; `row` is its id. */
export function laySuccession(workbook: Workbook, row: string): Act {
  const succession = rowOf(workbook, SUCCESSIONS, row);
  if (succession === undefined) return refused('That succession is not there any more.');
  const wish = wishOf(workbook, succession);
  if (typeof wish === 'string') return refused(wish);
  const there = plantingsOf(workbook, succession);
  const stay = there.filter(({ stays }) => stays);
  const free = there.filter(({ stays }) => !stays).map(({ id }) => id);
  const starts = startsLeft(
    harvestStarts(wish.from, wish.to, wish.every),
    stay.map(({ wanted }) => wanted),
    wish.every,
  );
  const tried = tryStarts(workbook, wish, starts, free);
  if (typeof tried === 'string') return refused(tried);
  const good = tried.filter(({ because }) => because === '');
  const left = leftOut(tried);
  if (good.length === 0 && stay.length === 0) return refused(`${wish.name}: no harvest wanted can be had. ${left}`);
  return {
    ok: true,
    commands: commandsFor(workbook, { succession, wish, good, free, left }),
    message: message('lay succession', { succession: wish.name }),
    said: [
      `${wish.name}: ${counted(good.length, 'planting')} laid${stay.length === 0 ? '' : `, ${stay.length} left as they are`}.`,
      left,
    ]
      .filter((part) => part !== '')
      .join(' '),
  };
}

/** What the row asks for, or a sentence that says what it lacks. */
function wishOf(workbook: Workbook, of: RowOf): Wish | string {
  const name = of.text('succession');
  const [from, to, every] = [of.number('from'), of.number('to'), of.number('every')];
  if (of.value('variety') === null) return `${name}: enter the variety first.`;
  if (from === undefined || to === undefined)
    return `${name}: enter the dates of the first and the last harvest first.`;
  if (to < from)
    return `${name}: the last harvest, ${dayInWords(to)}, is before the first, ${dayInWords(from)}: look at both dates.`;
  const season = rowAt(workbook, 'farm', '', 0);
  const length = (season.number('season-ends') ?? 0) - (season.number('season-starts') ?? 0);
  if (to - from > length) {
    return `${name} is longer than a season: end it by ${dayInWords(from + length)}, and lay the rest in next season's workbook.`;
  }
  if (every === undefined) return `${name}: enter how many days lie between two harvests, under Every.`;
  if ((to - from) / every >= MOST_PLANTINGS) {
    return `${name} would be more than ${MOST_PLANTINGS} plantings: plant less often, under Every.`;
  }
  const amount = amountOf(of, every);
  if (amount === undefined) return `${name}: enter how much a week, or how long a bed each time, first.`;
  const given = GIVEN.flatMap((column): [string, string][] => {
    const { entry } = of.view(column);
    return entry === '' ? [] : [[column, entry]];
  });
  const entries = { variety: of.view('variety').entry, ...amount, ...Object.fromEntries(given) };
  return { name, from, to, every, entries };
}

/** The amount of one planting as typed in the columns' own units. */
function amountOf(of: RowOf, every: number): Entries | undefined {
  const pieces = of.number('pieces-a-week');
  if (pieces !== undefined) return { 'wanted-pieces': String(Math.ceil(eachPlanting(pieces, every) - 1e-9)) };
  const { number: mass } = of.view('a-week');
  if (mass !== undefined) return { wanted: String(Number(eachPlanting(mass, every).toPrecision(6))) };
  const { entry } = of.view('bed-length-each');
  return entry === '' ? undefined : { 'bed-length-used': entry };
}

/** What was typed on a planting, in words that compare. */
export function asLaid(cells: ReadonlyMap<string, Content> | undefined): string {
  return [...(cells ?? [])]
    .filter(([column, content]) => !NOT_COMPARED.has(column) && content !== null)
    .map(([column, content]) => `${column} ${contentInWords(content)}`)
    .sort()
    .join('; ');
}

/** The plantings there are, in the order of their harvests. */
function plantingsOf(workbook: Workbook, succession: RowOf): readonly Laid[] {
  const data = workbook.data();
  const typed = typedIn(data, PLANTINGS);
  const noted = notedRows(data);
  const { today } = settings(workbook);
  return Array.from(rows(workbook, PLANTINGS), (slot) =>
    rowAt(workbook, PLANTINGS, rowId(workbook, PLANTINGS, slot), slot),
  )
    .filter((planting) => planting.value('succession') === succession.slot)
    .map((planting): Laid => {
      const begun = planting.number('sown') ?? planting.number('planted-out') ?? Number.POSITIVE_INFINITY;
      const changed = planting.text('as-laid') !== asLaid(typed.get(planting.id));
      const wanted = planting.number('wanted-from') ?? planting.number('harvest') ?? 0;
      return { id: planting.id, wanted, stays: begun <= today || changed || noted.has(planting.id) };
    })
    .sort((a, b) => a.wanted - b.wanted);
}

/** Each harvest wanted, laid on a branch; a sentence where the entries can't be typed. */
function tryStarts(
  workbook: Workbook,
  wish: Wish,
  starts: readonly number[],
  free: readonly string[],
): readonly Tried[] | string {
  const branch = workbook.branch();
  const trial: Command[] = free.length === 0 ? [] : [{ command: 'remove rows', sheet: PLANTINGS, rows: free }];
  for (const [at, start] of starts.entries()) {
    const entries = { planting: `${wish.name} trial ${at}`, ...entriesFor(wish, start) };
    trial.push({ command: 'insert row', sheet: PLANTINGS, entries });
  }
  const done = branch.do(trial, message('trial'));
  if (done.refused) return done.why;
  const typed = typedIn(branch.data(), PLANTINGS);
  return starts.map((start, at): Tried => {
    const id = done.inserted[at] ?? '';
    const planting = rowOf(branch, PLANTINGS, id);
    const harvest = planting?.number('harvest');
    const because = planting?.text('not-then-because') ?? '';
    const none = planting?.text('no-harvest-because') ?? '';
    const unknown =
      harvest === undefined ? none || 'its harvest cannot be reckoned: Farm needs a place and a climate' : '';
    return { start, because: because || unknown, asLaid: asLaid(typed.get(id)) };
  });
}

function entriesFor(wish: Wish, start: number): Entries {
  return { ...wish.entries, 'wanted-from': isoDate(start) };
}

/** '5 harvests left out: 8 Jul 2027 to 5 Aug 2027, it is too hot then.', for each reason a run of dates. */
function leftOut(tried: readonly Tried[]): string {
  const runs: { from: number; to: number; because: string; count: number }[] = [];
  for (const { start, because } of tried) {
    const last = runs.at(-1);
    if (last !== undefined && last.because === because) {
      last.to = start;
      last.count += 1;
    } else runs.push({ from: start, to: start, because, count: 1 });
  }
  const said = runs.filter(({ because }) => because !== '');
  const count = said.reduce((sum, run) => sum + run.count, 0);
  if (count === 0) return '';
  const parts = said.map(({ from, to, because }) => {
    return `${from === to ? dayInWords(from) : `${dayInWords(from)} to ${dayInWords(to)}`}, ${because}`;
  });
  return `${counted(count, 'harvest')} left out: ${parts.join('; ')}.`;
}

interface Plan {
  readonly succession: RowOf;
  readonly wish: Wish;
  readonly good: readonly Tried[];
  /** Ids of plantings that may be changed or taken out. */
  readonly free: readonly string[];
  readonly left: string;
}

function commandsFor(workbook: Workbook, { succession, wish, good, free, left }: Plan): readonly Command[] {
  const commands: Command[] = [];
  const names = freeNames(workbook, wish.name, good.length - free.length);
  const typed = typedIn(workbook.data(), PLANTINGS);
  for (const [at, { start, asLaid: laid }] of good.entries()) {
    const entries: Entries = { ...entriesFor(wish, start), 'as-laid': laid };
    const row = free[at];
    if (row === undefined) {
      const named = { planting: names[at - free.length] ?? '', succession: wish.name };
      commands.push({ command: 'insert row', sheet: PLANTINGS, entries: { ...named, ...entries } });
    } else commands.push(...changed(row, typed.get(row), entries));
  }
  const spare = free.slice(good.length);
  if (spare.length > 0) commands.push({ command: 'remove rows', sheet: PLANTINGS, rows: spare });
  for (const [column, entry] of [
    ['laid-as', succession.text('as-it-stands')],
    ['not-laid', left],
  ] as const) {
    commands.push({ command: 'set cell', sheet: SUCCESSIONS, row: succession.id, column, entry });
  }
  return commands;
}

/** A planting that is used again: what was laid and is laid no more is taken back. */
function changed(row: string, cells: ReadonlyMap<string, Content> | undefined, entries: Entries): readonly Command[] {
  const gone = [...(cells ?? [])].filter(
    ([column, content]) => content !== null && !NOT_COMPARED.has(column) && !(column in entries),
  );
  return [
    ...gone.map(([column]): Command => ({ command: 'set cell', sheet: PLANTINGS, row, column, entry: '' })),
    ...Object.entries(entries).map(
      ([column, entry]): Command => ({ command: 'set cell', sheet: PLANTINGS, row, column, entry }),
    ),
  ];
}

/** 'Lettuce 1', 'Lettuce 2' ..., as many as are wanted, none of them taken. */
function freeNames(workbook: Workbook, name: string, count: number): readonly string[] {
  const taken = new Set(
    Array.from(rows(workbook, PLANTINGS), (slot) =>
      rowAt(workbook, PLANTINGS, '', slot).text('planting').toLowerCase(),
    ),
  );
  const names: string[] = [];
  for (let number = 1; names.length < count; number += 1) {
    const candidate = `${name} ${number}`;
    if (!taken.has(candidate.toLowerCase())) names.push(candidate);
  }
  return names;
}
