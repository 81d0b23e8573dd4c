// Sheets of criteria and looking up in a sheet: types and units of the results, how a condition is read by the column it
// looks at, what is refused and in which words. Figures are worked out by hand from the invented plots of formulas.ts
// (lengths 10, 20, 30 ft and a blank; yields 20, 38, 63 lb; notes early, late, late; lows 10, 14, 15 degC; stars Draco,
// Orion, Draco).

import { describe, expect, it } from 'vitest';
import { type Table, workedOut } from './formulas.ts';

const TEXT = { type: 'text' } as const;
const FEET = { type: 'number', unit: { us: 'ft', si: 'm' } } as const;

function criteria(name: string, columns: Table['columns'], ...rows: Table['rows']): Table {
  return { name, key: undefined, columns, rows };
}

/** One condition on one column, as text. */
function text(name: string, column: string, ...conditions: readonly string[]): Table {
  return criteria(name, { [column]: TEXT }, ...conditions.map((condition) => [condition]));
}

const SHEETS: readonly Table[] = [
  text('Late', 'Note', 'late'),
  text('NotLate', 'Note', '<> late '),
  text('Unnoted', 'Note', '='),
  text('Noted', 'Note', '<>'),
  text('Long', 'Length', '>15 ft'),
  text('LongInches', 'Length', '>=240 in'),
  text('ExactLength', 'Length', '6.096 m'),
  text('AnyLength', 'Length', '>0'),
  text('Unmeasured', 'Length', '='),
  text('NoUnit', 'Length', '>5'),
  text('Banana', 'Length', '>banana'),
  text('Heavy', 'Length', '>5 lb'),
  text('NothingAfter', 'Length', '> '),
  text('Dear', 'Price', '>=3'),
  text('Warm', 'Low', '>13 degC'),
  text('WarmBare', 'Low', '>13'),
  text('Early', 'Sown', '<=2027-03-04'),
  text('EarlyWords', 'Sown', '<= 4 Mar 2027'),
  text('EarlyYearless', 'Sown', '<=4 Mar'),
  text('Draco', 'Star', 'draco'),
  text('AfterDraco', 'Star', '>Draco'),
  text('Northern', 'Northern', 'yes'),
  text('NorthernOdd', 'Northern', 'maybe'),
  criteria('Twenty', { Length: FEET }, ['20 ft']),
  criteria('TwoLengths', { length: FEET }, ['10 ft'], ['240 in']),
  criteria('Days', { Sown: { type: 'date' } }, ['2027-03-08']),
  criteria('OfOrion', { Star: { type: 'link', table: 'Stars' } }, ['Orion']),
  criteria('ByStar', { 'Next South': { type: 'link', table: 'Stars' } }, ['Orion']),
  criteria('LateAndLong', { Note: TEXT, Length: TEXT }, ['late', '>25 ft']),
  criteria('LateOrShort', { Note: TEXT, Length: TEXT }, ['late', ''], ['', '<15 ft']),
  criteria('Anything', { Note: TEXT }, ['']),
  criteria('NoRows', { Note: TEXT }),
  criteria('Dated', { Length: { type: 'date' } }, ['2027-03-08']),
  criteria('Misspelt', { Lenght: TEXT }, ['>5 ft']),
  {
    name: 'Prices',
    key: undefined,
    columns: {
      From: FEET,
      Price: { type: 'number', unit: { us: 'money', si: 'money' } },
      Star: { type: 'link', table: 'Stars' },
    },
    rows: [
      ['0 ft', '5', 'Draco'],
      ['15 ft', '4', 'Orion'],
      ['25 ft', '3', 'Gemini'],
    ],
  },
  {
    name: 'ByLink',
    key: undefined,
    columns: { Star: { type: 'link', table: 'Stars' }, Count: { type: 'number', unit: { us: '', si: '' } } },
    rows: [
      ['Draco', '7'],
      ['Orion', '8'],
    ],
  },
];

