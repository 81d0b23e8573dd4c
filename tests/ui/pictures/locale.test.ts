// Pictures and the season at a glance where figures and days are written as in Germany: a comma before decimals, a point between
// thousands, months by their German names, in every sentence, reading and table.

import { describe, expect, test } from 'vitest';
import { demoFarm } from '../../../demo/farm.ts';
import { cellView, civilDay, Findings, message, newDocument, rowId, rows, Workbook } from '../../../engine/index.ts';
import { SEASON } from '../../../sheets-templates/season.ts';
import { glanceOf } from '../../../ui/browser/glance/glance.ts';
import { weekOnPaper } from '../../../ui/browser/paper/week-pages.ts';
import { bedMap } from '../../../ui/browser/pictures/bed-map/bed-map.ts';
import { plantsPerBlock, sownPlantings } from '../../../ui/browser/pictures/blocks/blocks.ts';
import { climateOfYear, cropsOf } from '../../../ui/browser/pictures/climate/climate.ts';
import { frostChances } from '../../../ui/browser/pictures/frost/frost.ts';
import { guessesOf, intervalsOf } from '../../../ui/browser/pictures/intervals/intervals.ts';
import { figureMarks } from '../../../ui/browser/pictures/kit/model.ts';
import { moneyByMonth } from '../../../ui/browser/pictures/money/money.ts';
import { roomPictures } from '../../../ui/browser/pictures/room/room.ts';
import { whatFollows } from '../../../ui/browser/pictures/season-calendar/moving.ts';
import {
  barWords,
  calendarTable,
  seasonCalendar,
} from '../../../ui/browser/pictures/season-calendar/season-calendar.ts';
import { productsOf, supplyAgainstDemand } from '../../../ui/browser/pictures/supply/supply.ts';
import { writingOf } from '../../../ui/browser/store/writing.ts';

/** The demo farm on a machine of one locale, the workbook itself naming another or none. */
function farm(machine: string, named: string | null = null): Workbook {
  let ids = 0;
  const newId = (): string => `r${++ids}`;
  const made = newDocument(SEASON, demoFarm, newId);
  if (!made.ok) throw new Error(made.problems.join(' '));
  const templates = { today: () => SEASON, earlier: () => undefined };
  const writings = (locale: string | undefined) => writingOf(locale ?? machine);
  const workbook = Workbook.open(made.data, { newId, now: () => 0, actor: 'a', templates, writings });
  if (workbook === undefined) throw new Error('The template is not on the shelf.');
  const set = workbook.do([{ command: 'set locale', locale: named }], message('set locale', { locale: named ?? '' }));
  if (set.refused) throw new Error(set.why);
  return workbook;
}

interface Told {
  readonly says: string;
  readonly readings?: readonly { readonly words: string }[];
  readonly table: { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] };
}

const inFull = ({ says, readings = [], table }: Told): readonly string[] => [
  says,
  ...readings.map(({ words }) => words),
  ...table.rows.flat(),
];

/** All that the pictures say of a workbook, by picture. */
function saidBy(book: Workbook): ReadonlyMap<string, readonly string[]> {
  const today = demoFarm.today;
  const calendar = seasonCalendar(book, today);
  if (calendar === undefined) throw new Error('The demo farm has no beds.');
  const some = <T>(one: T | undefined): readonly T[] => (one === undefined ? [] : [one]);
  const told = (all: readonly Told[]): readonly string[] => all.flatMap(inFull);
  const { strip, jobs, totals } = glanceOf(book, today, new Findings(book).all());
  const [planting = 0] = rows(book, 'plantings');
  const move = { planting: rowId(book, 'plantings', planting), days: 21, bed: undefined };
  return new Map([
    [
      'calendar',
      [
        ...told([{ ...calendar, table: calendarTable(book, calendar) }]),
        ...calendar.lines.flatMap((line) => line.bars.map((bar) => barWords(book, bar, line))),
      ],
    ],
    ['moving', whatFollows(book, move).lines.flatMap(({ before, after }) => [before, after])],
    ['map', told([bedMap(book, calendar, today + 60)])],
    ['room', told(roomPictures(book))],
    ['supply', told(productsOf(book).flatMap((product) => some(supplyAgainstDemand(book, product))))],
    ['money', told(some(moneyByMonth(book)))],
    ['sure', told(guessesOf(book).flatMap((guess) => some(intervalsOf(book, guess))))],
    ['blocks', told(sownPlantings(book).map((each) => plantsPerBlock(book, each)))],
    ['frost', told(some(frostChances(book)))],
    ['climate', told(some(climateOfYear(book, cropsOf(book)[0])))],
    [
      'glance',
      [
        strip?.says ?? '',
        strip?.frostWords ?? '',
        jobs?.hours ?? '',
        ...totals.flatMap(({ words, likely, ends }) => [words, likely, ends]),
      ],
    ],
  ]);
}

