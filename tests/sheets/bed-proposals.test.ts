// Beds proposed for a whole farm: sixty beds, thirty crops, half of the plantings successions; and the demo farm.

import { describe, expect, it } from 'vitest';
import { demoFarm } from '../../demo/farm.ts';
import { BedSearch, rowId, seededNumbers } from '../../engine/index.ts';
import { laySuccession } from '../../sheets-templates/acts/lay-succession.ts';
import { bedWish, proposeBeds } from '../../sheets-templates/acts/propose-beds.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { started } from '../book.ts';
import { monthsOf } from '../reference/calendars.ts';
import { errorsOf, reading, type Season, seasonOf } from './season.ts';

type Row = Readonly<Record<string, string>>;

function propose(season: Season, changes = 20_000): string {
  const { workbook } = season.book;
  const wish = bedWish(workbook);
  if (typeof wish === 'string') return wish;
  const search = new BedSearch(wish.question, seededNumbers(1), changes);
  search.step(changes);
  const act = proposeBeds(workbook, wish, search.beds);
  if (!act.ok) return act.why;
  const done = workbook.do(act.commands, act.message);
  if (done.refused) throw new Error(done.why);
  return act.said;
}

const names = (season: Season): readonly string[] =>
  Array.from(season.book.rows('Plantings'), (row) => season.book.rowName('Plantings', row));
const bedOf = (season: Season, name: string): string => season.shown('Plantings', name, 'Bed');
const warnings = (season: Season): readonly string[] =>
  season.book
    .attention()
    .filter(({ column }) => column === 'Bed')
    .map(({ rowName, says }) => `${rowName}: ${says}`);

const SINGLE = [
  'Carrot',
  'Beet',
  'Parsnip',
  'Kale',
  'Chard',
  'Cabbage',
  'Tomato',
  'Pepper, sweet',
  'Squash, winter',
  'Celery',
];
const AGAIN = ['Lettuce, head', 'Bean, snap bush', 'Radish', 'Spinach', 'Arugula', 'Bok choy'];
const FAMILIES = ['Asteraceae', 'Brassicaceae', 'Apiaceae', 'Amaryllidaceae', 'Solanaceae', 'Fabaceae'];

function garden(beds: number): Season {
  const plantings: readonly Row[] = SINGLE.flatMap((crop) =>
    [1, 2, 3].map((k) => ({ Planting: `${crop} ${k}`, Variety: crop })),
  );
  const season = seasonOf(
    {
      'Monthly climate': monthsOf('Madison WI'),
      Varieties: [...SINGLE, ...AGAIN].map((crop) => ({ Variety: crop, Crop: crop })),
      Beds: Array.from({ length: beds }, (_, b) => ({
        Bed: `Bed ${b + 1}`,
        Field: `Field ${Math.floor(b / 10) + 1}`,
        'Family last year': FAMILIES[b % 6] ?? '',
        'Family two years ago': FAMILIES[(b + 2) % 6] ?? '',
      })),
      Plantings: plantings,
      Successions: AGAIN.map((crop) => ({
        Succession: crop,
        Variety: crop,
        From: '2027-05-20',
        To: '2027-10-15',
        'Bed length each': '25 ft',
      })),
    },
    { Latitude: '43.1' },
  );
  for (const row of season.book.rows('Successions')) {
    const act = laySuccession(season.book.workbook, rowId(season.book.workbook, 'successions', row));
    if (!act.ok) throw new Error(act.why);
    season.book.workbook.do(act.commands, act.message);
  }
  return season;
}

