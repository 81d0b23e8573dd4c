// Days on scratch papers: what is chosen or averaged of days is a day, a day less a day a number of days, as other spreadsheets show
// them. The days between were counted with Date, outside of hyperformula and the engine.

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Desk } from './paper.ts';

let desk: Desk;
beforeAll(() => {
  desk = new Desk();
  desk.type({ E2: '2027-03-15', E3: '2027-04-01', E4: '2027-04-22', F2: '5', F3: '7' });
});
afterAll(() => desk.room.destroy());

function days(from: string, to: string): number {
  return (Date.parse(to) - Date.parse(from)) / 86_400_000;
}

function shown(formula: string): string {
  desk.type({ Z9: formula });
  return desk.text('Z9');
}

describe('a day', () => {
  test.each([
    ['=MAX(E2:E4)', '22 Apr 2027'],
    ['=MIN(E2,E3)', '15 Mar 2027'],
    ['=MAX(0,E2:E4)', '22 Apr 2027'],
    ['=MAX(A:E)', '22 Apr 2027'],
    ['=AVERAGE(E2:E4)', '2 Apr 2027'],
    ['=MEDIAN(E2:E4)', '1 Apr 2027'],
    ['=LARGE(E2:E4,2)', '1 Apr 2027'],
    ['=PERCENTILE(E2:E4,0.5)', '1 Apr 2027'],
    ['=MODE(E2:E4,E3)', '1 Apr 2027'],
    ['=MAXIFS(E2:E4,F2:F4,"<6")', '15 Mar 2027'],
    ['=AVERAGEIF(F2:F4,7,E2:E4)', '1 Apr 2027'],
    ['=AVERAGEIFS(E2:E4,F2:F4,7)', '1 Apr 2027'],
    ['=SUBTOTAL(4,E2:E4)', '22 Apr 2027'],
    ['=AGGREGATE(14,6,E2:E4,1)', '22 Apr 2027'],
    ['=MIN(Plantings_Sown)+7', '22 Mar 2027'],
    ['=MAX(IF(Plantings_Crop="Onion",Plantings_Sown))', '1 May 2027'],
    ['=DATEVALUE("12 May 2027")', '12 May 2027'],
    ['=DATEVALUE("2027-05-12")', '12 May 2027'],
    ['=DATEVALUE("3/15/2027")', '15 Mar 2027'],
  ])('%s', (formula, day) => {
    expect(shown(formula)).toBe(day);
  });

  test('each of several is one', () => {
    desk.type({ H2: '=LARGE(E2:E4,{1;2})' });
    expect([desk.text('H2'), desk.text('H3')]).toEqual(['22 Apr 2027', '1 Apr 2027']);
    desk.type({ H2: '' });
  });
});

describe('a number', () => {
  test.each([
    ['=MAX(E2:E4)-E2', days('2027-03-15', '2027-04-22')],
    ['=MAX(Plantings_Sown)-DATE(2027,1,1)', days('2027-01-01', '2027-05-01')],
    ['=INT(E4)-E2', days('2027-03-15', '2027-04-22')],
    ['=LET(x,MAX(E2:E4),x-E2)', days('2027-03-15', '2027-04-22')],
    ['=(MAX(E2:E4)-MIN(E2:E4))/2', days('2027-03-15', '2027-04-22') / 2],
    ['=MAX(E2:E4-E2)', days('2027-03-15', '2027-04-22')],
    ['=MAX(F2:F4)', 7],
    ['=AVERAGE(F2:F4)', 6],
    ['=SUBTOTAL(2,E2:E4)', 3],
    ['=MAX(G2:G4)', 0],
  ])('%s', (formula, number) => {
    expect(shown(formula)).toBe(String(number));
  });

  test.each(['=-E2', '=E2/7'])('%s is no day', (formula) => {
    expect(shown(formula)).not.toMatch(/\p{L}/u);
  });
});
