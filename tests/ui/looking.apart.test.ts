// Find and replace: what is found is what is looked at, letters keep their places, and what stays is said with the reason.

import fc from 'fast-check';
import { beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { cellView, message, rowId, sheetView } from '../../engine/index.ts';
import { finding, setFinding } from '../../ui/browser/store/find.ts';
import { inSmall, replacedIn } from '../../ui/browser/store/in-any-case.ts';
import { endLook, lookFor, share, stepFound } from '../../ui/browser/store/looking.ts';
import { changeView } from '../../ui/browser/store/looks.ts';
import { notices } from '../../ui/browser/store/notices.ts';
import { replaceAll, replaceOne } from '../../ui/browser/store/replacing.ts';
import { goTo } from '../../ui/browser/store/selection.ts';
import { takeWorkbook } from '../../ui/browser/store/workbook.ts';
import type { Book } from '../book.ts';
import { seasonOf } from '../sheets/season.ts';

describe('one text in place of another', () => {
  test.each([
    ['İzmir onion', 'onion', 'leek', 'İzmir leek'],
    ['İİ Onion İ ONION', 'onion', 'leek', 'İİ leek İ leek'],
    ['İzmir', 'i̇zmir', 'Bursa', 'Bursa'],
    ['ΟΔΟΣ ΟΔΟΣ', 'οδος', 'way', 'way way'],
    ['Straße', 'STRASSE', 'way', 'Straße'],
    ['🧅🧅 Onion', 'onion', 'leek', '🧅🧅 leek'],
    ['aaa', 'aa', 'b', 'ba'],
  ])('%s: %s by %s', (text, wanted, instead, expected) => {
    expect(replacedIn(text, inSmall(wanted), instead)).toBe(expected);
  });

  test('what is put back by itself changes nothing', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom(...'aİß🧅 1') }),
        fc.constantFrom('a', 'ß', '🧅', '1 '),
        (text, part) => {
          expect(replacedIn(text, part, part)).toBe(text);
        },
      ),
    );
  });
});

let book: Book;

// Changes are drawn in frames, which there are none of here.
beforeAll(() => {
  vi.stubGlobal('requestAnimationFrame', (draw: () => void) => setTimeout(draw));
});

beforeEach(() => {
  const season = seasonOf({
    Beds: [
      { Bed: 'Barn 1', Field: 'Barn by the creek' },
      { Bed: 'North 1', Field: 'Creek' },
      { Bed: 'North 2', Field: 'Creek' },
    ],
    Varieties: [{ Variety: 'Round', Crop: 'Tomato' }],
    Plantings: [
      { Planting: 'One', Variety: 'Round', Sown: '1 Mar 2027' },
      { Planting: 'Two', Variety: 'Round', Sown: '1 Mar 2027' },
    ],
  });
  season.type('Beds', 'Barn 1', 'Length', '40..50 ft');
  book = season.book;
  takeWorkbook(book.workbook);
  goTo('beds', undefined, undefined);
  setFinding({ open: 'replace', everywhere: false, found: [], at: -1, looking: false });
  notices.value = [];
});

/** A look through all sheets works out all that sleeps first. */
const LONG = { timeout: 30_000 };

/** Looks for a text, and waits until all was looked through. */
async function looked(text: string, instead: string): Promise<void> {
  lookFor({ text, instead });
  await expect.poll(() => finding.value.looking, LONG).toBe(false);
}

const said = (): string => notices.value.map(({ text }) => text).join(' ');

const column = (table: string, name: string): readonly string[] =>
  [...book.rows(table)].map((row) => book.cell(table, row, name).text);

/** Only beds of a field that reads so. */
function filter(field: string): void {
  const filters = [{ by: 'cell', column: 'field', when: { is: 'holding', text: field } }] as const;
  const sheet = sheetView(book.workbook, 'beds');
  if (sheet !== undefined) changeView(sheet, { filters });
}

