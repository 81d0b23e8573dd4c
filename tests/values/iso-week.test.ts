// ISO weeks at the turns of years, there and back.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { civilDay } from '../../engine/values/civil.ts';
import { mondayOf, mondayOfWeek, weekName } from '../../engine/values/iso-week.ts';

describe('ISO weeks', () => {
  it('belong to the year of their Thursday (examples of ISO 8601: 2005 and 2008)', () => {
    expect(weekName(civilDay(2005, 1, 1))).toBe('2004-W53');
    expect(weekName(civilDay(2005, 1, 3))).toBe('2005-W01');
    expect(weekName(civilDay(2007, 12, 31))).toBe('2008-W01');
    expect(weekName(civilDay(2008, 12, 29))).toBe('2009-W01');
    expect(weekName(civilDay(2010, 1, 3))).toBe('2009-W53');
    expect(weekName(civilDay(2027, 5, 3))).toBe('2027-W18');
  });

  it('are read back, and those that no year has are none', () => {
    expect(mondayOfWeek('2027-W18')).toBe(civilDay(2027, 5, 3));
    expect(mondayOfWeek('2027w18')).toBe(civilDay(2027, 5, 3));
    expect(mondayOfWeek('2027-W53')).toBeUndefined();
    expect(mondayOfWeek('2026-W53')).toBe(civilDay(2026, 12, 28));
    for (const none of ['2027-W00', 'W18', '18', '2027-18', '']) expect(mondayOfWeek(none)).toBeUndefined();
    fc.assert(
      fc.property(fc.integer({ min: -200_000, max: 200_000 }), (day) => {
        expect(mondayOfWeek(weekName(day))).toBe(mondayOf(day));
        expect(day - mondayOf(day)).toBeLessThan(7);
      }),
      { numRuns: 300 },
    );
  });
});
