// A climate that stands under a latitude of the other half of the world is noticed, that of no place under its own. Normals with their
// sources in tests/reference/data/place-climates.csv.

import { describe, expect, test } from 'vitest';
import { latitudeOf, monthsOf, PLACES } from '../reference/calendars.ts';
import { seasonOf } from './season.ts';

const WRONG = /at this latitude: is it that of another place, or has the latitude the wrong sign\?/;

function said(farm: Readonly<Record<string, string>>, place?: string): readonly string[] {
  const season = seasonOf(place === undefined ? {} : { 'Monthly climate': monthsOf(place) }, farm, { units: 'si' });
  return season.says('Farm', 'Farm').filter((says) => WRONG.test(says));
}

describe.each(PLACES)('%s', (place) => {
  test('is told from its mirror', () => {
    expect(said({ Latitude: String(latitudeOf(place)) }, place)).toEqual([]);
    expect(said({ Latitude: String(-latitudeOf(place)) }, place)).toHaveLength(1);
  });
});

test('the sentence names the month', () => {
  expect(said({ Latitude: '-51.8' }, 'Oxford UK')[0]).toMatch(
    /^The climate is warmest in July, in the middle of winter at this latitude/,
  );
});

test('where there are frosts alone, they tell', () => {
  const frosts = { 'Average last frost': '2027-04-25', 'Average first frost': '2027-10-20' };
  expect(said({ Latitude: '52', ...frosts })).toEqual([]);
  expect(said({ Latitude: '-52', ...frosts })).toHaveLength(1);
  expect(said({ Latitude: '-34', 'Average last frost': '20 Aug', 'Average first frost': '10 Jun' })).toEqual([]);
  expect(said({ Latitude: '34', 'Average last frost': '20 Sep' })).toHaveLength(1);
});

test('near the equator the warmest weeks may be any, and with nothing typed nothing is said', () => {
  expect(said({ Latitude: '-6' }, 'Oxford UK')).toEqual([]);
  expect(said({ Latitude: '-34' })).toEqual([]);
  expect(said({})).toEqual([]);
});
