// Numbers typed and pasted on scratch papers, as the workbook's locale writes them: what the paper keeps of them, and what it
// counts with.

import { describe, expect, test } from 'vitest';
import { createVocabulary } from '../../engine/index.ts';
import { writingOf } from '../../ui/browser/store/writing.ts';
import { TypedFigures } from '../../ui/scratch/typed-figures.ts';
import { Desk } from './paper.ts';

function figures(locale: string | undefined, currency = 'USD'): TypedFigures {
  return new TypedFigures(locale === undefined ? undefined : writingOf(locale), createVocabulary({ currency }));
}

/** As typed there, as kept, and what it counts as. */
describe.each<[string | undefined, readonly (readonly [string, string, string])[]]>([
  [
    'en-US',
    [
      ['1,234.50', '1234.50', '1234.50'],
      ['1,234', '1234', '1234'],
      ['$1,200.00', '$1200.00', '1200.00'],
      ['-$5', '-$5', '-5'],
      ['$-5', '-$5', '-5'],
      ['(45)', '-45', '-45'],
      ['($1,200.00)', '-$1200.00', '-1200.00'],
      ['$ (1,200.00)', '-$1200.00', '-1200.00'],
      [' $ 1,200.00 ', '$1200.00', '1200.00'],
      ['€12', '€12', '12'],
      ['12 USD', '12 USD', '12'],
      ['1,234.5%', '1234.5%', '1234.5%'],
      ['12 %', '12%', '12%'],
      ['−3', '-3', '-3'],
      ['1e3', '1e3', '1e3'],
      ['.5', '0.5', '0.5'],
    ],
  ],
  [
    'de-DE',
    [
      ['1.234,50', '1234.50', '1234.50'],
      ['1.234', '1234', '1234'],
      ['1,234', '1.234', '1.234'],
      ['1,5', '1.5', '1.5'],
      ['1.200,00 €', '1200.00 €', '1200.00'],
      ['12,5 %', '12.5%', '12.5%'],
      ['1.5', '1.5', '1.5'],
    ],
  ],
  [
    'fr-FR',
    [
      ['1 234,5', '1234.5', '1234.5'],
      ['12 345 678', '12345678', '12345678'],
    ],
  ],
  [
    'de-CH',
    [
      ["1'234.50", '1234.50', '1234.50'],
      ['1’234', '1234', '1234'],
    ],
  ],
  ['en-IN', [['12,34,567.5', '1234567.5', '1234567.5']]],
  [undefined, [['1,234.50', '1234.50', '1234.50']]],
])('%s', (locale, cases) => {
  test.each(cases)('%s', (typed, kept, taken) => {
    const read = figures(locale);
    expect(read.kept(typed)).toBe(kept);
    expect(read.taken(kept)).toBe(taken);
    // What is kept says the same wherever the file is opened.
    for (const other of ['en-US', 'de-DE', 'fr-FR', undefined])
      expect(Number.parseFloat(figures(other).taken(kept))).toBe(Number.parseFloat(taken));
  });
});

test('what is no number stays the text that it is', () => {
  const texts = [
    'beds',
    '1,23',
    '12,34,567',
    '1.234,50',
    '3/15',
    '2027-03-15',
    '12 beds',
    '5 ft',
    '(a)',
    '(1)(2)',
    '()',
  ];
  const more = ['$', '- $ -', '1 234', "'1,234", '10,20,300 lb', '555-1234', '1,234 $ €', '12 Ft', '--5', '(-5)', ''];
  for (const text of [...texts, ...more]) {
    expect(figures('en-US').kept(text)).toBe(text);
    expect(figures('en-US').taken(text)).toBe(text);
  }
  expect(figures('de-DE').kept('15.03.2027')).toBe('15.03.2027');
  expect(figures('de-DE').kept('1,234.50')).toBe('1,234.50');
});

test('money is what the workbook counts in, too', () => {
  expect(figures('sv-SE', 'SEK').kept('1 200 kr')).toBe('1200 kr');
  expect(figures('en-US').kept('1,200 kr')).toBe('1,200 kr');
});

test('sums count them, and entries kept before as they were typed', () => {
  const desk = new Desk();
  desk.type({ A1: '10', A2: '20', A3: '1,234.50', A4: '$1,200.00', A5: '(45)', A6: 'beds', A7: '50 %' });
  desk.type({ B1: '=SUM(A1:A4)', B2: '=A3*2', B3: '=SUM(A1:A6)', B4: '=A7*8', B5: '=A6&"!"' });
  expect(['B1', 'B2', 'B3', 'B4', 'B5'].map((cell) => desk.shown(cell).value)).toEqual([
    2464.5,
    2469,
    2419.5,
    4,
    'beds!',
  ]);
  expect(desk.shown('A4').is).toBe('number');
  desk.room.destroy();
});
