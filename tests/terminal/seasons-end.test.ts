// A grower's autumn in the terminal: pickings noted, figures learned and one taken over, the season rolled over, which opens clean;
// and what bad input is answered with.

import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { monthsOf } from '../reference/calendars.ts';
import { Folder } from './terminal.ts';

let folder: Folder;
let file: string;

beforeEach(async () => {
  folder = new Folder();
  file = folder.file('f-2027.json');
  await folder.run(['new', 'season', '--season', '2027', '--units', 'si', '--out', file]);
  await folder.run(['set', file, 'Farm', 'x', 'Latitude', '43.1']);
  await importRows('Monthly climate', [
    'Month,Low,High',
    ...monthsOf('Madison WI').map((row) => `${row.Month},${row.Low},${row.High}`),
  ]);
  await importRows('Varieties', ['Variety,Crop', 'Green,"Lettuce, head"', 'Orange,Carrot']);
  await importRows('Packs', ['Variety,Supplier,Seeds,Price', 'Green,A,1000,5', 'Orange,A,20000,9']);
  await importRows('Seed lots', ['Lot,Variety,Quantity', 'Green 2026,Green,5000', 'Orange 2026,Orange,10']);
  await importRows('Beds', ['Bed,Field,Length,Family last year', 'B1,Home,20 m,Apiaceae', 'B2,Home,20 m,']);
  await importRows('Plantings', [
    'Planting,Variety,Start,Seed lot,Bed,Bed length used,Sown,Planted out',
    'Heads,Green,blocks,Green 2026,B1,8 m,2027-03-25,2027-05-01',
    'Roots,Orange,direct seed,,B2,,2027-05-05,',
  ]);
  await importRows('Outlets', ['Outlet,From', 'Market,2027-05-15']);
  await importRows('Records', [
    'Planting,On,What,Amount,Count,Of,Hours',
    'Heads,2027-04-06,came up,,62,80,',
    'Heads,2027-06-20,picked,9 kg,,,0.5',
    'Heads,2027-06-24,picked,7 kg,,,0.4',
    'Heads,2027-06-30,cleared,,,,',
  ]);
});
afterEach(() => folder.remove());

async function importRows(sheet: string, lines: readonly string[]): Promise<void> {
  const ran = await folder.run(['import', file, sheet, folder.put('rows.csv', `${lines.join('\n')}\n`)]);
  expect(ran).toMatchObject({ status: 0, err: '' });
}

async function table(of: string, sheet: string): Promise<readonly Readonly<Record<string, unknown>>[]> {
  const { columns, rows } = JSON.parse((await folder.run(['table', of, sheet, '--json'])).out) as {
    columns: readonly { name: string }[];
    rows: readonly (readonly unknown[])[];
  };
  return rows.map((row) => Object.fromEntries(columns.map(({ name }, at) => [name, row[at]])));
}

