// Workbook files damaged in every way there is: each is opened as far as it can be, or refused in a sentence. Nothing that the file
// says may be gone from the workbook without a word, and what is then saved must open again to the same bytes.

import { demoFarm } from '../../demo/farm.ts';
import {
  cellView,
  type Entry,
  Findings,
  readWorkbookFile,
  rows,
  sheetViews,
  type Template,
  type TemplateShelf,
  Workbook,
  workbookText,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { started, templateOf, testWorld } from '../book.ts';
import { type Random, randomFrom, seedOfRun } from '../differential/random.ts';
import { shelf as farmShelf, openFarm, VERSION_2 } from '../document/farm.ts';
import { open, SMALL_FARM } from '../formats/small-farm.ts';
import { changedAt, damagedBytes, HOSTILE_NAMES, oddValue, waysIn } from './damage.ts';
import { work } from './sessions.ts';
import { isSentence, Tally, type Trial } from './trial.ts';

interface Base {
  readonly text: string;
  readonly templates: TemplateShelf;
  /** Processor time, in milliseconds, that its try may take. */
  readonly longest: number;
}

/** A file is opened, looked at whole, saved, opened and saved again, and all that it held is looked for. */
const LONGEST = 1000;
/** The season is more than a hundred times the small ones. */
const LONGEST_SEASON = 5000;
/** A text of 50 million letters goes through ten readings and writings. */
const LONGEST_HUGE = 6000;

/** How a file was damaged, and what is known of it beforehand. */
interface Damaged {
  readonly how: string;
  readonly bytes: Uint8Array;
  readonly mustRefuse?: boolean;
}

type Damage = (base: Base, random: Random) => Damaged;

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

const asFile = (how: string, value: unknown): Damaged => ({ how, bytes: utf8(JSON.stringify(value, null, 1) ?? '') });

/** The file with something else at a place of it. */
const elsewhere: Damage = ({ text }, random) => {
  const file: unknown = JSON.parse(text);
  const way = random.pick(waysIn(file));
  const odd = random.chance(0.2) ? undefined : oddValue(random);
  return asFile(`${way.join('/')} becomes ${shown(odd)}`, changedAt(file, way, () => odd) ?? null);
};

/** What stands in two places of the file, changed over: ids, links, rows, whole sheets. */
const changedOver: Damage = ({ text }, random) => {
  const file: unknown = JSON.parse(text);
  const ways = waysIn(file);
  const [one, other] = [random.pick(ways), random.pick(ways)];
  let taken: unknown;
  changedAt(file, one, (old) => {
    taken = old;
    return old;
  });
  return asFile(
    `${other.join('/')} becomes what stands at ${one.join('/')}`,
    changedAt(file, other, () => taken) ?? null,
  );
};

const bytes: Damage = ({ text }, random) => ({ how: 'bytes', bytes: damagedBytes(utf8(text), random) });

const cutShort: Damage = ({ text }, random) => {
  const whole = utf8(text);
  return { how: 'cut short', bytes: whole.subarray(0, random.whole(0, whole.length - 3)), mustRefuse: true };
};

const twice: Damage = ({ text }, random) => {
  const file: unknown = JSON.parse(text);
  const groups = waysIn(file).filter((way) => typeof way.at(-1) === 'string');
  const way = random.pick(groups);
  const name = String(way.at(-1));
  const mark = `twice-${random.whole(1, 1e9)}`;
  const marked = JSON.stringify(
    changedAt(file, way.slice(0, -1), (old) => ({ ...Object(old), [mark]: random.chance(0.5) ? oddValue(random) : 1 })),
  );
  // Its place in the text tells it from the first of the name.
  return {
    how: `${way.join('/')} stands twice`,
    bytes: utf8(marked.replace(`"${mark}"`, JSON.stringify(name))),
    mustRefuse: true,
  };
};

const deep: Damage = ({ text }, random) => {
  const depth = random.pick([60, 70, 1000, 10_000, 100_000]);
  const [before, behind] = random.pick([
    ['{"a":', '}'],
    ['[', ']'],
  ]);
  const file: unknown = JSON.parse(text);
  const way = random.pick(waysIn(file).slice(1));
  const held = JSON.stringify(changedAt(file, way, () => 'the deep'));
  const inner = `${before.repeat(depth)}1${behind.repeat(depth)}`;
  return { how: `${depth} deep at ${way.join('/')}`, bytes: utf8(held.replace('"the deep"', () => inner)) };
};

/** Numbers that JSON takes and no calculation does, and figures that no double holds. */
const numbers: Damage = ({ text }, random) => {
  const odd = random.pick(['1e308', '-1e308', '1e999', '-1e999', '1e-400', '0.1e-323', '9'.repeat(400), '-0', '1E+2']);
  const places = [...text.matchAll(/(?<=[[ ])-?\d+(?:\.\d+)?(?=[,\]} \n])/g)];
  const place = random.pick(places);
  return {
    how: `${place[0]} becomes ${odd.slice(0, 20)}`,
    bytes: utf8(text.slice(0, place.index) + odd + text.slice(place.index + place[0].length)),
  };
};

