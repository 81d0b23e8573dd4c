// Help while typing: what is proposed at the cursor (written | in the cases), what taking the first proposal makes of the
// text, and which part of which function the cursor is in.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SIGNATURES } from '../../engine/functions/index.ts';
import { type AssistContext, type Completions, callAt, completionsAt } from '../../engine/language/assist.ts';
import { contextOf, FUNCTIONS } from './plan.ts';

function at(marked: string): { text: string; cursor: number } {
  const cursor = marked.indexOf('|');
  return { text: marked.replace('|', ''), cursor };
}

function completions(marked: string, context: AssistContext = contextOf()): Completions | undefined {
  const { text, cursor } = at(marked);
  return completionsAt(text, cursor, context);
}

/** The text once the first proposal is taken. */
function taken(marked: string): string {
  const { text } = at(marked);
  const found = completions(marked);
  const first = found?.items[0];
  return found === undefined || first === undefined
    ? ''
    : text.slice(0, found.from) + first.text + text.slice(found.to);
}

function labels(marked: string): readonly string[] {
  return completions(marked)?.items.map((item) => item.label) ?? [];
}

describe('names complete', () => {
  test.each([
    ['[Row s|', '[Row spacing]'],
    ['[Row s|pacing] * 2', '[Row spacing] * 2'],
    ['[Row s| * [Rows]', '[Row spacing] * [Rows]'],
    ['=[Row s|', '=[Row spacing]'],
    ['[spac|', '[Row spacing]'],
    ['[Lenght|', '[Length]'],
    ['2 * [Variety].[Germ|', '2 * [Variety].[Germination]'],
    ['[Variety].|', '[Variety].[Variety]'],
    ['[Variety].[Crop].[Fam|', '[Variety].[Crop].[Family]'],
    ['[Germin|', '[Variety].[Germination]'],
    ['[Bed wid|', 'Farm[Bed width]'],
    ['SUM(Beds[Ar|', 'SUM(Beds[Area]'],
    ["SUM('Seed lots'[Qu|", "SUM('Seed lots'[Quantity]"],
    ["SUM('Se|", "SUM('Seed lots'"],
    ["SUM('Se|ed lots'[Quantity])", "SUM('Seed lots'[Quantity])"],
    ['SUM(Beds|', 'SUM(Beds'],
    ['SUM(Be|', 'SUM([Bed]'],
    ['coun|', 'COUNTA('],
    ['1 + toda|', '1 + TODAY()'],
    ['tru|', 'TRUE'],
    ['LET(width; 30 in; wid|', 'LET(width; 30 in; width'],
    ['LET(wide; 3; double; 2 * wi|', 'LET(wide; 3; double; 2 * wide'],
    ['LET(wide; 3; SUM(wi|', 'LET(wide; 3; SUM(wide'],
    ['let|', 'LET('],
    ['8 fee|', '8 ft'],
    ['8 degC|', '8 degC'],
    ['8 acr|', '8 acre'],
    ['[Start] = "bl|', '[Start] = "blocks"'],
    ['[Start] <> "|"', '[Start] <> "blocks"'],
    ['COUNTIF(Plantings[Start]; "se|', 'COUNTIF(Plantings[Start]; "sets"'],
  ])('%s becomes %s', (marked, text) => {
    expect(taken(marked)).toBe(text);
  });

  test('columns of the sheet that a call names complete in quotes', () => {
    const texts = (marked: string) =>
      completions(marked, contextOf({ functions: SIGNATURES }))?.items.map((item) => item.text);
    expect(texts('DSUM(Beds; "Ar|')).toEqual(['"Area"']);
    expect(texts('1 + VLOOKUP([Bed] & ("a"); Beds; "|')).toEqual(['"Bed"', '"Field"', '"Length"', '"Area"']);
    expect(texts("DGET('Seed lots', \"Qua|")).toEqual(['"Quantity"']);
    expect(texts('DSUM(Beds; "Area"; "Ar|')).toBeUndefined();
    expect(texts('DSUM(Beds; LEFT("Ar|')).toBeUndefined();
  });

  test('best first: the same beginning, a word within, letters within, nearly spelt so', () => {
    expect(labels('[rows|')[0]).toBe('Rows');
    expect(labels('[row|').slice(0, 2)).toEqual(['Row spacing', 'Rows']);
    expect(labels('[spacing|')).toEqual(['Row spacing']);
    expect(labels('[ength|')).toContain('Length');
    expect(labels('[len|')[0]).toBe('Length');
  });

  test('kinds and docs say what a proposal is', () => {
    const item = (marked: string, label: string) => completions(marked)?.items.find((one) => one.label === label);
    expect(item('[Row|', 'Row spacing')).toMatchObject({ kind: 'column', doc: 'a length (in)' });
    expect(item('[Unch|', 'Unchecked')).toMatchObject({ kind: 'column', doc: 'its formula does not check yet' });
    expect(item('[Germ|', '[Variety].[Germination]')).toMatchObject({ kind: 'linked column' });
    expect(item('SUM|', 'SUM')).toMatchObject({ kind: 'function', doc: 'SUM(number; ...) What SUM gives.' });
    expect(item('Far|', 'Farm')).toMatchObject({ kind: 'table', doc: 'a sheet of one row' });
    expect(item('Bed|', 'Beds')).toMatchObject({ kind: 'table', doc: 'a sheet' });
    expect(item('8 lb|', 'lb')).toMatchObject({ kind: 'unit', doc: 'a mass' });
    expect(item('8 deg|', 'degC')).toMatchObject({ kind: 'unit', doc: 'a temperature' });
  });

  test('where an operand may begin, everything is proposed in place', () => {
    for (const marked of ['|', '=|', '1 + |', 'SUM(|', 'SUM(1; |']) {
      const found = completions(marked);
      expect(found?.from).toBe(at(marked).cursor);
      expect(found?.items.length).toBeGreaterThan(40);
    }
  });

  test('where nothing may begin, nothing is', () => {
    for (const marked of [
      '[Length] |',
      '[Length]|',
      '"x"|',
      "'Beds'|",
      '8|',
      '8 in |',
      'SUM(1)|',
      '5%|',
      'Beds |',
      '.|',
      '"bl|',
      '[Note] = "bl|',
      '[Qqqqqq|',
    ]) {
      expect(completions(marked), marked).toBe(undefined);
    }
  });

  test('in no sheet, only one-row sheets, functions and sheets are proposed', () => {
    const found = completions('[Len|', contextOf({ table: undefined }));
    expect(found).toBe(undefined);
    expect(completions('[Bed w|', contextOf({ table: undefined }))?.items.map((item) => item.text)).toEqual([
      'Farm[Bed width]',
    ]);
  });
});

