// How seed lots lose germination with age: each lot at every age from the day it was last known, by the sheet's own formulas, with one
// in hand and the least that may be sold. Pure: from the engine's queries to a picture model.

import { isoDate, rowName, type Workbook } from '../../../../engine/index.ts';
import { SEED_LOT, SEED_LOTS } from '../../panels/columns.ts';
import { dayWords } from '../../store/day-words.ts';
import { askRow, askRows } from '../kit/ask.ts';
import type { Line, LinesModel } from '../kit/model.ts';

const AGES_FROM = 'ages-from';

/** Ages at which a lot is asked: each half year up to six. */
const STEP = 0.5;
const OLDEST = 6;
const YEAR = 365.25;

/** More lots than so many beside the one in hand can't be told apart. */
const MOST_BESIDE = 8;

export interface AgeingLot {
  readonly id: string;
  readonly slot: number;
  readonly name: string;
  readonly variety: string;
  readonly from: number;
}

/** The lots whose age is known, in the order of the sheet. */
export function ageingLots(book: Workbook): readonly AgeingLot[] {
  return askRows(book, SEED_LOTS).flatMap((row) => {
    const from = row.figure(AGES_FROM);
    if (from === undefined || row.figure(SEED_LOT.germination) === undefined) return [];
    return [
      { id: row.id, slot: row.slot, name: rowName(book, SEED_LOTS, row.slot), variety: row.text('variety'), from },
    ];
  });
}

interface Course {
  readonly lot: AgeingLot;
  /** Percent at each age; undefined where the formulas have no answer. */
  readonly percents: readonly (number | undefined)[];
}

const AGES: readonly number[] = Array.from({ length: OLDEST / STEP + 1 }, (_, index) => index * STEP);

/** Undefined where no lot has an age and a germination. */
export function seedViability(book: Workbook, chosen: string): LinesModel | undefined {
  const lots = ageingLots(book);
  const inHand = lots.find(({ id }) => id === chosen) ?? lots[0];
  if (inHand === undefined) return undefined;
  const shown = [inHand, ...lots.filter((lot) => lot !== inHand).slice(0, MOST_BESIDE)];
  const courses = coursesOf(book, shown);
  const row = askRow(book, SEED_LOTS, inHand.slot);
  const least = row.figure(SEED_LOT.standard);
  const standard = least === undefined ? undefined : least * 100;
  const lines: Line[] = courses.map(({ lot, percents }, index) => ({
    name: index === 0 ? lot.name : index === 1 ? 'other lots' : lot.name,
    mark: index === 0 ? 'line-strong' : 'line-faint',
    quiet: index > 1,
    points: percents.flatMap((y, at) => (y === undefined ? [] : [{ x: AGES[at] ?? 0, y }])),
  }));
  if (standard !== undefined) {
    const name = `least that ${inHand.variety} may be sold with`;
    lines.push({ name, mark: 'line-dashed', points: [0, OLDEST].map((x) => ({ x, y: standard })) });
  }
  const sown = row.figure(SEED_LOT.sowing);
  const germination = row.figure(SEED_LOT.germination);
  const age = sown === undefined ? undefined : (sown - inHand.from) / YEAR;
  const hundred = [0, 25, 50, 75, 100].map((figure) => ({ figure, text: String(figure) }));
  return {
    kind: 'lines',
    title: 'Germination of seed lots with age',
    says: sentence(inHand, courses[0]?.percents ?? [], standard),
    today: undefined,
    x: {
      label: 'years since last tested or packed',
      from: 0,
      to: OLDEST,
      marks: Array.from({ length: OLDEST + 1 }, (_, year) => ({ figure: year, text: String(year) })),
    },
    y: { label: '% that germinate', from: 0, to: 100, marks: hundred },
    bands: [],
    lines,
    dots:
      sown === undefined || age === undefined || germination === undefined || age < 0 || age > OLDEST
        ? []
        : [{ name: `${inHand.name} sown on ${dayWords(book, sown)}`, x: age, y: germination * 100 }],
    readings: AGES.map((x, at) => ({ x, words: readingAt(courses, at) })),
    table: {
      head: [
        'Lot',
        ...AGES.filter(Number.isInteger).map((years) => (years === 0 ? 'When tested, %' : `${years} y, %`)),
      ],
      rows: courses.map(({ lot, percents }) => [
        lot.name,
        ...percents.filter((_, at) => Number.isInteger(AGES[at])).map((each) => each?.toFixed(0) ?? ''),
      ]),
    },
  };
}

/** Every lot sown at the same age, age after age, tried on a branch of the workbook. */
function coursesOf(book: Workbook, lots: readonly AgeingLot[]): readonly Course[] {
  const answers = book.whatIf(
    AGES.map((age) =>
      lots.map(({ id, from }) => ({
        command: 'put cell' as const,
        sheet: SEED_LOTS,
        row: id,
        column: SEED_LOT.sowing,
        content: { date: isoDate(Math.round(from + age * YEAR)) },
      })),
    ),
    lots.map(({ slot }) => ({ sheet: SEED_LOTS, row: slot, column: SEED_LOT.germination })),
  );
  return lots.map((lot, index) => ({
    lot,
    percents: answers.map((each) => {
      const share = each?.[index];
      return typeof share === 'number' && Number.isFinite(share) ? share * 100 : undefined;
    }),
  }));
}

function readingAt(courses: readonly Course[], at: number): string {
  const age = AGES[at] ?? 0;
  const when = age === 0 ? 'When tested' : `After ${age} ${age === 1 ? 'year' : 'years'}`;
  const each = courses.flatMap(({ lot, percents }) => {
    const percent = percents[at];
    return percent === undefined ? [] : [`${lot.name} ${percent.toFixed(0)}%`];
  });
  return `${when}: ${each.join(', ')}.`;
}

function sentence(lot: AgeingLot, percents: readonly (number | undefined)[], standard: number | undefined): string {
  const [first, ...later] = percents;
  if (first === undefined) return `How ${lot.name} ages is not known here.`;
  const oneYear = later[1 / STEP - 1];
  const start = `${lot.name} germinated ${first.toFixed(0)}% when last known${
    oneYear === undefined ? '' : ` and loses ${(first - oneYear).toFixed(0)} points in its first year`
  }.`;
  if (standard === undefined) return start;
  const below = percents.findIndex((each) => each !== undefined && each < standard);
  if (below < 0)
    return `${start} It stays at ${standard.toFixed(0)}% or more, the least that may be sold, for ${OLDEST} years.`;
  if (below === 0) return `${start} That is below ${standard.toFixed(0)}%, the least that may be sold.`;
  return `${start} After about ${AGES[below] ?? 0} years it is below ${standard.toFixed(0)}%, the least that may be sold.`;
}
