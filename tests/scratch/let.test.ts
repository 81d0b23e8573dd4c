// LET of other spreadsheets, and TRUE and FALSE without brackets, on scratch papers.

import { afterAll, expect, test } from 'vitest';
import { withoutLet } from '../../ui/scratch/let.ts';
import { translateSum } from '../../ui/scratch/translate.ts';
import { Desk } from './paper.ts';

const desk = new Desk();
desk.type({ A1: '10', A2: '20', A3: '30', B1: 'ten', B2: 'twenty', B3: 'thirty' });
afterAll(() => desk.room.destroy());

test.each<[string, number | string | boolean]>([
  ['=VLOOKUP(20,A1:B3,2,FALSE)', 'twenty'],
  ['=VLOOKUP(25,A1:B3,2,true)', 'twenty'],
  ['=IF(TRUE,1,2)', 1],
  ['=AND(TRUE,FALSE)', false],
  ['=TEXTJOIN(", ",TRUE,A1:A2)', '10, 20'],
  ['=TRUE', true],
  ['=FALSE()', false],
  ['=SUM({1,2},IF(FALSE,1,0))', 3],
  ['=COUNTIF(Plantings_Covered,TRUE)', 1],
  ['=LET(x,5,x*2)', 10],
  ['=let(X, 5, y, x+1, x*y)', 30],
  ['=LET(x,2,x^2)+LET(x,3,-x)', 1],
  ['=LET(x,1+1,x*x)', 4],
  ['=LET(x,-2,x^2)', 4],
  ['=LET(cells,A1:A3,SUM(cells)/COUNT(cells))', 20],
  ['=LET(table,A1:B3,INDEX(table,2,2))', 'twenty'],
  ['=LET(x,2,LET(x,x+1,x*10)+x)', 32],
  ['=LET(word,"x, y",word&"!")', 'x, y!'],
  ['=LET(total,SUM(Plantings_Length_ft),total*2)', 200],
])('%s', (formula, value) => expect(desk.gives(formula)).toBe(value));

test('the paper keeps LET as typed, and what it means follows the cells', () => {
  desk.type({ D1: '=LET(x,A1,x*2)', A1: '10' });
  expect(desk.text('D1')).toBe('20');
  desk.type({ A1: '11' });
  expect([desk.text('D1'), desk.book.workbook.document.papers.entry('p', 'D1')]).toEqual(['22', '=LET(x,A1,x*2)']);
  desk.type({ A1: '10' });
});

test('a LET that can’t be read says what it wants', () => {
  for (const formula of ['=LET(x,5)', '=LET(A1,5,A1*2)', '=LET(x,RAND(),x-x)', '=LET(x,5,y,x*2)']) {
    desk.type({ D2: formula });
    expect(desk.shown('D2')).toMatchObject({ is: 'fault', why: expect.stringContaining('LET(x,5,x*2)') });
  }
});

test('one that doubles and doubles is left alone', () => {
  const pairs = Array.from({ length: 40 }, (_, i) => `n${'i'.repeat(i + 1)},n${'i'.repeat(i)}+n${'i'.repeat(i)}`);
  const formula = `=LET(n,1,${pairs.join(',')},n)`;
  expect(withoutLet(formula)).toBe(formula);
});

test('a sum with LET turns into a column', () => {
  desk.type({ D5: '=LET(a,INDEX(Plantings_Length_ft,1),b,A1,a*b)' });
  const place = {
    paper: 'p',
    cell: 'D5',
    entryAt: (cell: string) => desk.book.workbook.document.papers.entry('p', cell),
  };
  expect(translateSum(desk.room, place, 'plantings')).toMatchObject({ ok: true, formula: '([Length] / (1 ft)) * 10' });
});
