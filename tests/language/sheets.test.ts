// Sheets as arguments: by their bare name, by one of their columns, and as sheets of criteria. What they become in the
// checked formula, and each sentence where they can't be. Formulas stand in the sheet Plantings of the invented plan.

import { describe, expect, test } from 'vitest';
import { SIGNATURES } from '../../engine/functions/index.ts';
import type { CheckContext } from '../../engine/language/checker.ts';
import { exampleCondition } from '../../engine/language/sheets.ts';
import type { TableShape } from '../../engine/language/typed.ts';
import { DATE, TEXT, type ValueType, YESNO } from '../../engine/values/type.ts';
import { type Case, expectDiagnostic } from './diagnostic-case.ts';
import { CATALOG, checked, choice, column, diagnosticOf, inUnit, link, sheet } from './plan.ts';

function criteria(name: string, columns: Readonly<Record<string, ValueType>>): TableShape {
  return sheet(
    name,
    Object.entries(columns).map(([label, type]) => column(label, type)),
  );
}

const SHEETS: readonly TableShape[] = [
  criteria('Long', { length: TEXT }),
  criteria('Picked', { Field: choice('Home', 'Far'), Length: inUnit('in') }),
  criteria('Sizes', { Length: choice('<8 ft', '>=8 ft') }),
  criteria('In days', { Length: inUnit('day') }),
  criteria('By variety', { Variety: link('Varieties') }),
  criteria('By bed', { Variety: link('Beds') }),
  criteria('Named', { Field: link('Varieties') }),
  criteria('Row names', { Length: link('Varieties') }),
  criteria('Misspelt', { Lenght: TEXT }),
  criteria('Far off', { Moon: TEXT }),
  criteria('Empty', {}),
  criteria('Chilly', { Low: DATE, Sown: TEXT }),
  criteria('Sown late', { Sown: inUnit('ft') }),
  criteria('Dressed', { Treated: inUnit('ft') }),
  criteria('Remarks', { Note: inUnit('ft') }),
  criteria('Ratio', { Rows: DATE }),
];
const CONTEXT: Partial<CheckContext> = { functions: SIGNATURES, catalog: { tables: [...CATALOG.tables, ...SHEETS] } };

function args(formula: string): unknown {
  const typed = checked(formula, CONTEXT);
  return typed.node === 'call' ? typed.args : undefined;
}

describe('a sheet looked in, the column and the criteria', () => {
  test('by its name in quotes, its number from 1, or Table[Column]: one column of the sheet', () => {
    for (const [field, from, to] of [
      ['"length"', 11, 19],
      ['3', 11, 12],
      ['Beds[Length]', 11, 23],
    ] as const) {
      const column = { node: 'column', table: 'beds', column: 'length', type: inUnit('ft'), from, to };
      const table = { node: 'table', table: 'beds', type: inUnit(''), from: 5, to: 9 };
      expect(args(`DSUM(Beds; ${field}; Long)`)).toMatchObject([table, column, { node: 'criteria' }]);
    }
  });

  test('each column of the criteria is paired with its namesake, case aside', () => {
    expect(args('DSUM(Beds; "Length"; Long)')).toMatchObject([
      {},
      {},
      {
        node: 'criteria',
        table: 'long',
        of: 'beds',
        pairs: [{ looked: { column: 'length', type: inUnit('ft') }, given: { column: 'length', type: TEXT } }],
        type: YESNO,
        from: 21,
        to: 25,
      },
    ]);
  });

  test('a choice holds conditions like text, a quantity holds values to equal in any unit of its kind', () => {
    expect(args('DCOUNT(Beds; ; Picked)')).toMatchObject([
      {},
      { node: 'blank' },
      {
        pairs: [
          { looked: { column: 'field', type: TEXT }, given: { column: 'field', type: choice('Home', 'Far') } },
          { looked: { column: 'length', type: inUnit('ft') }, given: { column: 'length', type: inUnit('in') } },
        ],
      },
    ]);
  });

  test('a choice of conditions looks at any column', () => {
    expect(args('DCOUNT(Beds; ; Sizes)')).toMatchObject([
      {},
      {},
      { pairs: [{ looked: { type: inUnit('ft') }, given: { column: 'length', type: choice('<8 ft', '>=8 ft') } }] },
    ]);
  });

  test('a link asks for the row of a link to the same sheet, or for its name in a text', () => {
    for (const [formula, looked] of [
      ["DCOUNT(Plantings; ; 'By variety')", link('Varieties')],
      ['DCOUNT(Beds; ; Named)', TEXT],
    ] as const) {
      expect(args(formula)).toMatchObject([
        {},
        {},
        { pairs: [{ looked: { type: looked }, given: { type: link('Varieties') } }] },
      ]);
    }
  });

  test('a sheet looked up in stands for its first column', () => {
    expect(args('VLOOKUP("x"; \'Seed lots\'; 2)')).toMatchObject([
      { node: 'constant', value: 'x' },
      { node: 'column', table: 'seed-lots', column: 'lot', from: 13, to: 24 },
      { node: 'column', table: 'seed-lots', column: 'quantity', from: 26, to: 27 },
    ]);
    expect(checked('VLOOKUP("x"; \'Seed lots\'; 2)', CONTEXT).type).toEqual(inUnit('seeds'));
  });
});