/** '5 Apr 2027', '1.5', '15,500 USD': none of them as a German writes it. */
const ENGLISH = /\b\d+ [A-Z][a-z]{2} 20\d\d|\d\.\d{1,2}(?!\d)|\d,\d{3} USD/;

describe('as in Germany', () => {
  const said = saidBy(farm('de-DE'));

  test.each([...said.keys()])('%s', (picture) => {
    const words = said.get(picture) ?? [];
    expect(words.join('').length).toBeGreaterThan(0);
    expect(words.filter((each) => ENGLISH.test(each))).toEqual([]);
  });

  test('days of the week on paper are called as the dates beside them are written', () => {
    const paper = weekOnPaper(farm('de-DE'), civilDay(2027, 7, 21));
    expect(paper?.tables[0]?.heading).toMatch(/^Montag 19\.\sJuli\s2027$/);
  });

  test('days and figures are those of the cells', () => {
    expect(said.get('calendar')?.[0]).toMatch(/\d\. \p{L}+\.? 2027 to \d+\. /u);
    expect(said.get('money')?.join(' ')).toMatch(/Januar 2027/);
    expect(said.get('climate')?.join(' ')).toMatch(/\d,\d/);
    expect(figureMarks(0, 20_000, 4, writingOf('de-DE')).map(({ text }) => text)).toEqual([
      '0',
      '5000',
      '10.000',
      '15.000',
      '20.000',
    ]);
  });

  test('what the workbook names goes before the machine', () => {
    expect(saidBy(farm('en-US', 'de-DE'))).toEqual(said);
    expect(saidBy(farm('de-DE', 'en-US')).get('calendar')).toEqual(saidBy(farm('en-US')).get('calendar'));
  });
});

test('days in a script that runs from right to left keep to themselves, so that no figure around them changes its place', () => {
  // Isolates of the Unicode bidirectional algorithm (UAX 9): what stands between them orders nothing outside.
  const said = new Map(saidBy(farm('ar-EG')));
  // What follows a move is told in the texts of cells, each by itself.
  said.delete('moving');
  const outside = [...said].flatMap(([picture, words]) =>
    words.map((each) => `${picture}: ${each.replace(/\u2068[^\u2068\u2069]*\u2069/g, 'DAY')}`),
  );
  expect(outside.find((each) => each.startsWith('calendar'))).toMatch(/, DAY to DAY: \d+% of the bed-days/);
  expect(outside.filter((each) => /\p{Script=Arabic}/u.test(each))).toEqual([]);
});

test('figures that were worked out together are written so too', () => {
  const covers = (book: Workbook): string =>
    [...rows(book, 'seed-order')].map((row) => cellView(book, 'seed-order', row, 'cover').text).join('; ');
  expect(covers(farm('en-US'))).toMatch(/Cost \d+\.\d\d? USD/);
  expect(covers(farm('de-DE'))).toMatch(/Cost \d+,\d\d? USD/);
  expect(covers(farm('de-DE'))).not.toMatch(/Cost \d+\.\d\d? USD/);
});
