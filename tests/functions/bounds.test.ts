// Nothing that a formula can ask for goes on without end: wildcards, growing texts, calls within calls, large counts. Each of
// these once hung or filled the memory; a test that does not come back fails by the runner's own patience.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstDateReaching, longestDayDate } from '../../engine/agronomy/day-length-dates.ts';
import { readDate, readNumber, readTime } from '../../engine/functions/standard/reading.ts';
import { fitsWildcards, smallLetters, wildcardPlace } from '../../engine/functions/standard/wildcards.ts';
import { dimension } from '../../engine/units/dimension.ts';
import { ONE } from '../../engine/units/table.ts';
import { createVocabulary } from '../../engine/units/vocabulary.ts';
import { readEntry } from '../../engine/values/entry.ts';
import { workedOut } from './formulas.ts';

function nested(depth: number, around: (inner: string) => string): string {
  let formula = '1';
  for (let level = 0; level < depth; level += 1) formula = around(formula);
  return formula;
}

const CHOICES = nested(8, (inner) => `CHOOSE(${inner}; ${Array(10).fill('1; 2').join('; ')})`);
const CASES = nested(8, (inner) => `SWITCH(${inner}; ${Array(8).fill('1; 2; 2; 1').join('; ')})`);

const GIVES: readonly (readonly [formula: string, value: number])[] = [
  ['LEN(REPT("ab"; 16383))', 32766],
  ['LEN(SUBSTITUTE(REPT("a"; 16383); "a"; "bb"))', 32766],
  [CHOICES, 1],
  [CASES, 1],
];

const REFUSED: readonly (readonly [formula: string, says: string])[] = [
  ['SEARCH("*a*a*a*a*a*a*a*a*b"; REPT("a"; 30000))', 'does not occur'],
  ['SEARCH(REPT("?"; 20000) & "b"; REPT("a"; 30000))', 'does not occur'],
  ['REPT("ab"; 16384)', '32767'],
  ['SUBSTITUTE(REPT("a"; 30000); "a"; "bb")', '32767'],
  ['SUBSTITUTE(REPT("a"; 32767); "a"; "bb"; 1)', '32767'],
  ['REPLACE(REPT("a"; 30000); 1; 1; REPT("b"; 3000))', '32767'],
  ['CONCAT(REPT("a"; 30000); REPT("b"; 3000))', '32767'],
  ['TEXTJOIN(REPT(" "; 20000); TRUE; "a"; "b"; "c")', '32767'],
  ['COMBIN(1E9; 5E8)', 'have an answer'],
  ['BINOM.INV(20 ^ 20; 50%; 50%)', 'a million millions'],
  ['BINOM.DIST(1E20; 1E21; 10%; TRUE)', 'a million millions'],
  ['POISSON.DIST(1E20; 1E20; TRUE)', 'a million millions'],
  ['HYPGEOM.DIST(1E19; 1E20; 1E20; 1E21; TRUE)', 'Counts must be'],
  ['BETA.INV(50%; 1E-300; 1E9)', '0.000001'],
  ['FACT(1E9)', 'have an answer'],
];

describe('bounds', () => {
  const answer = workedOut([...GIVES, ...REFUSED].map(([formula]) => formula));

  it.each(GIVES)('%s', (formula, value) => {
    expect(answer(formula)).toMatchObject({ is: 'value', value });
  });

  it.each(REFUSED)('%s is an error: %s', (formula, says) => {
    expect(answer(formula)).toMatchObject({ is: 'error', why: expect.stringContaining(says) });
  });

  it('long texts are no numbers, dates, times or units, whatever they begin with', () => {
    const { find, nearest } = createVocabulary({ currency: 'EUR' });
    const long = `1${',000'.repeat(50_000)}`;
    expect([readNumber(long), readDate(`1 March ${long}`), readTime(`1:00${long}`)]).toEqual(Array(3).fill(undefined));
    for (const unit of [`m${'/m'.repeat(4000)}`, `m${'^2'.repeat(4000)}`, 'x'.repeat(100_000)]) {
      expect([find(unit), nearest(unit)]).toEqual([undefined, undefined]);
    }
  });
});

describe('entries', () => {
  it('are refused where they are longer than any figure, before they are read', () => {
    const context = { vocabulary: createVocabulary({ currency: 'EUR' }), year: 2027 };
    const plain = { kind: 'number', dimension: dimension({}), unit: ONE } as const;
    expect(readEntry(`1/${'1'.repeat(200_000)}`, plain, context)).toMatchObject({
      ok: false,
      why: expect.stringContaining('too long to be a plain number'),
    });
    expect(readEntry(`8 ft${' '.repeat(200_000)}x`, plain, context)).toMatchObject({ ok: false });
    expect(readEntry('9'.repeat(200), plain, context)).toMatchObject({ ok: true });
    expect(readEntry('x'.repeat(5000), { kind: 'text' }, context)).toMatchObject({ ok: true });
  });
});

describe('dates by day length', () => {
  it('are of the years that dates have', () => {
    expect(firstDateReaching(3, 12, -1e300)).toBeNaN();
    expect(longestDayDate(3, 1e20)).toBeNaN();
  });
});

describe('wildcards', () => {
  /** As the pattern reads, letter by letter with every way of filling each star. */
  function fitsSlowly(pattern: string, text: string): boolean {
    const [first = '', ...rest] = pattern;
    if (pattern === '') return text === '';
    if (first === '*') {
      return Array.from({ length: text.length + 1 }, (_, at) => text.slice(at)).some((end) =>
        fitsSlowly(rest.join(''), end),
      );
    }
    const fits = text !== '' && (first === '?' || text[0] === first);
    return fits && fitsSlowly(rest.join(''), text.slice(1));
  }

  const letters = fc.array(fc.constantFrom('a', 'b'), { maxLength: 8 }).map((list) => list.join(''));
  const patterns = fc.array(fc.constantFrom('a', 'b', '?', '*'), { maxLength: 7 }).map((list) => list.join(''));

  it('fit and are found where trying every way finds them', () => {
    fc.assert(
      fc.property(patterns, letters, fc.nat(4), (pattern, text, from) => {
        const within = smallLetters(text);
        expect(fitsWildcards(pattern)(within)).toBe(fitsSlowly(pattern, text));
        const starts = Array.from({ length: text.length + 1 }, (_, at) => at).filter((at) => at >= from);
        const first = starts.find((at) =>
          Array.from({ length: text.length - at + 1 }, (_, size) => text.slice(at, at + size)).some((part) =>
            fitsSlowly(pattern, part),
          ),
        );
        expect(wildcardPlace(pattern, within, from)).toBe(first ?? -1);
      }),
      { numRuns: 400 },
    );
  });

  it('takes the signs themselves after ~', () => {
    expect(wildcardPlace('~*~?~~', smallLetters('a*?~'), 0)).toBe(1);
    expect(fitsWildcards('~*')(smallLetters('a'))).toBe(false);
    expect(fitsWildcards('~x')(smallLetters('~x'))).toBe(true);
  });
});
