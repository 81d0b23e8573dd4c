// Formulas over rows in which cells are filled, blank and faulty and links lead somewhere or nowhere: what each gives,
// worked out by hand. '-' is a blank, '!' an error of that kind.
import { beforeAll, describe, expect, test } from 'vitest';
import { isError } from '../../engine/index.ts';
import { type Book, opened } from '../book.ts';
import { besideFarm, computed, entered, plain, sheet } from '../workbook/small.ts';

const TEXT = { type: 'text' } as const;

// The four jobs stand on bed B1 (North, 10 / 1, early), bed B2 (South, 20 / 0, Late), no bed, and bed B3 (a bare row).
const CASES: readonly (readonly [formula: string, gives: readonly [string, string, string, string]])[] = [
  ['-[N]', ['-3', '-', '-5', '-7']],
  ['[Bed].[Length]', ['10', '20', '-', '-']],
  ['[Bed].[Zone].[Factor]', ['2', '-', '-', '-']],
  ['[Bed].[Zone].[Factor] + [N]', ['5', '-', '-', '-']],
  ['[Bed].[Length] / [Bed].[Shared]', ['10', '!divide', '-', '-']],
  ['[Bed].[Length] / 0', ['!divide', '!divide', '-', '-']],
  ['2 ^ [N]', ['8', '-', '32', '128']],
  ['(1 - [N]) ^ 0.5', ['!number', '-', '!number', '!number']],
  ['[N] * 1E300 * 1E300', ['!number', '-', '!number', '!number']],
  ['IF([N] > 4; 1; 2)', ['2', '-', '1', '1']],
  ['IF([N] > 4; 1)', ['-', '-', '1', '1']],
  ['IF([N] > 4; ; 2)', ['2', '-', '-', '-']],
  ['Yard[Main bed] & "!"', ['B2!', 'B2!', 'B2!', 'B2!']],
  ['Yard[Main bed] = [Bed]', ['no', 'yes', '-', 'no']],
  ['SUM([Bed].[Length] / [Bed].[Shared]; Jobs[N])', ['25', '!divide', '15', '15']],
  ['SUM(Jobs[N]; Beds[Length])', ['75', '75', '75', '75']],
  ['IF([Bed].[Shared] = 0; 1; [N])', ['3', '1', '-', '7']],
  ['IFS([N] > 6; 10; [N] > 4; 20; TRUE; 30)', ['30', '-', '20', '10']],
  ['IFS([N] > 6; 10)', ['-', '-', '-', '10']],
  ['SWITCH([N]; 3; "three"; 5; "five"; "other")', ['three', '-', 'five', 'other']],
  ['SWITCH([N]; 3; "three"; 5; "five")', ['three', '-', 'five', '!missing']],
  ['SWITCH([Bed].[Note]; "EARLY"; 1; 2)', ['1', '2', '-', '-']],
  ['CHOOSE([N] - 2; "a"; "b"; "c")', ['a', '-', 'c', '!value']],
  ['CHOOSE([N] / 2; 1; 2; 3)', ['1', '-', '2', '3']],
  ['CHOOSE([N] - 3; 1; 2)', ['!value', '-', '2', '!value']],
  ['AND([N] > 2; [N] < 6)', ['yes', '-', 'yes', 'no']],
  ['OR([N] > 6; [Bed].[Length] > 15)', ['no', 'yes', '-', 'yes']],
  ['IFERROR([Bed].[Length] / [Bed].[Shared]; -1)', ['10', '-1', '-', '-']],
  ['IFNA([Bed].[Length] / [Bed].[Shared]; -1)', ['10', '!divide', '-', '-']],
  ['IFNA(XLOOKUP([N]; Beds[Length]; Beds[Shared]); -1)', ['-1', '-', '-1', '-1']],
  ['XLOOKUP([Bed].[Note]; Beds[Note]; Beds[Length]; -1)', ['10', '20', '-', '-']],
  ['XLOOKUP([N] - 2; Beds[Shared]; Beds[Note]; "none")', ['early', '-', 'none', 'none']],
  ['XLOOKUP([N]; Beds[Shared]; Beds[Length]; [N] * 2)', ['6', '-', '10', '14']],
  ['XLOOKUP([N]; Beds[Shared]; Beds[Length])', ['!missing', '-', '!missing', '!missing']],
  ['XLOOKUP("north"; Beds[Zone]; Beds[Bed])', ['B1', 'B1', 'B1', 'B1']],
  ['XLOOKUP("B4"; Beds[Bed]; Beds[Zone]; "none")', ['North', 'North', 'North', 'North']],
  ['XLOOKUP("B3"; Beds[Bed]; Beds[Zone]; "none")', ['-', '-', '-', '-']],
  ['XLOOKUP("B9"; Beds[Bed]; Beds[Zone]; "none")', ['none', 'none', 'none', 'none']],
  ['[Bed] & " " & [N]', ['B1 3', 'B2 ', ' 5', 'B3 7']],
  ['[Bed] = "b1"', ['yes', 'no', '-', 'no']],
  ['[Bed].[Note] = "EARLY"', ['yes', 'no', '-', '-']],
  ['[Bed].[Note] <> "EARLY"', ['no', 'yes', '-', '-']],
  ['[Bed].[Note] < "Late"', ['yes', 'no', '-', '-']],
  ['[Bed].[Note] <= "LATE"', ['yes', 'yes', '-', '-']],
  ['[Bed].[Note] > "Fair"', ['no', 'yes', '-', '-']],
  ['LEN([Bed].[Note])', ['5', '4', '-', '-']],
  ['ISBLANK([N])', ['no', 'yes', 'no', 'no']],
  ['ISERROR([Bed].[Length] / [Bed].[Shared])', ['no', 'yes', 'no', 'no']],
  ['MAX([N]; 4)', ['4', '4', '5', '7']],
  ['MIN([N]; 4)', ['3', '4', '4', '4']],
  ['MAX([N]; [Bed].[Length])', ['10', '20', '5', '7']],
  ['MAX([N]; [Bed].[Length]; 8)', ['10', '20', '8', '8']],
  ['MAX([N]; [Bed].[Length] / [Bed].[Shared])', ['10', '!divide', '5', '7']],
  ['MAX(2; 3)', ['3', '3', '3', '3']],
  ['SUM([N]; 1; [Bed].[Length])', ['14', '21', '6', '8']],
  ['AVERAGE([N]; [Bed].[Length])', ['6.5', '20', '5', '7']],
  ['AVERAGE([Bed].[Length])', ['10', '20', '!divide', '!divide']],
  ['COUNT([N]; 1)', ['2', '1', '2', '2']],
  ['SUM([N]; Jobs[N])', ['18', '15', '20', '22']],
  ['ROUND([N] / 2; 0)', ['2', '-', '3', '4']],
  ['ROUNDUP([N] / 2)', ['2', '-', '3', '4']],
  ['ROUND([N] / 8; [Bed].[Shared])', ['0.4', '-', '-', '0.9']],
  ['LOG([N]; 3)', ['1', '-', '1.4649735', '1.7712437']],
  ['LOG(1000 * [N] / [N])', ['3', '-', '3', '3']],
  ['MOD([N]; 4)', ['3', '-', '1', '3']],
  ['BINOM.DIST(1; 2; 1 / [N]; TRUE)', ['0.88888889', '-', '0.96', '0.97959184']],
  ['PERCENTILE(Jobs[N]; 0.5)', ['5', '5', '5', '5']],
  ['RANK([N]; Jobs[N])', ['3', '-', '2', '1']],
  ['MATCH([N]; Jobs[N]; 0)', ['1', '-', '3', '4']],
  ['MATCH([Bed].[Note]; Beds[Note]; 0)', ['1', '2', '-', '-']],
  ['MATCH("south"; Beds[Zone]; 0)', ['2', '2', '2', '2']],
  ['ROWS(Jobs)', ['4', '4', '4', '4']],
  ['ROWS(Beds)', ['4', '4', '4', '4']],
  ["ROWS('Long beds')", ['3', '3', '3', '3']],
  ['COLUMNS(Zones)', ['2', '2', '2', '2']],
  ["SUM('Long beds'[Long])", ['60', '60', '60', '60']],
  ['COUNTIFS(Beds[Zone]; [Bed].[Zone])', ['2', '1', '-', '-']],
  ['COUNTIFS(Beds[Zone]; "North"; Beds[Length]; ">" & [N])', ['2', '-', '2', '2']],
  ['SUMIFS(Beds[Length]; Beds[Note]; [Bed].[Note])', ['40', '20', '-', '-']],
  ['SUMIFS(Beds[Length]; Beds[Bed]; [Bed])', ['10', '20', '-', '0']],
  ['SUMIFS(Beds[Length]; Beds[Length]; "<25"; Beds[Note]; "<>")', ['30', '30', '30', '30']],
  ['SUMIF(Beds[Length]; ">15")', ['50', '50', '50', '50']],
];

