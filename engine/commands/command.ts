// What a person may wish of a workbook, by ids. Each command is carried out by a file of
// its own beside this one; workbook.ts makes one transaction of those that are wished together.

import type { Content } from '../document/content.ts';
import type { DocumentData } from '../document/data.ts';
import type { Transaction } from '../document/transaction.ts';
import type {
  CheckDeclaration,
  RowSource,
  SheetDeclaration,
  TypeDeclaration,
  UnitSystem,
} from '../schema/declaration.ts';
import type { ColourRule, ViewDeclaration } from '../schema/views.ts';
import type { Draft } from './draft.ts';
import type { Refused } from './refusal.ts';

export type Command =
  /**
   * Types into a cell, as a person types: '6 in', '85%', '15 Mar'; '' clears. `plain`: written as formulas have it, a point
   * before decimals, whatever the locale.
   */
  | {
      readonly command: 'set cell';
      readonly sheet: string;
      readonly row: string;
      readonly column: string;
      readonly entry: string;
      readonly plain?: true;
    }
  /** Puts a content in a cell as it stands: what a drag or another program gives. */
  | {
      readonly command: 'put cell';
      readonly sheet: string;
      readonly row: string;
      readonly column: string;
      readonly content: Content;
    }
  /** Takes what was typed over a computed cell back to the formula. */
  | { readonly command: 'take back'; readonly sheet: string; readonly row: string; readonly column: string }
  /** A new row with entries by column, as typed; before the row named, else last. */
  | {
      readonly command: 'insert row';
      readonly sheet: string;
      readonly entries: Readonly<Record<string, string>>;
      readonly plain?: true;
      readonly before?: string | undefined;
    }
  /** New rows with contents as they stand, at the end of a sheet: what an import brings. */
  | {
      readonly command: 'put rows';
      readonly sheet: string;
      readonly columns: readonly string[];
      /** Each with the id it is to have, and contents in the order of the columns; null: nothing. */
      readonly rows: readonly { readonly row: string; readonly cells: readonly Content[] }[];
    }
  | {
      readonly command: 'remove rows';
      readonly sheet: string;
      readonly rows: readonly string[];
      /** What other rows name of them is kept aside until they are there again; else rows that are named can't be removed. */
      readonly linksAside?: true;
    }
  /** Moves rows together before another; undefined: to the end. */
  | {
      readonly command: 'move rows';
      readonly sheet: string;
      readonly rows: readonly string[];
      readonly before?: string | undefined;
    }
  /** Keeps a row that another's change brought back. */
  | { readonly command: 'keep row'; readonly sheet: string; readonly row: string }
  /** Replaces the formula of a computed or default column; null gives the template's back. */
  | {
      readonly command: 'set formula';
      readonly sheet: string;
      readonly column: string;
      readonly formula: string | null;
    }
  /** A computed column of one's own, whose type the formula gives. */
  | { readonly command: 'add formula'; readonly sheet: string; readonly name: string; readonly formula: string }
  /** An entered column of one's own. */
  | { readonly command: 'add column'; readonly sheet: string; readonly name: string; readonly type: TypeDeclaration }
  | { readonly command: 'remove column'; readonly sheet: string; readonly column: string }
  /** '' gives the template's name back. */
  | { readonly command: 'rename column'; readonly sheet: string; readonly column: string; readonly name: string }
  | { readonly command: 'move column'; readonly sheet: string; readonly column: string; readonly after: string | null }
  | { readonly command: 'add sheet'; readonly name: string; readonly about: string; readonly rows: RowSource }
  /** A sheet with all its columns and checks, formulas in kept form: what a file of sheets brings. */
  | { readonly command: 'put sheet'; readonly sheet: SheetDeclaration }
  | { readonly command: 'remove sheet'; readonly sheet: string }
  | { readonly command: 'rename sheet'; readonly sheet: string; readonly name: string }
  | { readonly command: 'move sheet'; readonly sheet: string; readonly after: string | null }
  /** A check of one's own, or another wording of a built-in one. */
  | { readonly command: 'set check'; readonly sheet: string; readonly check: CheckDeclaration }
  /** Takes an own check out, switches a built-in one off. */
  | { readonly command: 'remove check'; readonly sheet: string; readonly check: string }
  /** A view of one's own, or another form of one of the sheet's. */
  | { readonly command: 'set view'; readonly sheet: string; readonly view: ViewDeclaration }
  /** Takes an own view out, puts one of the sheet's away. */
  | { readonly command: 'remove view'; readonly sheet: string; readonly view: string }
  /** One of the sheet's views as it came. */
  | { readonly command: 'take view back'; readonly sheet: string; readonly view: string }
  | { readonly command: 'set colour'; readonly sheet: string; readonly rule: Omit<ColourRule, 'order'> }
  | { readonly command: 'remove colour'; readonly sheet: string; readonly rule: string }
  /** A note on a cell; '' takes it off. */
  | {
      readonly command: 'set note';
      readonly sheet: string;
      readonly row: string;
      readonly column: string;
      readonly note: string;
    }
  /** The locale in which figures and days are read and shown; null: that of the machine. */
  | { readonly command: 'set locale'; readonly locale: string | null }
  | { readonly command: 'set units'; readonly units: UnitSystem }
  | { readonly command: 'set today'; readonly today: number }
  | { readonly command: 'set title'; readonly title: string }
  /** A branch of no changes yet, under a name of its own. */
  | { readonly command: 'add branch'; readonly branch: string; readonly name: string }
  | { readonly command: 'rename branch'; readonly branch: string; readonly name: string }
  /** Throws a branch away. */
  | { readonly command: 'remove branch'; readonly branch: string }
  /** What leads to a branch, after work in it. */
  | { readonly command: 'change branch'; readonly branch: string; readonly changes: readonly Transaction[] }
  /**
   * Does changes of a branch to the workbook itself, with those of the branch that they rest on; they leave the branch.
   * undefined: all of them, and the branch goes.
   */
  | { readonly command: 'take over'; readonly branch: string; readonly changes: readonly string[] | undefined }
  /** A scratch paper, blank, under a name of its own. */
  | { readonly command: 'add paper'; readonly paper: string; readonly name: string }
  | { readonly command: 'rename paper'; readonly paper: string; readonly name: string }
  /** Throws a scratch paper away. */
  | { readonly command: 'remove paper'; readonly paper: string }
  /** Types into cells of a scratch paper, by address ('B2'); '' clears. */
  | {
      readonly command: 'type on paper';
      readonly paper: string;
      readonly cells: Readonly<Record<string, string>>;
    }
  /**
   * Makes the workbook hold what it held at another time, in as many operations as it differs by; the day stays today. restore.ts
   * makes it and gives the hand for it, so that a page fetches both with its versions.
   */
  | {
      readonly command: 'restore';
      readonly data: DocumentData;
      readonly hand: (data: DocumentData, draft: Draft) => Refused;
    }
  /** Takes another version of the template into use. */
  | { readonly command: 'use template'; readonly version: number };

export type CommandOf<K extends Command['command']> = Extract<Command, { readonly command: K }>;
