// Scratch paper, used as a person would beside the demo farm: three hundred formulas pasted from a spreadsheet, the tables followed
// live, undo in one line with theirs, copying within, a sum turned into a column.

import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openWorkbook } from '../harness.ts';
import { faults } from '../looks/guidelines.ts';
import { WorkbookPage } from '../workbook-page.ts';

function cell(page: Page, name: string): Locator {
  return page.locator(`#scratch-${name}`);
}

async function reads(page: Page, name: string): Promise<string> {
  return ((await cell(page, name).textContent()) ?? '').trim();
}

async function openPaper(page: Page): Promise<void> {
  await page
    .getByRole('navigation', { name: 'Sheets' })
    .getByRole('button', { name: 'Scratch paper', exact: true })
    .click();
  await page.getByRole('grid').waitFor();
}

async function type(page: Page, name: string, entry: string): Promise<void> {
  await cell(page, name).click();
  await page.keyboard.type(entry);
  await page.keyboard.press('Enter');
}

/** A hundred rows of three formulas each, as a spreadsheet that shows its formulas gives them. */
function formulas(): string {
  return Array.from({ length: 100 }, (_, i) => {
    const row = i + 1;
    const spacing = `=INDEX(Plantings_In_row_spacing_in,${(i % 50) + 1})`;
    return [spacing, `=A${row}*12`, `=SUM(A$1:A${row})`].join('\t');
  }).join('\r\n');
}

test('three hundred pasted formulas follow the tables and are undone with them', async () => {
  const { page, problems, close } = await openWorkbook({ width: 1440, height: 900 });
  const book = new WorkbookPage(page);
  await openPaper(page);
  await page.evaluate((text) => navigator.clipboard.writeText(text), formulas());
  await cell(page, 'A1').click();
  await page.keyboard.press('Control+V');
  await expect.poll(() => reads(page, 'C3')).not.toBe('');
  const first = Number(await reads(page, 'A1'));
  expect(first).toBeGreaterThan(0);
  expect(Number(await reads(page, 'B1'))).toBe(first * 12);
  const sum = async (): Promise<number> => Number((await reads(page, 'C20')).replaceAll(',', ''));
  const before = await sum();

  // An entry in Plantings is seen here, and so is its way back, taken from here.
  await book.openSheet('Plantings');
  await book.type(0, 'In-row spacing', '7 in');
  await openPaper(page);
  await expect.poll(() => reads(page, 'A1')).toBe('7');
  expect(await reads(page, 'B1')).toBe('84');
  expect(await sum()).toBeCloseTo(before - first + 7, 6);
  await cell(page, 'E1').click();
  await page.keyboard.press('Control+Z');
  await expect.poll(() => reads(page, 'A1')).toBe(String(first));
  expect(await sum()).toBe(before);

  // Copied cells bring their formulas, moved.
  await cell(page, 'A1').click();
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Control+C');
  await cell(page, 'F2').click();
  await page.keyboard.press('Control+V');
  await expect.poll(() => reads(page, 'G2')).toBe(String(first * 12));
  await cell(page, 'G2').click();
  await expect.poll(() => page.getByRole('textbox', { name: 'Entry of G2' }).inputValue()).toBe('=F2*12');

  // Some spreadsheets tell formulas by rows and columns in the table beside the text.
  await page.evaluate(async () => {
    const html = '<table><tr><td>2</td><td data-sheets-formula="=R[0]C[-1]*3">6</td></tr></table>';
    const part = (type: string, text: string) => [type, new Blob([text], { type })] as const;
    const parts = Object.fromEntries([part('text/plain', '2\t6'), part('text/html', html)]);
    await navigator.clipboard.write([new ClipboardItem(parts)]);
  });
  await cell(page, 'I4').click();
  await page.keyboard.press('Control+V');
  await expect.poll(() => reads(page, 'J4')).toBe('6');
  await cell(page, 'J4').click();
  await expect.poll(() => page.getByRole('textbox', { name: 'Entry of J4' }).inputValue()).toBe('=I4*3');

  // Text alone doesn't say where its formulas stood: they stay as they read, and can be moved as from A1.
  await page.evaluate(() => navigator.clipboard.writeText('4\t=A1*2\r\n5\t=A2*2'));
  await cell(page, 'C9').click();
  await page.keyboard.press('Control+V');
  const entry = (name: string) => page.getByRole('textbox', { name: `Entry of ${name}` }).inputValue();
  await page.getByText('where its formulas stood is not on the clipboard').first().waitFor();
  await cell(page, 'D10').click();
  await expect.poll(() => entry('D10')).toBe('=A2*2');
  await page.getByRole('button', { name: 'They began in A1: move them' }).click();
  await expect.poll(() => reads(page, 'D10')).toBe('10');
  await cell(page, 'D10').click();
  await expect.poll(() => entry('D10')).toBe('=C10*2');

  // The page of keys has the paper's, and they do what it says.
  await page.keyboard.press('F1');
  const keys = page.getByRole('dialog', { name: 'Keys' });
  const ofPaper = keys.locator('section', { hasText: 'On scratch paper' });
  await ofPaper.waitFor();
  expect(await ofPaper.locator('dt').allTextContents()).toContain('To the last used cell');
  expect(await ofPaper.locator('kbd').allTextContents()).toContain('Ctrl D');
  await keys.getByRole('button', { name: 'Close' }).click();
  await cell(page, 'D10').click();
  await page.keyboard.press('Home');
  await page.getByRole('textbox', { name: 'Entry of A10' }).waitFor();
  await page.keyboard.press('Control+Home');
  await page.getByRole('textbox', { name: 'Entry of A1' }).waitFor();

  // Another paper reads the first, also under its new name.
  await page.getByRole('button', { name: 'New paper' }).click();
  await type(page, 'A1', "='Scratch paper'!J4+1");
  await expect.poll(() => reads(page, 'A1')).toBe('7');
  const papers = page.getByRole('navigation', { name: 'Scratch papers' });
  await papers.getByRole('button', { name: 'Scratch paper', exact: true }).click();
  await page.getByRole('button', { name: 'Rename' }).click();
  await page.getByRole('textbox', { name: 'Name of the paper' }).fill('Sums');
  await page.keyboard.press('Enter');
  await papers.getByRole('button', { name: 'Scratch paper 2' }).click();
  await cell(page, 'A1').click();
  await expect.poll(() => page.getByRole('textbox', { name: 'Entry of A1' }).inputValue()).toBe("='Sums'!J4+1");
  expect(await reads(page, 'A1')).toBe('7');
  expect(await faults(page, { within: '.scratch-page' })).toEqual([]);
  expect(problems).toEqual([]);
  await close();
});

