// The text of A1 formulas: cut into words and joined again, moved, taken from other separators and other ways to write a
// reference. Random formulas are held against hyperformula's own copying.

import fc from 'fast-check';
import { HyperFormula } from 'hyperformula';
import { describe, expect, test } from 'vitest';
import { blockName, blockOf, cellName, cellNamed, columnAt, columnLetters } from '../../ui/scratch/addresses.ts';
import {
  fromRowsAndColumns,
  moveFormula,
  paperNamed,
  withCommas,
  withPaperRenamed,
  withPapersRenamed,
  wordsOf,
} from '../../ui/scratch/formula-words.ts';

test('places by letters and numbers', () => {
  expect([0, 25, 26, 701].map(columnLetters)).toEqual(['A', 'Z', 'AA', 'ZZ']);
  expect(['a', 'Z', 'AA', 'ZZ'].map(columnAt)).toEqual([0, 25, 26, 701]);
  expect(cellNamed('c7')).toEqual({ row: 6, column: 2 });
  expect([cellNamed('C0'), cellNamed('7C'), cellNamed('Sums')]).toEqual([undefined, undefined, undefined]);
  expect(blockName(blockOf({ row: 4, column: 2 }, { row: 1, column: 1 }))).toBe('B2:C5');
  expect(blockName(blockOf({ row: 4, column: 2 }, { row: 4, column: 2 }))).toBe('C5');
});

describe('moved', () => {
  test.each([
    ['=A1*2', 1, 1, '=B2*2'],
    ['=$A1+A$1+$A$1', 2, 3, '=$A3+D$1+$A$1'],
    ['=SUM(A1:B2)&"A1"', 1, 0, '=SUM(A2:B3)&"A1"'],
    ["='Other A1'!B2+Other!B2", 1, 1, "='Other A1'!C3+Other!C3"],
    ['=SUM(A:B)+SUM(3:$4)', 1, 2, '=SUM(C:D)+SUM(4:$4)'],
    ['=A1', -1, 0, '=#REF!'],
    ['=LOG10(A1)+ATAN2(A1,B1)', 1, 0, '=LOG10(A2)+ATAN2(A2,B2)'],
    ['=SUM(Plantings_In_row_spacing_in)+TAXES2027', 5, 5, '=SUM(Plantings_In_row_spacing_in)+TAXES2027'],
    ['plain A1', 1, 1, 'plain A1'],
  ])('%s by %i rows and %i columns', (formula, rows, columns, moved) => {
    expect(moveFormula(formula, rows, columns)).toBe(moved);
  });

  const cell = fc
    .tuple(fc.boolean(), fc.integer({ min: 0, max: 40 }), fc.boolean(), fc.integer({ min: 0, max: 90 }))
    .map(([a, column, b, row]) => `${a ? '$' : ''}${columnLetters(column)}${b ? '$' : ''}${row + 1}`);
  const part = fc.oneof(
    cell,
    fc.tuple(cell, cell).map(([a, b]) => `SUM(${a},${b})`),
    fc.nat({ max: 99 }).map(String),
    fc.constantFrom('"B2 & C3"', 'PI()', '1.5'),
  );

  test('as hyperformula moves what is copied', () => {
    const engine = HyperFormula.buildFromArray([[0]], { licenseKey: 'gpl-v3' });
    const sheet = 0;
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 1, maxLength: 4 }),
        fc.nat({ max: 6 }),
        fc.nat({ max: 6 }),
        (parts, down, along) => {
          const formula = `=${parts.join('+')}`;
          const source = { sheet, row: 100, col: 50 };
          const target = { sheet, row: 100 + down, col: 50 + along };
          engine.setCellContents(source, [[formula]]);
          engine.copy({ start: source, end: source });
          engine.paste(target);
          expect(moveFormula(engine.getCellFormula(source) ?? '', down, along)).toBe(engine.getCellFormula(target));
        },
      ),
      { numRuns: 200 },
    );
    engine.destroy();
  });
});

test('words joined again are the formula, whatever it is', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 60 }), (text) => {
      expect(
        wordsOf(text)
          .map((word) => word.text)
          .join(''),
      ).toBe(text);
    }),
  );
});

test.each([
  ['=SUMME(A1;B1)', '=SUMME(A1,B1)'],
  ['=IF(A1>1,5;2,25;"a;b")', '=IF(A1>1.5,2.25,"a;b")'],
  ['=SUM({1;2})', '=SUM({1;2})'],
  ['=SUM(1,5)', '=SUM(1,5)'],
  ['text; more', 'text; more'],
])('separators of %s', (given, wanted) => expect(withCommas(given)).toBe(wanted));

test.each([
  ['=R[-1]C*2', '=C4*2'],
  ['=RC[-2]+R2C1', '=A5+$A$2'],
  ['=SUM(R1C:R[-1]C)', '=SUM(C$1:C4)'],
  ['="RC"&RC1', '="RC"&$A5'],
  ['=R[-9]C', '=#REF!'],
])('rows and columns of %s', (given, wanted) => {
  expect(fromRowsAndColumns(given, { row: 4, column: 2 })).toBe(wanted);
});

test('a formula follows the paper that it names', () => {
  expect(withPaperRenamed("=Sums!A1+'sums'!B2+Other!C3", 'Sums', "Bob's")).toBe("='Bob''s'!A1+'Bob''s'!B2+Other!C3");
  // 'A 2' becomes 'A 3', but what was 'A' and is 'A 2' now stays that.
  const after = new Map([
    ['a', 'A 2'],
    ['a 2', 'A 3'],
  ]);
  expect(withPapersRenamed("=A!B1+'A 2'!B1+B!B1", after)).toBe("='A 2'!B1+'A 3'!B1+B!B1");
  expect(paperNamed("'Bob''s'!")).toBe("Bob's");
  expect(cellName({ row: 0, column: 0 })).toBe('A1');
});
