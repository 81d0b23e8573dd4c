// What transactions must look like in data from outside: branches of a workbook file hold them. Each kind of operation has its
// shape, so that a file can't bring an operation that the document doesn't know.

import type { Content, ContentRange, DateContent, LinkContent, Quantity } from '../document/content.ts';
import { PAPER_CELL } from '../document/papers.ts';
import { POSITION } from '../document/positions.ts';
import type { BranchData, Message, Operation, RowLine, Transaction } from '../document/transaction.ts';
import { checkDeclaration, columnDeclaration, id, sheetDeclaration } from '../schema/declaration-shape.ts';
import { ROW_ID } from '../schema/id.ts';
import {
  exactly,
  fields,
  isFields,
  like,
  list,
  misfit,
  name,
  number,
  oneOf,
  onlyTrue,
  optional,
  orNull,
  record,
  type Shape,
  text,
  variants,
  whole,
} from '../schema/shape.ts';
import { colourRule, viewDeclaration } from '../schema/views-shape.ts';
import { civilDayOfIso } from '../values/civil.ts';
import { ids, ownColumn, ownSheet } from './own-shape.ts';

type Of<K extends Operation['op']> = Extract<Operation, { readonly op: K }>;

const row = like(ROW_ID, 'the id of a row');
const position = like(new RegExp(`^$|${POSITION.source}`), 'the place of a row');
const after = optional(orNull(id));

export const isoDay: Shape<string> = {
  read: (value, place) =>
    typeof value === 'string' && civilDayOfIso(value) !== undefined
      ? value
      : misfit(value, place, 'a date such as 2027-03-15'),
  schema: { type: 'string', format: 'date' },
};

const quantity: Shape<Quantity> = fields<Quantity>({
  number,
  unit: text,
  follows: optional(onlyTrue),
  shownIn: optional(text),
});
const dateContent: Shape<DateContent> = fields<DateContent>({ date: isoDay });
const linkContent: Shape<LinkContent> = fields<LinkContent>({ row });

/** What was typed, as it stands in operations: a text, a number, a quantity with its unit, a date, a row, or nothing. */
const content: Shape<Content> = {
  read: (value, place) => {
    if (value === null || typeof value === 'string' || typeof value === 'boolean') return value;
    if (typeof value === 'number') return number.read(value, place);
    if (!isFields(value)) return misfit(value, place, 'an entry');
    if ('date' in value) return dateContent.read(value, place);
    return 'row' in value ? linkContent.read(value, place) : quantity.read(value, place);
  },
  schema: {
    anyOf: [{ type: ['null', 'string', 'number', 'boolean'] }, quantity.schema, dateContent.schema, linkContent.schema],
  },
};

export const contentRange: Shape<ContentRange> = fields<ContentRange>({ low: content, high: content });

const rowLine: Shape<RowLine> = fields<RowLine>({
  row,
  at: position,
  cells: list(content, (_, index) => `cell ${index + 1}`),
  broughtBack: optional(onlyTrue),
  notes: optional(record(name, (key) => `column “${key}”`, ids)),
  ranges: optional(record(contentRange, (key) => `column “${key}”`, ids)),
});

/** Those that a change in a branch may hold: a branch has no branches of its own. */
type BranchOperation = Exclude<Operation, { readonly op: 'branch' }>;

/** Operations in an operation: read by the same shape, which the schema can't say again without end. */
const heldOperations: Shape<readonly Operation[]> = {
  read: (value, place) => list<Operation>(operation, (_, index) => `operation ${index + 1}`).read(value, place),
  schema: { type: 'array', items: { type: 'object' } },
};