const NUMBER = { type: 'number', unit: { us: '', si: '' } };

function ownSheet(name: string, rowSource: unknown, formula: string): unknown {
  const column = { id: 'figure', name: 'Figure', type: NUMBER, group: '', note: '', role: 'computed', formula };
  const declaration = {
    id: name,
    name,
    question: '',
    about: '',
    rows: rowSource,
    columns: [column],
    checks: [],
    cautions: [],
  };
  return { declaration };
}

/** Sheets of one's own whose rows follow from themselves or each other, from columns that aren't there, from all days of history. */
const rowSources: Damage = ({ text }, random) => {
  const file = JSON.parse(text) as { own: Record<string, unknown> };
  const made = (id: string) => ({ id, name: id });
  const anySheet = (): string => random.pick(['mine', 'other', 'farm', 'beds', 'days', 'nosuch', '__proto__']);
  const source = (): unknown =>
    random.pick<() => unknown>([
      () => ({
        from: 'each',
        sheet: anySheet(),
        as: made('of'),
        where: random.pick(['', '1 = 1', '[Figure] > 1', '[#mine/figure] > 1']),
      }),
      () => ({ from: 'pairs', sheets: [anySheet(), anySheet()], as: [made('one'), made('two')], where: '' }),
      () => ({
        from: 'span',
        first: random.pick(['DATE(1; 1; 1)', 'DATE(2027; 1; 1)', '[Figure]', 'TODAY()', '']),
        last: random.pick(['DATE(9999; 12; 31)', 'DATE(2027; 2; 1)', 'DATE(1; 1; 1)', '1 +', 'SUM(mine[Figure])']),
        step: random.pick(['day', 'week', 'month']),
        as: made('when'),
      }),
      () => ({
        from: 'events',
        dates: [
          {
            sheet: anySheet(),
            column: random.pick(['made', 'first-day', 'nosuch', 'constructor']),
            event: 'Made',
            about: made('about'),
          },
        ],
        as: made('when'),
        event: made('what'),
      }),
      () => ({ from: 'entry' }),
    ])();
  const formula = (): string =>
    random.pick(['1', 'ROWS(mine)', 'ROWS(other)', 'SUM(other[Figure])', 'SUM(mine[Figure])', '[Figure]']);
  const own = {
    ...file.own,
    mine: ownSheet('mine', source(), formula()),
    other: ownSheet('other', source(), formula()),
  };
  return asFile('row sources', { ...file, own });
};

/** Names that mean something to programs, as ids and keys. */
const names: Damage = ({ text }, random) => {
  const file: unknown = JSON.parse(text);
  const groups = waysIn(file).filter((way) => typeof way.at(-1) === 'string');
  const way = random.pick(groups);
  const name = random.pick(HOSTILE_NAMES);
  const changed = changedAt(file, way.slice(0, -1), (old) =>
    Object.fromEntries(Object.entries(Object(old)).map(([key, one]) => [key === way.at(-1) ? name : key, one])),
  );
  return asFile(`${way.join('/')} is called ${shown(name)}`, changed);
};

/** A text of many megabytes. */
const huge: Damage = ({ text }, random) => {
  const size = random.pick([1_000_000, 10_000_000, 50_000_000]);
  const letter = random.pick(['a', '\\n', '\\"', 'é', '\\\\']);
  const file: unknown = JSON.parse(text);
  const way = random.pick(waysIn(file).slice(1));
  const held = JSON.stringify(changedAt(file, way, () => 'the huge'));
  const long = letter.repeat(size / letter.length);
  return { how: `${size} letters at ${way.join('/')}`, bytes: utf8(held.replace('the huge', () => long)) };
};

const USUAL: readonly Damage[] = [
  ...Array.from({ length: 6 }, () => elsewhere),
  ...Array.from({ length: 4 }, () => bytes),
  ...Array.from({ length: 2 }, () => changedOver),
  cutShort,
  twice,
  deep,
  numbers,
  numbers,
  rowSources,
  names,
];

function shown(value: unknown): string {
  return (JSON.stringify(value) ?? 'nothing').slice(0, 60);
}