describe('the call around the cursor', () => {
  test.each<[string, string | undefined, string | undefined]>([
    ['IF(|', 'IF', 'condition'],
    ['IF([Treated]; |1)', 'IF', 'then'],
    ['IF([Treated]; 1; |', 'IF', '[otherwise]'],
    ['IF([Treated], 1, |', 'IF', '[otherwise]'],
    ['IF(SUM(1; 2); |', 'IF', 'then'],
    ['IF(SUM(1; |2); 3)', 'SUM', 'number'],
    ['IF((1 + |', 'IF', 'condition'],
    ['SUMIFS(Plantings[Seeds]; Plantings[Note]; "a;b(|', 'SUMIFS', 'condition'],
    ['SUMIFS(a; b; c; |', 'SUMIFS', 'range'],
    ['SUMIFS(a; b; c; d; |', 'SUMIFS', 'condition'],
    ['IF(1; 2; 3; |', 'IF', undefined],
    ['su|m(1)', 'SUM', undefined],
    ['sum|', 'SUM', undefined],
    ['1 + |', undefined, undefined],
    ['SUM(1)|', undefined, undefined],
    ['NOPE(|', undefined, undefined],
    ['IF(NOPE(1; |', 'IF', 'condition'],
    ['(1; |', undefined, undefined],
  ])('%s', (marked, name, parameter) => {
    const { text, cursor } = at(marked);
    const help = callAt(text, cursor, FUNCTIONS);
    expect(help?.signature.name).toBe(name);
    const place = help?.active === undefined ? undefined : help.places[help.active];
    expect(place === undefined ? undefined : help?.text.slice(place.from, place.to)).toBe(parameter);
  });

  test('gives its place in the text', () => {
    expect(callAt('1 + SUM(2; ', 11, FUNCTIONS)).toMatchObject({ from: 4, to: 11, text: 'SUM(number; ...)' });
    expect(callAt('1 + SUM(2; ', 5, FUNCTIONS)).toMatchObject({ from: 4, to: 7 });
  });
});

test('random text and cursors never make it fail, and places lie within the text', () => {
  const signs = fc.constantFrom(
    ...'[]()\'";,.+=<>%12 eA#',
    '8 i',
    '[Va',
    '[Variety].',
    'Beds[',
    "'Seed lots'[",
    'SUM(',
    '"b',
    '[Start]=',
  );
  fc.assert(
    fc.property(fc.array(signs, { maxLength: 12 }), fc.nat(40), (parts, where) => {
      const text = parts.join('');
      const cursor = Math.min(where, text.length);
      for (const span of [completionsAt(text, cursor, contextOf()), callAt(text, cursor, FUNCTIONS)]) {
        if (span === undefined) continue;
        expect(span.from).toBeLessThanOrEqual(cursor);
        expect(span.to).toBeGreaterThanOrEqual(span.from);
        expect(span.to).toBeLessThanOrEqual(text.length);
      }
    }),
    { numRuns: 1500 },
  );
});

describe('LET', () => {
  test('names are proposed once they have a value, in the LET that gives them', () => {
    expect(labels('LET(wide; wid|')).not.toContain('wide');
    expect(labels('LET(wide; 3; wide) + wid|')).not.toContain('wide');
    expect(labels('LET(wide; 3; LET(w; 4; |')).toEqual(expect.arrayContaining(['wide', 'w']));
  });

  test('what it takes is shown', () => {
    const { text, cursor } = at('LET(wide; 30 in|; wide)');
    const help = callAt(text, cursor, SIGNATURES);
    expect(help?.signature.name).toBe('LET');
    expect(help?.active).toBe(1);
  });
});
