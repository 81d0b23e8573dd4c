// CSV as text: records to RFC 4180 and back, the guard against formulas hidden in texts, and which lines records stand on.
// Knows no tables; csv-export.ts and csv-import.ts do.

export type Delimiter = ',' | ';' | '\t';

/**
 * Cuts a text into records of fields as RFC 4180 has them, at most `most` of them; `broken` are the places, among the records, of
 * those with a quotation mark that doesn't close. The faces hand one in, so that the engine needs no library for it.
 */
export type CsvSplitter = (
  text: string,
  delimiter: Delimiter,
  most?: number,
) => { readonly records: readonly (readonly string[])[]; readonly broken: readonly number[] };

export interface CsvRecord {
  /** Line of the file on which the record begins, from 1. */
  readonly line: number;
  /** Without blanks around them. */
  readonly fields: readonly string[];
}

export type CsvParsed =
  | { readonly ok: true; readonly records: readonly CsvRecord[] }
  | { readonly ok: false; readonly why: string; readonly line: number };

/** Records as CSV with CRLF after each; fields are quoted where they must be. */
export function writeCsv(records: readonly (readonly string[])[], delimiter: Delimiter = ','): string {
  const special = [delimiter, '"', '\r', '\n'];
  const mustQuote = (field: string): boolean => field !== field.trim() || special.some((one) => field.includes(one));
  const quote = (field: string, alone: boolean): string =>
    // An empty field alone on its line would read as an empty line.
    mustQuote(field) || (alone && field === '') ? `"${field.replaceAll('"', '""')}"` : field;
  return records
    .map((record) => `${record.map((field) => quote(field, record.length === 1)).join(delimiter)}\r\n`)
    .join('');
}

/** Every record of a CSV text, empty ones left out; line breaks of any kind. A broken quote is named with its line. */
export function parseCsv(text: string, delimiter: Delimiter, split: CsvSplitter): CsvParsed {
  const { records: data, broken } = split(plainLines(text), delimiter);
  const records: CsvRecord[] = [];
  const firstBroken = broken.reduce((first, one) => Math.min(first, one), Number.POSITIVE_INFINITY);
  let line = 1;
  for (const [index, fields] of data.entries()) {
    if (index === firstBroken) {
      return {
        ok: false,
        line,
        why: `Line ${line} has a quotation mark that doesn't close where its field ends: close it, or double it where it belongs to the text.`,
      };
    }
    const trimmed = fields.map((field) => field.trim());
    if (trimmed.some((field) => field !== '')) records.push({ line, fields: trimmed });
    line += 1;
    for (const field of fields) line += breaksIn(field);
  }
  return { ok: true, records };
}

function breaksIn(field: string): number {
  let count = 0;
  for (let at = field.indexOf('\n'); at >= 0; at = field.indexOf('\n', at + 1)) count += 1;
  return count;
}

/** The first record is looked for within so many letters. */
const FIRST_RECORD = 65_536;

/** The first record under a delimiter; undefined where there is none or its quotes are broken. */
export function firstRecord(text: string, delimiter: Delimiter, split: CsvSplitter): readonly string[] | undefined {
  const { records, broken } = split(plainLines(text.slice(0, FIRST_RECORD)).trimStart(), delimiter, 1);
  return broken.length > 0 ? undefined : records[0]?.map((field) => field.trim());
}

/** Without a byte order mark, and with one kind of line break. */
function plainLines(text: string): string {
  return text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
}

/**
 * A text that a spreadsheet would take for a formula gets an apostrophe in front (OWASP, "CSV Injection"), and so does one
 * that begins with apostrophes before such a sign, so that unguarded() gives every text back.
 */
export function guarded(text: string): string {
  return /^'*[=+\-@\t\r\n＝＋－＠]/.test(text) ? `'${text}` : text;
}

export function unguarded(text: string): string {
  return /^'+[=+\-@\t\r\n＝＋－＠]/.test(text) ? text.slice(1) : text;
}
