import { chmodSync, mkdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import Ajv2020 from 'ajv/dist/2020.js';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { VERBS } from '../../ui/terminal/verbs.ts';
import { Folder } from './terminal.ts';

/** The id of a row of Beds in the saved file. */
function rowIdOf(saved: Folder, bed: string): string {
  const { rows } = JSON.parse(saved.text('farm.json')) as { rows: { beds: { rows: string[][] } } };
  return rows.beds.rows.find((row) => row[2] === bed)?.[0] ?? '';
}

let folder: Folder;
beforeEach(() => {
  folder = new Folder();
});
afterEach(() => folder.remove());

describe('new', () => {
  test('writes a season for the coming year that meets the published schema', async () => {
    const file = folder.file('f.json');
    expect(await folder.run(['new', 'season', '--out', file])).toMatchObject({ status: 0, err: '' });
    const schema = JSON.parse(
      readFileSync(new URL('../../engine/formats/workbook.schema.json', import.meta.url), 'utf8'),
    ) as object;
    const meets = new Ajv2020({ allowUnionTypes: true, strictTuples: false, formats: { date: true } }).compile(schema);
    meets(JSON.parse(folder.text('f.json')));
    expect(meets.errors ?? []).toEqual([]);
    expect((await folder.run(['eval', 'Farm[Season]', '--in', file])).out).toBe('2027\n');
  });

  test('in other units, money and year', async () => {
    const file = folder.file('f.json');
    await folder.run(['new', '--units', 'si', '--currency=eur', '--season', '2030', '--out', file]);
    expect((await folder.run(['eval', 'Farm[Season]', '--in', file])).out).toBe('2030\n');
    expect((await folder.run(['tables', file])).out).toContain('EUR/h');
    expect((await folder.run(['eval', 'Farm[Bed width]', '--in', file, '--json'])).out).toContain('"unit":"cm"');
  });

  test.each([
    [
      ['new', 'seasn', '--out', 'f.json'],
      'There is no template called “seasn”: choose one of season, onions, seedlings, demo.\n',
    ],
    [['new', 'season'], 'Say which file to write: new season --out season.json.\n'],
    [['new', '--units', 'metric', '--out', 'f.json'], '--units is us or si, and not “metric”.\n'],
    [['new', 'demo', '--units', 'si', '--out', 'f.json'], 'The demo farm has its own units: leave out --units.\n'],
    [['new', '--out'], '--out needs a value after it.\n'],
  ])('%j', async (words, err) => {
    expect(await folder.run(words)).toEqual({ status: 2, out: '', err });
  });
});

describe('eval', () => {
  test.each([
    ['3 * 8 in', '24 in', { value: 24, unit: 'in', type: 'number' }],
    ['-5 + 3', '-2', { value: -2, unit: null, type: 'number' }],
    ['1/3', '0.333', { value: 1 / 3, unit: null, type: 'number' }],
    ['85%', '85%', { value: 85, unit: '%', type: 'number' }],
    ['DATE(2027; 3; 15)', '15 Mar 2027', { value: '2027-03-15', unit: null, type: 'date' }],
    ['20 degC', '20 °C', { value: 20, unit: 'degC', type: 'temperature' }],
    ['TRUE', 'yes', { value: true, unit: null, type: 'yesno' }],
    ['"a" & CHAR(10) & "b"', 'a b', { value: 'a\nb', unit: null, type: 'text' }],
    ['IF(FALSE; 1)', 'blank', { value: null, unit: null, type: 'number' }],
  ])('%s', async (formula, text, json) => {
    expect(await folder.run(['eval', formula])).toEqual({ status: 0, out: `${text}\n`, err: '' });
    const answer = await folder.run(['eval', '--json', '--', formula]);
    expect(JSON.parse(answer.out)).toEqual(json);
  });

  test('on the tables of a file', async () => {
    const file = folder.farm();
    expect((await folder.run(['eval', 'SUM(Beds[Length])', '--in', file, '--json'])).out).toBe(
      '{"value":89.37007874015748,"unit":"ft","type":"number"}\n',
    );
    expect(await folder.run(['eval', 'SUM(Beds[Lenght])', '--in', file])).toMatchObject({
      status: 2,
      err: expect.stringMatching(/^farm\.json: .*Length.*\n$/),
    });
  });

  test('a formula that fails is bad input', async () => {
    expect(await folder.run(['eval', '1 lb + 2 in'])).toEqual({
      status: 2,
      out: '',
      err: "1 lb is a mass (lb), 2 in is a length (in): they can't be added.\n",
    });
    const why = 'This divides by zero: give the divisor a value other than 0.';
    expect(await folder.run(['eval', '1/0'])).toEqual({ status: 2, out: '', err: `${why}\n` });
    const json = await folder.run(['eval', '1/0', '--json']);
    expect([json.status, JSON.parse(json.out), json.err]).toEqual([2, { error: 'divide', why }, `${why}\n`]);
  });

  test('a line answers a line, errors in place', async () => {
    const input = ['1 + 1', '', '1 / 0', 'SUM(', '2 ft'];
    const text = await folder.run(['eval', '-'], input);
    expect(text.status).toBe(0);
    expect(text.out.trimEnd().split('\n')).toEqual([
      '2',
      'Error: The formula is empty: write what the column should hold.',
      'Error: This divides by zero: give the divisor a value other than 0.',
      expect.stringMatching(/^Error: SUM\( is not closed/),
      '2 ft',
    ]);
    const json = (await folder.run(['eval', '-', '--json'], input)).out.trimEnd().split('\n');
    expect(json.map((line) => JSON.parse(line))).toMatchObject([
      { value: 2 },
      { error: 'formula' },
      { error: 'divide' },
      { error: 'formula' },
      { value: 2, unit: 'ft' },
    ]);
  });

  test('more than one word is one too many', async () => {
    expect((await folder.run(['eval', '1', '+', '1'])).err).toBe(
      '“+” is one word too many; put names with blanks in quotes: eval FORMULA [--in FILE] [--json]\n',
    );
  });
});

describe('tables and table', () => {
  test('names no sheet by its id: a link to one that is not here says so', async () => {
    const data = JSON.parse(readFileSync(folder.farm(), 'utf8'));
    const column = {
      name: 'For',
      type: { type: 'link', sheet: 'rkk5qm78j9u46' },
      group: '',
      note: '',
      role: 'entered',
    };
    const declaration = { id: 'for', ...column, formula: '' };
    data.own = { beds: { columns: { for: { name: 'For', declaration } } } };
    const { out, err } = await folder.run(['tables', folder.put('farm.json', JSON.stringify(data))]);
    expect(err).toBe('');
    expect(out).toMatch(/For +link to a sheet that is not here/);
    expect(out).not.toContain('rkk5qm78j9u46');
  });

  test('tables lists columns with types and units', async () => {
    const { out } = await folder.run(['tables', folder.farm()]);
    expect(out).toContain('Farm (one row)\n');
    expect(out).toContain('Beds (2 rows, named by Bed)\n');
    expect(out).toMatch(/^ {2}Length +number +ft +entered$/m);
    expect(out).toMatch(/^ {2}Beside +link to Beds +entered$/m);
    expect(out).toMatch(/^ {2}Cover +choice of bare, straw, leaves +entered$/m);
    expect(out).toMatch(/^ {2}Nursery +temperature +°F +entered$/m);
  });

  test('table lines its columns up, numbers to the right', async () => {
    const { out } = await folder.run(['table', folder.farm(), 'sales']);
    expect(out).toBe('Bed      Income (USD)\nNorth 1         12.50\n');
  });

  test('--json gives columns and rows', async () => {
    const { out } = await folder.run(['table', folder.farm(), 'Days', '--json']);
    expect(JSON.parse(out)).toEqual({
      columns: [
        { name: 'Day', type: 'date', unit: null },
        { name: 'Rain', type: 'number', unit: 'in' },
      ],
      rows: [
        ['2027-04-01', null],
        ['2027-04-02', null],
        ['2027-04-03', null],
      ],
    });
  });

  test('--csv and export are one, but for the mark by which spreadsheets know UTF-8', async () => {
    const file = folder.farm();
    const csv = (await folder.run(['table', file, 'Beds', '--csv'])).out;
    expect((await folder.run(['export', file, 'Beds'])).out).toBe(`\uFEFF${csv}`);
    await folder.run(['export', file, 'Beds', '--out', folder.file('beds.csv')]);
    expect(folder.text('beds.csv')).toBe(`\uFEFF${csv}`);
  });

  test.each([
    [['table', 'FILE', 'Bedz'], 'farm.json: there is no table called “Bedz”: did you mean “Beds”?\n'],
    [['table', 'FILE', 'Beds', '--json', '--csv'], 'Choose one of --csv and --json.\n'],
    [['table', 'FILE'], 'TABLE is missing: table FILE TABLE [--csv or --json]\n'],
    [['table', 'FILE', 'Beds', '--jsn'], 'There is no option --jsn: did you mean --json?\n'],
    [['tabel', 'FILE', 'Beds'], 'There is no verb “tabel”: did you mean “table”?\n'],
  ])('%j', async (words, err) => {
    const file = folder.farm();
    expect(await folder.run(words.map((word) => (word === 'FILE' ? file : word)))).toEqual({ status: 2, out: '', err });
  });
});

describe('set, formula and import write the file whole or leave it', () => {
  test('set types a cell as a person does', async () => {
    const file = folder.farm();
    expect((await folder.run(['set', file, 'Beds', 'north 1', 'Length', '20 m'])).out).toBe(
      'Beds / North 1 / Length: 20 m\n',
    );
    expect((await folder.run(['set', file, 'Farm', 'any', 'bed width', '36'])).out).toBe('Farm / Bed width: 36 in\n');
    expect((await folder.run(['eval', 'SUM(Beds[Width])', '--in', file])).out).toBe('72 in\n');
    expect((await folder.run(['set', file, 'Sales', '1', 'Income', ''])).out).toBe('Sales / row 1 / Income: blank\n');
    expect(folder.names()).toEqual(['farm.json']);
  });

  test('--out leaves the file itself alone', async () => {
    const file = folder.farm();
    const before = folder.text('farm.json');
    await folder.run(['set', file, 'Beds', 'North 1', 'Length', '60', '--out', folder.file('other.json')]);
    expect(folder.text('farm.json')).toBe(before);
    const changed = folder
      .text('other.json')
      .split('\n')
      .filter((line, at) => line !== before.split('\n')[at]);
    expect(changed).toHaveLength(1);
    expect(changed[0]).toContain('"North 1", [60, "ft", true]');
  });

  test('setting what is there already gives the same bytes', async () => {
    const file = folder.farm();
    const before = folder.text('farm.json');
    await folder.run(['set', file, 'Beds', 'North 2', 'Length', '12 m']);
    expect(folder.text('farm.json')).toBe(before);
  });

  test('formula adds a computed column or replaces one', async () => {
    const file = folder.farm();
    expect((await folder.run(['formula', file, 'Beds', 'Edge', '= 2 * ([Length] + [Width])'])).status).toBe(0);
    expect((await folder.run(['eval', 'MAX(Beds[Edge])', '--in', file])).out).toBe('105 ft\n');
    await folder.run(['formula', file, 'Beds', 'Edge', '[Length]']);
    expect((await folder.run(['eval', 'MAX(Beds[Edge])', '--in', file])).out).toBe('50 ft\n');
  });

  test('formula says which others no longer check', async () => {
    const file = folder.farm();
    await folder.run(['formula', file, 'Beds', 'Edge', '[Length]']);
    await folder.run(['formula', file, 'Beds', 'Twice', '[Edge] + 1 ft']);
    const { status, out } = await folder.run(['formula', file, 'Beds', 'Edge', '"text"']);
    expect(status).toBe(0);
    expect(out).toMatch(/^Beds \/ Edge = "text"\nBeds \/ Twice no longer checks: .+\n$/);
  });

  test('import adds and updates rows and says what it passed over', async () => {
    const csv = folder.put('rows.csv', 'Bed,Length (ft),Area\nNorth 1,60,1\nSouth 1,20,1\n');
    const { out } = await folder.run(['import', folder.farm(), 'Beds', csv]);
    expect(out).toBe("Beds: 1 added, 1 updated.\nWorked out here, so the file's values were passed over: Area.\n");
    expect((await folder.run(['eval', 'SUM(Beds[Length])', '--in', folder.file('farm.json')])).out).toBe('119.37 ft\n');
  });

  test('import reads what older spreadsheets wrote', async () => {
    const latin = Uint8Array.from(
      [...'Bed,Length\nGem', 0xfc, ...'se,20\n'].map((one) => (typeof one === 'string' ? one.charCodeAt(0) : one)),
    );
    await folder.run(['import', folder.farm(), 'Beds', folder.put('latin.csv', latin)]);
    const wide = Buffer.from('\uFEFFBed\tLength\nGärten\t30\n', 'utf16le');
    await folder.run(['import', folder.file('farm.json'), 'Beds', folder.put('wide.csv', wide)]);
    const { out } = await folder.run(['table', folder.file('farm.json'), 'Beds']);
    expect(out).toContain('Gemüse');
    expect(out).toContain('Gärten');
  });

  test.each([
    [
      ['set', 'FILE', 'Beds', 'North 1', 'Length', 'banana'],
      'farm.json: Beds / North 1 / Length: "banana" isn\'t a length: this column wants a length, such as 8 ft.\n',
    ],
    [
      ['set', 'FILE', 'Beds', 'North 1', 'Length', '-3'],
      "farm.json: Beds / North 1 / Length: Length can't be below 0 ft: write a larger value.\n",
    ],
    [
      ['set', 'FILE', 'Sales', 'row 1', 'Bed', 'North 9'],
      'farm.json: Sales / row 1 / Bed: No row of Beds is called “North 9”: did you mean “North 1”? Else add it to Beds first.\n',
    ],
    [
      ['set', 'FILE', 'Beds', 'North 7', 'Length', '3'],
      'farm.json: Beds has no row called “North 7”: did you mean “North 1”?\n',
    ],
    [
      ['set', 'FILE', 'Beds', 'North 1', 'Lenth', '3'],
      'farm.json: Beds has no column called “Lenth”: did you mean “Length”?\n',
    ],
    [
      ['set', 'FILE', 'Beds', 'North 2', 'Bed', 'North 1'],
      'farm.json: Beds / North 2 / Bed: Beds already has a row called “North 1”: choose another name.\n',
    ],
    [
      ['formula', 'FILE', 'Beds', 'Area', '[Length] + 1 lb'],
      "farm.json: Beds / Area: [Length] is a length (ft), 1 lb is a mass (lb): they can't be added.\n",
    ],
    [
      ['formula', 'FILE', 'Beds', 'Width', '[Area] / [Length]'],
      'farm.json: Beds / Width: These formulas go in a circle: [Width] reads [Area] reads [Width]. Change one of them so that it no longer needs the others.\n',
    ],
    [
      ['formula', 'FILE', 'Beds', 'Length', '3 ft'],
      'farm.json: Beds / Length: Length is typed by hand and has no formula: add a column of your own for this one.\n',
    ],
    [
      ['import', 'FILE', 'Beds', 'CSV'],
      'rows.csv: Line 3, Length: "many" isn\'t a length: this column wants a length, such as 8 ft.\n',
    ],
  ])('%j', async (words, err) => {
    const file = folder.farm();
    const csv = folder.put('rows.csv', 'Bed,Length\nNorth 1,60\nSouth 1,many\n');
    const before = folder.text('farm.json');
    const paths = new Map([
      ['FILE', file],
      ['CSV', csv],
    ]);
    expect(await folder.run(words.map((word) => paths.get(word) ?? word))).toEqual({ status: 2, out: '', err });
    expect(folder.text('farm.json')).toBe(before);
    expect(folder.names()).toEqual(['farm.json', 'rows.csv']);
  });
});

describe('files that can’t be used', () => {
  test.each([
    ['absent.json', undefined, "absent.json can't be read: there is no such file or folder; check the name.\n"],
    ['empty.json', '', 'empty.json: The file is empty: take another copy of it.\n'],
    [
      'rows.json',
      'Bed,Length\n',
      'rows.json: This is not a Dibble workbook: a workbook file begins with {. Choose another file.\n',
    ],
    [
      'image.json',
      Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0, 1]),
      'image.json: This is a picture (PNG), and no workbook. Choose another file.\n',
    ],
  ])('%s', async (name, content, err) => {
    if (content !== undefined) folder.put(name, content);
    expect(await folder.run(['tables', folder.file(name)])).toEqual({ status: 2, out: '', err });
  });

  test('a truncated workbook is named with the line at which it ends', async () => {
    const file = folder.farm();
    folder.put('farm.json', folder.text('farm.json').slice(0, -60));
    const { status, err } = await folder.run(['check', file]);
    expect(status).toBe(2);
    expect(err).toMatch(
      /^farm\.json: The file ends in the middle, at line \d+: it was cut short\. Take a whole copy of it\.\n$/,
    );
  });

  test('a cell that its column can’t hold is kept aside, and the rest opens', async () => {
    const file = folder.farm();
    folder.put(
      'farm.json',
      folder.text('farm.json').replace('[50, "ft", true]', '"banana"').replace('"straw"', '{ "a": 1 }'),
    );
    const { status, err, out } = await folder.run(['table', file, 'Beds', '--json']);
    expect(status).toBe(0);
    expect(JSON.parse(out).rows[0].slice(0, 3)).toEqual(['North 1', null, 30]);
    expect(err).toBe(
      'farm.json: Row 1 of “beds” holds “{"a":1}” under “cover”, which is no entry; it is kept aside.\n',
    );
    await folder.run(['set', file, 'Beds', 'North 1', 'Width', '31']);
    expect(JSON.parse(folder.text('farm.json')).aside.beds).toEqual({
      [rowIdOf(folder, 'North 1')]: { cover: '{"a":1}', length: 'banana' },
    });
  });

  test('a place that can’t be written leaves nothing behind', async () => {
    const file = folder.farm();
    mkdirSync(folder.file('sub'));
    expect((await folder.run(['export', file, 'Beds', '--out', folder.file('sub')])).err).toBe(
      'sub is a folder: name a file in it.\n',
    );
    expect((await folder.run(['export', file, 'Beds', '--out', folder.file('none/beds.csv')])).err).toBe(
      "none/beds.csv can't be written: there is no such file or folder; check the name.\n",
    );
    expect(folder.names()).toEqual(['farm.json', 'sub']);
  });

  test('a link stays a link and a file keeps its permissions', async () => {
    const file = folder.farm();
    chmodSync(file, 0o640);
    symlinkSync(file, folder.file('link.json'));
    await folder.run(['set', folder.file('link.json'), 'Beds', 'North 1', 'Length', '70']);
    expect(folder.text('farm.json')).toContain('[70, "ft", true]');
    expect(statSync(file).mode & 0o777).toBe(0o640);
    expect(folder.names()).toEqual(['farm.json', 'link.json']);
  });
});

