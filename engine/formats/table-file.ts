// What a table is once its file is read: a header and records of plain texts, whatever the file was. A format gives one
// (format.ts), the import of rows takes it (rows-import.ts).

import type { CsvRecord, Delimiter } from './csv.ts';
import type { Encoding } from './text-encoding.ts';

/** How a person wants a file read, where they say so; the rest is told by the file. */
export interface ReadingChoices {
  readonly encoding?: Encoding;
  readonly delimiter?: Delimiter;
  /** Which of several tables in the file. */
  readonly table?: string;
}

export interface TableFile {
  readonly ok: true;
  /** Names of the tables in the file; one, and nameless, in a text. */
  readonly tables: readonly string[];
  readonly table: string;
  readonly header: CsvRecord;
  readonly records: readonly CsvRecord[];
  /** Of texts: how they were read. */
  readonly text?: {
    readonly encoding: Encoding;
    /** The bytes left no doubt. */
    readonly sure: boolean;
    readonly delimiter: Delimiter;
  };
  /** What a person should know of the reading, a sentence each. */
  readonly notes: readonly string[];
}

export interface TableFailure {
  readonly ok: false;
  /** A whole sentence, with its line where it has one. */
  readonly why: string;
  readonly line?: number;
}

export type TableRead = TableFile | TableFailure;
