// What a workbook file must look like inside, as shapes. Rows stand as lists, their columns named once a sheet, so that a
// season stays small; contents say by themselves what they are.

import { type ChangedData, LATEST } from '../document/changed-data.ts';
import type { ContentRange, DateContent, LinkContent } from '../document/content.ts';
import type { DocumentData } from '../document/data.ts';
import { PAPER_CELL, type PaperData } from '../document/papers.ts';
import type { BranchData } from '../document/transaction.ts';
import { id } from '../schema/declaration-shape.ts';
import { ID, ROW_ID } from '../schema/id.ts';
import type { Looks } from '../schema/looks.ts';
import type { OwnSchema } from '../schema/own.ts';
import {
  fields,
  like,
  list,
  misfit,
  name,
  number,
  oneOf,
  onlyTrue,
  optional,
  record,
  type Shape,
  text,
  whole,
} from '../schema/shape.ts';
import { looksShape } from '../schema/views-shape.ts';
import { ids, ownSheet } from './own-shape.ts';
import { branchData, contentRange, isoDay } from './transaction-shape.ts';

/** A content as a file has it: a quantity as [8, "in"], or [8, "in", true] where the unit was the column's own. */
export type FileContent = FileQuantity | string | number | boolean | DateContent | LinkContent;

/** Figure, unit, and true where it follows the column's unit or the symbol of the unit it was typed in. */
export type FileQuantity = readonly [number, string] | readonly [number, string, true | string];

/** null: nothing. {}: what the template ships here was taken out. */
export type FileCell = FileContent | null | Readonly<Record<string, never>>;

export interface FileRows {
  /** Ids of the columns, in the order of the cells of each row. */
  readonly columns: readonly string[];
  /** Each row: its id, its place ('' where the template put it), then its cells as far as there are any. */
  readonly rows: readonly (readonly unknown[])[];
  /** Ids of rows that another's change brought back. */
  readonly broughtBack?: readonly string[];
}

export interface WorkbookFile {
  readonly title: string;
  readonly units: 'us' | 'si';
  readonly currency: string;
  readonly today: string;
  readonly template: { readonly name: string; readonly version: number };
  readonly own: OwnSchema;
  readonly rows: Readonly<Record<string, FileRows>>;
  readonly removed: Readonly<Record<string, readonly string[]>>;
  /** By sheet, row and column. */
  readonly aside: Readonly<Record<string, Readonly<Record<string, Readonly<Record<string, FileContent>>>>>>;
  /** How far what is typed may be off, by sheet, row and column. */
  readonly ranges?: Readonly<Record<string, Readonly<Record<string, Readonly<Record<string, ContentRange>>>>>>;
  /** Other ways that the plan could go, by id. */
  readonly branches?: Readonly<Record<string, BranchData>>;
  readonly looks?: Looks;
  /** By sheet, row and column. */
  readonly notes?: Readonly<Record<string, Readonly<Record<string, Readonly<Record<string, string>>>>>>;
  /** Scratch papers, by id. */
  readonly papers?: Readonly<Record<string, PaperData>>;
  readonly locale?: string;
  /** Who changed what last, and when. */
  readonly changed?: ChangedData;
}

/** The template that every workbook of file version 1 was made from. */
export const VERSION_1_TEMPLATE = { name: 'season', version: 1 } as const;

/** What reading a file gives. */
export type WorkbookFileRead =
  | {
      readonly ok: true;
      readonly data: DocumentData;
      /** What was not as it should be, a sentence each; it is kept aside or left out. */
      readonly notes: readonly string[];
      /** Something that the file holds is not in the document: written over the file, it would be lost. */
      readonly leftOut: boolean;
    }
  | { readonly ok: false; readonly why: string };

const rowIds = { pattern: ROW_ID, wanted: 'the id of a row' };

/** Reading it puts every field in the order that files have. */
export const ownSchema: Shape<OwnSchema> = record(ownSheet, (key) => `sheet “${key}”`, ids);