/** What is wrong with how the program took the file; undefined where all is well. */
function fault(damaged: Damaged, templates: TemplateShelf): string | undefined {
  const decoded = workbookText(damaged.bytes);
  if (!decoded.ok) return isSentence(decoded.why) ? undefined : `refused without a sentence: ${decoded.why}`;
  const read = readWorkbookFile(decoded.text, templates);
  if (!read.ok) return isSentence(read.why) ? undefined : `refused without a sentence: ${read.why}`;
  if (damaged.mustRefuse === true) return 'opened';
  const bad = read.notes.find((note) => !isSentence(note));
  if (bad !== undefined) return `told without a sentence: ${bad}`;
  const template = templates.today(read.data.template.name);
  if (template === undefined) return 'opened from a template that is not known';
  const open = (data: typeof read.data) => Workbook.open(data, { ...testWorld(template), templates });
  const workbook = open(read.data);
  if (workbook === undefined) return undefined;
  look(workbook);
  const saved = writeWorkbookFile(workbook.data());
  const file: Plain = JSON.parse(decoded.text.replace(/^\uFEFF/, ''));
  const gone = read.leftOut ? undefined : missing(file, JSON.parse(saved), template, templates);
  if (gone !== undefined && read.notes.length === 0) return `gone without a word: ${gone}`;
  const again = readWorkbookFile(saved, templates);
  if (!again.ok) return `what it saves does not open: ${again.why}`;
  const second = open(again.data);
  if (second === undefined) return 'what it saves does not open';
  const twice = writeWorkbookFile(second.data());
  return twice === saved ? undefined : `what it saves is other when saved again: ${difference(saved, twice)}`;
}

function difference(a: string, b: string): string {
  const [one, other] = [a.split('\n'), b.split('\n')];
  const at = one.findIndex((line, i) => line !== other[i]);
  return `${one[at]?.trim().slice(0, 200)} | ${other[at]?.trim().slice(0, 200)}`;
}

/** Draws what a person would see of it. */
function look(workbook: Workbook): void {
  for (const { id, columns } of sheetViews(workbook)) {
    for (const row of rows(workbook, id).subarray(0, 50))
      for (const column of columns) cellView(workbook, id, row, column.id);
  }
  new Findings(workbook).all();
}

interface Plain {
  readonly template?: { readonly name?: string; readonly version?: number };
  readonly rows?: Readonly<
    Record<string, { readonly columns: readonly unknown[]; readonly rows: readonly (readonly unknown[])[] }>
  >;
  readonly aside?: Readonly<Record<string, Readonly<Record<string, Readonly<Record<string, unknown>>>>>>;
}

/**
 * Every row that was entered and every content that a file holds, by sheet, row and column, wherever it stands: read here by
 * itself, without the engine.
 */
function contentsOf(
  { rows: sheets = {}, aside = {} }: Plain,
  template: Template,
  earlier: Template | undefined,
): ReadonlyMap<string, unknown> {
  const entered = template.sheets.flatMap(({ id, rows: source }) => (source.from === 'entry' ? [id] : []));
  // A row of the template of which nothing was changed goes when a newer template ships it no more.
  const shipped = [template, ...(earlier === undefined ? [] : [earlier])].map(
    ({ rows }) =>
      new Map(Object.entries(rows).flatMap(([sheet, list]) => list.map(({ id, cells }) => [`${sheet} ${id}`, cells]))),
  );
  const found = new Map<string, unknown>();
  const add = (sheet: string, row: unknown, column: unknown, cell: unknown): void => {
    if (cell === null || typeof column !== 'string') return;
    const place = `${sheet} ${String(row)}`;
    const ours = shipped.flatMap((rows) => rows.get(place)?.[column] ?? []);
    // {} takes out what today's template ships in this row; elsewhere it says nothing, and so does what a template ships anyway.
    const takesOut = shipped[0]?.get(place)?.[column] !== undefined;
    if (JSON.stringify(cell) === '{}' ? !takesOut : ours.some((entry) => isEntry(cell, entry))) return;
    found.set(`${place} ${column}`, cell);
  };
  for (const [sheet, { columns, rows: list }] of Object.entries(sheets)) {
    for (const [row, , ...cells] of list) {
      if (entered.includes(sheet) && !shipped.some((rows) => rows.has(`${sheet} ${String(row)}`)))
        found.set(`${sheet} ${String(row)}`, 'a row');
      for (const [i, cell] of cells.entries()) add(sheet, row, columns[i], cell);
    }
  }
  for (const [sheet, byRow] of Object.entries(aside)) {
    for (const [row, cells] of Object.entries(byRow)) {
      for (const [column, cell] of Object.entries(cells)) add(sheet, row, column, cell);
    }
  }
  return found;
}

