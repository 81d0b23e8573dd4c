// What can be done with a version: compared with the present, brought back as a step, opened beside, downloaded.

import {
  type Comparison,
  compareBooks,
  type DocumentData,
  message,
  restoring,
  settings,
  type Workbook,
} from '../../../../engine/index.ts';
import { download, fileName } from '../../files/download.ts';
import { readWorkbook } from '../../files/read.ts';
import { keepVersionNow } from '../../keeping/keep-version.ts';
import type { VersionRecord } from '../../keeping/records.ts';
import { showAndKeep } from '../../keeping/showing.ts';
import { switchTo } from '../../keeping/switching.ts';
import { when } from '../../keeping/times.ts';
import { versionText } from '../../keeping/versions.ts';
import { change, UNDO } from '../../store/change.ts';
import { tell } from '../../store/notices.ts';
import { workbookNow } from '../../store/workbook.ts';

export interface Compared {
  readonly ok: true;
  readonly version: VersionRecord;
  /** What changed from the version to the present. */
  readonly comparison: Comparison;
  readonly data: DocumentData;
}

export type Comparing = Compared | { readonly ok: false; readonly why: string };

/** Reads a version and compares the workbook on screen with it. */
export async function compareVersion(version: VersionRecord): Promise<Comparing> {
  const read = await readVersion(version);
  const now = workbookNow();
  if (typeof read === 'string') return { ok: false, why: read };
  if (now === undefined) return { ok: false, why: 'No workbook is open.' };
  return { ok: true, version, comparison: compareBooks(read, now), data: read.data() };
}

async function readVersion({ id }: VersionRecord): Promise<Workbook | string> {
  const text = await versionText(id).catch(() => undefined);
  if (text === undefined) return 'It is not kept any more, or the browser’s storage does not answer.';
  const opened = await readWorkbook(text);
  return opened.ok ? opened.workbook : opened.why;
}

/** Makes the workbook on screen what it was then, as one step; the present is kept as a version before. */
export function bringBack({ version, data }: Compared): void {
  void keepVersionNow('restore');
  const done = change([restoring(data)], message('restore', { when: when(version.at) }));
  if (!done.refused) tell(`The workbook is as it was on ${when(version.at)}.`, 'done', UNDO);
}

/** Opens a version as a workbook of its own. */
export async function openBeside(version: VersionRecord): Promise<void> {
  const read = await readVersion(version);
  if (typeof read === 'string') {
    tell(`The version was not opened. ${read}`, 'refusal');
    return;
  }
  const title = `${settings(read).title} as of ${when(version.at)}`;
  read.do([{ command: 'set title', title }], message('set title', { title }));
  await switchTo(async () => {
    await showAndKeep(read);
    return { ok: true, says: `Opened ${title}.` };
  });
}

/** Hands a version to the person as a file; what was set aside as it was found. Gives the sentence of why it can't; '' where it does. */
export async function downloadVersion(version: VersionRecord, title: string): Promise<string> {
  const text = await versionText(version.id).catch(() => undefined);
  const name = fileName(`${title} ${when(version.at).replace(':', '.')}`);
  if (text === undefined) return 'The version is not kept any more, or the browser’s storage does not answer.';
  download(text, `${name}.json`, 'application/json');
  return '';
}