const GIVES: readonly (readonly [formula: string, shown: string])[] = [
  // Each function keeps, squares or drops the unit of its field.
  ['DSUM(Plots; "Length"; Late)', '50 ft'],
  ['DSUM(Plots; 2; Late)', '50 ft'],
  ['DSUM(Plots; Plots[Length]; Late)', '50 ft'],
  ['DSUM(Plots; "length"; Late)', '50 ft'],
  ['DAVERAGE(Plots; "Yield"; Late)', '50.5 lb'],
  ['DAVERAGE(Plots; "Sown"; Late)', '6 Mar 2027'],
  ['DAVERAGE(Plots; "Low"; Late) = 14.5 degC', 'yes'],
  ['DMIN(Plots; "Sown"; Late)', '4 Mar 2027'],
  ['DMAX(Plots; "Length"; Late)', '30 ft'],
  // 20 and 30 ft: 5 ft from their mean.
  ['DVARP(Plots; "Length"; Late)', '25 ft²'],
  ['DVAR(Plots; "Length"; Late)', '50 ft²'],
  ['DSTDEVP(Plots; "Length"; Late)', '5 ft'],
  ['DSTDEV(Plots; "Length"; Late) ^ 2', '50 ft²'],
  // 14 and 15 degC: half a degree from their mean, 0.9 Fahrenheit degrees.
  ['DSTDEVP(Plots; "Low"; Late)', '0.9 °F'],
  ['DCOUNT(Plots; "Length"; Late)', '2'],
  ['DCOUNT(Plots; ; Late)', '2'],
  ['DCOUNT(Plots; ; Anything)', '4'],
  ['DCOUNT(Plots; "Length"; Anything)', '3'],
  ['DCOUNTA(Plots; "Star"; Anything)', '3'],
  ['DGET(Plots; "Plot"; LateAndLong)', 'C'],
  ['DGET(Plots; "Star"; Twenty)', 'Orion'],
  ['DGET(Plots; "Sown"; Twenty)', '4 Mar 2027'],
  ['DPRODUCT(Stars; "TestID"; Northern) = 2 ^ (0+2+4+6+7+8+11+12)', 'yes'],
  // Rows are alternatives, cells of a row must all hold, blank cells hold for all; no alternative holds for none.
  ['DSUM(Plots; "Length"; LateAndLong)', '30 ft'],
  ['DSUM(Plots; "Length"; LateOrShort)', '60 ft'],
  ['DSUM(Plots; "Length"; TwoLengths)', '30 ft'],
  ['DSUM(Plots; "Length"; NoRows)', '0 ft'],
  ['DCOUNT(Plots; ; NoRows)', '0'],
  // Conditions are read by the type of the column they look at.
  ['DCOUNT(Plots; ; NotLate)', '1'],
  ['DCOUNT(Plots; ; Unnoted)', '1'],
  ['DCOUNT(Plots; ; Noted)', '3'],
  ['DCOUNT(Plots; ; Long)', '2'],
  ['DCOUNT(Plots; ; LongInches)', '2'],
  ['DCOUNT(Plots; ; ExactLength)', '1'],
  ['DCOUNT(Plots; ; AnyLength)', '3'],
  ['DCOUNT(Plots; ; Unmeasured)', '1'],
  ['DCOUNT(Plots; ; Dear)', '2'],
  ['DCOUNT(Plots; ; Warm)', '2'],
  ['DCOUNT(Plots; ; Early)', '2'],
  ['DCOUNT(Plots; ; EarlyWords)', '2'],
  ['DCOUNT(Plots; ; Days)', '1'],
  ['DCOUNT(Plots; ; Draco)', '2'],
  ['DCOUNT(Plots; ; AfterDraco)', '1'],
  ['DCOUNT(Plots; ; OfOrion)', '1'],
  ['DCOUNT(Stars; ; ByStar)', '1'],
  ['DCOUNT(Stars; ; Northern)', '8'],
  // The last row not above 20 ft starts at 15 ft.
  ['VLOOKUP(20 ft; Prices; "Price")', '4.00 EUR'],
  ['VLOOKUP(20 ft; Prices; 2; TRUE)', '4.00 EUR'],
  ['VLOOKUP(15 ft; Prices; Prices[Price])', '4.00 EUR'],
  ['VLOOKUP(180 in; Prices; "Price"; FALSE)', '4.00 EUR'],
  ['VLOOKUP(180 in; Prices; "Price"; 1 > 2)', '4.00 EUR'],
  ['VLOOKUP(99 ft; Prices; "Star")', 'Gemini'],
  ['VLOOKUP("b"; Plots; "Length"; FALSE)', '20 ft'],
  ['VLOOKUP("C"; Plots; "Low"; FALSE) = 15 degC', 'yes'],
  ['VLOOKUP("Orion"; ByLink; "Count"; FALSE)', '8'],
  ['VLOOKUP("Pavo"; ByLink; "Count")', '8'],
];

