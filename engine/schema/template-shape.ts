// What a template must look like in data from outside: the versions of the past are kept as files.

import type { Entry } from './declaration.ts';
import { called, id, sheetDeclaration } from './declaration-shape.ts';
import { ID, ROW_ID } from './id.ts';
import { fields, like, list, misfit, optional, record, type Shape, WHOLE, whole } from './shape.ts';
import type { Template, TemplateRow } from './template.ts';

const ids = { pattern: ID, wanted: 'an id of letters, digits and hyphens' };

const entry: Shape<Entry> = {
  read: (value, place) =>
    typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
      ? value
      : misfit(value, place, 'a text, a number, or true or false'),
  schema: { type: ['string', 'number', 'boolean'] },
};

const templateRow: Shape<TemplateRow> = fields<TemplateRow>({
  id: like(ROW_ID, 'the id of a row'),
  cells: record(entry, (key) => `“${key}”`, ids),
});

const template: Shape<Template> = fields<Template>({
  name: id,
  version: whole(1, 1_000_000),
  sheets: list(sheetDeclaration, called('sheet')),
  rows: record(
    list(templateRow, (_, index) => `row ${index + 1}`),
    (key) => `rows of “${key}”`,
    ids,
  ),
  year: optional(fields<NonNullable<Template['year']>>({ sheet: id, column: id, starts: optional(id) })),
});

/** The template in data such as a file's; throws a sentence where it is not one. */
export function readTemplate(value: unknown): Template {
  return template.read(value, WHOLE);
}
