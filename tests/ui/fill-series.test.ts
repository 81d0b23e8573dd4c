// How filled cells go on: dates, numbers, names that end in numbers, steps shown by two cells, copies.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { civilDayOfIso, isoDate } from '../../engine/index.ts';
import { type End, type Filled, type Source, seriesOf, type Way, waysFor } from '../../ui/browser/grid/fill/series.ts';

function day(iso: string): End {
  return { kind: 'date', day: civilDayOfIso(iso) ?? 0 };
}

/** `own`: in the column's unit, where it was typed in another. */
function number(n: number, unit = '', own = n): End {
  return { kind: 'number', entry: `${n}${unit}`, own, typed: { number: n, unit } };
}

/** '2 ft 6 in', so many of the column's unit. */
function mixed(entry: string, own: number): End {
  return { kind: 'number', entry, own, typed: undefined };
}

function range(...ends: readonly End[]): Source {
  return { kind: 'range', entry: ends.map((end) => shown(seriesOf([end], 'copy', true)(0))).join('..'), ends };
}

function text(words: string): Source {
  return { kind: 'text', text: words };
}

function shown(value: Filled): string {
  if (value === undefined) return '';
  if ('day' in value) return isoDate(value.day);
  if ('ends' in value) return value.ends.map(shown).join('..');
  return 'text' in value ? value.text : `${value.number}${value.unit}`;
}

function next(sources: readonly Source[], count: number, way?: Way, forward = true): readonly string[] {
  const series = seriesOf(sources, way ?? waysFor(sources)[0] ?? 'copy', forward);
  return Array.from({ length: count }, (_, step) => shown(series(step)));
}

test('one date goes on by the day, or by week or month where that is asked for, and back upwards', () => {
  const one = [day('2027-01-30')];
  expect(waysFor(one)).toEqual(['day', 'week', 'month', 'copy']);
  expect(next(one, 3)).toEqual(['2027-01-31', '2027-02-01', '2027-02-02']);
  expect(next(one, 2, 'week')).toEqual(['2027-02-06', '2027-02-13']);
  expect(next(one, 3, 'month')).toEqual(['2027-02-28', '2027-03-30', '2027-04-30']);
  expect(next(one, 2, 'copy')).toEqual(['2027-01-30', '2027-01-30']);
  expect(next(one, 2, 'day', false)).toEqual(['2027-01-29', '2027-01-28']);
});

test('two dates show their step: so many days, or the same day of each month', () => {
  expect(next([day('2027-03-01'), day('2027-03-15')], 2)).toEqual(['2027-03-29', '2027-04-12']);
  expect(next([day('2027-01-31'), day('2027-02-28'), day('2027-03-31')], 2)).toEqual(['2027-04-30', '2027-05-31']);
  expect(next([day('2027-03-15'), day('2027-03-01')], 1)).toEqual(['2027-02-15']);
  expect(next([day('2027-03-01'), day('2028-03-01')], 1)).toEqual(['2029-03-01']);
  expect(next([day('2027-03-01'), day('2027-03-02'), day('2027-03-09')], 2)).toEqual(['2027-03-01', '2027-03-02']);
});

test('one number is copied, two show their step, and a step carries no dust', () => {
  expect(next([number(8, ' in')], 2)).toEqual(['8 in', '8 in']);
  expect(next([number(8, ' in')], 2, 'count')).toEqual(['9 in', '10 in']);
  expect(next([number(8, ' in')], 2, 'count', false)).toEqual(['7 in', '6 in']);
  expect(next([number(0.1), number(0.2)], 3)).toEqual(['0.3', '0.4', '0.5']);
  expect(next([number(10), number(7)], 2)).toEqual(['4', '1']);
  expect(next([number(1), number(2), number(4)], 3)).toEqual(['1', '2', '4']);
});