const FAULTS: readonly (readonly [formula: string, why: RegExp])[] = [
  ['DGET(Plots; "Length"; Late)', /^More than one row meets the criteria/],
  ['DGET(Plots; "Length"; NoRows)', /^No row meets the criteria/],
  ['DAVERAGE(Plots; "Length"; NoRows)', /^There is nothing to average/],
  ['DVAR(Plots; "Length"; Twenty)', /^Too few values/],
  [
    'DSUM(Plots; "Length"; NoUnit)',
    /^The condition >5 in NoUnit\[Length\] can't be read: Plots\[Length\] is a length \(ft\), so write it as in >8 ft\.$/,
  ],
  ['DSUM(Plots; "Length"; Banana)', /^The condition >banana in Banana\[Length\] can't be read/],
  ['DSUM(Plots; "Length"; Heavy)', /^The condition >5 lb in Heavy\[Length\] can't be read/],
  ['DSUM(Plots; "Length"; NothingAfter)', /^The condition > in NothingAfter\[Length\] can't be read/],
  ['DSUM(Plots; "Length"; WarmBare)', /Plots\[Low\] is a temperature \(degF\), so write it as in >45 degF\.$/],
  ['DSUM(Plots; "Length"; EarlyYearless)', /Plots\[Sown\] is a date, so write it as in >2027-03-15\.$/],
  ['DCOUNT(Stars; ; NorthernOdd)', /Stars\[Northern\] is yes or no, so write it as in yes\.$/],
  ['VLOOKUP(-1 ft; Prices; "Price")', /^Every value of the column lies above/],
  ['VLOOKUP(20 ft; Prices; "Price"; FALSE)', /^No row of Prices has this From/],
  ['VLOOKUP(20 ft; Prices; "Price"; 1 > 2)', /^The value looked for is not in the column/],
];

const REFUSED: readonly (readonly [formula: string, why: string])[] = [
  [
    'DSUM(Plots[Length]; "Length"; Late)',
    'DSUM wants the name of a sheet for table, and this is one of its columns: write Plots.',
  ],
  ['DSUM(3; "Length"; Late)', 'DSUM wants the name of a sheet for table, as in DSUM(Beds; "Length"; Wanted).'],
  ['DSUM(Plots; "Lenght"; Late)', 'Plots has no column Lenght; the nearest name is Plots[Length].'],
  ['DSUM(Plots; 12; Late)', 'Plots has 9 columns: give a number from 1 to 9, or a name in quotes.'],
  ['DSUM(Plots; Length; Late)', 'DSUM wants the name of a column of Plots for field, in quotes: write "Length".'],
  [
    'DSUM(Plots; "Le" & "ngth"; Late)',
    'DSUM wants the name of a column of Plots for field, written out as in "Star": its type must be known beforehand.',
  ],
  ['DSUM(Plots; Stars[Rev]; Late)', 'DSUM looks in Plots, and this is a column of Stars.'],
  ['DSUM(Plots; "Note"; Late)', 'DSUM wants a number or a quantity for field; Plots[Note] is text.'],
  ['DSUM(Plots; ; Late)', 'DSUM still wants field here.'],
  ['DPRODUCT(Plots; "Length"; Late)', 'DPRODUCT wants a plain number for field; Plots[Length] is a length (ft).'],
  [
    'DSUM(Plots; "Length"; Late[Note])',
    'DSUM wants the name of a sheet for criteria, and this is one of its columns: write Late.',
  ],
  ['DSUM(Plots; "Length"; Plots)', 'Plots is the sheet looked in: the criteria stand in a sheet of their own.'],
  [
    'DSUM(Plots; "Length"; Misspelt)',
    'Misspelt[Lenght] has no namesake in Plots; the nearest name is Length: name the columns of a sheet of criteria like those they look at.',
  ],
  [
    'DSUM(Plots; "Length"; Dated)',
    'Plots[Length] is a length (ft), Dated[Length] is a date: make it a length, for values to equal, or text, for conditions such as >8 ft.',
  ],
  [
    'DSUM(Plots; "Length"; Late) + 1 lb',
    'DSUM(Plots; "Length"; Late) is a length (ft), 1 lb is a mass (lb): they can\'t be added.',
  ],
  ['VLOOKUP(20; Prices; "Price")', '20 is a plain number, Prices[From] is a length (ft): write 20 ft.'],
  ['VLOOKUP("x"; Prices; "Price")', '"x" is text, Prices[From] is a length (ft): VLOOKUP needs them alike.'],
  [
    'VLOOKUP(20 ft; Prices[From]; "Price")',
    'VLOOKUP wants the name of a sheet for table, and this is one of its columns: write Prices.',
  ],
  ['VLOOKUP(20 ft; Prices; 4)', 'Prices has 3 columns: give a number from 1 to 3, or a name in quotes.'],
];

const all = [...GIVES, ...FAULTS, ...REFUSED].map(([formula]) => formula);
const answer = workedOut(all, SHEETS);

describe('sheets of criteria, and looking up in a sheet', () => {
  it.each(GIVES)('%s gives %s', (formula, shown) => {
    expect(answer(formula)).toMatchObject({ is: 'value', shown });
  });

  it.each(FAULTS)('%s is an error that says %s', (formula, why) => {
    expect(answer(formula)).toEqual({ is: 'error', why: expect.stringMatching(why) });
  });

  it.each(REFUSED)('%s is refused: %s', (formula, why) => {
    expect(answer(formula)).toEqual({ is: 'refused', why });
  });
});
