// The first questions: crops as people call them, beds by count, and what each answer puts in the workbook.

import { describe, expect, test } from 'vitest';
import { message } from '../../../engine/index.ts';
import { CROP_GROUPS, isInGroup } from '../../../ui/browser/first-visit/crop-groups.ts';
import { bedCommands, laidOutWords } from '../../../ui/browser/first-visit/first-beds.ts';
import { cropsFound, toggleCrop } from '../../../ui/browser/first-visit/first-crops.ts';
import { KNOWN_PLACES, placeCalled, placesLike } from '../../../ui/browser/first-visit/places.ts';
import { seasonOf } from '../../sheets/season.ts';

describe('places', () => {
  test('each has a latitude and a longitude, and is found case aside', () => {
    expect(KNOWN_PLACES.length).toBeGreaterThan(70);
    expect(
      KNOWN_PLACES.every(({ latitude, longitude }) => Math.abs(latitude) <= 66 && Math.abs(longitude) <= 180),
    ).toBe(true);
    expect(placeCalled(' madison ')?.latitude).toBe(43.1);
    expect(placeCalled('Hobart')?.latitude).toBeLessThan(0);
    expect(placeCalled('nowhere')).toBeUndefined();
  });

  test.each([
    ['Z\u00fcrich', 'Zurich'],
    ['Montr\u00e9al', 'Montreal'],
    ['M\u00fcnchen', 'Munich'],
    ['K\u00f8benhavn', 'Copenhagen'],
    ['St. Louis', 'Saint Louis'],
    ['portland,  oregon', 'Portland, Oregon'],
  ])('%s is %s', (typed, name) => {
    expect(placeCalled(typed)?.name).toBe(name);
  });

  test.each([
    ['Portland', ['Portland, Maine', 'Portland, Oregon']],
    ['Paris, Texas', ['Paris']],
    ['New York City', ['New York', 'York']],
    ['Melborne', ['Melbourne']],
    ['Nowhere', []],
  ])('%s is no place of the list, but may mean %j', (typed, names) => {
    expect(placeCalled(typed)).toBeUndefined();
    expect(placesLike(typed).map(({ name }) => name)).toEqual(names);
  });
});