function workbook(formulas: readonly string[]): Book {
  const book = opened(
    besideFarm(
      [
        sheet('Zones', { key: 'Zone', columns: [entered('Zone', TEXT), entered('Factor', plain)] }),
        sheet('Beds', {
          key: 'Bed',
          columns: [
            entered('Bed', TEXT),
            entered('Zone', { type: 'link', table: 'Zones' }),
            entered('Length', plain),
            entered('Shared', plain),
            entered('Note', TEXT),
          ],
        }),
        sheet('Long beds', {
          rows: { from: 'each', table: 'Beds', as: 'Bed', where: '[Bed].[Length] > 5' },
          columns: [computed('Long', plain, '[Bed].[Length]')],
        }),
        sheet('Yard', { rows: { from: 'single' }, columns: [entered('Main bed', { type: 'link', table: 'Beds' })] }),
        sheet('Jobs', { columns: [entered('Bed', { type: 'link', table: 'Beds' }), entered('N', plain)] }),
      ],
      {
        Zones: [{ Zone: 'North', Factor: 2 }, { Zone: 'South' }],
        Beds: [
          { Bed: 'B1', Zone: 'North', Length: 10, Shared: 1, Note: 'early' },
          { Bed: 'B2', Zone: 'South', Length: 20, Shared: 0, Note: 'Late' },
          { Bed: 'B3', Shared: 1 },
          { Bed: 'B4', Zone: 'North', Length: 30, Shared: 2, Note: 'Early' },
        ],
        Yard: [{ 'Main bed': 'B2' }],
        Jobs: [{ Bed: 'B1', N: 3 }, { Bed: 'B2' }, { N: 5 }, { Bed: 'B3', N: 7 }],
      },
    ),
  );
  book.edit(
    formulas.map((formula, at) => ({ edit: 'formula', table: 'Jobs', column: `f${at}`, formula })),
    'Formulas',
  );
  return book;
}

