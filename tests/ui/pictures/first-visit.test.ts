// The first questions: months as people paste them, crops as people call them, beds by count, and what each answer puts in the workbook.

import { describe, expect, test } from 'vitest';
import { message } from '../../../engine/index.ts';
import { bedCommands } from '../../../ui/browser/first-visit/first-beds.ts';
import { cropsFound, toggleCrop } from '../../../ui/browser/first-visit/first-crops.ts';
import { readMonths } from '../../../ui/browser/first-visit/months.ts';
import { KNOWN_PLACES, placeCalled } from '../../../ui/browser/first-visit/places.ts';
import { seasonOf } from '../../sheets/season.ts';

describe('twelve months', () => {
  const tall = Array.from({ length: 12 }, (_, month) => `Month ${month + 1}\t${month - 8}\t${month + 3.5}`).join('\n');

  test('a line each, whatever stands in front', () => {
    const read = readMonths(tall);
    expect(read.ok && read.months.length).toBe(12);
    expect(read.ok && read.months[0]).toEqual({ low: -8, high: 3.5 });
  });

  test('a line of lows and a line of highs, either first, with decimal commas and long minus signs', () => {
    const lows = Array.from({ length: 12 }, (_, month) => `\u2212${month},5`).join(' ');
    const highs = Array.from({ length: 12 }, (_, month) => `${month + 10}`).join(' ');
    const read = readMonths(`highs ${highs}\nlows ${lows}`);
    expect(read.ok && read.months[2]).toEqual({ low: -2.5, high: 12 });
  });

  const lows = [30, 33, 40, 49, 58, 66, 70, 69, 62, 50, 40, 33];
  const highs = [48, 52, 61, 70, 78, 85, 89, 88, 82, 72, 61, 51];
  const wanted = lows.map((low, month) => ({ low, high: highs[month] }));
  const lines = (line: (low: number, high: number, month: number) => string): string =>
    lows.map((low, month) => line(low, highs[month] ?? 0, month + 1)).join('\n');

  test.each([
    ['a number of the month in front', lines((low, high, month) => `${month},${low},${high}`)],
    [
      'a year and a month in front',
      lines((low, high, month) => `2026-${String(month).padStart(2, '0')}\t${low}\t${high}`),
    ],
    ['commas between', lines((low, high) => `${low},${high}`)],
    ['commas between figures with points', lines((low, high) => `${low}.0,${high}`)],
    ['a hyphen between', lines((low, high) => `${low}-${high}`)],
    ['a dash between', lines((low, high) => `${low} \u2013 ${high}`)],
    ['their unit behind each', lines((low, high) => `${low}°F-${high}°F`)],
    ['the high first', lines((low, high) => `${high};${low}`)],
    [
      'a mean between, under heads',
      `Month\tLow\tMean\tHigh\n${lines((low, high, month) => `${month}\t${low}\t${(low + high) / 2}\t${high}`)}`,
    ],
    ['rain behind, under heads', `Min Max Rain\n${lines((low, high) => `${low} ${high} 3.4`)}`],
    [
      'records beside, under heads',
      `Record low,Mean min,Mean max\n${lines((low, high) => `${low - 20},${low},${high}`)}`,
    ],
    ['a line for the year behind', `${lines((low, high) => `${low} ${high}`)}\nYear 50 70`],
    ['lines of twelve and the year', `low ${lows.join(' ')} 50\nhigh ${highs.join(' ')} 70`],
    ['lines of twelve with means', `high,${highs.join(',')}\nmean,${lows.join(',')}\nlow,${lows.join(',')}`],
  ])('with %s', (_, typed) => {
    expect(readMonths(typed)).toEqual({ ok: true, months: wanted });
  });

  test('below zero after a blank is below zero', () => {
    expect(readMonths(lines((low, high) => `-${high} -${low}`))).toEqual({
      ok: true,
      months: lows.map((low, month) => ({ low: -(highs[month] ?? 0), high: -low })),
    });
  });

  test.each([
    ['a third figure without heads', lines((low, high) => `${low} ${high} 3.4`), 'Each line holds 3 figures'],
    [
      'lines of different length',
      lines((low, high, month) => (month === 4 ? `${low} ${high} 2` : `${low} ${high}`)),
      'more figures than others',
    ],
    [
      'three lines of twelve without words',
      [lows, highs, lows].map((line) => line.join(' ')).join('\n'),
      '3 lines hold twelve months each',
    ],
  ])('%s is asked about', (_, typed, why) => {
    const read = readMonths(typed);
    expect(!read.ok && read.why).toContain(why);
  });

  test('eleven lines are refused with what is wanted', () => {
    const read = readMonths(tall.split('\n').slice(1).join('\n'));
    expect(!read.ok && read.why).toContain('11 lines could be read');
  });
});

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
  ])('%s finds %s before all others', (typed, crop) => {
    expect(cropsFound(workbook, typed)[0]?.name).toBe(crop);
  });

  test('what only begins so comes last', () => {
    const names = cropsFound(workbook, 'corn').map(({ name }) => name);
    expect(names.indexOf('Corn salad')).toBeGreaterThan(0);
    expect(names).toEqual([...new Set(names)]);
  });

  test('what no crop is called finds none, nothing typed finds all', () => {
    expect(cropsFound(workbook, 'xyz')).toEqual([]);
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