describe('crops', () => {
  const { workbook } = seasonOf({}).book;

  test.each([
    ['lettuce', 'Lettuce, head'],
    ['lettuces', 'Lettuce, head'],
    ['carrots', 'Carrot'],
    ['tomatoes', 'Tomato'],
    ['radishes', 'Radish'],
    ['head lettuce', 'Lettuce, head'],
    ['onions', 'Onion, bulb'],
  ])('%s finds %s', (typed, crop) => {
    expect(cropsFound(workbook, typed).map(({ name }) => name)).toContain(crop);
  });

  test.each([
    ['corn', 'Sweet corn'],
    ['sweet corn', 'Sweet corn'],
    ['beets', 'Beet'],
    ['chillies', 'Pepper, hot'],
    ['chilies', 'Pepper, hot'],
    ['chiles', 'Pepper, hot'],
    ['onions', 'Onion, bulb'],
    ['lettuce', 'Lettuce, head'],
    ['tomatoes', 'Tomato'],
    ['mange tout', 'Pea, snow'],
    ['mangetout', 'Pea, snow'],
    ['mange-touts', 'Pea, snow'],
    ['spuds', 'Potato'],
    ['new potatoes', 'Potato'],
    ['gherkins', 'Cucumber'],
    ['sweetcorn', 'Sweet corn'],
    ['water melons', 'Watermelon'],
    ['egg plant', 'Eggplant'],
    ['beet root', 'Beet'],
    ['marrows', 'Squash, summer'],
    ['neeps', 'Rutabaga'],
    ['Chinese leaves', 'Napa cabbage'],
    ['spring greens', 'Collards'],
    ['yams', 'Sweet potato'],
    ['petits pois', 'Pea, shelling'],
    ['jalape\u00f1os', 'Pepper, hot'],
    ['fris\u00e9e', 'Endive and escarole'],
    ['lady\u2019s fingers', 'Okra'],
    ['lambs lettuce', 'Corn salad'],
    ['salad leaves', 'Salad mix, baby leaf'],
  ])('%s finds %s before all others', (typed, crop) => {
    expect(cropsFound(workbook, typed)[0]?.name).toBe(crop);
  });

  test.each([
    ['herbs', ['Basil', 'Parsley', 'Chives', 'Rosemary'], 'Carrot'],
    ['root vegetables', ['Carrot', 'Beet', 'Parsnip'], 'Kale'],
    ['brassicas', ['Kale', 'Cabbage', 'Radish'], 'Lettuce, head'],
    ['alliums', ['Leek', 'Garlic'], 'Fennel, bulb'],
    ['cut flowers', ['Zinnia', 'Sunflower, cut'], 'Broccoli'],
    ['berries', ['Strawberry', 'Ground cherry'], 'Melon'],
    ['soft fruit', ['Strawberry', 'Ground cherry'], 'Rhubarb'],
    ['fruits', ['Melon', 'Watermelon', 'Strawberry'], 'Carrot'],
    ['Fabaceae', ['Fava bean', 'Pea, snow'], 'Beet'],
  ])('%s are a group', (typed, some, other) => {
    const names = cropsFound(workbook, typed).map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(some));
    expect(names).not.toContain(other);
  });

  test('all that groups name is in the library, and a name comes before a group', () => {
    const library = cropsFound(workbook, '').map(({ name }) => name);
    expect(CROP_GROUPS.flatMap(({ crops }) => crops ?? []).filter((name) => !library.includes(name))).toEqual([]);
    expect(cropsFound(workbook, 'salad')[0]?.name).toMatch(/salad/i);
    expect(isInGroup('', { name: 'Basil', family: 'Lamiaceae' })).toBe(false);
  });

  test('what only begins so comes last', () => {
    const names = cropsFound(workbook, 'corn').map(({ name }) => name);
    expect(names.indexOf('Corn salad')).toBeGreaterThan(0);
    expect(names).toEqual([...new Set(names)]);
  });

  test('what no crop is called finds none, nothing typed finds all', () => {
    expect(cropsFound(workbook, 'xyz')).toEqual([]);
    expect(cropsFound(workbook, 'cress')).toEqual([]);
    expect(cropsFound(workbook, '').length).toBe([...seasonOf({}).book.rows('Crops')].length);
  });

  test('a tick plants at the usual spacing, taking it away leaves nothing behind', () => {
    const season = seasonOf({});
    const book = season.book.workbook;
    const found = () => cropsFound(book, 'carrot').find(({ name }) => name === 'Carrot');
    const toggle = (): void => {
      const crop = found();
      if (crop === undefined) throw new Error('The library has no carrot.');
      const { commands, said } = toggleCrop(book, crop);
      const done = book.do(commands, said);
      if (done.refused) throw new Error(done.why);
    };
    toggle();
    expect(season.number('Plantings', 'Carrot', 'In-row spacing')).toBeGreaterThan(0);
    expect(found()?.planting).toBeDefined();
    toggle();
    expect(season.book.rows('Plantings').length).toBe(0);
    expect(season.book.rows('Varieties').length).toBe(0);
  });
});

test('beds are numbered past those that are there', () => {
  const { book } = seasonOf({ Beds: [{ Bed: 'Bed 2' }] });
  const commands = bedCommands(book.workbook, 3);
  expect(book.workbook.do(commands, message('trial')).refused).toBe(false);
  const names = [...book.rows('Beds')].map((row) => book.rowName('Beds', row));
  expect(names).toEqual(['Bed 2', 'Bed 1', 'Bed 3', 'Bed 4']);
  expect(bedCommands(book.workbook, 0)).toEqual([]);
});

test('of more beds than are laid out at one time the rest is said', () => {
  const { book } = seasonOf({});
  expect(bedCommands(book.workbook, 250).length).toBe(200);
  expect(laidOutWords(250)).toBe(
    '200 of the 250 beds are laid out, the most at one time: press “Lay out so many more” for the other 50.',
  );
  expect(laidOutWords(200)).toBe('200 beds are laid out.');
  expect(laidOutWords(1)).toBe('One bed is laid out.');
});
