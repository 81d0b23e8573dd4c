// Help while typing at its edges: every field of each kind of proposal, the order of near names, sheets, links and units
// that are not there, and calls that are not open at the cursor (written | in the cases).

import { describe, expect, test } from 'vitest';
import { SIGNATURES } from '../../engine/functions/index.ts';
import { type AssistContext, type Completion, callAt, completionsAt } from '../../engine/language/assist.ts';
import { column, contextOf, FUNCTIONS, inUnit, sheet } from './plan.ts';

function itemsAt(marked: string, context: AssistContext = contextOf()): readonly Completion[] | undefined {
  return completionsAt(marked.replace('|', ''), marked.indexOf('|'), context)?.items;
}

function textsAt(marked: string, context?: AssistContext): readonly string[] | undefined {
  return itemsAt(marked, context)?.map(({ text }) => text);
}

describe('every field of a proposal', () => {
  test.each<[string, Completion]>([
    ['[Row sp|', { kind: 'column', label: 'Row spacing', text: '[Row spacing]', doc: 'a length (in)' }],
    [
      '[Germ|',
      {
        kind: 'linked column',
        label: '[Variety].[Germination]',
        text: '[Variety].[Germination]',
        doc: 'a plain number (%)',
      },
    ],
    ['[Wag|', { kind: 'column', label: 'Farm[Wage]', text: 'Farm[Wage]', doc: 'money per time (EUR/h)' }],
    ['[Variety].[Germ|', { kind: 'column', label: 'Germination', text: '[Germination]', doc: 'a plain number (%)' }],
    ['SUM(beds[Ar|', { kind: 'column', label: 'Area', text: '[Area]', doc: 'an area (ft2)' }],
    ['beds [Ar|', { kind: 'column', label: 'Area', text: '[Area]', doc: 'an area (ft2)' }],
    ["'Seed l|", { kind: 'table', label: 'Seed lots', text: "'Seed lots'", doc: 'a sheet' }],
    ["'Far|", { kind: 'table', label: 'Farm', text: 'Farm', doc: 'a sheet of one row' }],
    ['tru|', { kind: 'value', label: 'TRUE', text: 'TRUE', doc: 'yes or no' }],
    ['1 = fals|', { kind: 'value', label: 'FALSE', text: 'FALSE', doc: 'yes or no' }],
    ['toda|', { kind: 'function', label: 'TODAY', text: 'TODAY()', doc: 'TODAY() What TODAY gives.' }],
    ['sqr|', { kind: 'function', label: 'SQRT', text: 'SQRT(', doc: 'SQRT(number) What SQRT gives.' }],
    ['8 acr|', { kind: 'unit', label: 'acre', text: 'acre', doc: 'an area' }],
    ['8 inchs|', { kind: 'unit', label: 'in', text: 'in', doc: 'a length' }],
    ['2 lb/ft|', { kind: 'unit', label: 'lb/ft', text: 'lb/ft', doc: 'a mass per length' }],
    ['[Start] = "blo|', { kind: 'value', label: 'blocks', text: '"blocks"', doc: 'a choice' }],
  ])('%s', (marked, first) => {
    expect(itemsAt(marked)?.[0]).toEqual(first);
  });

  test('of a column that a function wants in quotes', () => {
    expect(itemsAt('DSUM(Beds; "Ar|', contextOf({ functions: SIGNATURES }))).toEqual([
      { kind: 'column', label: 'Area', text: '"Area"', doc: 'an area (ft2)' },
    ]);
  });
});

describe('what a proposal replaces', () => {
  test.each([
    ['1 + [Le|ngth] * 2', 4, 12],
    ['1 + [Le|ngth * 2', 4, 7],
    ['1 + [Le|ngth; [Area]', 4, 7],
    ['SUM([Le|)', 4, 7],
    ["1 + 'Se|ed lots'[Lot]", 4, 15],
    ["1 + 'Se|ed lots(2)", 4, 7],
    ['[Start] = "bl|ocks" & "x"', 10, 18],
    ['[Start] = "bl| & [Note]', 10, 13],
    ['8 in|', 2, 4],
    ['1 + 2 lb / f|', 11, 12],
    ['1 * sq|', 4, 6],
    ['1 + |', 4, 4],
    ['[Variety].|', 10, 10],
  ])('%s', (marked, from, to) => {
    expect(completionsAt(marked.replace('|', ''), marked.indexOf('|'), contextOf())).toMatchObject({ from, to });
  });
});

describe('where columns come from', () => {
  test.each<[string, readonly string[] | undefined]>([
    ['[Variety] * [Germ|', ['[Variety].[Germination]']],
    ['[Variety].[crop].[fam|', ['[Family]']],
    ['Nowhere[Le|', undefined],
    ['[Zzz].[Le|', undefined],
    ['[Length].[Le|', undefined],
    ['[Unchecked].[Le|', undefined],
    ['SUM(1).[Le|', undefined],
    ['.[Le|', undefined],
    ['SUM(1).|', undefined],
  ])('%s', (marked, texts) => {
    expect(textsAt(marked)).toEqual(texts);
  });

  test('a sheet of one row proposes its own columns once, without its name', () => {
    expect(textsAt('[Bed w|', contextOf({ table: 'farm' }))).toEqual(['[Bed width]']);
  });
});