/** Whether a cell says what an entry of the template does: "72 cells" as text, 72 as a number, [2, "in"] for "2 in". */
function isEntry(cell: unknown, entry: Entry): boolean {
  const said = Array.isArray(cell) ? cell.slice(0, 2).join(' ') : String(cell);
  return said === String(entry);
}

/** A figure with its unit. Of one that follows its column's unit, and of a bare one, the column says what it is written as. */
function written(cell: unknown): string {
  if (typeof cell === 'number') return 'follows';
  if (!Array.isArray(cell)) return JSON.stringify(cell);
  const [figure, unit, third] = cell as readonly unknown[];
  return third === true ? 'follows' : JSON.stringify([figure, typeof unit === 'string' ? unit.trim() : unit]);
}

/** Lengths in metres and shares as people type them; one that says which of them it is shown in may be written in that. */
const SIZES: Readonly<Record<string, number>> = { in: 0.0254, ft: 0.3048, cm: 0.01, m: 1, '%': 0.01, beds: 1 };

function isShownElsewise(cell: unknown, saved: unknown): boolean {
  if (!Array.isArray(cell) || !Array.isArray(saved)) return false;
  const [figure, unit, third] = cell as readonly unknown[];
  const [now, nowIn] = saved as readonly unknown[];
  if (third !== nowIn) return false;
  const size = (of: unknown, within: unknown): number => Number(of) * (SIZES[String(within)] ?? Number.NaN);
  return Math.abs(size(figure, unit) - size(now, nowIn)) < 1e-9 * Math.abs(size(figure, unit));
}

function missing(file: Plain, saved: Plain, template: Template, templates: TemplateShelf): string | undefined {
  const { name = '', version = 0 } = file.template ?? {};
  const earlier = templates.earlier(name, version);
  const there = contentsOf(saved, template, earlier);
  for (const [place, cell] of contentsOf(file, template, earlier)) {
    const now = there.get(place);
    const same = JSON.stringify(cell) === JSON.stringify(now) || written(cell) === written(now);
    if (!there.has(place) || !(same || isShownElsewise(cell, now)))
      return `${place} ${JSON.stringify(cell)} is ${JSON.stringify(now)}`;
  }
  return undefined;
}

/** A farm after a session of random work, which leaves something of every kind in its file. */
function workedFarm(random: Random): Base {
  const workbook = openFarm();
  work(workbook, random);
  return { text: writeWorkbookFile(workbook.data()), templates: farmShelf(VERSION_2), longest: LONGEST };
}

function bases(): readonly [Base, ...Base[]] {
  const small = templateOf(SMALL_FARM);
  const demo = started(SEASON, demoFarm);
  if (!demo.ok) throw new Error(demo.problems.join(' '));
  const shelf = (template: typeof small): TemplateShelf => ({
    today: (name) => (name === template.name ? template : undefined),
    earlier: () => undefined,
  });
  const changed = open();
  changed.edit([{ edit: 'formula', table: 'Beds', column: 'Edge', formula: '[Length] + [Width]' }]);
  changed.edit([
    { edit: 'add column', table: 'Sales', column: 'Weighed', type: { type: 'number', unit: { us: 'lb', si: 'kg' } } },
  ]);
  changed.edit([{ edit: 'cell', table: 'Days', row: 1, column: 'Rain', entry: '0.4 in' }]);
  changed.edit([{ edit: 'insert row', table: 'Sales', entries: { Bed: 'North 2', Weighed: '3 lb 2 oz' } }]);
  return [
    { text: changed.file(), templates: shelf(small), longest: LONGEST },
    { text: demo.workbook.file(), templates: shelf(SEASON), longest: LONGEST_SEASON },
  ];
}

export const workbookFiles: Trial = {
  name: 'files',
  about: 'damaged workbook files opened',
  full: 20_000,
  run: async (count, tell) => {
    const tally = new Tally(tell);
    const [small, season] = bases();
    const seed = seedOfRun();
    for (let i = 0; i < count; i++) {
      const random = randomFrom(seed + i);
      // The season takes a second to open, so it has one in fifty; texts of many megabytes are one in two hundred.
      const base = (i % 50 === 49 ? season : i % 2 === 0 ? small : workedFarm(random)) ?? small;
      const damage = i % 200 === 150 ? huge : random.pick(USUAL);
      const damaged = damage(base, random);
      await tally.try(
        `file ${seed + i}, ${damaged.how}`,
        () => fault(damaged, base.templates),
        damage === huge ? LONGEST_HUGE : base.longest,
      );
    }
    return tally.outcome();
  },
};
