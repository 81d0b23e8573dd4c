// From a file's text to a workbook: fetches the template it was made from and, where it holds a unit that only the general list
// knows, that list. Says in a sentence why it can't be opened; puts nothing on screen.

import {
  type DocumentData,
  earlierReader,
  type HistoryData,
  readWorkbookFile,
  settings,
  templateWanted,
  Workbook,
} from '../../../engine/index.ts';
import { fetchWanted } from '../store/wanted.ts';
import { fetchTemplate, templates, today, world } from './world.ts';

export type Opened =
  | {
      readonly ok: true;
      readonly workbook: Workbook;
      /** What was not as it should be, a sentence each. */
      readonly notes: readonly string[];
      /** Something that the file holds could not be read: written over it, the workbook would lose that. */
      readonly leftOut: boolean;
    }
  | { readonly ok: false; readonly why: string };

export async function readWorkbook(text: string, history?: HistoryData): Promise<Opened> {
  const wanted = templateWanted(text);
  const here = wanted === undefined ? true : await fetchTemplate(wanted).then(yes, no);
  if (!here) return { ok: false, why: 'The sheets it was made from could not be fetched: try again.' };
  const read = readWorkbookFile(text, templates, await earlierReader(wanted).catch(() => undefined));
  if (!read.ok) return read;
  const workbook = await openData(read.data, history);
  if (workbook === undefined) {
    return {
      ok: false,
      why: `Its template “${read.data.template.name}” is not known here: update Dibble, then open it.`,
    };
  }
  return { ok: true, workbook, notes: read.notes, leftOut: read.leftOut };
}

const yes = (): boolean => true;
const no = (): boolean => false;

/** A workbook of plain data, in which the day is never before today: the demo farm plans from its own January until that is past. */
export async function openData(data: DocumentData, history?: HistoryData): Promise<Workbook | undefined> {
  const current = { ...data, today: Math.max(data.today, today()) };
  let workbook = Workbook.open(current, world(), history);
  // What a try set aside for the want of something has its place once that is here.
  while (await fetchWanted()) workbook = Workbook.open(current, world(), history);
  return workbook;
}

/** Whether a workbook's sheets are those of an earlier version than today's; the version of today where so. */
export function newerTemplate(workbook: Workbook): number | undefined {
  const { name, version } = settings(workbook).template;
  const latest = templates.today(name)?.version;
  return latest !== undefined && version < latest ? latest : undefined;
}
