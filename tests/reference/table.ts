// Reads the published tables beside this file (tests/reference/data/*.csv) for checks and tests.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';

export type Row = Readonly<Record<string, string>>;

/** The rows of data/NAME.csv by their headers. */
export function readTable(name: string): readonly Row[] {
  const text = readFileSync(join(import.meta.dirname, 'data', `${name}.csv`), 'utf8');
  return Papa.parse<Row>(text, { header: true, skipEmptyLines: true }).data;
}

/** A cell of a row; a header that the table lacks is a fault of the check. */
export function textOf(row: Row, header: string): string {
  const text = row[header];
  if (text === undefined) throw new Error(`the table has no column ${header}`);
  return text;
}

/** A cell as a number; blank is NaN. */
export function numberOf(row: Row, header: string): number {
  const text = textOf(row, header);
  return text === '' ? Number.NaN : Number(text);
}

/** What a row says of itself being off: its columns off_up_to and why; nothing where they are blank. */
export function offOf(row: Row): { off?: { upTo: number; why: string } } {
  const upTo = numberOf(row, 'off_up_to');
  return Number.isNaN(upTo) ? {} : { off: { upTo, why: textOf(row, 'why') } };
}