test('behind a filter nothing is found or replaced, and how much stands there is said before and after', async () => {
  filter('barn');
  await looked('creek', 'brook');
  expect(finding.value.found.map(({ row, column: id }) => [row, id])).toEqual([
    [rowId(book.workbook, 'beds', 0), 'field'],
  ]);
  expect(finding.value.behind).toBe(2);
  await replaceAll();
  expect(column('Beds', 'Field')).toEqual(['Barn by the brook', 'Creek', 'Creek']);
  expect(said()).toBe('Replaced in a cell. 2 behind the filter stay.');
});

test('without a filter all are found and replaced, in whatever case they are written', async () => {
  await looked('CREEK', 'brook');
  expect(finding.value).toMatchObject({ behind: 0 });
  await replaceAll();
  expect(column('Beds', 'Field')).toEqual(['Barn by the brook', 'brook', 'brook']);
  expect(said()).toBe('Replaced in 3 cells.');
});

test('what comes behind a filter after it was found is not replaced', async () => {
  await looked('creek', 'brook');
  expect(finding.value.found).toHaveLength(3);
  filter('barn');
  await replaceAll();
  expect(column('Beds', 'Field')).toEqual(['Barn by the brook', 'Creek', 'Creek']);
});

test('a range whose middle was found was typed otherwise, which is said, and not that a formula gives it', async () => {
  await looked('45', '46');
  expect(column('Beds', 'Length')[0]).toBe('45');
  setFinding({ found: finding.value.found.filter(({ column: id }) => id === 'length') });
  stepFound(1);
  await replaceOne();
  expect(said()).toBe('This was typed as 40..50, in which “45” doesn’t stand: it is passed over.');
  await replaceAll();
  expect(said()).toMatch(
    /^Nothing replaced\.( \d+ (is|are) given by formulas and left\.)? 1 was typed otherwise \(40\.\.50\) and left\.$/,
  );
});

test('a date far from all others is asked about before it is put in, and taken when it is asked for again', async () => {
  goTo('plantings', undefined, undefined);
  await looked('1 Mar 2027', '1 Mar 1827');
  const typed = finding.value.found.filter(({ column: id }) => id === 'sown');
  expect(typed).toHaveLength(2);
  await replaceAll();
  expect(said()).toBe('1 Mar 1827 is 200 years before the season 2027. Replace again if it is meant.');
  expect(column('Plantings', 'Sown')).toEqual(['1 Mar 2027', '1 Mar 2027']);
  await replaceAll();
  expect(column('Plantings', 'Sown')).toEqual(['1 Mar 1827', '1 Mar 1827']);
});

test('a date near the others is put in at once', async () => {
  goTo('plantings', undefined, undefined);
  await looked('1 Mar 2027', '8 Mar 2027');
  await replaceAll();
  expect(column('Plantings', 'Sown')).toEqual(['8 Mar 2027', '8 Mar 2027']);
});

describe('links', () => {
  // Two plantings that are called and linked alike, as laying a succession makes them.
  beforeEach(() => {
    const season = seasonOf({
      Varieties: [
        { Variety: 'Zebra', Crop: 'Tomato' },
        { Variety: 'Long', Crop: 'Tomato' },
      ],
      Plantings: [
        { Planting: 'Zebra 1', Variety: 'Zebra', Sown: '1 Mar 2027' },
        { Planting: 'Zebra 2', Variety: 'Zebra', Sown: '1 Mar 2027' },
      ],
    });
    book = season.book;
    takeWorkbook(book.workbook);
    goTo('plantings', undefined, undefined);
  });

  test('to rows that nobody is called are left, which is said, and all else is replaced', async () => {
    await looked('zebra', 'Heart');
    await replaceAll();
    expect(column('Plantings', 'Planting')).toEqual(['Heart 1', 'Heart 2']);
    expect(column('Plantings', 'Variety')).toEqual(['Zebra', 'Zebra']);
    expect(said()).toMatch(
      /^Replaced in 2 cells\..* 2 are links and left, as no row of Varieties is called “Heart”: rename the rows that they are linked to, or replace in all sheets\.$/,
    );
  });

  test('follow where the rows that they lead to are renamed in the same step', async () => {
    setFinding({ everywhere: true });
    await looked('zebra', 'Heart');
    await replaceAll();
    expect(column('Plantings', 'Planting')).toEqual(['Heart 1', 'Heart 2']);
    expect(column('Plantings', 'Variety')).toEqual(['Heart', 'Heart']);
    expect(said()).toMatch(/^Replaced in 5 cells\./);
    book.workbook.undo();
    expect(column('Plantings', 'Variety')).toEqual(['Zebra', 'Zebra']);
  });

  test('lead to another row that is called so already', async () => {
    await looked('zebra', 'Long');
    await replaceAll();
    expect(column('Plantings', 'Variety')).toEqual(['Long', 'Long']);
  });
});

