// One page for the tests of a file that need nothing but the demo farm on a usual screen: each begins with the demo farm as it
// comes, with nothing to take back. What the test before did is taken back step by step, which costs a fraction of a farm worked
// out anew; where it opened another workbook, loaded the page again or left a dialog that Esc doesn't close, the demo farm is opened afresh from
// the page's own menu. After a test that failed the next one gets a page of its own.

import type { Page } from 'playwright-core';
import { expect, onTestFailed } from 'vitest';
import { drawFrames, type OpenedWorkbook, openWorkbook } from './harness.ts';
import { WorkbookPage } from './workbook-page.ts';

export interface AtSheet extends OpenedWorkbook {
  readonly book: WorkbookPage;
}

const SCREENS = { desk: { width: 1440, height: 900 }, phone: { width: 390, height: 844 } };

let shared: OpenedWorkbook | undefined;
let sharedIn: string | undefined;

/** The demo farm as it comes, at the season at a glance, in a window of 1440 by 900. What the page complains of is heard from now on. */
export async function onePage(): Promise<OpenedWorkbook> {
  const opened = await demoFarm();
  await opened.page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: 'At a glance' }).click();
  await opened.page.getByRole('main', { name: 'The season at a glance' }).waitFor();
  return opened;
}

/** The same, at one of its sheets, its first rows and columns in sight; `afresh` where there must be nothing to do again either. */
export async function atSheet(sheet: string, begun: 'taken back' | 'afresh' = 'taken back'): Promise<AtSheet> {
  const opened = await demoFarm('desk', begun);
  const book = new WorkbookPage(opened.page);
  await book.openSheet(sheet);
  await opened.page.evaluate(() => document.querySelector('.ag-grid-viewport')?.scrollTo(0, 0));
  await drawFrames(opened.page);
  return { ...opened, book };
}

/** The same on a phone, at its first place. A file's tests share the one or the other. */
export async function onePhone(): Promise<OpenedWorkbook> {
  const opened = await demoFarm('phone');
  await opened.page.getByRole('navigation', { name: 'Places' }).getByRole('button').first().click();
  return opened;
}

/** The same, wherever in it the test before came to. */
async function demoFarm(
  screen: keyof typeof SCREENS = 'desk',
  begun: 'taken back' | 'afresh' = 'taken back',
): Promise<OpenedWorkbook> {
  onTestFailed(() => {
    shared = undefined;
  });
  const file = expect.getState().testPath;
  if (shared !== undefined && file !== sharedIn) {
    await shared.close();
    shared = undefined;
  }
  sharedIn = file;
  if (shared === undefined) {
    shared = await openWorkbook({ ...SCREENS[screen], stays: true });
    await noteAddresses(shared.page);
    return shared;
  }
  const { page, problems, requestsElsewhere, requestsAfterLoad } = shared;
  await page.mouse.move(0, 0);
  for (let open = 0; open < 3; open += 1) await page.keyboard.press('Escape');
  if (begun === 'afresh' || !(await takeAllBack(page))) await openDemoAfresh(page);
  for (const list of [problems, requestsElsewhere, requestsAfterLoad]) list.length = 0;
  return shared;
}

/** The page's address is the demo farm's, and then that of the copy that is kept of it: a third is another workbook's. */
async function noteAddresses(page: Page): Promise<void> {
  await page.evaluate(() => {
    const seen = new Set([location.hash]);
    const write = history.replaceState.bind(history);
    history.replaceState = (...entry) => {
      write(...entry);
      seen.add(location.hash);
    };
    Reflect.set(globalThis, 'addressesSeen', seen);
  });
}

/** Takes back every step; false where the demo farm as it comes can't be reached so. */
function takeAllBack(page: Page): Promise<boolean> {
  return page.evaluate(async () => {
    const seen: unknown = Reflect.get(globalThis, 'addressesSeen');
    if (!(seen instanceof Set) || seen.size > 2) return false;
    if (document.querySelector('dialog, [role="menu"], .branch-bar') !== null) return false;
    for (const close of document.querySelectorAll<HTMLElement>('.message button:last-child')) close.click();
    const drawn = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
    await drawn();
    for (let step = 0; step < 40; step += 1) {
      const steps = [...document.querySelectorAll<HTMLButtonElement>('.top-acts button.step, .phone-undo')];
      const undo = steps.find((button) => button.matches('.phone-undo') || button.textContent.startsWith('Undo'));
      if (undo === undefined || undo.disabled) return undo !== undefined;
      undo.click();
      await drawn();
    }
    return false;
  });
}

async function openDemoAfresh(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Demo farm', exact: true }).click();
  await page.getByRole('main', { name: 'The season at a glance' }).waitFor();
  await noteAddresses(page);
}
