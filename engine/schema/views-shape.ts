// What views and colour rules must look like in data from outside.

import { ID } from './id.ts';
import type { Looks, SheetLooks } from './looks.ts';
import {
  exactly,
  fields,
  like,
  list,
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
} from './shape.ts';
import { type ColourRule, type Condition, type Filter, type SortKey, TONES, type ViewDeclaration } from './views.ts';

type ConditionOf<K extends Condition['is']> = Extract<Condition, { readonly is: K }>;
type FilterBy<K extends Filter['by']> = Extract<Filter, { readonly by: K }>;

const id: Shape<string> = like(ID, 'an id of letters, digits and hyphens');
const ids = { pattern: ID, wanted: 'an id of letters, digits and hyphens' };
const columns = list(id, (_, index) => `column ${index + 1}`);
const values = list(text, (_, index) => `value ${index + 1}`);

const condition: Shape<Condition> = variants<'is', Condition>('is', {
  'one of': fields<ConditionOf<'one of'>>({ is: exactly('one of'), values }),
  'none of': fields<ConditionOf<'none of'>>({ is: exactly('none of'), values }),
  'at least': fields<ConditionOf<'at least'>>({ is: exactly('at least'), least: number }),
  'at most': fields<ConditionOf<'at most'>>({ is: exactly('at most'), most: number }),
  between: fields<ConditionOf<'between'>>({ is: exactly('between'), least: number, most: number }),
  holding: fields<ConditionOf<'holding'>>({ is: exactly('holding'), text }),
  'not holding': fields<ConditionOf<'not holding'>>({ is: exactly('not holding'), text }),
  blank: fields<ConditionOf<'blank'>>({ is: exactly('blank') }),
  filled: fields<ConditionOf<'filled'>>({ is: exactly('filled') }),
  'typed over': fields<ConditionOf<'typed over'>>({ is: exactly('typed over') }),
});

const filter: Shape<Filter> = variants<'by', Filter>('by', {
  cell: fields<FilterBy<'cell'>>({ by: exactly('cell'), column: id, when: condition }),
  finding: fields<FilterBy<'finding'>>({ by: exactly('finding'), level: oneOf('any', 'error', 'warning', 'note') }),
});

const sortKey: Shape<SortKey> = fields<SortKey>({ column: id, descending: optional(onlyTrue) });

export const viewDeclaration: Shape<ViewDeclaration> = fields<ViewDeclaration>({
  id,
  name,
  columns: optional(columns),
  pinned: optional(columns),
  filters: optional(list(filter, (_, index) => `filter ${index + 1}`)),
  sort: optional(list(sortKey, (_, index) => `sort key ${index + 1}`)),
  groupBy: optional(id),
  totals: optional(record(oneOf('sum', 'mean', 'least', 'most', 'none'), (key) => `total of “${key}”`, ids)),
  order: optional(number),
});

export const colourRule: Shape<ColourRule> = fields<ColourRule>({
  id,
  name,
  column: id,
  when: condition,
  tone: oneOf(...TONES),
  mark: text,
  order: number,
});

const sheetLooks: Shape<SheetLooks> = fields<SheetLooks>({
  views: optional(record(orNull(viewDeclaration), (key) => `view “${key}”`, ids)),
  rules: optional(record(colourRule, (key) => `colour “${key}”`, ids)),
});

/** Reading it puts every field in the order that files have. */
export const looksShape: Shape<Looks> = record(sheetLooks, (key) => `sheet “${key}”`, ids);
