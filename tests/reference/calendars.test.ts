// How near the workbook comes to the printed calendars as a whole, rows of unnamed pages with them: in the workbook as it is, and
// with the rule of the earliest dates fitted to the other places alone.

import { describe, expect, it } from 'vitest';
import { CALENDARS } from './calendar-publications.ts';
import { toldByOthers } from './calendar-rule.ts';
import { CALENDARS_OFF, cutName, toldName } from './calendars.checks.ts';
import { autumn, earliest, harvests, latest, median, PLACES, shareWithin, type Told } from './calendars.ts';
import { readTable, textOf } from './table.ts';

const THREE_WEEKS = 21;
const GRACE = 14;
/** Days off of a row without a date. */
const NEVER = 365;

const spring = earliest();
const cuts = harvests();

function lates(rows: readonly Told[]): readonly number[] {
  return rows.map(({ late }) => (Number.isNaN(late) ? NEVER : late));
}

function expectNear(days: readonly number[], most: number, share: number): void {
  expect(median(days.map(Math.abs))).toBeLessThanOrEqual(most);
  expect(shareWithin(days, THREE_WEEKS)).toBeGreaterThanOrEqual(share);
}

describe('calendars of ten places', () => {
  it('are many and each of a source that is named, or counted as unnamed', () => {
    expect(spring.length).toBeGreaterThan(120);
    const sources = new Set(readTable('place-calendars').map((row) => textOf(row, 'source')));
    expect([...sources].filter((key) => key !== 'unnamed').sort()).toEqual(Object.keys(CALENDARS).sort());
  });

  it('begin in spring when the workbook says', () => expectNear(lates(spring), 5, 0.95));

  it('begin when the rule of the other places says', () => expectNear(toldByOthers(spring), 7, 0.95));

  it.each(PLACES.filter((place) => spring.some((row) => row.place === place)))(
    'begin at %s when the workbook says',
    (place) => expectNear(lates(spring.filter((row) => row.place === place)), 12, 0.8),
  );

  it('begin for autumn when the workbook says, in three places with a hot summer', () =>
    expectNear(lates(autumn()), 7, 0.84));

  it('end when the workbook says, less surely: they are printed for early kinds and late', () =>
    expectNear(lates(latest()), 12, 0.74));

  it('harvest in the printed window, two weeks either side', () => {
    const outside = cuts.map((cut) => (Number.isNaN(cut.outside) ? NEVER : cut.outside));
    expect(cuts.length).toBeGreaterThan(80);
    expect(shareWithin(outside, GRACE)).toBeGreaterThanOrEqual(0.85);
  });

  it('are off in the rows listed, none of which is a row no more', () => {
    const names = [...[...spring, ...autumn(), ...latest()].map(toldName), ...cuts.map(cutName)];
    expect([...CALENDARS_OFF.keys()].filter((name) => !names.includes(name))).toEqual([]);
  });
});
