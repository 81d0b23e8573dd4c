// Another workbook in place of the one on screen: what is on screen is on the disk before it goes, or the person is asked; the
// way back is offered. Opening a file, the list of workbooks and fresh seasons come through here.

import { settings } from '../../../engine/index.ts';
import { tell } from '../store/notices.ts';
import { keptWorkbook } from '../store/workbook.ts';
import { faultWords } from './faults.ts';
import { findWorkbook, setAside, settleKeeping, showFound, wayBack } from './showing.ts';
import { keptAs } from './state.ts';
import { faultOf } from './storage.ts';

/** Puts another workbook on screen by `show`, which gives what is to be said, or why it could not be. */
export async function switchTo(show: () => Promise<Shown>): Promise<void> {
  if (await settleKeeping()) {
    await leaveFor(show);
    return;
  }
  const now = keptWorkbook();
  const title = now === undefined ? 'The workbook on screen' : `“${settings(now).title}”`;
  tell(`${title} is not kept on this computer as it is now: save it to a file before another is opened.`, 'refusal', {
    label: 'Open the other all the same',
    run: () => void leaveFor(show),
  });
}

export interface Shown {
  readonly ok: boolean;
  /** In sentences. */
  readonly says: string;
  /** Something in it was not as it should be. */
  readonly flawed?: boolean;
}

async function leaveFor(show: () => Promise<Shown>): Promise<void> {
  const before = keptWorkbook();
  const back = wayBack();
  const { ok, says, flawed = false } = await show();
  if (!ok || before === undefined) tell(says, ok && !flawed ? 'done' : 'refusal');
  else tell(says, flawed ? 'refusal' : 'done', { label: 'Go back to the one before', run: () => void back() });
}

/** Puts a kept workbook on screen. */
export function openKept(id: string, title: string): Promise<void> {
  return id === keptAs.peek() ? Promise.resolve() : switchTo(() => showKept(id, title));
}

async function showKept(id: string, title: string): Promise<Shown> {
  const found = await findWorkbook(id).catch((problem: unknown) => faultOf(problem));
  if (found instanceof Error) return { ok: false, says: `“${title}” was not opened. ${faultWords(found)}` };
  const opened = await showFound(found);
  if (opened.ok) {
    const flaws = [...(opened.rest === undefined ? [] : [restWords(opened.rest.says)]), ...opened.notes];
    return { ok: true, says: [`Opened “${title}”.`, ...flaws].join(' '), flawed: flaws.length > 0 };
  }
  if (opened.rest !== undefined) await setAside(id, opened.rest);
  return { ok: false, says: `“${title}” was not opened. ${opened.why} The workbook on screen is as it was.` };
}

/** 'The changes from number 12 on can’t be read. They are set aside among the versions.' */
export function restWords(says: string): string {
  return `${says}. What was found is set aside among the versions.`;
}
