// The looks of a workbook made what they were at another time: views, colours, notes, the locale. restore.ts calls it.

import { type DocumentData, isRemovedOwnRow } from '../document/data.ts';
import { entry } from '../schema/records.ts';
import type { Draft } from './draft.ts';

export function restoreLooks(data: DocumentData, draft: Draft): void {
  const { document } = draft;
  const { looks: now } = document;
  const { looks = {}, notes = {}, locale = null } = data;
  for (const sheet of keysOf(now, looks)) {
    const [before, wanted] = [entry(now, sheet), entry(looks, sheet)];
    for (const view of keysOf(before?.views ?? {}, wanted?.views ?? {})) {
      const declaration = entry(wanted?.views, view);
      if (differ(entry(before?.views, view), declaration)) draft.perform({ op: 'view', sheet, view, declaration });
    }
    for (const rule of keysOf(before?.rules ?? {}, wanted?.rules ?? {})) {
      const declaration = entry(wanted?.rules, rule);
      if (differ(entry(before?.rules, rule), declaration)) draft.perform({ op: 'colour', sheet, rule, declaration });
    }
  }
  for (const { sheet, row, column } of [...document.notes.all()]) {
    const note = entry(entry(entry(notes, sheet), row), column) ?? null;
    if (note === null && !isRemovedOwnRow(document, sheet, row))
      draft.perform({ op: 'note', sheet, row, column, note });
  }
  for (const [sheet, rows] of Object.entries(notes)) {
    for (const [row, cells] of Object.entries(rows)) {
      for (const [column, note] of Object.entries(cells)) {
        if (document.notes.content(sheet, row, column) !== note) {
          draft.perform({ op: 'note', sheet, row, column, note });
        }
      }
    }
  }
  if ((document.locale ?? null) !== locale) draft.perform({ op: 'locale', locale });
}

function keysOf(a: object, b: object): readonly string[] {
  return [...new Set([...Object.keys(a), ...Object.keys(b)])];
}

/** Both are plain data, written in the same order. */
function differ(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) !== JSON.stringify(b);
}
