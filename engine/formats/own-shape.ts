// What a person's own sheets, columns and checks must look like in data from outside: workbook files and the changes of
// branches hold them.

import { checkDeclaration, columnDeclaration, id, sheetDeclaration } from '../schema/declaration-shape.ts';
import { ID } from '../schema/id.ts';
import type { OwnColumn, OwnSheet } from '../schema/own.ts';
import { fields, onlyTrue, optional, orNull, record, type Shape, text } from '../schema/shape.ts';

export const ids = { pattern: ID, wanted: 'an id of letters, digits and hyphens' };

export const ownColumn: Shape<OwnColumn> = fields<OwnColumn>({
  name: optional(text),
  formula: optional(text),
  after: optional(orNull(id)),
  declaration: optional(columnDeclaration),
  removed: optional(onlyTrue),
});

export const ownSheet: Shape<OwnSheet> = fields<OwnSheet>({
  name: optional(text),
  after: optional(orNull(id)),
  declaration: optional(sheetDeclaration),
  removed: optional(onlyTrue),
  columns: optional(record(ownColumn, (key) => `column “${key}”`, ids)),
  checks: optional(record(orNull(checkDeclaration), (key) => `check “${key}”`, ids)),
});
