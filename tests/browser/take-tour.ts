// Takes the pictures of the README's tour from the running program: `npm start` in one place, `npm run tour` in another. An
// address other than the usual one may follow. Not a test.

import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { chromiumPath } from '../../ui/set-up.mjs';

const address = process.argv[2] ?? 'http://127.0.0.1:4173/#demo';
const folder = fileURLToPath(new URL('../../demo/tour/', import.meta.url));
const executablePath = chromiumPath();
if (executablePath === undefined) throw new Error('There is no Chromium: npm test installs one or says how to.');

async function open(browser: Browser, width: number, height: number): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height }, deviceScaleFactor: 1, colorScheme: 'light' });
  await page.goto(address, { waitUntil: 'networkidle' });
  return page;
}

async function goTo(page: Page, sheet: string): Promise<void> {
  await page.locator('nav').getByText(sheet, { exact: true }).first().click();
  await page.locator('.ag-row').first().waitFor();
}

async function take(page: Page, name: string): Promise<void> {
  await page.waitForTimeout(600);
  await page.screenshot({ path: `${folder}${name}.png` });
}

const browser = await chromium.launch({
  executablePath,
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ],
});
const page = await open(browser, 1440, 900);
await page.locator('.season-calendar').waitFor();
await take(page, 'glance');
await page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: 'Pictures' }).click();
await page.getByRole('navigation', { name: 'Pictures' }).getByRole('button', { name: 'Calendar of beds' }).click();
await page.getByRole('button', { name: /^Lettuce 2,/ }).focus();
await page.keyboard.press('Enter');
for (const key of ['ArrowRight', 'ArrowRight', 'ArrowDown']) await page.keyboard.press(key);
await take(page, 'moving');
await page.keyboard.press('Escape');
await goTo(page, 'Plantings');
await take(page, 'plantings');

const spacing = page.locator('.spacing > .field');
await spacing.locator('.field-value').click();
await spacing.locator('.entry-box').fill('6 in');
await page.keyboard.press('Enter');
await page.getByText('Mean plant mass against spacing').first().scrollIntoViewIfNeeded();
await take(page, 'spacing');

await goTo(page, 'Varieties');
await take(page, 'variety');
await goTo(page, 'Seed order');
await take(page, 'seed-order');
await page.locator('.ag-cell[col-id="seeds-to-buy"]').first().click();
await page.getByRole('region', { name: 'Formula' }).getByRole('textbox').fill('=MAX(0; [Seeds needed] - [Cost])');
await take(page, 'formula');
await page.keyboard.press('Escape');

const phone = await open(browser, 390, 844);
await take(phone, 'today');
await phone.locator('.phone-bar').getByText('Sheets').click();
await phone.getByText('Plantings', { exact: true }).first().click();
await phone.getByText('Keeper clumps', { exact: true }).first().click();
await take(phone, 'phone');
await browser.close();
