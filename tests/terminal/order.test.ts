// A grower's order in the terminal: worked out across suppliers, printed and as CSV, with sets ordered like seed; and what bad
// input is answered with.

import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { Folder } from './terminal.ts';

let folder: Folder;
let file: string;

beforeEach(async () => {
  folder = new Folder();
  file = folder.file('f.json');
  await folder.run(['new', 'season', '--season', '2027', '--out', file]);
  await importRows('Varieties', ['Variety,Crop', 'Green,"Lettuce, head"', 'Late,Cabbage', 'White,Garlic']);
  await importRows('Plantings', [
    'Planting,Variety,Start,Bed length used,Rows,In-row spacing',
    'Lettuce,Green,blocks,50 ft,3,12 in',
    'Cabbage,Late,blocks,50 ft,2,18 in',
    'Garlic,White,sets,50 ft,3,6 in',
  ]);
});
afterEach(() => folder.remove());

async function importRows(sheet: string, lines: readonly string[]): Promise<void> {
  const ran = await folder.run(['import', file, sheet, folder.put('rows.csv', `${lines.join('\n')}\n`)]);
  expect(ran).toMatchObject({ status: 0, err: '' });
}

const PACKS = [
  'Variety,Supplier,Seeds,Weight,Price',
  'Green,East,250,,4.00',
  'Green,East,25000,,3.50',
  'Green,West,250,,3.00',
  'Late,East,100,,5.00',
  'Late,West,100,,4.50',
  'White,West,,5 lb,40.00',
  'White,North,,10 lb,90.00',
];
const SUPPLIERS = ['Supplier,Postage,Postage free from,Least order', 'East,6.00,,', 'West,8.00,60.00,'];

describe('order', () => {
  test('is the cheapest whole, postage counted, and says what each alone would cost', async () => {
    await importRows('Packs', PACKS);
    await importRows('Suppliers', SUPPLIERS);
    const ran = await folder.run(['order', file]);
    expect(ran).toMatchObject({ status: 0, err: '' });
    expect(ran.out).toMatch(/^The cheapest whole order costs \d+\.\d\d: West /);
    expect(ran.out).toMatch(/All from one supplier: West /);
    const csv = await folder.run(['order', file, '--supplier', 'west', '--csv']);
    expect(csv.out.split('\r\n').join('\n')).toMatch(
      /^Supplier,Variety,Crop,Form,Pack,In a pack,Count,Price,Cost,Treated\nWest,Green,/,
    );
    expect(csv.out).toMatch(/West,White,Garlic,sets,/);
    const text = await folder.run(['order', file, '--supplier', 'West']);
    const cost = /costs (\d+\.\d\d)/.exec(ran.out)?.[1];
    expect(text.out).toContain(`to pay ${cost}\n`);
    expect((await folder.run(['check', file])).out).not.toMatch(/holds too few/);
  });

  test('never buys a pack fifty times the need where a small one is sold', async () => {
    await importRows(
      'Packs',
      PACKS.filter((line) => !line.includes('Green,West')),
    );
    const csv = await folder.run(['order', file, '--supplier', 'East', '--csv']);
    expect(csv.out).toMatch(/East,Green,"Lettuce, head",seed,East 250 seeds,250,1,4\.00,4\.00/);
    expect(csv.out).not.toMatch(/25000/);
    const order = await folder.run(['table', file, 'Seed order', '--csv']);
    expect(order.out).not.toMatch(/25000/);
  });

  test('keeps a number of packs that is typed, and works the rest out around it', async () => {
    await importRows('Packs', [
      'Pack,Variety,Supplier,Seeds,Weight,Price,Packs to order',
      'mine,Green,East,250,,4.00,2',
    ]);
    await importRows(
      'Packs',
      PACKS.filter((line) => !line.startsWith('Green,East')),
    );
    await importRows('Suppliers', SUPPLIERS);
    const ran = await folder.run(['order', file]);
    expect(ran).toMatchObject({ status: 0, err: '' });
    const east = await folder.run(['order', file, '--supplier', 'East', '--csv']);
    expect(east.out).toMatch(/East,Green,"Lettuce, head",seed,mine,250,2,4\.00,8\.00/);
    const west = await folder.run(['order', file, '--supplier', 'West', '--csv']);
    expect(west.out).not.toMatch(/Green/);
  });

  test('bad input gets one line, and nothing is written', async () => {
    const before = folder.text('f.json');
    const bare = await folder.run(['order', file]);
    expect(bare).toMatchObject({ status: 2, out: '' });
    expect(bare.err).toMatch(/No pack with a size and a price is listed for what is needed: enter some in Packs\./);
    await importRows('Packs', PACKS);
    const unknown = await folder.run(['order', file, '--supplier', 'South', '--csv']);
    expect(unknown.err).toMatch(/nothing is ordered from “South”: the order goes to /);
    const csv = await folder.run(['order', file, '--csv']);
    expect(csv.err).toMatch(/Say whose order/);
    expect(before).not.toBe('');
  });
});

describe('new', () => {
  test('offers the onions and the seedlings, and their orders are worked out too', async () => {
    const onions = folder.file('onions.json');
    expect(await folder.run(['new', 'onions', '--season', '2027', '--out', onions])).toMatchObject({
      status: 0,
      err: '',
    });
    expect((await folder.run(['check', onions])).status).toBe(0);
    const other = folder.file('seedlings.json');
    expect(await folder.run(['new', 'seedlings', '--season', '2027', '--out', other])).toMatchObject({ status: 0 });
    file = other;
    await importRows('Varieties', ['Variety,Crop', 'Red,Tomato']);
    await importRows('Batches', ['Batch,Variety,Plants to sell,Sold from', 'May,Red,300,2027-05-15']);
    await importRows('Packs', ['Variety,Supplier,Seeds,Price', 'Red,East,250,20.00']);
    const ran = await folder.run(['order', file]);
    expect(ran).toMatchObject({ status: 0, err: '' });
    expect(ran.out).toMatch(/^The cheapest whole order costs 40\.00: East 40\.00\./);
    const unknown = await folder.run(['new', 'orchard', '--out', folder.file('o.json')]);
    expect(unknown.err).toMatch(/choose one of season, onions, seedlings, demo/);
  });
});
