// How sheets are looked at: views, colours, notes on cells; and the locale that figures and days are written in. None of
// them changes a figure.

import type { ProgramSheet } from '../schema/compile.ts';
import { ID } from '../schema/id.ts';
import { ALL_COLUMNS, standingRules, standingViews } from '../schema/looks.ts';
import { entry } from '../schema/records.ts';
import type { ViewDeclaration } from '../schema/views.ts';
import { colourRule, viewDeclaration } from '../schema/views-shape.ts';
import { refuseUnkept } from './as-kept.ts';
import type { CommandOf } from './command.ts';
import { type Draft, findColumn, findRow, findSheet } from './draft.ts';
import type { Refused } from './refusal.ts';

/** A note is a remark, not a chapter. */
const LONGEST_NOTE = 2000;

/** A language, perhaps with script and region: 'de', 'de-CH', 'zh-Hant-TW'. */
const LOCALE = /^[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*$/;

export function setView({ sheet, view }: CommandOf<'set view'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  const why = refuseView(found.found, view, draft) ?? refuseUnkept(viewDeclaration, view);
  if (why !== undefined) return { sheet, why };
  const shipped = shippedView(found.found, view.id);
  const standing = standingViews(found.found.schema.views, entry(draft.document.looks, sheet));
  const last = Math.max(0, ...standing.map(({ order = 0 }) => order));
  const isOwn = shipped === undefined && view.id !== ALL_COLUMNS.id;
  const ordered: ViewDeclaration = isOwn && view.order === undefined ? { ...view, order: last + 1 } : view;
  const isAsShipped = JSON.stringify(ordered) === JSON.stringify(shipped ?? ALL_COLUMNS);
  draft.perform({ op: 'view', sheet, view: view.id, ...(isAsShipped ? {} : { declaration: ordered }) });
  return undefined;
}

function refuseView(sheet: ProgramSheet, view: ViewDeclaration, { document }: Draft): string | undefined {
  const { id, name, columns, filters = [], sort = [], groupBy } = view;
  if (!ID.test(id)) return 'A view needs an id of letters, digits and hyphens.';
  if (name.trim() === '' || name !== name.trim()) return 'A view needs a name without blanks at its ends.';
  const standing = standingViews(sheet.schema.views, entry(document.looks, sheet.id));
  const taken = standing.some((one) => one.id !== id && one.name.toLowerCase() === name.toLowerCase());
  if (taken) return `${sheet.name} already has a view called ${name}: choose another name.`;
  const known = (column: string): boolean => sheet.column(column) !== undefined;
  if (columns !== undefined && !columns.some(known)) return `${name} needs at least one column of ${sheet.name}.`;
  const filtered = filters.flatMap((filter) => (filter.by === 'cell' ? [filter.column] : []));
  const asked = [...filtered, ...sort.map(({ column }) => column), ...(groupBy === undefined ? [] : [groupBy])];
  const missing = asked.find((column) => !known(column));
  return missing === undefined ? undefined : `${sheet.name} has no column called ${missing}.`;
}

function shippedView({ schema }: ProgramSheet, id: string): ViewDeclaration | undefined {
  return schema.views.find((view) => view.id === id);
}

export function removeView({ sheet, view }: CommandOf<'remove view'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  if (view === ALL_COLUMNS.id) return { sheet, why: 'Every sheet keeps the view of all its columns.' };
  const shipped = shippedView(found.found, view) !== undefined;
  const own = entry(entry(draft.document.looks, sheet)?.views, view);
  if (own === null || (own === undefined && !shipped)) {
    return { sheet, why: `${found.found.name} has no such view any more.` };
  }
  draft.perform({ op: 'view', sheet, view, ...(shipped ? { declaration: null } : {}) });
  return undefined;
}

export function takeViewBack({ sheet, view }: CommandOf<'take view back'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  if (view !== ALL_COLUMNS.id && shippedView(found.found, view) === undefined) {
    return { sheet, why: 'This view is your own: it has no other form to go back to.' };
  }
  const own = entry(entry(draft.document.looks, sheet)?.views, view);
  if (own !== undefined) draft.perform({ op: 'view', sheet, view });
  return undefined;
}

export function setColour({ sheet, rule }: CommandOf<'set colour'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  const of = findColumn(found.found, rule.column);
  if (!of.ok) return of.refused;
  if (!ID.test(rule.id)) return { sheet, why: 'A colour needs an id of letters, digits and hyphens.' };
  if (rule.name.trim() === '') return { sheet, why: 'A colour needs words that say what it means: write a few.' };
  const rules = standingRules(entry(draft.document.looks, sheet));
  const before = rules.find(({ id }) => id === rule.id);
  const order = before?.order ?? Math.max(0, ...rules.map((one) => one.order)) + 1;
  const why = refuseUnkept(colourRule, { ...rule, order });
  if (why !== undefined) return { sheet, why };
  draft.perform({ op: 'colour', sheet, rule: rule.id, declaration: { ...rule, order } });
  return undefined;
}

export function removeColour({ sheet, rule }: CommandOf<'remove colour'>, draft: Draft): Refused {
  const known = entry(entry(draft.document.looks, sheet)?.rules, rule);
  if (known === undefined) return { sheet, why: 'There is no such colour any more.' };
  draft.perform({ op: 'colour', sheet, rule });
  return undefined;
}

export function setNote({ sheet, row, column, note }: CommandOf<'set note'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  const of = findColumn(found.found, column);
  if (!of.ok) return of.refused;
  const slot = findRow(draft, found.found, row);
  if (!slot.ok) return slot.refused;
  const text = note.trim();
  if (text.length > LONGEST_NOTE) {
    return { sheet, row, column, why: `A note has at most ${LONGEST_NOTE} letters: write it shorter.` };
  }
  const before = draft.document.notes.content(sheet, row, column) ?? '';
  if (before !== text) draft.perform({ op: 'note', sheet, row, column, note: text === '' ? null : text });
  return undefined;
}

export function setLocale({ locale }: CommandOf<'set locale'>, draft: Draft): Refused {
  if (locale !== null && !LOCALE.test(locale)) {
    return { why: `“${locale}” names no language and place: write one such as en-US, de-DE or fr.` };
  }
  if (locale !== (draft.document.locale ?? null)) draft.perform({ op: 'locale', locale });
  return undefined;
}
