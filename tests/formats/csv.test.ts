import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { guarded, parseCsv, unguarded, writeCsv } from '../../engine/formats/csv.ts';
import { splitCsv } from '../../ui/csv-splitter.ts';

const field = fc
  .array(
    fc.oneof(
      fc.constantFrom('"', ',', ';', '\t', '\n', "'", '=', '+', '-', '@', ' ', 'a', '8', 'é', '＝'),
      fc.string({ maxLength: 3 }),
    ),
  )
  .map((parts) => parts.join('').replace(/\r/g, '').trim());

describe('records to text and back', () => {
  test.each([',', ';', '\t'] as const)('with %j between fields', (delimiter) => {
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 5 })
          .chain((width) => fc.array(fc.array(field, { minLength: width, maxLength: width }))),
        (records) => {
          const parsed = parseCsv(writeCsv(records, delimiter), delimiter, splitCsv);
          const kept = records.filter((record) => record.some((one) => one !== ''));
          expect(parsed.ok && parsed.records.map((record) => record.fields)).toEqual(kept);
        },
      ),
    );
  });

  test('each record begins on the line that it says', () => {
    fc.assert(
      fc.property(fc.array(fc.array(field, { minLength: 2, maxLength: 2 })), (records) => {
        const text = writeCsv(records).replaceAll('\r\n', '\n');
        const parsed = parseCsv(text, ',', splitCsv);
        if (!parsed.ok) throw new Error(parsed.why);
        for (const { line, fields } of parsed.records) {
          const rest = parseCsv(
            text
              .split('\n')
              .slice(line - 1)
              .join('\n'),
            ',',
            splitCsv,
          );
          expect(rest.ok && rest.records[0]?.fields).toEqual(fields);
        }
      }),
    );
  });

  test('as RFC 4180 has it: CRLF, quotes doubled, no quotes where none are needed', () => {
    expect(
      writeCsv([
        ['Bed', 'Length (ft)'],
        ['a "b"', '1,5'],
        ['', 'two\nlines'],
      ]),
    ).toBe('Bed,Length (ft)\r\n"a ""b""","1,5"\r\n,"two\nlines"\r\n');
  });

  test.each([
    ['a,b\n1,"2\n3,4\n', 2],
    ['a,b\n1,2\n"x"y,4\n', 3],
    ['a,b\n"two\nlines",1\n2,"open\n', 4],
  ])('%j has a broken quote in line %i', (text, line) => {
    expect(parseCsv(text, ',', splitCsv)).toEqual({
      ok: false,
      line,
      why: `Line ${line} has a quotation mark that doesn't close where its field ends: close it, or double it where it belongs to the text.`,
    });
  });

  test('line breaks of any kind, a byte order mark and empty lines', () => {
    const records = [
      { line: 1, fields: ['a', 'b'] },
      { line: 3, fields: ['1', '8"'] },
    ];
    for (const end of ['\n', '\r\n', '\r']) {
      expect(parseCsv(`\uFEFFa , b${end}${end} 1,8"${end},${end}`, ',', splitCsv)).toEqual({ ok: true, records });
    }
  });
});

describe('texts that a spreadsheet would take for formulas (OWASP, CSV Injection)', () => {
  test('none is left bare, and every text comes back', () => {
    fc.assert(
      fc.property(field, (text) => {
        expect(guarded(text)).not.toMatch(/^[=+\-@\t\r\n＝＋－＠]/);
        expect(unguarded(guarded(text))).toBe(text);
      }),
      { numRuns: 2000 },
    );
  });

  test.each([
    ['=1+1', "'=1+1"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ["'=x", "''=x"],
    ["'tis", "'tis"],
    ['plain', 'plain'],
  ])('%s stands as %s', (text, field) => {
    expect(guarded(text)).toBe(field);
  });
});
