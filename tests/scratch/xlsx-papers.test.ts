// Spreadsheet files as scratch papers: their formulas where they stand, shared ones moved, figures, days and texts elsewhere.

import { strToU8, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { readPapers } from '../../ui/browser/scratch/xlsx-papers.ts';
import { Desk } from './paper.ts';

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const RELATIONS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

/** A file with two sheets, as spreadsheet programs write them (ECMA-376). */
function file(first: string, second: string, names = ''): Uint8Array {
  const sheet = (rows: string): string =>
    `${HEAD}<worksheet xmlns="${MAIN}"><sheetData>${rows}</sheetData></worksheet>`;
  const relation = (id: number, type: string, target: string): string =>
    `<Relationship Id="rId${id}" Type="${RELATIONS}/${type}" Target="${target}"/>`;
  const parts = {
    '[Content_Types].xml': `${HEAD}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/></Types>`,
    '_rels/.rels': `${HEAD}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${relation(1, 'officeDocument', 'xl/workbook.xml')}</Relationships>`,
    'xl/workbook.xml': `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheets><sheet name="Beds &amp; more" sheetId="1" r:id="rId1"/><sheet name="Costs" sheetId="2" r:id="rId2"/></sheets>${names}</workbook>`,
    'xl/_rels/workbook.xml.rels': `${HEAD}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${relation(1, 'worksheet', 'worksheets/sheet1.xml')}${relation(2, 'worksheet', 'worksheets/sheet2.xml')}${relation(3, 'styles', 'styles.xml')}</Relationships>`,
    'xl/styles.xml': `${HEAD}<styleSheet xmlns="${MAIN}"><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs></styleSheet>`,
    'xl/worksheets/sheet1.xml': sheet(first),
    'xl/worksheets/sheet2.xml': sheet(second),
  };
  return zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])));
}

const text = (cell: string, said: string): string => `<c r="${cell}" t="inlineStr"><is><t>${said}</t></is></c>`;

test('formulas, shared ones too, figures, days and texts come to their places', async () => {
  const read = await readPapers(
    file(
      `<row r="2">${text('B2', 'Bed')}${text('C2', '007')}<c r="D2" s="1"><v>46461</v></c></row>` +
        '<row r="3"><c r="B3"><v>4</v></c><c r="C3"><f t="shared" ref="C3:C5" si="0">B3*$B$3</f><v>16</v></c></row>' +
        '<row r="4"><c r="B4"><v>5</v></c><c r="C4"><f t="shared" si="0"/><v>20</v></c></row>' +
        '<row r="5"><c r="B5" t="b"><v>1</v></c><c r="C5"><f>IF(B4&gt;4,&quot;a&amp;b&quot;,_xlfn.CONCAT(B2,B3))</f><v>0</v></c></row>',
      `<row r="1"><c r="A1"><f>SUM('Beds &amp; more'!C3:C4)</f><v>36</v></c></row>`,
    ),
  );
  expect(read).toEqual({
    ok: true,
    leftOff: 0,
    namesLeft: [],
    sheets: [
      {
        name: 'Beds & more',
        cells: {
          B2: 'Bed',
          C2: "'007",
          D2: '2027-03-15',
          B3: '4',
          C3: '=B3*$B$3',
          B4: '5',
          C4: '=B4*$B$3',
          B5: 'TRUE',
          C5: '=IF(B4>4,"a&b",CONCAT(B2,B3))',
        },
      },
      { name: 'Costs', cells: { A1: "=SUM('Beds & more'!C3:C4)" } },
    ],
  });
  if (!read.ok) return;
  const desk = new Desk();
  for (const [i, { name, cells }] of read.sheets.entries())
    desk.do({ command: 'add paper', paper: `x${i}`, name }, { command: 'type on paper', paper: `x${i}`, cells });
  expect(['C3', 'C4', 'C5', 'D2', 'C2', 'B5'].map((cell) => desk.text(cell, 'x0'))).toEqual([
    '16',
    '20',
    'a&b',
    '15 Mar 2027',
    '007',
    'yes',
  ]);
  expect(desk.text('A1', 'x1')).toBe('36');
  desk.room.destroy();
});