test('a sum is typed with the names that are offered, and turns into a column', async () => {
  const { page, problems, close } = await openWorkbook({ width: 1440, height: 900 });
  await openPaper(page);
  await type(page, 'A1', '3');
  await cell(page, 'E4').click();
  await page.keyboard.type('Twice');
  await page.keyboard.press('Tab');
  await page.keyboard.type('=INDEX(Plantings_In_row');
  await page
    .getByRole('list', { name: 'Names to write' })
    .getByRole('button', { name: 'Plantings_In_row_spacing_in' })
    .click();
  // A cell that is pressed is written into the formula.
  await page.keyboard.type(',1)*');
  await cell(page, 'A1').click();
  await page.keyboard.press('Enter');
  await expect.poll(() => reads(page, 'F4')).toBe('24');
  await cell(page, 'F4').click();
  await page.getByRole('button', { name: 'Turn into a column' }).click();
  const dialog = page.getByRole('dialog', { name: 'Turn F4 into a column' });
  await dialog.getByText('it gives 24, as on the paper').waitFor();
  expect(await dialog.locator('output').textContent()).toBe('=([In-row spacing] / (1 in)) * 3');
  expect(await dialog.getByRole('textbox', { name: 'Name of the column' }).inputValue()).toBe('Twice');
  await dialog.getByRole('button', { name: 'Add the column' }).click();
  await page.getByText('Twice is a column of Plantings now.', { exact: true }).first().waitFor();
  await page
    .locator('.top-acts')
    .getByRole('button', { name: /^Undo.*into the column Twice/ })
    .waitFor();
  expect(problems).toEqual([]);
  await close();
});