function told(book: Book, row: number, column: string): string {
  const value = book.value('Jobs', row, column);
  if (value === null) return '-';
  if (isError(value)) return `!${value.error}`;
  const type = book.table('Jobs')?.columns.find(({ name }) => name === column)?.type;
  if (type?.kind === 'link' && typeof value === 'number') return book.rowName(type.table, value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'number' ? String(Number(value.toPrecision(8))) : String(value);
}

describe('formulas row by row', () => {
  let book: Book;
  beforeAll(() => {
    book = workbook(CASES.map(([formula]) => formula));
  });

  test.each(CASES.map(([formula, gives], at) => [formula, at, gives] as const))('%s', (_, at, gives) => {
    const diagnostic = book.table('Jobs')?.columns.find(({ name }) => name === `f${at}`)?.diagnostic;
    expect(diagnostic).toBeUndefined();
    expect([...book.rows('Jobs')].map((row) => told(book, row, `f${at}`))).toEqual(gives);
  });

  const WHY: readonly (readonly [formula: string, row: number, why: string])[] = [
    ['[Bed].[Length] / [Bed].[Shared]', 1, 'This divides by zero: give the divisor a value other than 0.'],
    ['[N] * 1E300 * 1E300', 0, 'The result is too large to be a number: look at the values it is made of.'],
    [
      '(1 - [N]) ^ 0.5',
      0,
      'This power has no value: a negative number has only whole powers, and 0 only positive ones.',
    ],
    [
      'SWITCH([N]; 3; "three"; 5; "five")',
      3,
      'SWITCH met a value that it has no case for: add a last argument for the rest.',
    ],
    [
      'CHOOSE([N] - 2; "a"; "b"; "c")',
      3,
      'CHOOSE was given a number that is not between 1 and 3: change it or add choices.',
    ],
    ['XLOOKUP([N]; Beds[Shared]; Beds[Length])', 0, 'No row of Beds has this Shared: check the value looked for.'],
  ];

  test.each(WHY)('%s says why it has no answer', (formula, at, why) => {
    const column = CASES.findIndex(([one]) => one === formula);
    expect(book.value('Jobs', book.rows('Jobs')[at] ?? -1, `f${column}`)).toMatchObject({ why });
  });

  test('an error says the cell in which it began', () => {
    const at = CASES.findIndex(([formula]) => formula === '[Bed].[Length] / [Bed].[Shared]');
    const row = book.rows('Jobs')[1] ?? -1;
    expect(book.value('Jobs', row, `f${at}`)).toEqual({
      error: 'divide',
      why: 'This divides by zero: give the divisor a value other than 0.',
      at: { sheet: 'jobs', row, column: book.column('Jobs', `f${at}`)?.id },
    });
  });
});
