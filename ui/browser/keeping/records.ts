// What the browser's database holds of the workbooks kept here, and the name and version under which it is opened. storage.ts
// opens it; each store has one file beside this one that writes to it.

import type { DBSchema } from 'idb';
import type { Message } from '../../../engine/index.ts';

export const DATABASE = 'dibble workbooks';
export const DATABASE_VERSION = 1;

/** Where a workbook lies: at hand, put by for another year, or taken out and to be forgotten in a while. */
export type Lying = 'at hand' | 'put by' | 'taken out';

/** The file of a person's own that a workbook was read from or last saved to. */
export interface OwnFile {
  readonly name: string;
  /** When it held what the workbook held, in milliseconds since 1970. */
  readonly at: number;
  /** What tells its content from any other. */
  readonly sum: number;
  /** The file's own time of its last change then, where it could be asked. */
  readonly modified?: number;
  /** Where the browser lets the page write to it again. */
  readonly handle?: FileSystemFileHandle;
}

export interface WorkbookRecord {
  readonly id: string;
  readonly title: string;
  readonly begun: number;
  /** When it was last opened or worked in. */
  readonly worked: number;
  readonly lying: Lying;
  /** Since when it lies there. */
  readonly since: number;
  readonly file?: OwnFile;
  /** When the person was last reminded that the file is behind. */
  readonly reminded?: number;
}

/** A whole workbook as of a change, as the text of a workbook file. */
export interface SnapshotRecord {
  readonly workbook: string;
  readonly through: number;
  /** The seal of the change through which it goes. */
  readonly sum: number;
  readonly text: string;
  /** What tells the text from any other: one that was changed behind our back is found. */
  readonly check: number;
  readonly at: number;
}

/** One change after another: a step as JSON; '' where a tab took its turn at writing and changed nothing. */
export interface JournalRecord {
  readonly workbook: string;
  readonly seq: number;
  /** The seal of the one before. */
  readonly before: number;
  /** The seal of this one: what its text, its number and the seal before come to. */
  readonly sum: number;
  readonly text: string;
}

/** Why a version was kept. */
export type VersionKind =
  | 'opened'
  | 'day'
  | 'import'
  | 'upgrade'
  | 'restore'
  | 'branch'
  | 'other'
  /** By hand, with a name. */
  | 'named'
  /** What could not be opened, as it was found. */
  | 'set aside';

export interface VersionRecord {
  readonly id: string;
  readonly workbook: string;
  readonly kind: VersionKind;
  readonly at: number;
  /** The last change that is in it. */
  readonly through: number;
  /** That change's seal. */
  readonly sum: number;
  readonly name?: string;
  /** How many changes lie between it and the version before, and what the latest of them were. */
  readonly changes: number;
  readonly said: readonly Message[];
  /** Letters of its text. */
  readonly size: number;
}

/** What was in hand: the sheet and the cell, and whether the sheet was on screen. */
export interface HandRecord {
  readonly workbook: string;
  readonly onScreen: boolean;
  readonly sheet: string;
  readonly row?: string;
  readonly column?: string;
}

export interface Stores extends DBSchema {
  workbooks: { key: string; value: WorkbookRecord };
  snapshots: { key: string; value: SnapshotRecord };
  journal: { key: [workbook: string, seq: number]; value: JournalRecord };
  versions: { key: string; value: VersionRecord; indexes: { workbook: string } };
  /** Texts of versions, apart from what is told of them in the list. */
  texts: { key: string; value: { readonly id: string; readonly text: string } };
  hands: { key: string; value: HandRecord };
  /** Single words: which workbook was last opened, whether the copies of the first Dibble were taken over. */
  marks: { key: string; value: { readonly name: string; readonly value: string } };
}

export type StoreName = 'workbooks' | 'snapshots' | 'journal' | 'versions' | 'texts' | 'hands' | 'marks';
