import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Book } from '../book.ts';
import { open, SMALL_FARM } from './small-farm.ts';

function done(workbook: Book, table: string, text: string) {
  const imported = workbook.importCsv(table, text);
  if (!imported.ok) throw new Error(imported.why);
  const { change: _, ...counts } = imported;
  return counts;
}

function why(text: string, table = 'Beds'): string {
  const workbook = open();
  const before = workbook.file();
  const imported = workbook.importCsv(table, text);
  expect(workbook.file()).toBe(before);
  return imported.ok ? 'it was taken' : imported.why;
}

function texts(workbook: Book, table: string, column: string): string[] {
  return [...workbook.rows(table)].map((row) => workbook.cell(table, row, column).text);
}

describe('export', () => {
  test('units in the header, dates as ISO, numbers with a point and unrounded, blanks empty, formulas guarded', () => {
    expect(open().csv('Beds')).toBe(
      'Bed,Length (ft),Width (in),Area (ft²),Cover,Share planted (%),Made,Watered,Beside,Remark\r\n' +
        'North 1,50,30,125,straw,85,2026-10-01,yes,,\r\n' +
        `North 2,39.37007874015748,36,118.110236220472,,,,,North 1,"'=1+1, ""quoted"""\r\n`,
    );
  });

  test('a computed cell that has no value says in a word why', () => {
    const workbook = open({
      ...SMALL_FARM,
      rows: { ...SMALL_FARM.rows, Income: [{ Bed: 'North 1', 'Hoped for': 0 }] },
    });
    expect(workbook.csv('Income').split('\r\n')[1]).toBe('North 1,12.5,0,÷ 0');
  });

  test('with decimal commas', () => {
    const lines = open().csv('Beds', { decimalComma: true }).split('\r\n');
    expect(lines[2]).toContain(';39,37007874015748;36;118,110236220472;');
  });
});

describe('what was exported can be imported again', () => {
  test.each(['Farm', 'Beds', 'Sales', 'Income', 'Days'])('%s as it stands changes nothing', (table) => {
    for (const decimalComma of [false, true]) {
      const workbook = open();
      const before = workbook.file();
      const counts = done(workbook, table, workbook.csv(table, { decimalComma }));
      expect(counts).toMatchObject({ added: 0, updated: 0, unchanged: workbook.rows(table).length });
      expect(workbook.file()).toBe(before);
    }
  });

  test('an edited field changes its cell alone, and the cells computed from it', () => {
    const workbook = open();
    const edited = workbook.csv('Beds').replace('North 1,50,30', 'North 1,100,30');
    expect(done(workbook, 'Beds', edited)).toEqual({
      ok: true,
      added: 0,
      updated: 1,
      unchanged: 1,
      refused: 0,
      faults: [],
      notes: ["Worked out here, so the file's values were passed over: Area."],
    });
    expect(texts(workbook, 'Beds', 'Area')).toEqual(['250', '118.11']);
    expect(workbook.cell('Beds', 0, 'Width').origin).toBe('default');
    expect(workbook.cell('Beds', 1, 'Length').text).toBe('12 m');
  });

  test('every text and number survives the way through a file into a fresh workbook', () => {
    const bed = fc.record({
      Length: fc.double({ min: 0, max: 1e6, noNaN: true, noDefaultInfinity: true }),
      'Share planted': fc.double({ min: 0, max: 100, noNaN: true }),
      Remark: fc.string({ unit: 'grapheme' }).map((text) => text.replace(/\r\n?/g, '\n').trim()),
    });
    fc.assert(
      fc.property(fc.array(bed, { maxLength: 6 }), (beds) => {
        const rows = beds.map((one, at) => ({ Bed: `Bed ${at + 1}`, ...one }));
        const first = open({ ...SMALL_FARM, rows: { Beds: rows } });
        const second = open({ ...SMALL_FARM, rows: {} });
        if (beds.length > 0) done(second, 'Beds', first.csv('Beds'));
        for (const name of ['Length', 'Share planted', 'Remark']) {
          for (const row of first.rows('Beds')) {
            expect(second.value('Beds', row, name)).toBe(first.value('Beds', row, name));
          }
        }
      }),
      { numRuns: 150 },
    );
  });
});

