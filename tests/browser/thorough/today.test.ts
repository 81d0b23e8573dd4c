// The phone at the end of a bed: it opens on today, a job is done with one touch, a picking is noted in three, a photo is kept with a
// job, a bed is found by its name; everything can be hit with a wet thumb and read in the sun.

import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { onePhone } from '../one-page.ts';

async function openPhone(): Promise<{ readonly page: Page; readonly problems: readonly string[] }> {
  const { page, problems } = await onePhone();
  await page.locator('.today').waitFor();
  return { page, problems };
}

/** A picture of one colour, larger than what is kept. */
async function picture(page: Page): Promise<Buffer> {
  const bytes = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(2600, 1300);
    const pen = canvas.getContext('2d');
    if (pen === null) return [];
    pen.fillStyle = '#486';
    pen.fillRect(0, 0, 2600, 1300);
    return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/png' })).arrayBuffer())];
  });
  return Buffer.from(bytes);
}

/** Does one thing with the photos that the browser keeps; gives the keys of all of them then. */
function withPhotos(page: Page, moved: readonly [from: string, to: string] | undefined): Promise<readonly string[]> {
  return page.evaluate(
    (move) =>
      new Promise<readonly string[]>((resolve, reject) => {
        const asked = indexedDB.open('dibble photos');
        asked.onerror = () => reject(asked.error);
        asked.onsuccess = () => {
          const work = asked.result.transaction('photos', 'readwrite');
          const photos = work.objectStore('photos');
          if (move !== undefined) {
            const photo = photos.get(move[0]);
            photo.onsuccess = () => {
              photos.put(photo.result, move[1]);
              photos.delete(move[0]);
            };
          }
          const keys = photos.getAllKeys();
          work.oncomplete = () => {
            asked.result.close();
            resolve(keys.result.map(String));
          };
        };
      }),
    moved,
  );
}

const photoKeys = (page: Page): Promise<readonly string[]> => withPhotos(page, undefined);
const movePhoto = (page: Page, from: string, to: string): Promise<readonly string[]> => withPhotos(page, [from, to]);

test('it opens on the day’s jobs, and one touch does one', async () => {
  const { page, problems } = await openPhone();
  expect(await page.locator('.phone-bar [aria-current="page"]').textContent()).toBe('Today');
  const ticks = page.locator('.today-tick');
  const before = await ticks.count();
  expect(before).toBeGreaterThan(0);
  const box = await ticks.first().boundingBox();
  expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(48);
  await ticks.first().click();
  await page.locator('.message', { hasText: ': done.' }).waitFor();
  await page.locator('.phone-undo').click();
  await expect.poll(() => ticks.count()).toBe(before);
  expect(problems).toEqual([]);
});

test('a job opens to its hours and note, and a photo is kept with it, made small', async () => {
  const { page, problems } = await openPhone();
  await page.locator('.today-job').first().click();
  const details = page.locator('.today-details');
  await details.locator('.field', { hasText: 'Hours taken' }).locator('.field-value').click();
  // What refuses an entry stands within the narrowest screen, too.
  await page.setViewportSize({ width: 320, height: 640 });
  await details.locator('.entry-box').fill('1:30');
  const refusal = await page.locator('.entry-under', { hasText: ':30' }).boundingBox();
  expect(refusal?.x).toBeGreaterThanOrEqual(0);
  expect((refusal?.x ?? 0) + (refusal?.width ?? 320)).toBeLessThanOrEqual(320);
  await page.setViewportSize({ width: 390, height: 844 });
  await details.locator('.entry-box').fill('1.5');
  await page.keyboard.press('Enter');
  await details.locator('.field-value', { hasText: '1.5' }).waitFor();
  await details.locator('input[type="file"]').setInputFiles({
    name: 'bed.png',
    mimeType: 'image/png',
    buffer: await picture(page),
  });
  const photo = details.getByRole('img', { name: 'Taken with this job' });
  await expect.poll(() => photo.evaluate((image: HTMLImageElement) => image.naturalWidth)).toBe(1280);
  // It is of this workbook's season; one of before photos said so is found all the same, and is of it from then on.
  const [key = ''] = await photoKeys(page);
  expect(key).toMatch(/^\w+ 2027 tasks /);
  await movePhoto(page, key, key.replace(/^.* tasks/, 'tasks'));
  await page.locator('.today-job').first().click();
  await page.locator('.today-job').first().click();
  await photo.waitFor();
  expect(await photoKeys(page)).toEqual([key]);
  await details.getByRole('button', { name: 'Remove the photo' }).click();
  await expect.poll(() => photo.count()).toBe(0);
  expect(problems).toEqual([]);
});