test('what is refused says that nothing was replaced, and where it would not go', async () => {
  goTo('plantings', undefined, undefined);
  await looked('Mar 2027', 'some day');
  await replaceAll();
  expect(said()).toMatch(/^Nothing replaced\. In One, Sown: /);
  expect(column('Plantings', 'Sown')).toEqual(['1 Mar 2027', '1 Mar 2027']);
});

describe('more cells than are told one by one', () => {
  // A sheet of 4,000 days, each of which says Kelp by three formulas, and one behind it on which a person typed it.
  beforeEach(() => {
    const about = { question: '', about: '', checks: [], cautions: [] };
    const blank = { type: { type: 'text' }, formula: '', note: '', group: '' } as const;
    const span = {
      from: 'span',
      first: 'DATE(2000; 1; 1)',
      last: 'DATE(2000; 1; 1) + 3999 days',
      step: 'day',
    } as const;
    const says = ['One', 'Two', 'Three'].map(
      (name) => ({ ...blank, id: name, name, role: 'computed', formula: '"Kelp"' }) as const,
    );
    const days = { ...about, id: 'diary', name: 'Diary', rows: { ...span, as: { id: 'day', name: 'Day' } } };
    const note = { ...blank, id: 'note', name: 'Note', role: 'entered' } as const;
    const typed = { ...about, id: 'behind', name: 'Behind it', rows: { from: 'entry' }, columns: [note] } as const;
    const done = book.workbook.do(
      [
        { command: 'put sheet', sheet: { ...days, columns: says } },
        { command: 'put sheet', sheet: typed },
        { command: 'insert row', sheet: 'behind', entries: { note: 'Kelp beside' } },
      ],
      message('trial'),
    );
    expect(done).toMatchObject({ refused: false });
    setFinding({ everywhere: true });
  });

  test('all that is typed is replaced, wherever it stands', async () => {
    await looked('kelp', 'Tang');
    expect(finding.value).toMatchObject({ cut: 'full' });
    expect(finding.value.found).toHaveLength(10_000);
    await replaceAll();
    expect(cellView(book.workbook, 'behind', 0, 'note').text).toBe('Tang beside');
    expect(said()).toBe('Replaced in a cell. What formulas give is left.');
  });

  test('a look that is ended keeps what it found by then, and replacing is as whole as after one that was not', async () => {
    // The page has its turn after every row.
    let clock = 0;
    const now = vi.spyOn(performance, 'now').mockImplementation(() => {
      clock += 1_000;
      return clock;
    });
    lookFor({ text: 'kelp', instead: 'Tang' });
    await expect.poll(() => share.value ?? 0, LONG).toBeGreaterThan(0);
    endLook();
    await expect.poll(() => finding.value.looking, LONG).toBe(false);
    now.mockRestore();
    expect(finding.value).toMatchObject({ cut: 'ended' });
    expect(finding.value.found.length).toBeLessThan(10_000);
    expect(share.value).toBeUndefined();
    await replaceAll();
    expect(cellView(book.workbook, 'behind', 0, 'note').text).toBe('Tang beside');
  });

  test('another workbook that is opened while they are looked up is left as it is', async () => {
    await looked('kelp', 'Tang');
    const now = vi.spyOn(performance, 'now').mockImplementation(() => Date.now() * 1_000);
    const replacing = replaceAll();
    const other = seasonOf({ Beds: [{ Bed: 'Barn 1', Field: 'Kelp' }] }).book.workbook;
    takeWorkbook(other);
    await replacing;
    now.mockRestore();
    expect(cellView(book.workbook, 'behind', 0, 'note').text).toBe('Kelp beside');
    expect(said()).toBe('');
  });
});