const operation: Shape<BranchOperation> = variants<'op', BranchOperation>('op', {
  cell: fields<Of<'cell'>>({ op: exactly('cell'), sheet: id, row, column: id, content, aside: optional(onlyTrue) }),
  range: fields<Of<'range'>>({ op: exactly('range'), sheet: id, row, column: id, range: orNull(contentRange) }),
  'insert row': fields<Of<'insert row'>>({
    op: exactly('insert row'),
    sheet: id,
    row,
    at: position,
    broughtBack: optional(onlyTrue),
  }),
  'remove row': fields<Of<'remove row'>>({
    op: exactly('remove row'),
    sheet: id,
    row,
    asUnknown: optional(onlyTrue),
    unshipped: optional(onlyTrue),
  }),
  'insert rows': fields<Of<'insert rows'>>({
    op: exactly('insert rows'),
    sheet: id,
    columns: list(id, (_, index) => `column ${index + 1}`),
    rows: list(rowLine, (_, index) => `row ${index + 1}`),
  }),
  'remove rows': fields<Of<'remove rows'>>({
    op: exactly('remove rows'),
    sheet: id,
    rows: list(row, (_, index) => `row ${index + 1}`),
  }),
  'move row': fields<Of<'move row'>>({ op: exactly('move row'), sheet: id, row, at: position }),
  'keep row': fields<Of<'keep row'>>({ op: exactly('keep row'), sheet: id, row, broughtBack: optional(onlyTrue) }),
  formula: fields<Of<'formula'>>({ op: exactly('formula'), sheet: id, column: id, formula: orNull(text) }),
  'add column': fields<Of<'add column'>>({ op: exactly('add column'), sheet: id, column: columnDeclaration, after }),
  'remove column': fields<Of<'remove column'>>({
    op: exactly('remove column'),
    sheet: id,
    column: id,
    leaving: optional(orNull(ownColumn)),
    sparesOthers: optional(onlyTrue),
  }),
  'rename column': fields<Of<'rename column'>>({
    op: exactly('rename column'),
    sheet: id,
    column: id,
    name: orNull(text),
  }),
  'move column': fields<Of<'move column'>>({ op: exactly('move column'), sheet: id, column: id, after }),
  'add sheet': fields<Of<'add sheet'>>({ op: exactly('add sheet'), sheet: sheetDeclaration, after }),
  'remove sheet': fields<Of<'remove sheet'>>({
    op: exactly('remove sheet'),
    sheet: id,
    leaving: optional(orNull(ownSheet)),
    sparesOthers: optional(onlyTrue),
  }),
  'rename sheet': fields<Of<'rename sheet'>>({ op: exactly('rename sheet'), sheet: id, name: orNull(text) }),
  'move sheet': fields<Of<'move sheet'>>({ op: exactly('move sheet'), sheet: id, after }),
  check: fields<Of<'check'>>({
    op: exactly('check'),
    sheet: id,
    check: id,
    declaration: optional(orNull(checkDeclaration)),
  }),
  view: fields<Of<'view'>>({
    op: exactly('view'),
    sheet: id,
    view: id,
    declaration: optional(orNull(viewDeclaration)),
  }),
  colour: fields<Of<'colour'>>({ op: exactly('colour'), sheet: id, rule: id, declaration: optional(colourRule) }),
  note: fields<Of<'note'>>({ op: exactly('note'), sheet: id, row, column: id, note: orNull(text) }),
  locale: fields<Of<'locale'>>({ op: exactly('locale'), locale: orNull(text) }),
  units: fields<Of<'units'>>({ op: exactly('units'), units: oneOf('us', 'si') }),
  today: fields<Of<'today'>>({ op: exactly('today'), today: whole(-1_000_000, 10_000_000) }),
  title: fields<Of<'title'>>({ op: exactly('title'), title: text }),
  paper: fields<Of<'paper'>>({ op: exactly('paper'), paper: id, name: orNull(text) }),
  'paper cell': fields<Of<'paper cell'>>({
    op: exactly('paper cell'),
    paper: id,
    cell: like(PAPER_CELL, 'a place such as B12'),
    entry: orNull(text),
  }),
  template: fields<Of<'template'>>({
    op: exactly('template'),
    version: whole(1, 1_000_000),
    rows: oneOf('follow', 'stay'),
    held: optional(heldOperations),
  }),
});

const part: Shape<string | number> = {
  read: (value, place) => (typeof value === 'string' ? value : number.read(value, place)),
  schema: { type: ['string', 'number'] },
};

const transaction: Shape<Transaction> = fields<Transaction>({
  id: text,
  actor: text,
  time: number,
  source: oneOf('user', 'import', 'upgrade', 'remote'),
  message: fields<Message>({ code: text, parts: record(part, (key) => `part “${key}”`) }),
  operations: list<Operation>(operation, (_, index) => `operation ${index + 1}`),
  undoes: optional(text),
  forgets: optional(onlyTrue),
  redoes: optional(text),
  joins: optional(text),
});

export const branchData: Shape<BranchData> = fields<BranchData>({
  name,
  changes: list(transaction, (_, index) => `change ${index + 1}`),
});