test('a picking is noted in three touches', async () => {
  const { page } = await openPhone();
  await page.getByRole('button', { name: 'A picking' }).click();
  const which = page.getByRole('region', { name: 'A picking of which planting' });
  const offered = which.locator('.phone-list button');
  await expect.poll(() => offered.count()).toBe(8);
  await which.getByRole('button', { name: /^All \d+/ }).click();
  await which.getByRole('searchbox', { name: 'Name or bed' }).fill('GARLIC');
  await expect
    .poll(() => offered.allTextContents().then((all) => all.every((text) => /garlic/i.test(text))))
    .toBe(true);
  await which.getByRole('searchbox', { name: 'Name or bed' }).fill('');
  await offered.first().click();
  const box = page.getByRole('textbox', { name: /^Weight/ });
  await expect.poll(() => box.evaluate((input) => input === document.activeElement)).toBe(true);
  // The browser's own way back goes a step back within the note.
  await page.goBack();
  await page.getByRole('region', { name: 'A picking of which planting' }).waitFor();
  await page.goForward();
  await box.press('Enter');
  await page.locator('.today-step .level-error', { hasText: 'No figure is typed' }).waitFor();
  // What could be read in two ways is said before it is kept, and the button says which it will be.
  await box.fill('1,234');
  await page.getByText('Read as 1234 lb. If 1.234 lb is meant, write 1.234.').waitFor();
  await page.getByRole('button', { name: 'Keep 1234 lb' }).waitFor();
  await box.fill('1.234');
  await page.getByRole('button', { name: 'Keep it' }).waitFor();
  expect(await page.getByText(/^Read as/).count()).toBe(0);
  await box.fill('');
  await page.getByRole('button', { name: 'Keep without it' }).waitFor();
  await box.fill('a lot');
  await page.keyboard.press('Enter');
  await page.locator('.today-step .level-error', { hasText: 'a lot' }).waitFor();
  await box.fill('2 crates');
  await page.keyboard.press('Enter');
  await page.locator('.today-step .level-error', { hasText: '2 crates is a count' }).waitFor();
  await box.fill('12.5');
  await page.getByRole('button', { name: 'Keep it' }).click();
  await page.locator('.message', { hasText: 'is noted.' }).waitFor();
  // So is the amount of a job, which says it from then on.
  const picking = page.locator('.today-place li', { has: page.locator('b', { hasText: /^Pick$/ }) }).first();
  await picking.locator('.today-tick').click();
  await picking.locator('.today-job').click();
  await picking.getByRole('button', { name: 'Note how much' }).click();
  await page.goBack();
  await picking.getByRole('button', { name: 'Note how much' }).waitFor();
  await page.goForward();
  await picking.getByRole('textbox', { name: /^Weight/ }).waitFor();
  // A job that is closed over its box is done with the step, too.
  await picking.locator('.today-job').click();
  await picking.locator('.today-details').waitFor({ state: 'detached' });
  await picking.locator('.today-job').click();
  await picking.getByRole('button', { name: 'Note how much' }).click();
  await picking.getByRole('textbox', { name: /^Weight/ }).fill('3.5');
  await page.keyboard.press('Enter');
  await picking.locator('.field', { hasText: 'Amount' }).locator('.field-value', { hasText: '3.5' }).waitFor();
  await page.locator('.phone-bar button', { hasText: 'Sheets' }).click();
  await page
    .locator('.phone-list button', { hasText: /^Records\s*\d/ })
    .first()
    .click();
  await page.locator('.phone-cards button').first().waitFor();
});

test('a bed is found from the first place, and in the sun every text has seven to one', async () => {
  const { page } = await openPhone();
  await page.locator('.phone-search').fill('creek 3');
  await page.locator('.phone-list button', { hasText: 'Creek 3' }).first().click();
  await expect.poll(() => page.locator('.phone-top h1').textContent()).toBe('Creek 3');
  await page.locator('.phone-bar button', { hasText: 'Workbook' }).click();
  await page.getByText('Stronger, for the sun').click();
  await page.locator('.phone-bar button', { hasText: 'Today' }).click();
  await page.locator('.today-place').first().waitFor();
  await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    const run: unknown = Reflect.get(Reflect.get(globalThis, 'axe'), 'run');
    if (typeof run !== 'function') throw new Error('axe is not in the page.');
    const only = { type: 'rule', values: ['color-contrast-enhanced'] };
    const result = await run('.phone', { runOnly: only, rules: { 'color-contrast-enhanced': { enabled: true } } });
    return result.violations.flatMap((one: { nodes: { html: string; failureSummary: string }[] }) =>
      one.nodes.map((node) => `${node.html.slice(0, 120)} ${node.failureSummary}`),
    );
  });
  expect(found).toEqual([]);
});