test('names given to cells, figures and formulas are put in their place, and faults stay faults', async () => {
  const formula = (cell: string, said: string): string => `<c r="${cell}"><f>${said}</f><v>0</v></c>`;
  const name = (called: string, stands: string, more = ''): string =>
    `<definedName name="${called}"${more}>${stands}</definedName>`;
  const read = await readPapers(
    file(
      `<row r="1">${formula('A1', 'B2*vat')}${formula('B1', 'VLOOKUP(3,prices,2,FALSE)+Costs!Fee')}${formula('C1', 'Gross')}</row>` +
        `<row r="2">${formula('A2', 'gone+elsewhere+further')}<c r="B2"><v>200</v></c>${formula('C2', 'beside*2')}</row>` +
        `<row r="3"><c r="A3" t="e"><v>#N/A</v></c>${formula('B3', 'IFERROR(A3,&quot;na&quot;)')}<c r="C3" t="e"><v>#NULL!</v></c></row>`,
      `<row r="1"><c r="A1"><v>3</v></c><c r="B1"><v>7.5</v></c></row><row r="2">${formula('A2', 'fee*2')}<c r="B2"><v>0.19</v></c></row>`,
      `<definedNames>${name('vat', 'Costs!$B$2')}${name('prices', 'Costs!$A$1:$B$1')}${name('fee', '2')}${name('fee', '5', ' localSheetId="1"')}${name('Gross', "'Beds &amp; more'!$B$2*(1+vat)")}${name('beside', "'Beds &amp; more'!XFD1")}${name('gone', '#REF!')}${name('elsewhere', '[1]Other!$A$1')}${name('further', "'[1]Another one'!$A$1")}${name('_xlnm.Print_Area', 'Costs!$A$1')}</definedNames>`,
    ),
  );
  if (!read.ok) throw new Error(read.why);
  expect(read.namesLeft).toEqual(['gone', 'elsewhere', 'further']);
  const [beds, costs] = read.sheets.map(({ cells }) => cells);
  expect(beds).toMatchObject({
    A1: '=B2*Costs!$B$2',
    B1: '=VLOOKUP(3,Costs!$A$1:$B$1,2,FALSE)+5',
    C1: "=('Beds & more'!$B$2*(1+Costs!$B$2))",
    A2: '=gone+elsewhere+further',
    A3: '#N/A',
    C3: '#VALUE!',
  });
  expect(costs).toMatchObject({ A2: '=5*2' });
  const desk = new Desk();
  for (const [i, { name: called, cells }] of read.sheets.entries()) {
    desk.do({ command: 'add paper', paper: `x${i}`, name: called });
    desk.do({ command: 'type on paper', paper: `x${i}`, cells });
  }
  expect(['A1', 'B1', 'C1', 'B3', 'A3'].map((cell) => desk.text(cell, 'x0'))).toEqual([
    '38',
    '12.5',
    '238',
    'na',
    '#N/A',
  ]);
  expect(desk.shown('A3', 'x0').is).toBe('fault');
  desk.room.destroy();
});

test('names that stand for many names that stand for many more end somewhere, and are told', async () => {
  const levels = Array.from({ length: 9 }, (_, at) => `n_${at}`);
  const defined = levels.map((called, at) => {
    const stands = at === 8 ? '1' : Array.from({ length: 60 }, () => `n_${at + 1}`).join('+');
    return `<definedName name="${called}">${stands}</definedName>`;
  });
  const cell = '<row r="1"><c r="A1"><f>n_0</f><v>0</v></c></row>';
  const read = await readPapers(file(cell, '', `<definedNames>${defined.join('')}</definedNames>`));
  if (!read.ok) throw new Error(read.why);
  expect(read.sheets[0]?.cells.A1).toBe('=n_0');
  expect(read.namesLeft).toEqual(['n_0']);
});

test('what is no spreadsheet is refused in a sentence', async () => {
  expect(await readPapers(strToU8('no zip'))).toMatchObject({ ok: false, why: expect.stringMatching(/\.$/) });
});