describe('files that a grower made elsewhere', () => {
  test('header case and blanks are forgiven, units may be others of their kind', () => {
    const workbook = open();
    done(workbook, 'Beds', ' BED ,length (M), width ( cm ),Made,Cover\nSouth 1,15.5,80,15 Mar,str\n');
    const row = workbook.rowOf('Beds', 'south 1') ?? -1;
    const shown = ['Length', 'Width', 'Made', 'Cover'].map((name) => workbook.cell('Beds', row, name).text);
    expect(shown).toEqual(['15.5 m', '80 cm', '15 Mar 2027', 'straw']);
  });

  test('a unit in the field goes before that of the header', () => {
    const workbook = open();
    done(workbook, 'Beds', 'Bed,Length (m)\nSouth 1,40 ft\n');
    expect(texts(workbook, 'Beds', 'Length')).toEqual(['50', '12 m', '40']);
  });

  test.each([
    ['semicolons and decimal commas', 'Bed;Length (m)\nA;2,5\nB;1.250\nC;1.234,5\n', ['2.5 m', '1250 m', '1234.5 m']],
    ['semicolons and decimal points', 'Bed;Length (m)\nA;2.5\nB;1.125\n', ['2.5 m', '1.125 m']],
    ['tabs', 'Bed\tLength (m)\nA\t2,5\n', ['2.5 m']],
    ['a first line that names the separator', 'sep=;\nBed;Length (m)\nA;2,5\n', ['2.5 m']],
    ['thousands in quotes', 'Bed,Length (m)\nA,"1,250"\n', ['1250 m']],
  ])('%s', (_, text, lengths) => {
    const workbook = open({ ...SMALL_FARM, rows: {} });
    done(workbook, 'Beds', `\uFEFF${text}`);
    expect(texts(workbook, 'Beds', 'Length').map((length) => length.replace(',', ''))).toEqual(lengths);
  });

  test('0.5 is a half where no unit is named, and half a per cent under (%)', () => {
    const workbook = open({ ...SMALL_FARM, rows: {} });
    done(workbook, 'Beds', 'Bed,Share planted\nA,0.5\n');
    done(workbook, 'Beds', 'Bed,Share planted (%)\nB,0.5\n');
    expect([0, 1].map((row) => workbook.value('Beds', row, 'Share planted'))).toEqual([0.5, 0.005]);
  });

  test('an empty field empties its cell or gives it back to its formula; a column not in the file is left alone', () => {
    const workbook = open();
    done(workbook, 'Beds', 'Bed,Width,Beside\nNorth 2,,\n');
    expect(workbook.cell('Beds', 1, 'Width')).toMatchObject({ text: '30', origin: 'default' });
    expect(workbook.value('Beds', 1, 'Beside')).toBe(null);
    expect(workbook.cell('Beds', 1, 'Length').text).toBe('12 m');
  });

  test('rows may link to rows further down the same file', () => {
    const workbook = open();
    done(workbook, 'Beds', 'Bed,Length,Beside\nA,10,B\nB,10,C\nC,10,North 1\n');
    expect(texts(workbook, 'Beds', 'Beside').sort()).toEqual(['', 'B', 'C', 'North 1', 'North 1']);
  });

  test('the same file again changes nothing, whatever its units', () => {
    const workbook = open();
    const beds = 'Bed,Length (m),Share planted\nNorth 1,2.5,0.5\nSouth 1,40 ft,12%\n';
    const sales = 'Bed,Income\nNorth 1,€3\nNorth 1,4\nNorth 1,4\n';
    done(workbook, 'Beds', beds);
    expect(done(workbook, 'Beds', beds)).toMatchObject({ added: 0, updated: 0, unchanged: 2 });
    const first = workbook.importCsv('Sales', sales, { goodOnes: true });
    const again = workbook.importCsv('Sales', sales, { goodOnes: true });
    expect([first, again]).toMatchObject([
      { added: 2, refused: 1 },
      { added: 0, unchanged: 2, refused: 1 },
    ]);
  });

  test('rows without names are added once', () => {
    const workbook = open();
    const file = 'Bed,Income (USD)\nNorth 1,12.50\nNorth 2,$3\nNorth 2,$3\n';
    expect(done(workbook, 'Sales', file)).toMatchObject({ added: 2, unchanged: 1 });
    expect(texts(workbook, 'Sales', 'Income')).toEqual(['12.50', '3.00', '3.00']);
  });

  test('a one-row table and made rows take what can be typed there', () => {
    const workbook = open();
    done(workbook, 'Farm', 'Bed width (cm)\n90\n');
    done(workbook, 'Income', 'Bed,Hoped for\nNorth 1,50\n');
    done(workbook, 'Days', 'Day,Rain (mm)\n2027-04-02,12\n2 Apr 2027 ,12\n'.replace('2 Apr 2027 ,12\n', ''));
    expect(workbook.cell('Farm', 0, 'Bed width').text).toBe('90 cm');
    expect(texts(workbook, 'Income', 'Share')).toEqual(['25', '']);
    expect(texts(workbook, 'Days', 'Rain')).toEqual(['', '12 mm', '']);
  });

  test('the whole file is one step of undo', () => {
    const workbook = open();
    const before = workbook.file();
    done(workbook, 'Beds', 'Bed,Length\nNorth 1,60\nSouth 1,40\nSouth 2,40\n');
    expect(workbook.rows('Beds').length).toBe(4);
    workbook.undo();
    expect(workbook.file()).toBe(before);
  });
});

