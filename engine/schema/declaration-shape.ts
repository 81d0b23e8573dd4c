// What declared sheets, columns and checks must look like in data from outside.

import type {
  CheckDeclaration,
  ColumnDeclaration,
  EventDate,
  MadeColumn,
  RangeColumns,
  RowSource,
  SheetDeclaration,
  TypeDeclaration,
  UnitPair,
} from './declaration.ts';
import { ID } from './id.ts';
import {
  exactly,
  fields,
  flag,
  isFields,
  like,
  list,
  name,
  number,
  oneOf,
  optional,
  pair,
  type Shape,
  text,
  variants,
  whole,
} from './shape.ts';
import { viewDeclaration } from './views-shape.ts';

type TypeOf<K extends TypeDeclaration['type']> = Extract<TypeDeclaration, { readonly type: K }>;
type RowsFrom<K extends RowSource['from']> = Extract<RowSource, { readonly from: K }>;

export const id: Shape<string> = like(ID, 'an id of letters, digits and hyphens');

/** The item by its name where it has one, else by its place in the list. */
export function called(what: string): (value: unknown, index: number) => string {
  return (value, index) =>
    isFields(value) && typeof value.name === 'string' ? `${what} “${value.name.slice(0, 40)}”` : `${what} ${index + 1}`;
}

const unitPair: Shape<UnitPair> = fields<UnitPair>({ us: text, si: text });

export const typeDeclaration: Shape<TypeDeclaration> = variants<'type', TypeDeclaration>('type', {
  number: fields<TypeOf<'number'>>({ type: exactly('number'), unit: unitPair }),
  temperature: fields<TypeOf<'temperature'>>({ type: exactly('temperature') }),
  date: fields<TypeOf<'date'>>({ type: exactly('date') }),
  text: fields<TypeOf<'text'>>({ type: exactly('text') }),
  yesno: fields<TypeOf<'yesno'>>({ type: exactly('yesno') }),
  choice: fields<TypeOf<'choice'>>({
    type: exactly('choice'),
    options: list(name, (_, index) => `choice ${index + 1}`),
  }),
  link: fields<TypeOf<'link'>>({ type: exactly('link'), sheet: id }),
  record: fields<TypeOf<'record'>>({ type: exactly('record'), record: id }),
});

export const columnDeclaration: Shape<ColumnDeclaration> = fields<ColumnDeclaration>({
  id,
  name,
  type: typeDeclaration,
  group: text,
  note: text,
  role: oneOf('entered', 'computed', 'default'),
  formula: text,
  inferred: optional(flag),
  decimals: optional(whole(0, 12)),
  least: optional(number),
  most: optional(number),
  whole: optional(flag),
  required: optional(flag),
  orElse: optional(id),
  otherNames: optional(flag),
  range: optional(fields<RangeColumns>({ low: id, high: id })),
});

const made: Shape<MadeColumn> = fields<MadeColumn>({ id, name });

const rowSource: Shape<RowSource> = variants<'from', RowSource>('from', {
  entry: fields<RowsFrom<'entry'>>({ from: exactly('entry') }),
  single: fields<RowsFrom<'single'>>({ from: exactly('single') }),
  each: fields<RowsFrom<'each'>>({ from: exactly('each'), sheet: id, as: made, where: text }),
  span: fields<RowsFrom<'span'>>({
    from: exactly('span'),
    first: text,
    last: text,
    step: oneOf('day', 'week', 'month'),
    as: made,
  }),
  pairs: fields<RowsFrom<'pairs'>>({ from: exactly('pairs'), sheets: pair(id), as: pair(made), where: text }),
  events: fields<RowsFrom<'events'>>({
    from: exactly('events'),
    dates: list(
      fields<EventDate>({ sheet: id, column: id, event: text, about: made }),
      (_, index) => `date ${index + 1}`,
    ),
    as: made,
    event: made,
  }),
});

export const checkDeclaration: Shape<CheckDeclaration> = fields<CheckDeclaration>({
  id,
  name,
  level: oneOf('error', 'warning', 'note'),
  column: text,
  says: text,
});

export const sheetDeclaration: Shape<SheetDeclaration> = fields<SheetDeclaration>({
  id,
  name,
  question: text,
  about: text,
  rows: rowSource,
  key: optional(id),
  columns: list(columnDeclaration, called('column')),
  checks: list(checkDeclaration, called('check')),
  views: optional(list(viewDeclaration, called('view'))),
  cautions: list(text, (_, index) => `caution ${index + 1}`),
});
