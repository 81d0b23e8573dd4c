// Dates against what a calendar says: every day from 1999 to 2101 is gone through one by one, weekdays and weeks are counted along, and
// the functions must agree. Working days are counted one by one too.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FUNCTIONS } from '../../engine/functions/index.ts';
import { civilDay, isoDate } from '../../engine/values/civil.ts';
import type { Scalar } from '../../engine/values/error.ts';
import { Figures } from '../../engine/values/figures.ts';
import { workedOut } from './formulas.ts';

function numeric(name: string): (...args: number[]) => number {
  const body = FUNCTIONS.get(name)?.body;
  if (body?.lane !== 'numeric') throw new Error(`${name} is not numeric`);
  return body.compute;
}

function overColumns(name: string): (...args: (Scalar | readonly Scalar[])[]) => Scalar {
  const body = FUNCTIONS.get(name)?.body;
  if (body?.lane !== 'columns') throw new Error(`${name} takes no columns`);
  return (...args) => {
    const answer = body.compute(args);
    if (answer instanceof Figures) throw new Error(`${name} answers with several figures`);
    return answer;
  };
}

const FIRST = civilDay(1999, 1, 1);
const LAST = civilDay(2101, 1, 1);

/** The days on which two ways of counting differ. */
function differences(one: (day: number) => number, other: (day: number) => number): readonly string[] {
  const found: string[] = [];
  for (let day = FIRST; day < LAST; day += 1) {
    const [here, there] = [one(day), other(day)];
    if (here !== there) found.push(`${isoDate(day)}: ${here} and ${there}`);
  }
  return found;
}

function sinceMonday(day: number): number {
  return (((4 + day - FIRST) % 7) + 7) % 7;
}

describe('weekdays and weeks, day by day', () => {
  it('WEEKDAY goes round by sevens from Friday, 1 January 1999, in every way of counting', () => {
    const weekday = numeric('WEEKDAY');
    expect(
      differences(
        (day) => weekday(day, 2),
        (day) => sinceMonday(day) + 1,
      ),
    ).toEqual([]);
    expect(differences((day) => weekday(day, 3), sinceMonday)).toEqual([]);
    expect(
      differences(
        (day) => weekday(day, Number.NaN),
        (day) => ((sinceMonday(day) + 1) % 7) + 1,
      ),
    ).toEqual([]);
    for (let kind = 11; kind <= 17; kind += 1) {
      expect(
        differences(
          (day) => weekday(day, kind),
          (day) => ((sinceMonday(day) + 18 - kind) % 7) + 1,
        ),
      ).toEqual([]);
    }
  });

  it('ISOWEEKNUM counts on each Monday and begins anew in the week of 4 January', () => {
    let week = 53; // 1 January 1999 was the Friday of the last week of 1998, which has 53.
    const counted = (day: number): number => {
      if (sinceMonday(day) !== 0) return week;
      const days = Array.from({ length: 7 }, (_, on) => isoDate(day + on));
      week = days.some((one) => one.endsWith('-01-04')) ? 1 : week + 1;
      return week;
    };
    expect(differences(numeric('ISOWEEKNUM'), counted)).toEqual([]);
  });

  it.each([
    [1, 6],
    [2, 0],
    [11, 0],
    [12, 1],
    [13, 2],
    [14, 3],
    [15, 4],
    [16, 5],
    [17, 6],
  ])('WEEKNUM of kind %i counts on from 1 January at each first day of the week', (kind, first) => {
    let week = 0;
    const counted = (day: number): number => {
      if (isoDate(day).endsWith('-01-01')) week = 1;
      else if (sinceMonday(day) === first) week += 1;
      return week;
    };
    const weekNumber = numeric('WEEKNUM');
    expect(differences((day) => weekNumber(day, kind), counted)).toEqual([]);
  });
});