describe('what can’t be taken is refused whole, in a sentence', () => {
  test.each([
    ['', 'The file is empty: it needs a header and a row or more.'],
    ['Bed,Length\n', 'The file has a header and no rows below it: add a row.'],
    [
      'Bed,Lenght\nA,1\n',
      "Beds has no column called “Lenght” (did you mean Length?): rename it in the file's header, or take it out.",
    ],
    [
      'Bed,Length (lb)\nA,1\n',
      "The header “Length (lb)” can't be used: lb is a mass. Write Length (ft), or another unit of its kind.",
    ],
    ['Bed,Length,length\nA,1,1\n', 'Two columns of the file are headed Length: take one of them out.'],
    ['Length\n10\n', 'Line 1: the file has no column Bed, which names each row of Beds: add it.'],
    ['Bed,Length\nA,10\n,12\n', 'Line 3: Bed is empty, and it names the row: write a name.'],
    ['Bed,Length\nA,10\nB,9\na,12\n', 'Line 4: “a” stands in line 2 already: leave one of the two.'],
    [
      'Bed,Length\nA,10\nB,"9\nC,12\n',
      "Line 3 has a quotation mark that doesn't close where its field ends: close it, or double it where it belongs to the text.",
    ],
    [
      'Bed,Length\nA\n',
      'Line 2: it has 1 field where the header has 2: a separator or a quotation mark is missing here or just above.',
    ],
    ['Bed,Length\nA,10,7\n', 'Line 2: “7” stands in column 3, which has no header: name that column or empty it.'],
    [
      'Bed;Length\nA;1.125\n',
      'Line 2: “1.125” can be read in two ways here: write 1125, or 1,125 with a decimal comma.',
    ],
    [
      'Bed,Length\nNorth 1,60\nA,banana\n',
      'Line 3, Length: "banana" isn\'t a length: this column wants a length, such as 8 ft.',
    ],
    ['Bed,Length\nA,-3\n', "Line 2, Length: Length can't be below 0 ft: write a larger value."],
    [
      'Bed,Length,Beside\nA,3,North 3\n',
      'Line 2, Beside: No row of Beds is called “North 3”: did you mean “North 1”? Else add it to Beds first.',
    ],
    ['Bed,Cover\nA,gravel\n', 'Line 2, Cover: "gravel" isn\'t among the choices: write bare, straw, leaves.'],
    ['Bed,Made\nA,2027-02-30\n', /^Line 2, Made: /],
  ])('%j', (text, sentence) => {
    if (typeof sentence === 'string') expect(why(text)).toBe(sentence);
    else expect(why(text)).toMatch(sentence);
  });

  test.each([
    ['Farm', 'Season\n2027\n2028\n', 'Line 2: Farm has one row, and the file has 2: leave one.'],
    [
      'Income',
      'Bed,Hoped for\nEast 9,5\n',
      'Line 2: Income has no row “East 9”, and its rows follow from other sheets: take the line out, or change those sheets first.',
    ],
    ['Bedz', 'Bed\nA\n', 'There is no sheet called bedz.'],
  ])('%s: %j', (table, text, sentence) => {
    expect(why(text, table)).toBe(sentence);
  });
});