/** Cells are read one by one (workbook-file.ts), so that one that is not as it should be is kept aside alone. */
const anyCell: Shape<unknown> = {
  read: (value) => value,
  schema: {
    anyOf: [
      { type: ['null', 'string', 'number', 'boolean'] },
      {
        type: 'array',
        prefixItems: [number.schema, text.schema, { anyOf: [onlyTrue.schema, text.schema] }],
        minItems: 2,
        maxItems: 3,
      },
      { type: 'object', properties: { date: text.schema }, required: ['date'], additionalProperties: false },
      { type: 'object', properties: { row: text.schema }, required: ['row'], additionalProperties: false },
      { type: 'object', maxProperties: 0 },
    ],
  },
};

/** Ids of columns; '' for what is none, since the cells below it are told by their place (workbook-file.ts gives it a name). */
const columnIds: Shape<readonly string[]> = {
  read: (value, place) =>
    Array.isArray(value)
      ? value.map((one: unknown) => (typeof one === 'string' && ID.test(one) ? one : ''))
      : misfit(value, place, 'a list'),
  schema: { type: 'array', items: id.schema },
};

const fileRows: Shape<FileRows> = fields<FileRows>({
  columns: columnIds,
  rows: list(
    list(anyCell, (_, index) => `cell ${index - 1}`),
    (_, index) => `row ${index + 1}`,
  ),
  broughtBack: optional(list(like(ROW_ID, 'the id of a row'), (_, index) => `row ${index + 1}`)),
});

const content: Shape<FileContent> = { read: (value) => value as FileContent, schema: anyCell.schema };

const paper: Shape<PaperData> = fields<PaperData>({
  name: optional(name),
  cells: record(text, (key) => `cell ${key.slice(0, 40)}`, { pattern: PAPER_CELL, wanted: 'a place such as B12' }),
});

/** Texts that mean something by their places: of a list that is not whole nothing is known. */
const wholeTexts: Shape<readonly string[]> = {
  read: (value, place) =>
    Array.isArray(value) && value.every((one: unknown) => typeof one === 'string')
      ? value
      : misfit(value, place, 'a list of texts'),
  schema: { type: 'array', items: text.schema },
};

const changed: Shape<ChangedData> = fields<ChangedData>({
  latest: whole(0, LATEST),
  by: wholeTexts,
  cells: record(wholeTexts, (key) => `changes of “${key}”`, ids),
  others: wholeTexts,
});

export const workbookFile: Shape<WorkbookFile> = fields<WorkbookFile>({
  title: text,
  units: oneOf('us', 'si'),
  currency: like(/^[A-Z]{3}$/, 'a currency code of three letters, such as USD,'),
  today: isoDay,
  template: fields<WorkbookFile['template']>({ name: id, version: whole(1, 1_000_000) }),
  own: ownSchema,
  rows: record(fileRows, (key) => `rows of “${key}”`, ids),
  removed: record(
    list(like(ROW_ID, 'the id of a row'), (_, index) => `row ${index + 1}`),
    (key) => `removed rows of “${key}”`,
    ids,
  ),
  aside: record(
    record(
      record(content, (key) => `column “${key}”`, ids),
      (key) => `row “${key.slice(0, 40)}”`,
      rowIds,
    ),
    (key) => `kept aside of “${key}”`,
    ids,
  ),
  ranges: optional(
    record(
      record(
        record(contentRange, (key) => `column “${key}”`, ids),
        (key) => `row “${key.slice(0, 40)}”`,
        rowIds,
      ),
      (key) => `ranges of “${key}”`,
      ids,
    ),
  ),
  branches: optional(record(branchData, (key) => `branch “${key}”`, ids)),
  looks: optional(looksShape),
  notes: optional(
    record(
      record(
        record(name, (key) => `column “${key}”`, ids),
        (key) => `row “${key.slice(0, 40)}”`,
        rowIds,
      ),
      (key) => `notes of “${key}”`,
      ids,
    ),
  ),
  papers: optional(record(paper, (key) => `scratch paper “${key}”`, ids)),
  locale: optional(like(/^[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*$/, 'a language and place, such as de-CH,')),
  changed: optional(changed),
});