describe('explain and check', () => {
  test('explain goes down to the inputs, telling each cell once', async () => {
    const { out } = await folder.run(['explain', folder.farm(), 'Beds', 'North 1', 'Area']);
    expect(out).toBe(`Beds / North 1 / Area: 125 ft² (computed)
  125 ft², because it is Length (50 ft) times Width (30 in).
  = [Length] * [Width]
  = 50 ft * 30 in
  Beds / North 1 / Length: 50 ft (entered)
  Beds / North 1 / Width: 30 in (from the default)
    Taken from Bed width of Farm (30 in).
    = Farm[Bed width]
    = 30 in
    Farm / Bed width: 30 in (entered)
`);
  });

  test('explain tells two steps and how to go deeper, and counts what a total has past the first five', async () => {
    const file = folder.file('demo.json');
    await folder.run(['new', 'demo', '--out', file]);
    const { out: margin } = await folder.run(['explain', file, 'Plantings', 'Sweet clumps', 'Margin']);
    expect(margin.split('\n').length).toBeLessThan(100);
    expect(margin).toMatch(
      /\n {4}Plantings \/ Sweet clumps \/ Mix cost: .*\n {6}\d.*, because it is Mix volume .*\n {4}\S/,
    );
    expect(margin).toContain('go deeper with --steps 3.\n');
    const { out: deeper } = await folder.run(['explain', file, 'Plantings', 'Sweet clumps', 'Margin', '--steps', '3']);
    expect(deeper).toMatch(/\n {6}Plantings \/ Sweet clumps \/ Mix volume: /);
    // The share is the margin over that of all plantings.
    const { out: share } = await folder.run(['explain', file, 'Plantings', 'Sweet clumps', 'Share of margin']);
    const plantings = Number((await folder.run(['eval', 'ROWS(Plantings)', '--in', file])).out);
    expect(share.match(/^ {2}Plantings \/ .* \/ Margin this season: /gm)).toHaveLength(5);
    expect(share).toContain(`\n  and ${plantings - 5} more\n`);
    expect(await folder.run(['explain', file, 'Farm', '', 'Season', '--steps', '0'])).toEqual({
      status: 2,
      out: '',
      err: '--steps takes a whole number from 1 on, and not “0”.\n',
    });
  });

  test('check lists what needs attention and fails on errors alone', async () => {
    const file = folder.farm();
    expect(await folder.run(['check', file])).toEqual({ status: 0, out: 'Nothing needs attention.\n', err: '' });
    await folder.run(['set', file, 'Farm', '', 'Bed width', '']);
    expect(await folder.run(['check', file])).toEqual({
      status: 0,
      out: 'warning: Farm / Bed width: Enter the width of a bed.\n1 warning.\n',
      err: '',
    });
    await folder.run(['set', file, 'Income', 'North 1', 'Hoped for', '0']);
    const { status, out } = await folder.run(['check', file]);
    expect(status).toBe(1);
    expect(out).toMatch(
      /^error: Income \/ North 1 \/ Share: This divides by zero: .+\nwarning: .+\n1 error, 1 warning\.\n$/,
    );
  });
});

describe('help', () => {
  test('names every verb', async () => {
    const { out, status } = await folder.run(['help']);
    expect(status).toBe(0);
    for (const { name } of VERBS) expect(out).toMatch(new RegExp(`^  ${name} `, 'm'));
    expect((await folder.run(['--help'])).out).toBe(out);
    expect((await folder.run(['set', '--help'])).out).toContain(
      'set FILE TABLE KEY COLUMN VALUE [--branch NAME] [--out FILE] [--force] [--dry-run] [--journal]',
    );
  });

  test('--version gives the version of the package', async () => {
    const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
    expect((await folder.run(['--version'])).out).toBe(`${version}\n`);
  });

  test('no verb at all', async () => {
    expect(await folder.run([])).toEqual({ status: 2, out: '', err: 'Say what to do: “help” lists everything.\n' });
  });
});
