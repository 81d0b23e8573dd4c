// Templates as they were in earlier versions, each fetched when a workbook made from it is opened: to show what an
// improvement changes before it is taken, and to read the first workbook files. Never edited once it has reached people.

import { readTemplate, type Template } from '../engine/index.ts';

/** A template in an earlier version; undefined where that one is not on record. */
export async function earlierTemplate(name: string, version: number): Promise<Template | undefined> {
  if (name !== 'season' || version !== 1) return undefined;
  const { default: template } = await import('./archive/season-1.json');
  return readTemplate(template);
}
