// How the terminal treats files: nothing is written over unasked, two commands at once lose nothing, streams stand for files,
// trials write nothing, and a journal takes changes back in later runs.

import { mkdirSync, readFileSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { unzipSync, zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { Folder } from './terminal.ts';

let folder: Folder;
beforeEach(() => {
  folder = new Folder();
});
afterEach(() => folder.remove());

const SET = ['Beds', 'North 1', 'Length'] as const;

describe('nothing is written over unasked', () => {
  test('neither by a fresh workbook, nor by a change that goes elsewhere, nor by a table; --force does', async () => {
    const file = folder.farm();
    const other = folder.put('other.json', 'mine');
    const refused = {
      status: 2,
      out: '',
      err: 'other.json is there already: name a new file, or say --force to write over it.\n',
    };
    expect(await folder.run(['new', '--out', other])).toEqual(refused);
    expect(await folder.run(['set', file, ...SET, '60', '--out', other])).toEqual(refused);
    expect(await folder.run(['export', file, 'Beds', '--out', other])).toEqual(refused);
    expect(folder.text('other.json')).toBe('mine');
    expect((await folder.run(['export', file, 'Beds', '--out', other, '--force'])).status).toBe(0);
    expect(folder.text('other.json')).toContain('North 1');
    expect((await folder.run(['set', file, ...SET, '60', '--out', other, '--force'])).status).toBe(0);
    expect(folder.text('other.json')).toContain('[60, "ft", true]');
    expect(folder.names()).toEqual(['farm.json', 'other.json']);
  });

  test('the workbook itself is no place for a table, whatever is forced and however it is named', async () => {
    const file = folder.farm();
    const before = folder.text('farm.json');
    symlinkSync(file, folder.file('link.csv'));
    for (const name of [file, folder.file('link.csv'), folder.file(`../${folder.path.split('/').at(-1)}/farm.json`)]) {
      const { status, err } = await folder.run(['export', file, 'Beds', '--out', name, '--force']);
      expect(status).toBe(2);
      expect(err).toMatch(/is the workbook itself: name another file\.\n$/);
    }
    expect(folder.text('farm.json')).toBe(before);
  });

  test('devices and folders are no files, even by force', async () => {
    const file = folder.farm();
    mkdirSync(folder.file('sub'));
    expect((await folder.run(['export', file, 'Beds', '--out', '/dev/null', '--force'])).err).toBe(
      '/dev/null is a device or a pipe, not a file: name a file, or - for standard streams.\n',
    );
    expect((await folder.run(['set', file, ...SET, '60', '--out', folder.file('sub'), '--force'])).err).toBe(
      'sub is a folder: name a file in it.\n',
    );
    expect((await folder.run(['tables', '/dev/zero'])).err).toBe(
      '/dev/zero is a device or a pipe, not a file: name a file, or - for standard streams.\n',
    );
  });

  test('a file that could not be read whole is not written over; elsewhere or by force it is', async () => {
    const file = folder.farm();
    const whole = folder.text('farm.json');
    const damaged = whole.replace(/"[^"]+"(, "[^"]*", "North 1")/, '"no id"$1');
    writeFileSync(file, damaged);
    const set = ['set', file, 'Beds', 'North 2', 'Length', '60'];
    const refused = await folder.run(set);
    expect(refused.status).toBe(2);
    expect(refused.err).toMatch(/Row 1 of “beds” has no id that can be used; it was left out\./);
    expect(refused.err).toMatch(/written over, it would lose what could not be read .* nothing was written\./);
    expect(folder.text('farm.json')).toBe(damaged);
    expect((await folder.run(['check', file])).err).toMatch(/it was left out/);
    expect((await folder.run([...set, '--out', folder.file('other.json')])).status).toBe(0);
    expect((await folder.run([...set, '--force'])).status).toBe(0);
    expect(folder.text('farm.json')).toBe(folder.text('other.json'));
  });

  test('a file that something else changes while a command runs stays as that left it', async () => {
    const file = folder.farm();
    const changed = {
      status: 2,
      out: '',
      err: 'farm.json was changed by something else meanwhile: nothing was written. Run the command again.\n',
    };
    const running = folder.run(['import', file, 'Beds', folder.put('rows.csv', 'Bed,Length\nSouth 1,20\n')], [], () =>
      writeFileSync(file, 'another’s'),
    );
    expect(await running).toEqual(changed);
    expect(folder.text('farm.json')).toBe('another’s');
    expect(folder.names()).toEqual(['farm.json', 'rows.csv']);
  });
});

describe('two commands at once', () => {
  test('are done one after the other, and none is lost', async () => {
    const file = folder.farm();
    const lengths = Array.from({ length: 12 }, (_, i) => 100 + i);
    const beds = await Promise.all(
      lengths.map((length, i) =>
        folder.run(['import', file, 'Beds', folder.put(`rows-${i}.csv`, `Bed,Length\nBed ${i},${length}\n`)]),
      ),
    );
    expect(beds.map(({ status }) => status)).toEqual(lengths.map(() => 0));
    const { out } = await folder.run(['eval', 'SUM(Beds[Length])', '--in', file]);
    expect(out).toBe(`${(lengths.reduce((sum, one) => sum + one, 0) + 50 + 12 / 0.3048).toFixed(2)} ft\n`);
    expect(folder.names().filter((name) => name.startsWith('.'))).toEqual([]);
  });

  test('the lock and the unfinished file of a process that is gone are taken away', async () => {
    const file = folder.farm();
    const gone = 2 ** 22 + 1;
    folder.put('.farm.json.lock', `${gone} ${hostname()}\n`);
    folder.put(`.farm.json.${gone}-0123456789ab.new`, 'half');
    expect((await folder.run(['set', file, ...SET, '60'])).status).toBe(0);
    expect(folder.names()).toEqual(['farm.json']);
  });

  test('so is a lock that was left before it was signed', async () => {
    const file = folder.farm();
    const lock = folder.put('.farm.json.lock', '');
    utimesSync(lock, 0, 0);
    expect((await folder.run(['set', file, ...SET, '60'])).status).toBe(0);
    expect(folder.names()).toEqual(['farm.json']);
  });
});

describe('trials and streams', () => {
  test('--dry-run says what would be and writes nothing', async () => {
    const file = folder.farm();
    const before = folder.text('farm.json');
    expect(await folder.run(['set', file, ...SET, '60', '--dry-run', '--journal'])).toEqual({
      status: 0,
      out: 'Beds / North 1 / Length: 60 ft\nNothing was written: this was a trial.\n',
      err: '',
    });
    expect((await folder.run(['export', file, 'Beds', '--out', folder.file('b.csv'), '--dry-run'])).out).toBe(
      `${folder.file('b.csv')} would hold 2 rows of Beds. Nothing was written: this was a trial.\n`,
    );
    await folder.run(['new', '--out', folder.file('n.json'), '--dry-run']);
    expect(folder.names()).toEqual(['farm.json']);
    expect(folder.text('farm.json')).toBe(before);
  });

  test('- is standard input and output, and what a change says then goes to standard error', async () => {
    const text = readFileSync(folder.farm(), 'utf8');
    const { status, out, err } = await folder.run(['set', '-', ...SET, '60'], [text]);
    expect([status, err]).toEqual([0, 'Beds / North 1 / Length: 60 ft\n']);
    expect(out).toBe(text.replace('[50, "ft", true]', '[60, "ft", true]'));
    const rows = await folder.run(
      ['import', folder.file('farm.json'), 'Beds', '-', '--out', '-'],
      ['Bed,Length', 'South 1,20'],
    );
    expect(rows.err).toBe('Beds: 1 added, 0 updated.\n');
    expect(rows.out).toContain('South 1');
    expect((await folder.run(['tables', '-'], [text])).status).toBe(0);
    expect((await folder.run(['tables', '-'], ['Bed,Length'])).err).toBe(
      'Standard input: This is not a Dibble workbook: a workbook file begins with {. Choose another file.\n',
    );
    expect((await folder.run(['import', '-', 'Beds', '-'])).err).toBe(
      "Workbook and rows can't both come from standard input: name a file for one of them.\n",
    );
  });
});

describe('rows from files of other kinds', () => {
  test('the good ones may be taken, and the others are told', async () => {
    const file = folder.farm();
    const csv = folder.put('rows.csv', 'Bed,Length\nSouth 1,20\nSouth 2,many\n');
    expect(await folder.run(['import', file, 'Beds', csv, '--good-rows'])).toEqual({
      status: 1,
      out: 'Beds: 1 added, 0 updated, 1 not taken.\n',
      err: 'rows.csv: Line 3, Length: "many" isn\'t a length: this column wants a length, such as 8 ft.\n',
    });
  });

  test('columns, letters and marks are as the command says', async () => {
    const file = folder.farm();
    const csv = folder.put('rows.csv', Buffer.from('Name;Lang (m);Notiz\nG\u00e4rten;2,5;x\n', 'latin1'));
    const words = ['import', file, 'Beds', csv, '--columns', 'Name=Bed; Lang (m)=Length; Notiz='];
    expect((await folder.run([...words, '--encoding', 'utf-8'])).err).toBe(
      'rows.csv: Line 2 isn’t UTF-8: choose the encoding that the file was saved in.\n',
    );
    expect((await folder.run(words)).out).toBe(
      "Beds: 1 added, 0 updated.\nThe file doesn't say how its letters are encoded; it is read as Windows-1252 (western Europe, older programs).\n",
    );
    expect((await folder.run(['table', file, 'Beds'])).out).toMatch(/Gärten +2\.5 m/);
  });

  test('of a spreadsheet the sheet wanted alone is unpacked, so that a large one beside it is no hindrance', async () => {
    const file = folder.farm();
    await folder.run(['export', file, '--out', folder.file('all.xlsx')]);
    const parts = unzipSync(readFileSync(folder.file('all.xlsx')));
    const book = new TextDecoder().decode(parts['xl/workbook.xml']);
    const number = (sheet: string): string =>
      new RegExp(`<sheet [^>]*sheetId="(\\d+)" name="${sheet}"`).exec(book)?.[1] ?? 'none';
    const swollen = (part: string): string => {
      expect(Object.keys(parts)).toContain(part);
      // Spaces, which unpack to 60 MB out of a small file.
      return folder.put(
        'swollen.xlsx',
        zipSync({ ...parts, [part]: new Uint8Array(60_000_000).fill(32) }, { level: 1 }),
      );
    };
    const beside = swollen(`xl/worksheets/sheet${number('Sales')}.xml`);
    const taken = 'Beds: 0 added, 0 updated, 2 left as they were.\n';
    expect((await folder.run(['import', file, 'Beds', beside])).out).toContain(taken);
    expect((await folder.run(['import', file, 'Beds', beside, '--sheet', 'Beds'])).out).toContain(taken);
    for (const part of [`xl/worksheets/sheet${number('Beds')}.xml`, 'xl/sharedStrings.xml', 'xl/workbook.xml'])
      expect((await folder.run(['import', file, 'Beds', swollen(part)])).err).toContain('more than 50 MB');
  });

  test('a spreadsheet goes out and comes in, and a file of another kind is named', async () => {
    const file = folder.farm();
    const before = folder.text('farm.json');
    const xlsx = folder.file('all.xlsx');
    expect(await folder.run(['export', file, '--out', xlsx])).toEqual({
      status: 0,
      out: `Wrote ${xlsx}: 5 tables.\n`,
      err: '',
    });
    expect((await folder.run(['import', file, 'Beds', xlsx])).out).toMatch(
      /^Beds: 0 added, 0 updated, 2 left as they were\.\n/,
    );
    expect(folder.text('farm.json')).toBe(before);
    expect((await folder.run(['import', file, 'Beds', xlsx, '--sheet', 'Sales'])).err).toMatch(/Income/);
    expect((await folder.run(['tables', xlsx])).err).toBe(
      'all.xlsx: This is a spreadsheet (XLSX), and no workbook of Dibble: import its rows into a sheet.\n',
    );
    expect((await folder.run(['import', file, 'Beds', file])).err).toBe(
      'farm.json: This is a workbook, or another file that begins with {, and no table: a workbook is opened, not imported.\n',
    );
    expect((await folder.run(['import', file, 'Beds', folder.put('a.pdf', '%PDF-1.7')])).err).toBe(
      'a.pdf: This is a PDF, and no table. A table inside a PDF can’t be taken over; ask for it as CSV or XLSX.\n',
    );
    expect((await folder.run(['export', file, '--format', 'csv'])).err).toBe(
      'A CSV file holds one table: name it after the workbook.\n',
    );
    expect((await folder.run(['export', file, '--format', 'xlx'])).err).toBe(
      'There is no format “xlx”: did you mean xlsx?\n',
    );
  });
});

describe('a journal', () => {
  test('takes changes back in later runs, and knows when something else has changed the file', async () => {
    const file = folder.farm();
    const states = [folder.text('farm.json')];
    for (const length of ['60', '70']) {
      await folder.run(['set', file, ...SET, length, '--journal']);
      states.push(folder.text('farm.json'));
    }
    await folder.run(['import', file, 'Beds', folder.put('rows.csv', 'Bed,Length\nSouth 1,20\n'), '--journal']);
    expect((await folder.run(['journal', file])).out).toBe(
      '1970-01-01 00:00  Length: 60\n1970-01-01 00:00  Length: 70\n1970-01-01 00:00  Import into Beds\n',
    );
    expect((await folder.run(['undo', file])).out).toBe('Taken back: Import into Beds\n');
    expect(folder.text('farm.json')).toBe(states[2]);
    expect((await folder.run(['undo', file, '--out', folder.file('old.json')])).status).toBe(0);
    expect(folder.text('old.json')).toBe(states[1]);
    expect(folder.text('farm.json')).toBe(states[2]);
    const back = ['undo', file, '--out', folder.file('older.json'), '--steps'];
    expect((await folder.run([...back, '2'])).out).toBe('Taken back: Length: 70\nTaken back: Length: 60\n');
    expect(folder.text('older.json')).toBe(states[0]);
    expect((await folder.run([...back, '3', '--force'])).err).toBe(
      'farm.json: its journal holds nothing that can be taken back behind the last 2.\n',
    );
    expect((await folder.run([...back, 'x'])).err).toBe('--steps takes a whole number such as 3, not “x”.\n');
    expect((await folder.run(['undo', file, '--steps', '2'])).err).toBe(
      '--steps goes with --out: the file as it was so many changes ago is written elsewhere.\n',
    );
    await folder.run(['undo', file]);
    await folder.run(['undo', file]);
    expect(folder.text('farm.json')).toBe(states[0]);
    expect((await folder.run(['undo', file])).err).toBe(
      'farm.json: its journal holds nothing that can be taken back.\n',
    );
    expect((await folder.run(['journal', file])).out).toMatch(/Import into Beds \(taken back\)\n.*Taken back: Import/);
    await folder.run(['set', file, ...SET, '80']);
    expect((await folder.run(['undo', file])).err).toBe(
      'farm.json: its journal holds nothing that can be taken back.\n',
    );
  });

  test('a line that a killed process left unfinished, and a change that it never wrote, are passed over', async () => {
    const file = folder.farm();
    const before = folder.text('farm.json');
    await folder.run(['set', file, ...SET, '60', '--journal']);
    const after = folder.text('farm.json');
    await folder.run(['set', file, ...SET, '70', '--journal']);
    writeFileSync(file, after);
    writeFileSync(`${file}.journal`, `${folder.text('farm.json.journal')}{"before":"x","aft`);
    await folder.run(['set', file, ...SET, '75', '--journal']);
    expect((await folder.run(['journal', file])).out).toBe(
      '1970-01-01 00:00  Length: 60\n1970-01-01 00:00  Length: 75\n',
    );
    await folder.run(['undo', file]);
    await folder.run(['undo', file]);
    expect(folder.text('farm.json')).toBe(before);
  });
});

describe('upgrade', () => {
  test('shows what today’s sheets would change and takes it when asked', async () => {
    const file = folder.put('demo.json', readFileSync(new URL('../fixtures/version-1/demo.json', import.meta.url)));
    const before = folder.text('demo.json');
    const shown = await folder.run(['upgrade', file]);
    expect(shown.status).toBe(0);
    expect(shown.out).toMatch(/\nNothing was changed; --take takes it\.\n$/);
    expect(folder.text('demo.json')).toBe(before);
    const taken = await folder.run(['upgrade', file, '--take']);
    expect(taken.out).toBe(shown.out.replace('Nothing was changed; --take takes it.', 'The sheets are up to date.'));
    expect((await folder.run(['upgrade', file])).out).toBe('The sheets are up to date.\n');
  });
});
