// Templates as they were in earlier versions, each fetched when a workbook made from it is opened: to show what an
// improvement changes before it is taken, and to read the first workbook files. Never edited once it has reached people.

import { readTemplate, type Template } from '../engine/index.ts';

const ARCHIVED: Readonly<Record<string, () => Promise<{ readonly default: unknown }>>> = {
  'season 1': () => import('./archive/season-1.json'),
  'season 2': () => import('./archive/season-2.json'),
  'season 3': () => import('./archive/season-3.json'),
  'onions 1': () => import('./archive/onions-1.json'),
  'onions 2': () => import('./archive/onions-2.json'),
  'seedlings 1': () => import('./archive/seedlings-1.json'),
  'seedlings 2': () => import('./archive/seedlings-2.json'),
};

/** A template in an earlier version; undefined where that one is not on record. */
export async function earlierTemplate(name: string, version: number): Promise<Template | undefined> {
  const archived = await ARCHIVED[`${name} ${version}`]?.();
  return archived === undefined ? undefined : readTemplate(archived.default);
}
