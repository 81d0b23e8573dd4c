// One page for the tests of a file that need nothing but a farm on a usual screen: each begins with the demo farm as it
// comes, or with as much of it as grows onions, which is sooner worked out after each step; with nothing to take back. What the test before did is
// taken back step by step, which costs a fraction of a farm worked out anew; where it opened another workbook, loaded the page again or left a
// dialog that Esc doesn't close, the farm is opened afresh. After a test that failed the next one gets a page of its own.

import type { Page } from 'playwright-core';
import { expect, onTestFailed } from 'vitest';
import { onionFarmText } from '../onion-farm.ts';
import { drawFrames, type OpenedWorkbook, type Opening, openWorkbook } from './harness.ts';
import { WorkbookPage } from './workbook-page.ts';

export interface AtSheet extends OpenedWorkbook {
  readonly book: WorkbookPage;
}

const SCREENS = { desk: { width: 1440, height: 900 }, phone: { width: 390, height: 844 } };

/** What stands on the page: the whole demo farm, or its onions (../onion-farm.ts). */
type Farm = 'demo' | 'onions';
type Begun = 'taken back' | 'afresh';

let shared: (OpenedWorkbook & { readonly farm: Farm; readonly file: string | undefined }) | undefined;

/** The demo farm as it comes, at the season at a glance, in a window of 1440 by 900. What the page complains of is heard from now on. */
export function onePage(): Promise<OpenedWorkbook> {
  return atAGlance('demo');
}

/** The same of the demo farm's onions: for what is about the page and not about the farm. A file's tests share the one or the other farm. */
export function oneOnionPage(): Promise<OpenedWorkbook> {
  return atAGlance('onions');
}

async function atAGlance(farm: Farm): Promise<OpenedWorkbook> {
  const opened = await farmOn('desk', farm);
  await opened.page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: 'At a glance' }).click();
  await opened.page.getByRole('main', { name: 'The season at a glance' }).waitFor();
  return opened;
}

/** The same, at one of its sheets, its first rows and columns in sight; `afresh` where there must be nothing to do again either. */
export function atSheet(sheet: string, begun: Begun = 'taken back'): Promise<AtSheet> {
  return sheetOf('demo', sheet, begun);
}

/** The demo farm's onions, at one of their sheets. */
export function atOnionSheet(sheet: string, begun: Begun = 'taken back'): Promise<AtSheet> {
  return sheetOf('onions', sheet, begun);
}

async function sheetOf(farm: Farm, sheet: string, begun: Begun): Promise<AtSheet> {
  const opened = await farmOn('desk', farm, begun);
  const book = new WorkbookPage(opened.page);
  await book.openSheet(sheet);
  await opened.page.evaluate(() => document.querySelector('.ag-grid-viewport')?.scrollTo(0, 0));
  await drawFrames(opened.page);
  return { ...opened, book };
}

/** A page of its own with the demo farm's onions, as they come. */
export async function openOnionFarm(opening: Opening): Promise<OpenedWorkbook> {
  const opened = await openWorkbook({ ...SCREENS.desk, ...opening, bare: true });
  const { page } = opened;
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a file' }).click();
  const file = { name: 'onions.json', mimeType: 'application/json', buffer: Buffer.from(onionFarmText()) };
  await (await chooser).setFiles(file);
  await page.getByText(/kept on this computer, \d\d:\d\d/).waitFor();
  return opened;
}

/** The same on a phone, at its first place. A file's tests share the one or the other. */
export async function onePhone(): Promise<OpenedWorkbook> {
  const opened = await farmOn('phone', 'demo');
  await opened.page.getByRole('navigation', { name: 'Places' }).getByRole('button').first().click();
  return opened;
}

/** A farm as it comes, wherever in it the test before came to. */
async function farmOn(screen: keyof typeof SCREENS, farm: Farm, begun: Begun = 'taken back'): Promise<OpenedWorkbook> {
  onTestFailed(() => {
    shared = undefined;
  });
  const file = expect.getState().testPath;
  if (shared !== undefined && (file !== shared.file || farm !== shared.farm)) await leave(shared);
  if (shared !== undefined) {
    const { page, problems, requestsElsewhere, requestsAfterLoad } = shared;
    await page.mouse.move(0, 0);
    for (let open = 0; open < 3; open += 1) await page.keyboard.press('Escape');
    const asItComes = begun === 'taken back' && (await takeAllBack(page));
    if (!asItComes && farm === 'demo') await openDemoAfresh(page);
    if (!asItComes && farm === 'onions') await leave(shared);
    for (const list of [problems, requestsElsewhere, requestsAfterLoad]) list.length = 0;
  }
  if (shared === undefined) {
    const open = farm === 'onions' ? openOnionFarm : openWorkbook;
    const opened = await open({ ...SCREENS[screen], stays: true });
    shared = { ...opened, farm, file };
    await noteAddresses(opened.page);
  }
  return shared;
}

/** The page's address is the farm's, and then that of the copy that is kept of it: a third is another workbook's. */
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

/** Takes back every step; false where the farm as it comes can't be reached so. */
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

async function leave(opened: OpenedWorkbook): Promise<void> {
  shared = undefined;
  await opened.close();
}

async function openDemoAfresh(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Demo farm', exact: true }).click();
  await page.getByRole('main', { name: 'The season at a glance' }).waitFor();
  await noteAddresses(page);
}
