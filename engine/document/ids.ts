// Ids: short words that never change and are never shown. Templates declare theirs; a person's rows, columns and sheets get
// one from a source that the face hands in, since the engine has no chance of its own; rows that follow from other data
// have ids made of what they follow from.

import { isoDate } from '../values/civil.ts';

/** The one row of a one-row sheet. */
export const ONLY_ROW = 'only';

/** The id of the row that stands for a day, a week's first day, a month's day. */
export function dayRowId(civil: number): string {
  return isoDate(civil);
}

/** The id of a pair of rows. Ids of pairs of pairs stay apart by their brackets. */
export function pairRowId(first: string, second: string): string {
  return `${grouped(first)}~${grouped(second)}`;
}

/** The ids of the two rows that the id of a pair is made of; undefined where it is no pair's. */
export function partsOfPair(id: string): readonly [string, string] | undefined {
  let open = 0;
  for (let at = 0; at < id.length; at++) {
    if (id[at] === '(') open++;
    else if (id[at] === ')') open--;
    else if (id[at] === '~' && open === 0) return [single(id.slice(0, at)), single(id.slice(at + 1))];
  }
  return undefined;
}

function single(id: string): string {
  return id.startsWith('(') && id.endsWith(')') ? id.slice(1, -1) : id;
}

/** The id of an event: the row whose date it is, and the dated column. */
export function eventRowId(row: string, sheet: string, column: string): string {
  return `${grouped(row)}~${sheet}.${column}`;
}

function grouped(id: string): string {
  return id.includes('~') ? `(${id})` : id;
}
