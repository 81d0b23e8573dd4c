// Figures and days as people write them where they live: the browser says how, typed and shown.

import { expect, test } from 'vitest';
import { at } from '../hands/hands.ts';

test('a German browser: comma, point between thousands, day before month, months by name', async () => {
  const { book, page, problems } = await at('Beds', { locale: 'de-DE' });
  await book.type(0, 'Length', '1,5');
  await expect.poll(() => book.read(0, 'Length')).toBe('1,5');
  await book.press(1, 'Length');
  await page.keyboard.type('1.234');
  await expect.poll(() => book.entryAnswer().textContent()).toMatch(/Read as 1\.?234.*If 1,234/);
  await page.keyboard.press('Escape');
  await book.openSheet('Plantings');
  await book.type(0, 'Sown', '3.4.2027');
  await expect.poll(() => book.read(0, 'Sown')).toBe('3. Apr. 2027');
  await book.type(0, 'Sown', '15. März 2027');
  await expect.poll(() => book.read(0, 'Sown')).toMatch(/15\. März/);
  // The sum of a selection writes its days as the cells do.
  await book.type(1, 'Sown', '16. März 2027');
  await book.press(0, 'Sown');
  await page.keyboard.press('Shift+ArrowDown');
  await expect.poll(() => page.locator('.bottom-line .summary').textContent()).toMatch(/15\. März.*16\. März/s);
  expect(problems).toEqual([]);
});

test('a British browser has the day first', async () => {
  const { book, page } = await at('Plantings', { locale: 'en-GB' });
  await book.press(0, 'Sown');
  await page.keyboard.type('3/4');
  await expect.poll(() => book.entryAnswer().textContent()).toMatch(/Read as 3 Apr 2027.*If 4 Mar 2027/);
  await page.keyboard.press('Enter');
  await expect.poll(() => book.read(0, 'Sown')).toBe('3 Apr 2027');
});