describe('a garden of sixty beds and more than a hundred plantings', () => {
  const season = garden(60);
  season.type('Plantings', 'Tomato 1', 'Bed', 'Bed 7');
  const said = propose(season);

  it('has a bed for every planting, none too full and every family rotated', () => {
    expect(names(season).length).toBeGreaterThan(100);
    expect(said).toMatch(/^(\d+) plantings of \1 placed\.$/);
    expect(names(season).filter((name) => bedOf(season, name) === '')).toEqual([]);
    expect(warnings(season)).toEqual([]);
    expect(errorsOf(season.book)).toEqual([]);
  });

  it('moves nothing typed, and keeps a crop together', () => {
    expect(bedOf(season, 'Tomato 1')).toBe('Bed 7');
    for (const crop of SINGLE) {
      const fields = [1, 2, 3].map((k) => season.value('Beds', bedOf(season, `${crop} ${k}`), 'Field'));
      expect(new Set(fields).size, crop).toBeLessThanOrEqual(2);
    }
  });

  it('gives wide crops the bed beside', () => {
    const [first, second] = ['Bed', 'Spreads over'].map((column) =>
      season.shown('Plantings', 'Squash, winter 1', column),
    );
    expect(Number(second?.replace('Bed ', ''))).toBe(Number(first?.replace('Bed ', '')) + 1);
  });

  it('is one step of undo, and asked again changes nothing that it need not', () => {
    const before = names(season).map((name) => bedOf(season, name));
    expect(propose(season)).toBe(said);
    expect(names(season).map((name) => bedOf(season, name))).toEqual(before);
    season.book.undo();
    expect(bedOf(season, 'Carrot 1')).toBe('');
    expect(bedOf(season, 'Tomato 1')).toBe('Bed 7');
    season.book.redo();
  });

  it('leaves successions that got a bed as they were laid', () => {
    const lettuce = season.book.rowOf('Successions', 'Lettuce, head') ?? -1;
    season.type('Successions', 'Lettuce, head', 'Bed length each', '10 ft');
    const act = laySuccession(season.book.workbook, rowId(season.book.workbook, 'successions', lettuce));
    if (!act.ok) throw new Error(act.why);
    expect(act.said).not.toMatch(/left as they are/);
  });
});

describe('a garden with too few beds', () => {
  const season = garden(12);
  const said = propose(season);

  it('places what it can, and says of each of the others why not', () => {
    expect(said).toMatch(
      /^\d+ plantings of \d+ placed\. .*: no bed proposed: none (that is long enough|to which \w+ may come back) has room from \d/,
    );
    expect(said).toMatch(/And \d+ more: see Not placed in Plantings\.$/);
    for (const name of names(season)) {
      const why = season.value('Plantings', name, 'Not placed');
      expect(why === null, name).toBe(bedOf(season, name) !== '');
      if (why === null) continue;
      expect(season.says('Plantings', name)).toContain(why);
      expect(why).toMatch(/^No bed proposed: /);
    }
    expect(warnings(season).filter((says) => /holds|stood on this bed/.test(says))).toEqual([]);
  });
});

describe('what stands in the way is said', () => {
  it('beds that are simply full are called full, where no family has stood before', () => {
    const season = seasonOf({
      'Monthly climate': monthsOf('Madison WI'),
      Beds: [{ Bed: 'Bed 1', Length: '50 ft' }],
      Varieties: [{ Variety: 'V', Crop: 'Kale' }],
      Plantings: ['One', 'Two'].map((Planting) => ({ Planting, Variety: 'V', 'Bed length used': '50 ft' })),
    });
    propose(season);
    const without = names(season).filter((name) => bedOf(season, name) === '');
    expect(without.length).toBe(1);
    expect(season.value('Plantings', without[0] ?? '', 'Not placed')).toMatch(
      /^No bed proposed: none that is long enough has room from \d+ \w+ 2027 to \d+ \w+ 202\d\.$/,
    );
  });

  it('no beds, nothing to place', () => {
    const none = seasonOf({
      Varieties: [{ Variety: 'V', Crop: 'Kale' }],
      Plantings: [{ Planting: 'P', Variety: 'V' }],
    });
    expect(propose(none)).toBe('There are no beds yet: enter them in Beds first.');
    const opened = started(SEASON, demoFarm);
    if (!opened.ok) throw new Error(opened.problems.join());
    expect(propose(reading(opened.workbook))).toBe(
      'Every planting has a bed typed or stands in one: there is nothing to propose.',
    );
  });

  it('a planting longer than any bed, and one whose family is everywhere too soon', () => {
    const season = seasonOf({
      'Monthly climate': monthsOf('Madison WI'),
      Varieties: [{ Variety: 'V', Crop: 'Kale' }],
      Beds: [{ Bed: 'B', 'Family last year': 'Brassicaceae' }],
      Plantings: [
        { Planting: 'Long', Variety: 'V', 'Bed length used': '80 ft' },
        { Planting: 'Again', Variety: 'V' },
      ],
    });
    expect(propose(season)).toMatch(
      /^0 plantings of 2 placed\. Long: .*longer than any bed, so split it\. Again: .*Brassicaceae stood too few years ago\.$/,
    );
  });
});