describe('rows that can be taken may go without those that can’t', () => {
  const text =
    'Bed,Length,Beside,Cover\nA,1,,straw\nB,banana,,\nC,2,B,\nD,3,C,\nE,4,A,\nNorth 1,60,,gravel\n,5,,\nF,5\nA,2,,\n';

  test('each that can’t is told with its line and why, and so is one that names another of them', () => {
    const workbook = open();
    const imported = workbook.importCsv('Beds', text, { goodOnes: true });
    expect(imported).toMatchObject({ ok: true, added: 2, updated: 0, unchanged: 0, refused: 7 });
    const orphan = 'it names another row of the file that can’t be taken: mend that one first.';
    expect(imported.ok && imported.faults).toEqual([
      { line: 3, column: 'Length', why: '"banana" isn\'t a length: this column wants a length, such as 8 ft.' },
      { line: 4, why: orphan },
      { line: 5, why: orphan },
      { line: 7, column: 'Cover', why: '"gravel" isn\'t among the choices: write bare, straw, leaves.' },
      { line: 8, why: 'Bed is empty, and it names the row: write a name.' },
      {
        line: 9,
        why: 'it has 2 fields where the header has 4: a separator or a quotation mark is missing here or just above.',
      },
      { line: 10, why: '“A” stands in line 2 already: leave one of the two.' },
    ]);
    expect(texts(workbook, 'Beds', 'Bed')).toEqual(['North 1', 'North 2', 'A', 'E']);
    expect(texts(workbook, 'Beds', 'Beside')).toEqual(['', 'North 1', '', 'A']);
  });

  test('none is taken unless that is asked for', () => {
    expect(why(text)).toBe('Line 3, Length: "banana" isn\'t a length: this column wants a length, such as 8 ft.');
  });
});

describe('columns and numbers understood as a person says', () => {
  test('headers are matched by hand, left out, and their unit heeded', () => {
    const workbook = open();
    const text = 'Name,Long (m),Note\nA,2,x\n';
    const byHand = { Name: 'bed', 'Long (m)': 'length', Note: null };
    expect(workbook.importCsv('Beds', text, { byHand })).toMatchObject({ ok: true, added: 1 });
    expect(texts(workbook, 'Beds', 'Length')).toEqual(['50', '12 m', '2 m']);
    expect(texts(workbook, 'Beds', 'Remark')).toEqual(['', '=1+1, "quoted"', '']);
    expect(
      open().importCsv('Beds', 'Name,Heavy (lb)\nA,2\n', { byHand: { Name: 'bed', 'Heavy (lb)': 'length' } }),
    ).toMatchObject({
      ok: false,
      why: "The header “Length (lb)” can't be used: lb is a mass. Write Length (ft), or another unit of its kind.",
    });
  });

  test('the decimal mark that is said goes before the one that is guessed', () => {
    const workbook = open({ ...SMALL_FARM, rows: {} });
    workbook.importCsv('Beds', 'Bed;Length (m)\nA;1.125\n', { decimal: 'point' });
    workbook.importCsv('Beds', 'Bed;Length (m)\nB;1.125\n', { decimal: 'comma' });
    expect([0, 1].map((row) => workbook.value('Beds', row, 'Length'))).toEqual([1.125, 1125]);
  });

  test('a title above the header is passed over and said', () => {
    const workbook = open({ ...SMALL_FARM, rows: {} });
    const imported = workbook.importCsv('Beds', 'Our beds\n\nBed,Length\nA,10\n');
    expect(imported).toMatchObject({
      added: 1,
      notes: ['The header was found in line 3; what stands above it was passed over.'],
    });
  });

  test('shares that another program wrote as parts of one are pointed out', () => {
    const imported = open().importCsv('Beds', 'Bed,Share planted (%)\nA,0.85\nB,1\n');
    expect(imported).toMatchObject({
      notes: ['No figure is above 1 under a header that says %, so 0.85 is taken as 0.85%: Share planted.'],
    });
  });
});

describe('a table as plain data', () => {
  test('full precision in the column’s unit, dates as ISO, links by name, blanks as null, errors with their sentence', () => {
    const workbook = open({
      ...SMALL_FARM,
      rows: { ...SMALL_FARM.rows, Income: [{ Bed: 'North 1', 'Hoped for': 0 }] },
    });
    const beds = workbook.tableData('Beds');
    expect(beds?.columns[3]).toEqual({ name: 'Area', type: 'number', unit: 'ft2', formula: '[Length] * [Width]' });
    expect(beds?.rows).toEqual([
      ['North 1', 50, 30, 125, 'straw', 85, '2026-10-01', true, null, null],
      [
        'North 2',
        39.37007874015748,
        36,
        expect.closeTo(118.11023622047244, 12),
        null,
        null,
        null,
        null,
        'North 1',
        '=1+1, "quoted"',
      ],
    ]);
    const why = 'This divides by zero: give the divisor a value other than 0.';
    expect(workbook.tableData('Income')?.rows[0]).toEqual(['North 1', 12.5, 0, { error: 'divide', why }]);
    expect(workbook.tableData('Nothing')).toBe(undefined);
  });
});