describe('texts in quotes', () => {
  test.each<[string, readonly string[] | undefined]>([
    ['[Start] = "|', ['"blocks"', '"sets"']],
    ['[Start] <> "se|', ['"sets"']],
    ['COUNTIF(Plantings[Cover], "n|', ['"none"']],
    ['[Start] > "|', undefined],
    ['[Start] & "|', undefined],
    ['[Start] "|', undefined],
    ['[Start] = "blocks"|', undefined],
    ['COUNTIF(Beds[Start]; "|', undefined],
    ['COUNTIF(Nowhere[Start]; "|', undefined],
    ['[Zzz] = "|', undefined],
    ['"|', undefined],
  ])('%s', (marked, texts) => {
    expect(textsAt(marked)).toEqual(texts);
  });

  test.each<[string, readonly string[] | undefined]>([
    ['VLOOKUP(IF(1; 2; 3); Beds; "|', ['"Bed"', '"Field"', '"Length"', '"Area"']],
    ['VLOOKUP(COUNTA(Crops); Beds; "Le|', ['"Length"']],
    ['VLOOKUP(ROWS(Crops); ; "|', undefined],
    ['DSUM(; "Ar|', undefined],
    ['DSUM(Nowhere; "Ar|', undefined],
    ['DSUM(Beds; "Area"; "|', undefined],
    ['DSUM(Beds; "Area"; Beds; "|', undefined],
    ['DSUM(Beds; (1; "Ar|', undefined],
    ['(Beds; "Ar|', undefined],
    ['NOPE(Beds; "Ar|', undefined],
    ['Beds; "Ar|', undefined],
  ])('%s', (marked, texts) => {
    expect(textsAt(marked, contextOf({ functions: SIGNATURES }))).toEqual(texts);
  });
});

test.each(['8 qqqqqqqq|', '8 in |', '8 in  |'])('%s proposes no unit', (marked) => {
  expect(itemsAt(marked)).toBe(undefined);
});

describe('best first', () => {
  function ordered(marked: string, ...names: readonly string[]): readonly string[] | undefined {
    const columns = names.map((name) => column(name, inUnit('ft')));
    const context = contextOf({ catalog: { tables: [sheet('T', columns)] }, table: 't', functions: new Map() });
    return itemsAt(marked, context)?.map(({ label }) => label);
  }

  test('the same beginning, then a word within, then letters within, then nearly spelt so', () => {
    expect(ordered('[bed|', 'Bad days', 'Unbedded', 'Raised bed', 'Old (bed)', '2bed', 'Beds')).toEqual([
      'Beds',
      'Raised bed',
      'Old (bed)',
      'Unbedded',
      '2bed',
      'Bad days',
    ]);
  });

  test('of those nearly spelt so the nearer first, by the whole name or by its beginning', () => {
    expect(ordered('[lenght|', 'Lenxxt', 'Lxxxxt', 'Length of beds', 'Length')).toEqual([
      'Length of beds',
      'Length',
      'Lenxxt',
    ]);
    expect(ordered('[lenght|', 'Legth')).toEqual(['Legth']);
  });

  test('one or two letters are not guessed at', () => {
    expect(ordered('[xe|', 'Be', 'Bed')).toBe(undefined);
  });
});

describe('calls', () => {
  test.each<[string, string | undefined, number | undefined]>([
    ['| SUM(1)', undefined, undefined],
    ['|SUM(1)', 'SUM', undefined],
    ['S|UM(1)', 'SUM', undefined],
    ['8 in / sq|rt', 'SQRT', undefined],
    ['IF(1 + 2 * 3 = 7|', 'IF', 0],
    ['IF(1 + 2; 3 & 4|; 5)', 'IF', 1],
    ['IF(1; 2; 3; |', 'IF', undefined],
    ['IF(1; (2; 3|', 'IF', 1],
    ['1; 2; IF(|', 'IF', 0],
    ['IF(1; |SUM(2; 3))', 'SUM', undefined],
    ['IF(1; | SUM(2; 3))', 'IF', 1],
    ['(|', undefined, undefined],
    ['"x"(|', undefined, undefined],
    ['SUM(1) + IF(|', 'IF', 0],
  ])('%s', (marked, name, active) => {
    const help = callAt(marked.replace('|', ''), marked.indexOf('|'), FUNCTIONS);
    expect(help?.signature.name).toBe(name);
    expect(help?.active).toBe(active);
  });

  test('an open call reaches from its name to the cursor', () => {
    expect(callAt('1 + (SUM(2; (3', 14, FUNCTIONS)).toMatchObject({ from: 5, to: 14, active: 0 });
  });
});