test('figures typed in feet and inches, or each in a unit of its own, go on by their values, in the unit of the column', () => {
  const feet = [mixed('40 ft 0 in', 40), number(41)];
  expect(waysFor(feet)).toEqual(['count', 'copy']);
  expect(next(feet, 3)).toEqual(['42', '43', '44']);
  expect(next(feet, 3, 'copy')).toEqual(['40 ft 0 in', '41', '40 ft 0 in']);
  expect(next([mixed('2 ft 6 in', 2.5), mixed('3 ft 0 in', 3)], 2)).toEqual(['3.5', '4']);
  // 50 cm and 60 cm in a column of metres, the second typed in metres.
  expect(next([number(50, ' cm', 0.5), number(0.6)], 2)).toEqual(['0.7', '0.8']);
});

test('one range is copied; two go on by their step at both ends, in days and figures', () => {
  const one = range(number(40), number(50));
  expect(waysFor([one])).toEqual(['copy']);
  expect(next([one], 2)).toEqual(['40..50', '40..50']);
  expect(next([one], 2, 'count')).toEqual(['40..50', '40..50']);
  const two = [one, range(number(50), number(60))];
  expect(waysFor(two)).toEqual(['count', 'copy']);
  expect(next(two, 2)).toEqual(['60..70', '70..80']);
  expect(next(two, 3, 'copy')).toEqual(['40..50', '50..60', '40..50']);
  expect(next([range(number(20, ' cm'), number(30, ' cm')), range(number(25, ' cm'), number(40, ' cm'))], 1)).toEqual([
    '30 cm..50 cm',
  ]);
  const days = [range(day('2027-05-12'), day('2027-05-28')), range(day('2027-05-19'), day('2027-06-04'))];
  expect(next(days, 1)).toEqual(['2027-05-26..2027-06-11']);
});

test('ranges that show no step, or whose ends would come to cross, are repeated', () => {
  const one = range(number(40), number(50));
  expect(next([one, range(number(45), number(51))], 2)).toEqual(['40..50', '45..51']);
  expect(next([one, range(number(50), number(55), number(60))], 2)).toEqual(['40..50', '50..55..60']);
  expect(next([one, number(60)], 3)).toEqual(['40..50', '60', '40..50']);
});

test('names that end in numbers count on, with the figures they are written with', () => {
  expect(next([text('Bed 3')], 2)).toEqual(['Bed 4', 'Bed 5']);
  expect(next([text('Row 07')], 4)).toEqual(['Row 08', 'Row 09', 'Row 10', 'Row 11']);
  expect(next([text('Bed 2'), text('Bed 4')], 2)).toEqual(['Bed 6', 'Bed 8']);
  expect(next([text('Barn 1'), text('Ditch 1')], 4)).toEqual(['Barn 2', 'Ditch 2', 'Barn 3', 'Ditch 3']);
  expect(next([text('Bed 3')], 4, 'count', false)).toEqual(['Bed 2', 'Bed 1', 'Bed 0', 'Bed 0']);
  expect(next([text('Bed 3')], 1, 'copy')).toEqual(['Bed 3']);
});

test('other texts and blanks come over and over', () => {
  expect(waysFor([text('blocks')])).toEqual(['copy']);
  expect(next([text('blocks'), { kind: 'blank' }], 3)).toEqual(['blocks', '', 'blocks']);
  expect(next([{ kind: 'blank' }], 2)).toEqual(['', '']);
});

test('whatever the cells hold, copies repeat them in turn', () => {
  const source: fc.Arbitrary<Source> = fc.oneof(
    fc.constant<Source>({ kind: 'blank' }),
    fc.integer({ min: -1000, max: 1000 }).map((n) => number(n)),
    fc.integer({ min: 10_000, max: 30_000 }).map((n): Source => ({ kind: 'date', day: n })),
    fc.nat({ max: 100 }).map((n) => range(number(n), number(n + 5))),
    fc.string({ maxLength: 6 }).map(text),
  );
  fc.assert(
    fc.property(fc.array(source, { minLength: 1, maxLength: 5 }), fc.nat({ max: 20 }), (sources, step) => {
      const series = seriesOf(sources, 'copy', true);
      expect(series(step)).toEqual(series(step + sources.length));
    }),
  );
});
