// What a visit begins with: the workbook that the page's address names, else the one opened last; where there is none yet, a choice
// (first-visit/first-choice.tsx), for which nothing is worked out before it is made. The page opens in any case: where the browser's storage doesn't answer, it says what won't be kept, and offers the workbooks
// when it does.

import { signal } from '@preact/signals';
import { download } from '../files/download.ts';
import { freshDemo } from '../files/fresh.ts';
import { newerTemplate } from '../files/read.ts';
import { tell } from '../store/notices.ts';
import { addressed, DEMO, followAddress } from './address.ts';
import { faultWords } from './faults.ts';
import { type FoundKept, findWorkbook, setAside, showFound, showFresh } from './showing.ts';
import { keeping } from './state.ts';
import { faultOf, type StorageFault, within } from './storage.ts';
import { restWords } from './switching.ts';
import { lastOpened, wereTakenOver, workbookRecord } from './workbooks.ts';

/** So long the browser's storage may take before the page opens without it. */
const PATIENCE = 1_800;

/** Whether a person is asked what to begin with, until a workbook is open. */
export const choosing = signal(false);

/** Puts the workbook of this visit on screen. */
export async function openAtStart(): Promise<void> {
  const finding = find();
  const found = await within(PATIENCE, finding).catch((problem: unknown) => faultOf(problem));
  if (found instanceof Error) {
    await begin();
    sayNotKept(found);
    finding.then(offerLate, () => undefined);
  } else if (found === undefined || !(await open(found))) await begin();
  followAddress();
}

async function begin(): Promise<void> {
  if (addressed() === DEMO) showFresh(await freshDemo());
  else choosing.value = true;
}

async function find(): Promise<FoundKept | undefined> {
  if (!(await wereTakenOver())) await (await import('./first-copies.ts')).takeOverFirstCopies();
  const id = await wanted();
  return id === undefined ? undefined : findWorkbook(id);
}

async function wanted(): Promise<string | undefined> {
  const named = addressed();
  if (named === DEMO) return undefined;
  const record = named === undefined ? undefined : await workbookRecord(named);
  return record === undefined || record.lying === 'taken out' ? lastOpened() : record.id;
}

async function open(found: FoundKept): Promise<boolean> {
  const { id } = found.session;
  const opened = await showFound(found);
  if (opened.ok) {
    const { notes, rest, workbook } = opened;
    const said = [...(rest === undefined ? [] : [restWords(rest.says)]), ...notes];
    if (said.length > 0) tell(said.join(' '), 'refusal');
    else if (newerTemplate(workbook) !== undefined) void tellOfUpgrade();
    return true;
  }
  const { why, rest } = opened;
  if (rest === undefined) return false;
  await setAside(id, rest);
  tell(`The workbook of your last visit can't be opened: ${why} It is set aside.`, 'refusal', {
    label: 'Download it as it is',
    run: () => download(rest.text, 'dibble workbook as found.json', 'application/json'),
  });
  return false;
}

function sayNotKept(fault: StorageFault): void {
  const why = faultWords(fault);
  keeping.value = { state: 'failed', why };
  tell(`${why} Workbooks that were kept here before can't be shown.`, 'refusal');
}

/** The storage answers after all. */
function offerLate(found: FoundKept | undefined): void {
  if (found === undefined) return;
  tell('The browser’s storage answers now: the workbook of your last visit can be opened.', 'refusal', {
    label: 'Open it',
    run: () => void open(found),
  });
}

/** Where it can't be fetched, the menu of the workbook still has the way to today's sheets. */
async function tellOfUpgrade(): Promise<void> {
  const part = await import('../dialogs/upgrade-notice.ts').catch(() => undefined);
  part?.upgradeNotice();
}