test('what was learned is listed, and one figure taken over leaves the library as it is', async () => {
  const listed = await folder.run(['learned', file]);
  expect(listed.out).toMatch(/^Green, germination: .* in the library, 78 ?% by 1 of your own; weighted/m);
  expect(listed.out).toMatch(/^Lettuce, head, picking rate:/m);
  const taken = await folder.run(['learned', file, '--take', 'green, germination']);
  expect(taken).toMatchObject({ status: 0, err: '' });
  expect(taken.out).toMatch(/^Green, germination: \d+ ?% is the farm's own figure now\.$/m);
  const [green] = await table(file, 'Varieties');
  expect(green?.Germination).toBe(green?.['Own germination']);
  expect((await folder.run(['learned', file])).out).not.toMatch(/Green, germination/);
});

describe('roll over', () => {
  test('ages the lots, moves the beds’ past and the dates on, keeps results, and opens clean', async () => {
    const out = folder.file('f-2028.json');
    const before = folder.text('f-2027.json');
    const [needed] = (await table(file, 'Plantings')).map((row) => Number(row['Seeds needed']));
    const ran = await folder.run(['rollover', file, '--season', '2028', '--out', out]);
    expect(ran).toMatchObject({ status: 0, err: '' });
    expect(ran.out).toMatch(/^Season 2028: 2 plantings copied, 2 seed lots left, 1 result kept of 2027\./);
    expect(folder.text('f-2027.json')).toBe(before);
    const lots = await table(out, 'Seed lots');
    expect(lots.map(({ Lot }) => Lot)).toEqual(['Green 2026', 'Orange 2027']);
    expect(lots[0]?.Quantity).toBe(5000 - Number(needed));
    const [first, second] = await table(out, 'Beds');
    expect(first).toMatchObject({ 'Family last year': 'Asteraceae', 'Family two years ago': 'Apiaceae' });
    expect(second).toMatchObject({ 'Family last year': 'Apiaceae', 'Family two years ago': null });
    const plantings = await table(out, 'Plantings');
    expect(plantings.map(({ Sown }) => Sown)).toEqual(['2028-03-25', '2028-05-05']);
    expect(plantings.map((row) => row['Bed length used'])).toEqual([8, 20]);
    const [result] = await table(out, 'Past results');
    expect(result).toMatchObject({ Season: 2027, Planting: 'Heads', Variety: 'Green' });
    expect(Number(result?.['Picking rate'])).toBeCloseTo(16 / 0.9, 6);
    // The season to come is begun today, whatever day the one that ends was begun on.
    expect((await table(out, 'Farm'))[0]).toMatchObject({ Season: 2028, 'Nothing sown before': '2026-11-20' });
    const [outlet] = await table(out, 'Outlets');
    expect(outlet?.From).toBe('2028-05-15');
    // No error, and no warning that this season did not have.
    const checked = await folder.run(['check', out]);
    expect(checked.status).toBe(0);
    const had = (await folder.run(['check', file])).out;
    const warnings = checked.out.split('\n').filter((line) => line.startsWith('warning'));
    expect(warnings.filter((line) => !had.includes(line))).toEqual([]);
    // Learned figures go on with the season that ended, and a figure taken over comes along.
    expect((await folder.run(['learned', out])).out).toMatch(/Green, germination: .* by 1 of your own/);
  });

  test('takes beds and lots along where asked, a lot of which nothing is left never', async () => {
    const out = folder.file('h.json');
    const ran = await folder.run([
      'rollover',
      file,
      ...['--season', '2028', '--out', out, '--plan', 'all', '--along', 'beds, lots, own-rows'],
    ]);
    expect(ran).toMatchObject({ status: 0, err: '' });
    expect(ran.out).toMatch(/^Season 2028: 2 plantings copied with their beds and lots, 2 seed lots left/);
    const was = await table(file, 'Plantings');
    const is = await table(out, 'Plantings');
    expect(is.map(({ Bed }) => Bed)).toEqual(was.map(({ Bed }) => Bed));
    expect(is.map((row) => row['Seed lot'])).toEqual(was.map((row) => row['Seed lot']));
    expect(is.some((row) => row['Seed lot'] !== null)).toBe(true);
  });

  test('leaves the plan behind where asked', async () => {
    const out = folder.file('g.json');
    const ran = await folder.run(['rollover', file, '--season', '2029', '--out', out, '--plan', 'none']);
    expect(ran.out).toMatch(/0 plantings copied/);
    expect(await table(out, 'Plantings')).toEqual([]);
    const [first] = await table(out, 'Beds');
    expect(first).toMatchObject({ 'Family last year': null, 'Family two years ago': 'Asteraceae' });
  });

  test.each([
    [
      ['--season', '2027', '--out', 'OUT'],
      /^f-2027\.json: The season 2027 does not come after 2027, .* name a later one\.\n$/,
    ],
    [['--season', 'next', '--out', 'OUT'], /^--season takes a year such as 2028, not “next”\.\n$/],
    [['--out', 'OUT'], /^Say which season is to come with --season YEAR, such as 2028\.\n$/],
    [['--season', '2028'], /^Name the new file with --out FILE; the old one stays as it is\.\n$/],
    [['--season', '2028', '--out', 'OUT', '--plan', 'half'], /^--plan takes own, all, none/],
    [
      ['--season', '2028', '--out', 'OUT', '--along', 'trays'],
      /^--along takes beds, lots, own-rows, or several .* not “trays”\.\n$/,
    ],
  ])('%j is answered in a sentence, and nothing is written', async (words, says) => {
    const ran = await folder.run([
      'rollover',
      file,
      ...words.map((word) => (word === 'OUT' ? folder.file('o.json') : word)),
    ]);
    expect(ran.status).toBe(2);
    expect(ran.err).toMatch(says);
    expect(folder.names()).not.toContain('o.json');
  });
});

test('a figure that was not learned is refused', async () => {
  const ran = await folder.run(['learned', file, '--take', 'Green, germinating']);
  expect(ran).toMatchObject({ status: 2, err: expect.stringMatching(/did you mean “Green, germination”/) });
});
