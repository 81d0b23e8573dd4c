// Rows of a person's own sheets as a season is rolled over: those that name plantings are of the season that ends, as Records are.

import { describe, expect, it } from 'vitest';
import { type Command, cellView, message, rowName, rows, type TypeDeclaration, Workbook } from '../../engine/index.ts';
import { type RollOverOptions, rollOver } from '../../sheets-templates/index.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { Book, testWorld } from '../book.ts';
import { garlicAndKale } from './garlic-and-kale.ts';
import { errorsOf } from './season.ts';

function ownSheet(
  id: string,
  name: string,
  columns: readonly (readonly [id: string, name: string, type: TypeDeclaration])[],
): Command {
  const own = { group: '', note: '', role: 'entered', formula: '' } as const;
  return {
    command: 'put sheet',
    sheet: {
      id,
      name,
      question: 'Own sheets',
      about: '',
      rows: { from: 'entry' },
      key: columns[0]?.[0] ?? '',
      columns: columns.map(([column, called, type]) => ({ ...own, id: column, name: called, type })),
      checks: [],
      cautions: [],
    },
  };
}

/** Looks name plantings, of which the garlic still stands when the season ends; Pumps name a bed. */
function begun(): Workbook {
  const workbook = garlicAndKale();
  const row = (sheet: string, entries: Readonly<Record<string, string>>): Command => ({
    command: 'insert row',
    sheet,
    entries,
  });
  const done = workbook.do(
    [
      ownSheet('looks', 'Looks', [
        ['look', 'Look', { type: 'text' }],
        ['planting', 'Planting', { type: 'link', sheet: 'plantings' }],
        ['seen', 'Seen', { type: 'date' }],
      ]),
      ownSheet('pumps', 'Pumps', [
        ['pump', 'Pump', { type: 'text' }],
        ['bed', 'Bed', { type: 'link', sheet: 'beds' }],
        ['bought', 'Bought', { type: 'date' }],
      ]),
      row('looks', { look: 'Aphids', planting: 'Kale', seen: '2027-06-10' }),
      row('looks', { look: 'Mulched', planting: 'Garlic', seen: '2027-11-20' }),
      row('looks', { look: 'Whitefly', planting: 'Kale', seen: '2027-07-10' }),
      row('looks', { look: 'Fence is down', seen: '2027-07-12' }),
      row('pumps', { pump: 'Small', bed: 'B1', bought: '2027-04-01' }),
    ],
    message('trial'),
  );
  if (done.refused) throw new Error(done.why);
  return workbook;
}

function next(options: Partial<RollOverOptions> = {}) {
  const rolled = rollOver(begun(), { season: 2028, plan: 'all', ...options });
  if (!rolled.ok) throw new Error(rolled.why);
  const book = Workbook.open(rolled.data, testWorld(SEASON));
  if (book === undefined) throw new Error('It does not open.');
  const lines = (sheet: string, ...columns: readonly string[]): readonly string[] =>
    Array.from(rows(book, sheet), (slot) =>
      [rowName(book, sheet, slot), ...columns.map((column) => cellView(book, sheet, slot, column).text)].join(', '),
    );
  const aside = new Book(book, SEASON).attention().filter(({ says }) => says.includes('kept aside'));
  return {
    said: rolled.said,
    looks: lines('looks', 'planting', 'seen'),
    pumps: lines('pumps', 'bed', 'bought'),
    book,
    aside,
  };
}

describe('rows of own sheets that name plantings', () => {
  it.each(['own', 'all', 'none'] as const)(
    'stay behind with the season, as Records do, and are told; with %s plantings all others are as they were',
    (plan) => {
      const { said, looks, pumps, book, aside } = next({ plan });
      expect(said).toContain(' Looks: 2 rows that name plantings of 2027 stay behind with that season.');
      expect(said).not.toContain('Pumps');
      // The garlic stands still: it is the same planting.
      expect(looks).toEqual(['Mulched, Garlic, 20 Nov 2027', 'Fence is down, , 12 Jul 2027']);
      expect(pumps).toEqual(['Small, B1, 1 Apr 2027']);
      expect(aside).toEqual([]);
      expect(errorsOf(new Book(book, SEASON))).toEqual([]);
    },
  );

  it('come along where asked, then name what is planted in their place, and that is told', () => {
    const { said, looks } = next({ along: ['beds', 'own-rows'] });
    expect(said).toContain('copied with their beds, ');
    expect(said).toContain(' Looks: 2 rows that name plantings of 2027 come along, and name what is planted in their');
    expect(looks).toEqual([
      'Aphids, Kale, 10 Jun 2027',
      'Mulched, Garlic, 20 Nov 2027',
      'Whitefly, Kale, 10 Jul 2027',
      'Fence is down, , 12 Jul 2027',
    ]);
  });
});
