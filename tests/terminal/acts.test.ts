// A grower's winter in the terminal: successions laid and laid again, beds proposed; and what bad input is answered with.

import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { monthsOf } from '../reference/calendars.ts';
import { Folder, runWith } from './terminal.ts';

let folder: Folder;
let file: string;

beforeEach(async () => {
  folder = new Folder();
  file = folder.file('f.json');
  await folder.run(['new', 'season', '--season', '2027', '--out', file]);
  await folder.run(['set', file, 'Farm', 'x', 'Latitude', '43.1']);
  await importRows('Monthly climate', [
    'Month,Low,High',
    ...monthsOf('Madison WI').map((row) => `${row.Month},${row.Low},${row.High}`),
  ]);
  await importRows('Varieties', ['Variety,Crop', 'Green,"Lettuce, head"', 'Late,Cabbage']);
  await importRows('Beds', ['Bed,Field,Length', ...[1, 2, 3, 4, 5, 6, 7, 8].map((n) => `B${n},Home,50 ft`)]);
});
afterEach(() => folder.remove());

async function importRows(sheet: string, lines: readonly string[]): Promise<void> {
  const ran = await folder.run(['import', file, sheet, folder.put('rows.csv', `${lines.join('\n')}\n`)]);
  expect(ran).toMatchObject({ status: 0, err: '' });
}

async function table(sheet: string): Promise<readonly Readonly<Record<string, unknown>>[]> {
  const { columns, rows } = JSON.parse((await folder.run(['table', file, sheet, '--json'])).out) as {
    columns: readonly { name: string }[];
    rows: readonly (readonly unknown[])[];
  };
  return rows.map((row) => Object.fromEntries(columns.map(({ name }, at) => [name, row[at]])));
}

const SUCCESSION = 'Succession,Variety,From,To,Pieces a week';

describe('lay and place', () => {
  test('a planting with only a variety and an amount has its dates, length and seed', async () => {
    await importRows('Plantings', ['Planting,Variety,Wanted', 'Cabbage,Late,80 heads']);
    const [planting] = await table('Plantings');
    expect(planting).toMatchObject({ Start: 'blocks', 'Wanted pieces': 80, 'Dates from': 'earliest that makes sense' });
    expect(String(planting?.['Planted out'])).toMatch(/^2027-04/);
    expect(Number(planting?.['Seeds needed'])).toBeGreaterThan(80);
    expect(Number(planting?.['Expected pieces'])).toBeGreaterThanOrEqual(80);
  });

  test('sixty heads a week from June to October, each with a bed, and laid again after a change', async () => {
    await importRows('Successions', [SUCCESSION, 'Lettuce,Green,2027-06-15,2027-09-30,60']);
    const laid = await folder.run(['lay', file, 'Lettuce']);
    expect(laid).toMatchObject({ status: 0, err: '' });
    expect(laid.out).toMatch(/^Lettuce: \d+ plantings laid\./);
    const far: (string | undefined)[] = [];
    const placed = await runWith(['place', file], [], undefined, (line) => far.push(line));
    // How far it is, again and again, and nothing of it stays.
    expect(far.filter((line) => /^Looking for beds: \d+%$/.test(line ?? '')).length).toBeGreaterThan(10);
    expect(far.at(-1)).toBeUndefined();
    expect(placed.out).toMatch(/^(\d+) plantings of \1 placed\.\nLettuce 1: B\d\n/);
    expect((await folder.run(['place', file, '--seed', '9', '--out', folder.file('other.json')])).status).toBe(0);
    const before = await table('Plantings');
    for (const { Bed, 'Wanted pieces': wanted } of before) {
      expect(String(Bed)).toMatch(/^B\d$/);
      expect(wanted).toBe(60);
    }
    await folder.run(['set', file, 'Successions', 'Lettuce', 'Pieces a week', '30']);
    expect((await folder.run(['check', file])).out).toContain('Changed since its plantings were laid: lay it again.');
    await folder.run(['lay', file]);
    const after = await table('Plantings');
    expect(after.map((row) => row['Wanted pieces'])).toEqual(before.map(() => 30));
    expect(after.map((row) => row.Planting)).toEqual(before.map((row) => row.Planting));
    expect((await folder.run(['check', file])).out).not.toContain('Changed since');
  });

  test.each([
    [['lay', 'FILE'], 'f.json: there are no successions yet: enter them in Successions first.\n'],
    [['lay', 'FILE', 'Leeks'], 'f.json: Successions has no row called “Leeks”: it has no rows yet.\n'],
    [['place', 'FILE'], 'f.json: Every planting has a bed typed or stands in one: there is nothing to propose.\n'],
    [['place', 'FILE', '--seed', 'x'], '--seed takes a whole number such as 7, not “x”.\n'],
  ])('%j', async (words, err) => {
    if (err.startsWith('--seed')) await importRows('Plantings', ['Planting,Variety', 'Cabbage,Late']);
    const saved = folder.text('f.json');
    const ran = await folder.run(words.map((word) => (word === 'FILE' ? file : word)));
    expect(ran).toEqual({ status: 2, out: '', err });
    expect(folder.text('f.json')).toBe(saved);
  });

  test('a succession longer than the season and one that nothing is ripe for: a sentence, and nothing is written', async () => {
    await importRows('Successions', [
      SUCCESSION,
      'Long,Green,2027-06-15,2028-09-30,60',
      'Winter,Green,2027-02-01,2027-03-15,60',
    ]);
    const saved = folder.text('f.json');
    expect((await folder.run(['lay', file, 'Long'])).err).toBe(
      "f.json: Long is longer than a season: end it by 13 Jun 2028, and lay the rest in next season's workbook.\n",
    );
    expect((await folder.run(['lay', file, 'Winter'])).err).toMatch(
      /^f\.json: Winter: no harvest wanted can be had\. 7 harvests left out/,
    );
    expect((await folder.run(['lay', file])).status).toBe(2);
    expect(folder.text('f.json')).toBe(saved);
  });
});

describe('plant', () => {
  test('a way becomes the planting, and a way that is not tried is answered with those that are', async () => {
    await importRows('Beds to try', ['Bed to try,Variety,Bed length used', 'Cabbages,Late,40 ft']);
    const ran = await folder.run(['plant', file, 'Cabbages', 'singles in cells']);
    expect(ran).toMatchObject({ status: 0, err: '', out: 'Cabbages, singles in cells is in Plantings.\n' });
    expect((await table('Plantings'))[0]).toMatchObject({ Start: 'cells', Variety: 'Late' });
    const other = await folder.run(['plant', file, 'Cabbages', 'cuttings']);
    expect(other).toMatchObject({ status: 2, out: '' });
    expect(other.err).toMatch(/“cuttings” is no way tried on Cabbages: choose one of Singles in blocks; /);
  });
});
