// What the page and the worker that reads a file tell each other. Plain data.

import type {
  Command,
  DocumentData,
  MatchedColumn,
  MatchingChoices,
  ReadingChoices,
  RefusedRow,
  TableFile,
  TakenRow,
} from '../../../engine/index.ts';

export interface Choices extends ReadingChoices, MatchingChoices {}

/** Every question about how a file is understood has a number, and the answers to earlier ones are passed over. */
export type Asked =
  /** A file and the workbook it is meant for, as it is now. */
  | {
      readonly ask: 'read';
      readonly turn: number;
      readonly bytes: Uint8Array;
      readonly data: DocumentData;
      readonly sheet: string;
      readonly choices: Choices;
    }
  /** The same file, understood another way. */
  | { readonly ask: 'again'; readonly turn: number; readonly choices: Choices }
  /** What is to be done for the rows that can be taken. */
  | { readonly ask: 'take' };

/** How the file was read, for a person to look at and change. */
export interface Reading {
  readonly tables: readonly string[];
  readonly table: string;
  readonly text: TableFile['text'];
  readonly rows: number;
  readonly columns: readonly MatchedColumn[];
  readonly decimal: 'point' | 'comma' | undefined;
}

export interface Preview {
  readonly added: number;
  readonly updated: number;
  readonly unchanged: number;
  readonly refused: number;
  readonly faults: readonly RefusedRow[];
  readonly taken: readonly TakenRow[];
  readonly notes: readonly string[];
}

export type Told =
  | { readonly told: 'progress'; readonly turn: number; readonly done: number; readonly of: number }
  | { readonly told: 'preview'; readonly turn: number; readonly reading: Reading; readonly preview: Preview }
  /** It can't be taken as it is read; `reading` where it could be read at all. */
  | { readonly told: 'failed'; readonly turn: number; readonly why: string; readonly reading: Reading | undefined }
  /** Some of the commands: to take over many thousand rows in one message would hold the page up. */
  | { readonly told: 'commands'; readonly commands: readonly Command[] }
  /** All commands are there. `generalUnits`: units of the general list stand in them, which the page has to fetch first. */
  | { readonly told: 'all commands'; readonly generalUnits: boolean };