describe('where a sheet, a column or criteria are not what is wanted', () => {
  test.each<Case>([
    [
      'DSUM(Beds[Length]; "Length"; Long)',
      'Beds[Length]',
      'DSUM wants the name of a sheet for table, and this is one of its columns: write Beds.',
      'DSUM(Beds; "Length"; Long)',
    ],
    [
      "ROWS('seed lots'[Lot])",
      "'seed lots'[Lot]",
      "ROWS wants the name of a sheet for table, and this is one of its columns: write 'Seed lots'.",
      "ROWS('Seed lots')",
    ],
    ['DSUM(3; "Length"; Long)', '3', 'DSUM wants the name of a sheet for table, as in DSUM(Beds; "Length"; Wanted).'],
    [
      'DCOUNT([Bed]; ; Long)',
      '[Bed]',
      'DCOUNT wants the name of a sheet for table, as in DCOUNT(Beds; "Length"; Wanted).',
    ],
    [
      'DSUM(Beds; "Length"; "long")',
      '"long"',
      'DSUM wants the name of a sheet for criteria, as in DSUM(Beds; "Length"; Wanted).',
    ],
    [
      'VLOOKUP("x"; "Beds"; 2)',
      '"Beds"',
      'VLOOKUP wants the name of a sheet for table, as in VLOOKUP(wanted; Beds; "Length").',
    ],
    ['VLOOKUP("x"; Empty; 1)', 'Empty', 'Empty has no columns yet.'],
    [
      'DSUM(Beds; "Lenght"; Long)',
      '"Lenght"',
      'Beds has no column Lenght; the nearest name is Beds[Length].',
      'DSUM(Beds; Beds[Length]; Long)',
    ],
    ['DSUM(Beds; 0; Long)', '0', 'Beds has 4 columns: give a number from 1 to 4, or a name in quotes.'],
    ['DSUM(Beds; 5; Long)', '5', 'Beds has 4 columns: give a number from 1 to 4, or a name in quotes.'],
    ['DSUM(Beds; 1.5; Long)', '1.5', 'Beds has 4 columns: give a number from 1 to 4, or a name in quotes.'],
    [
      'DSUM(Beds; Plantings[Length]; Long)',
      'Plantings[Length]',
      'DSUM looks in Beds, and this is a column of Plantings.',
    ],
    [
      'DSUM(Beds; length; Long)',
      'length',
      'DSUM wants the name of a column of Beds for field, in quotes: write "Length".',
      'DSUM(Beds; "Length"; Long)',
    ],
    [
      'DSUM(Beds; [Area]; Long)',
      '[Area]',
      'DSUM wants the name of a column of Beds for field, in quotes: write "Area".',
      'DSUM(Beds; "Area"; Long)',
    ],
    [
      'DSUM(Beds; [Bed].[Area]; Long)',
      '[Bed].[Area]',
      'DSUM wants the name of a column of Beds for field, written out as in "Area": its type must be known beforehand.',
    ],
    [
      'DSUM(Beds; [Mass]; Long)',
      '[Mass]',
      'DSUM wants the name of a column of Beds for field, written out as in "Area": its type must be known beforehand.',
    ],
    [
      'DSUM(Beds; "Le" & "ngth"; Long)',
      '"Le" & "ngth"',
      'DSUM wants the name of a column of Beds for field, written out as in "Area": its type must be known beforehand.',
    ],
    [
      'DSUM(Empty; Length; Long)',
      'Length',
      'DSUM wants the name of a column of Empty for field, written out as in "Length": its type must be known beforehand.',
    ],
    ['DSUM(Beds; "Length"; Beds)', 'Beds', 'Beds is the sheet looked in: the criteria stand in a sheet of their own.'],
    [
      'DSUM(Beds; "Length"; Misspelt)',
      'Misspelt',
      'Misspelt[Lenght] has no namesake in Beds; the nearest name is Length: name the columns of a sheet of criteria like those they look at.',
    ],
    [
      'DSUM(Beds; "Length"; \'Far off\')',
      "'Far off'",
      "'Far off'[Moon] has no namesake in Beds: name the columns of a sheet of criteria like those they look at.",
    ],
    [
      'DSUM(Beds; "Length"; \'In days\')',
      "'In days'",
      "Beds[Length] is a length (ft), 'In days'[Length] is a time (day): make it a length, for values to equal, or text, for conditions such as >8 ft.",
    ],
    [
      "DCOUNT(Plantings; ; 'By bed')",
      "'By bed'",
      "Plantings[Variety] is a row of Varieties, 'By bed'[Variety] is a row of Beds: make it a row of Varieties, for values to equal, or text, for conditions such as <>early.",
    ],
    [
      "DCOUNT(Beds; ; 'Row names')",
      "'Row names'",
      "Beds[Length] is a length (ft), 'Row names'[Length] is a row of Varieties: make it a length, for values to equal, or text, for conditions such as >8 ft.",
    ],
    [
      'DCOUNT(Plantings; ; Chilly)',
      'Chilly',
      'Plantings[Low] is a temperature (degF), Chilly[Low] is a date: make it a temperature, for values to equal, or text, for conditions such as >45 degF.',
    ],
    [
      "DCOUNT(Plantings; ; 'Sown late')",
      "'Sown late'",
      "Plantings[Sown] is a date, 'Sown late'[Sown] is a length (ft): make it a date, for values to equal, or text, for conditions such as >2027-03-15.",
    ],
    [
      'DCOUNT(Plantings; ; Dressed)',
      'Dressed',
      'Plantings[Treated] is yes or no, Dressed[Treated] is a length (ft): make it yes or no, for values to equal, or text, for conditions such as yes.',
    ],
    [
      'DCOUNT(Plantings; ; Remarks)',
      'Remarks',
      'Plantings[Note] is text, Remarks[Note] is a length (ft): make it text, for conditions such as <>early.',
    ],
    [
      'DCOUNT(Plantings; ; Ratio)',
      'Ratio',
      'Plantings[Rows] is a plain number, Ratio[Rows] is a date: make it a plain number, for values to equal, or text, for conditions such as >8.',
    ],
    ['DSUM(Beds; ; Long)', '', 'DSUM still wants field here.'],
    ['DSUM(Beds; "Field"; Long)', '"Field"', 'DSUM wants a number or a quantity for field; Beds[Field] is text.'],
  ])('%s', (...one) => expectDiagnostic(one, CONTEXT));

  test('a field or criteria with no sheet before them are a slip of the signature', () => {
    const whole = SIGNATURES.get('DSUM');
    if (whole === undefined) throw new Error('DSUM is missing');
    const without = { ...whole, name: 'PART', parameters: whole.parameters.slice(1) };
    const alone = { ...whole, name: 'ALONE', parameters: whole.parameters.slice(2) };
    const functions = new Map([without, alone].map((one) => [one.name, one]));
    const more = { ...CONTEXT, functions };
    expect(diagnosticOf('PART("Length"; Long)', more).why).toBe('PART wants the name of a sheet before this.');
    expect(diagnosticOf('ALONE(Long)', more).why).toBe('ALONE wants the name of a sheet before this.');
  });
});

test.each([
  ['>8 ft', inUnit('ft')],
  ['>8', inUnit('')],
  ['>45 degF', inUnit('degF')],
  ['>2027-03-15', DATE],
  ['yes', YESNO],
  ['<>early', TEXT],
  ['<>early', choice('early', 'late')],
  ['<>early', link('Varieties')],
])('%s is an example of a condition on its type', (example, type) => {
  expect(exampleCondition(type)).toBe(example);
});
