// Opens a copy of the plan in a worker. Called by the workers that draw, choose and import.

import { type DocumentData, Workbook } from '../../../engine/index.ts';
import { withWanted } from '../../wanted.ts';
import { fetchTemplate, newId, templates } from './world.ts';

/** The workbook, in which what is changed has this actor; or why there is none. */
export async function openCopy(data: DocumentData, actor: string): Promise<Workbook | string> {
  await fetchTemplate(data.template);
  const world = { newId, now: () => Date.now(), actor, templates };
  const workbook = await withWanted(() => Workbook.open(data, world));
  return workbook ?? 'The sheets of the workbook could not be fetched: try again.';
}
