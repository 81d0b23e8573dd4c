// One page for the tests of a file that need nothing but the demo farm on a usual screen: each begins with the demo farm opened
// afresh from the page's own menu, with nothing to take back, which costs a fraction of a page fetched and begun anew. After
// a test that failed the next one gets a page of its own.

import { expect, onTestFailed } from 'vitest';
import { type OpenedWorkbook, openWorkbook } from './harness.ts';
import { WorkbookPage } from './workbook-page.ts';

export interface AtSheet extends OpenedWorkbook {
  readonly book: WorkbookPage;
}

let shared: OpenedWorkbook | undefined;
let sharedIn: string | undefined;

/** The demo farm as it comes, in a window of 1440 by 900. What the page complains of is heard from now on. */
export async function onePage(): Promise<OpenedWorkbook> {
  onTestFailed(() => {
    shared = undefined;
  });
  const file = expect.getState().testPath;
  if (shared !== undefined && file !== sharedIn) {
    await shared.close();
    shared = undefined;
  }
  sharedIn = file;
  if (shared === undefined) shared = await openWorkbook({ width: 1440, height: 900, stays: true });
  else await openDemoAfresh(shared);
  return shared;
}

/** The same, at one of its sheets. */
export async function atSheet(sheet: string): Promise<AtSheet> {
  const opened = await onePage();
  const book = new WorkbookPage(opened.page);
  await book.openSheet(sheet);
  return { ...opened, book };
}

async function openDemoAfresh({ page, problems, requestsElsewhere, requestsAfterLoad }: OpenedWorkbook): Promise<void> {
  await page.mouse.move(0, 0);
  for (let open = 0; open < 3; open += 1) await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Demo farm', exact: true }).click();
  await page.getByRole('main', { name: 'The season at a glance' }).waitFor();
  for (const list of [problems, requestsElsewhere, requestsAfterLoad]) list.length = 0;
}