describe('working days, counted one by one', () => {
  const dates = fc.integer({ min: FIRST + 1000, max: LAST });
  const holidays = fc.array(fc.integer({ min: FIRST + 800, max: FIRST + 2000 }), { maxLength: 12 });
  const weeks = fc.constantFrom('', 'Sun', 'Sat Sun', 'Friday, Saturday', 'mo we fr', 'Mon Tue Wed Thu Fri Sat');
  const names = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

  function works(day: number, closed: readonly number[], week: string): boolean {
    const name = names[sinceMonday(day)] ?? '';
    const off = week
      .toLowerCase()
      .split(/[ ,]+/)
      .filter((word) => word !== '');
    return !closed.includes(day) && !off.some((word) => word.slice(0, 2) === name.slice(0, 2));
  }

  it('NETWORKDAYS', () => {
    const count = overColumns('NETWORKDAYS');
    fc.assert(
      fc.property(dates, fc.integer({ min: 0, max: 800 }), holidays, weeks, (from, length, closed, week) => {
        let expected = 0;
        for (let day = from; day <= from + length; day += 1) if (works(day, closed, week)) expected += 1;
        expect(count(from, from + length, closed, week)).toBe(expected);
        if (length > 0) expect(count(from + length, from, closed, week)).toBe(expected === 0 ? 0 : -expected);
      }),
    );
  });

  it('WORKDAY', () => {
    const move = overColumns('WORKDAY');
    fc.assert(
      fc.property(dates, fc.integer({ min: -300, max: 300 }), holidays, weeks, (from, days, closed, week) => {
        let day = from;
        for (let left = Math.abs(days); left > 0; ) {
          day += Math.sign(days);
          if (works(day, closed, week)) left -= 1;
        }
        expect(move(from, days, closed, week)).toBe(day);
      }),
    );
  });

  it('of one column of days off for many rows, whatever week each of them has, and the column is gone through once a week', () => {
    const [count, move] = [overColumns('NETWORKDAYS'), overColumns('WORKDAY')];
    const asked = fc.tuple(dates, fc.integer({ min: 1, max: 60 }), weeks);
    fc.assert(
      fc.property(holidays, fc.array(asked, { minLength: 50, maxLength: 60 }), (closed, rows) => {
        let read = 0;
        const column = new Proxy(closed, {
          get: (of, name, self) => {
            if (typeof name === 'string' && /^\d+$/.test(name)) read += 1;
            return Reflect.get(of, name, self);
          },
        });
        for (const [from, days, week] of rows) {
          const day = move(from, days, column, week);
          if (typeof day !== 'number') throw new Error('no day');
          const within = Array.from({ length: day - from }, (_, i) => works(from + 1 + i, closed, week));
          expect(within.filter((one) => one)).toHaveLength(days);
          expect(within.at(-1)).toBe(true);
          expect(count(from + 1, day, column, week)).toBe(days);
        }
        expect(read).toBeLessThanOrEqual(closed.length * new Set(rows.map(([, , week]) => week)).size);
      }),
      { numRuns: 20 },
    );
  });
});

/** Worked out on paper. */
const SHOWN: readonly (readonly [formula: string, shown: string])[] = [
  ['DATE(2027; 13; 1)', '1 Jan 2028'],
  ['DATE(2027; 3; 0)', '28 Feb 2027'],
  ['DATE(2028; 3; 0)', '29 Feb 2028'],
  ['EDATE(DATE(2027;1;31); 1)', '28 Feb 2027'],
  ['EDATE(DATE(2024;2;29); -12)', '28 Feb 2023'],
  ['EDATE(DATE(2024;2;29); 0)', '29 Feb 2024'],
  ['EOMONTH(DATE(2027;1;5); 1)', '28 Feb 2027'],
  ['EOMONTH(DATE(2027;1;5); -1)', '31 Dec 2026'],
  // Easter days of 1818 and 1943, the earliest and the latest there can be.
  ['EASTERSUNDAY(1818)', '22 Mar 1818'],
  ['EASTERSUNDAY(1943)', '25 Apr 1943'],
  ['DATEDIF(DATE(2026;11;20); DATE(2027;3;10); "m")', '3'],
  ['DATEDIF(DATE(2026;11;20); DATE(2027;3;10); "md")', '18'],
  ['DAYS360(DATE(2027;1;30); DATE(2027;2;1))', '1 days'],
  ['DAYS360(DATE(2024;2;29); DATE(2024;2;29))', '0 days'],
  ['YEARFRAC(DATE(2027;1;1); DATE(2028;1;1); 1)', '1'],
  ['TEXT(DATEVALUE("15 March 2027"); "yyyy-mm-dd")', '2027-03-15'],
  ['TEXT(TIMEVALUE("18:05:20"); "h:mm:ss")', '18:05:20'],
  ['TIME(25; 0; 0)', '25 h'],
  ['HOUR(TIME(25; 30; 0))', '1'],
  ['SECOND(TIME(0; 0; 59.6))', '0'],
];

describe('dates worked out on paper', () => {
  const answer = workedOut(SHOWN.map(([formula]) => formula));
  it.each(SHOWN)('%s is %s', (formula, shown) => {
    expect(answer(formula)).toMatchObject({ is: 'value', shown });
  });
});
