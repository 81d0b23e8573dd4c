// What a workbook file of version 1 looked like inside, part by part. Used by version-1.ts alone.

import {
  exactly,
  fields,
  flag,
  isFields,
  like,
  list,
  misfit,
  name,
  number,
  oneOf,
  optional,
  pair,
  record,
  type Shape,
  text,
  variants,
  whole,
} from '../schema/shape.ts';
import type {
  CheckDeclaration,
  ColumnDeclaration,
  Entry,
  RowEntries,
  RowSource,
  SheetDeclaration,
  TypeDeclaration,
  UnitPair,
  WorkbookDeclaration,
} from './version-1-declaration.ts';

type TypeOf<K extends TypeDeclaration['type']> = Extract<TypeDeclaration, { readonly type: K }>;
type RowsFrom<K extends RowSource['from']> = Extract<RowSource, { readonly from: K }>;

/** The item by its name where it has one, else by its place in the list. */
function called(what: string): (value: unknown, index: number) => string {
  return (value, index) =>
    isFields(value) && typeof value.name === 'string' ? `${what} “${value.name}”` : `${what} ${index + 1}`;
}

const unitPair: Shape<UnitPair> = fields<UnitPair>({ us: text, si: text });

const typeDeclaration: Shape<TypeDeclaration> = variants<'type', TypeDeclaration>('type', {
  number: fields<TypeOf<'number'>>({ type: exactly('number'), unit: unitPair }),
  temperature: fields<TypeOf<'temperature'>>({ type: exactly('temperature') }),
  date: fields<TypeOf<'date'>>({ type: exactly('date') }),
  text: fields<TypeOf<'text'>>({ type: exactly('text') }),
  yesno: fields<TypeOf<'yesno'>>({ type: exactly('yesno') }),
  choice: fields<TypeOf<'choice'>>({
    type: exactly('choice'),
    options: list(name, (_, index) => `choice ${index + 1}`),
  }),
  link: fields<TypeOf<'link'>>({ type: exactly('link'), table: name }),
});

const column: Shape<ColumnDeclaration> = fields<ColumnDeclaration>({
  name,
  type: typeDeclaration,
  group: text,
  note: text,
  role: oneOf('entered', 'computed', 'default'),
  formula: text,
  decimals: optional(whole(0, 12)),
  least: optional(number),
  most: optional(number),
  required: optional(flag),
  own: optional(flag),
  orElse: optional(text),
});

type DatedColumn = RowsFrom<'events'>['dates'][number];

const rowSource: Shape<RowSource> = variants<'from', RowSource>('from', {
  entry: fields<RowsFrom<'entry'>>({ from: exactly('entry') }),
  single: fields<RowsFrom<'single'>>({ from: exactly('single') }),
  each: fields<RowsFrom<'each'>>({ from: exactly('each'), table: name, as: name, where: text }),
  span: fields<RowsFrom<'span'>>({
    from: exactly('span'),
    first: text,
    last: text,
    step: oneOf('day', 'week', 'month'),
    as: name,
  }),
  pairs: fields<RowsFrom<'pairs'>>({ from: exactly('pairs'), tables: pair(name), as: pair(name), where: text }),
  events: fields<RowsFrom<'events'>>({
    from: exactly('events'),
    dates: list(
      fields<DatedColumn>({ table: name, column: name, event: text, about: name }),
      (_, index) => `date ${index + 1}`,
    ),
    as: name,
    event: name,
  }),
});

const check: Shape<CheckDeclaration> = fields<CheckDeclaration>({
  name,
  level: oneOf('error', 'warning', 'note'),
  column: text,
  says: text,
});

const sheet: Shape<SheetDeclaration> = fields<SheetDeclaration>({
  name,
  question: text,
  about: text,
  rows: rowSource,
  key: optional(name),
  columns: list(column, called('column')),
  checks: list(check, called('check')),
  cautions: list(text, (_, index) => `caution ${index + 1}`),
});

function isEntry(value: unknown): value is Entry {
  return (
    typeof value === 'string' || typeof value === 'boolean' || (typeof value === 'number' && Number.isFinite(value))
  );
}

const entry: Shape<Entry> = {
  read: (value, place) => (isEntry(value) ? value : misfit(value, place, 'a text, a number, or true or false')),
  schema: {},
};

const anyRow: Shape<RowEntries> = record(entry, (column) => `“${column}”`);

const anyRows: Shape<readonly RowEntries[]> = list(anyRow, (_, index) => `row ${index + 1}`);

/** All of a workbook file of version 1 but its format and version. */
export const version1: Shape<WorkbookDeclaration> = fields<WorkbookDeclaration>({
  title: text,
  units: oneOf('us', 'si'),
  currency: like(/^[A-Z]{3}$/, 'a currency’s code of three capital letters, such as USD,'),
  today: whole(-1_000_000, 1_000_000),
  year: optional(fields<{ readonly sheet: string; readonly column: string }>({ sheet: name, column: name })),
  sheets: list(sheet, called('sheet')),
  rows: record(anyRows, (table) => `rows of sheet “${table}”`),
});
