// Places of figures on pictures: scales there and back, round marks, months, scale bars and broken lines.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { civilDay, civilDayOfIso } from '../../engine/index.ts';
import {
  linearScale,
  linePath,
  monthsBetween,
  roundMarks,
  roundStep,
  roundTop,
  scaleBar,
} from '../../ui/browser/drawing/scale.ts';
import { monthMarks } from '../../ui/browser/panels/read.ts';

test('a figure comes back from its place', () => {
  const figure = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(figure, figure, figure, (from, to, at) => {
      fc.pre(Math.abs(to - from) > 1e-3);
      const scale = linearScale(from, to, 40, 300);
      expect(scale.figure(scale.at(at))).toBeCloseTo(at, 3);
      expect(scale.at(from)).toBeCloseTo(40);
      expect(scale.at(to)).toBeCloseTo(300);
    }),
  );
});

test('a scale of one figure puts everything at its start', () => {
  const scale = linearScale(5, 5, 10, 90);
  expect(scale.at(5)).toBe(10);
  expect(scale.figure(50)).toBe(5);
});

test('marks are round, even, within the ends and without dust', () => {
  expect(roundMarks(0, 24, 6)).toEqual([0, 5, 10, 15, 20]);
  expect(roundMarks(0, 0.31, 4)).toEqual([0, 0.1, 0.2, 0.3]);
  expect(roundMarks(2, 2, 5)).toEqual([]);
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 1e5, noNaN: true }), fc.integer({ min: 1, max: 8 }), (to, count) => {
      const marks = roundMarks(0, to, count);
      expect(marks[0]).toBe(0);
      expect(marks.length).toBeLessThanOrEqual(count + 1);
      expect(marks.at(-1)).toBeLessThanOrEqual(to * (1 + 1e-6));
    }),
  );
});

test('the upper end of an axis is round and holds every figure', () => {
  expect(roundTop([12, 87, Number.NaN])).toBe(100);
  expect(roundTop([0.93])).toBeCloseTo(1);
  expect(roundTop([])).toBe(1);
  expect(roundStep(0.003)).toBeCloseTo(0.005);
});

test('months are named at their first day, over the turn of a year', () => {
  const months = monthsBetween(civilDay(2027, 11, 15), civilDay(2028, 3, 1));
  expect(months.map((month) => month.name)).toEqual(['Dec', 'Jan', 'Feb', 'Mar']);
  expect(months[1]?.day).toBe(civilDay(2028, 1, 1));
  expect(months[3]?.day).toBe(civilDay(2028, 3, 1));
});

test('the scale bar is the longest round length that fits its share', () => {
  expect(scaleBar(1.2, 'us')).toEqual({ length: 0.3048, label: '1 ft' });
  expect(scaleBar(1.2, 'si')?.label).toBe('20 cm');
  expect(scaleBar(15.24, 'us')?.label).toBe('10 ft');
  expect(scaleBar(0.001, 'si')).toBeUndefined();
});

test('a line breaks where a figure is missing', () => {
  const points = [
    { x: 0, y: 1 },
    { x: 1, y: 2 },
    { x: 2, y: Number.NaN },
    { x: 3, y: 4.006 },
    { x: 4, y: 5 },
  ];
  expect(linePath(points)).toBe('M0 1L1 2M3 4.01L4 5');
});

test.each([
  ['2027-04-01', '2027-05-27', ['Apr', 'May']],
  ['2027-04-01', '2027-06-01', ['Apr', 'May', 'Jun']],
  ['2027-01-01', '2027-12-31', ['Jan', 'Mar', 'May', 'Jul', 'Sep', 'Nov']],
  ['2027-05-05', '2027-05-20', ['5 May', '20 May']],
  ['2027-04-20', '2027-05-20', ['20 Apr', '20 May']],
  ['2027-05-05', '2027-05-05', ['5 May']],
])('an axis from %s to %s names its months, and a short one its ends', (from, to, names) => {
  const day = (text: string): number => civilDayOfIso(text) ?? 0;
  expect(monthMarks({ first: day(from), last: day(to) }).map(({ text }) => text)).toEqual(names);
});
