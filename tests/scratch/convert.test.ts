// CONVERT on scratch papers gives a number in the unit that is asked for, whatever the workbook shows. Factors: NIST SP 811 (2008),
// appendix B, where the foot, the inch and the pound are exact.

import { expect, test } from 'vitest';
import { Desk, smallBook } from './paper.ts';

test.each(['us', 'si'] as const)('in %s units', (units) => {
  const desk = new Desk(smallBook(units));
  expect(desk.gives('=CONVERT(1,"ft","m")')).toBeCloseTo(0.3048, 12);
  expect(desk.gives('=CONVERT(10,"lbm","kg")')).toBeCloseTo(4.5359237, 12);
  expect(desk.gives('=CONVERT(1,"in","cm")')).toBeCloseTo(2.54, 12);
  expect(desk.gives('=CONVERT(2.54,"cm","in")')).toBeCloseTo(1, 12);
  expect(desk.gives('=CONVERT(20,"C","F")')).toBeCloseTo(68, 12);
  expect(desk.gives('=CONVERT(68,"F","C")')).toBeCloseTo(20, 12);
  expect(desk.gives('=CONVERT(1,"day","hr")')).toBeCloseTo(24, 12);
  desk.room.destroy();
});
