// The built page opens under its security policy, asks nobody for anything, and the harness would notice if it did.

import { expect, test } from 'vitest';
import { drawFrames, openWorkbook, workbookAddress } from './harness.ts';

test('the workbook opens without an error and asks only its own address', async () => {
  const { page, problems, requestsElsewhere, requestsAfterLoad } = await openWorkbook();
  expect(await page.title()).toContain('Dibble');
  expect(await page.locator('body').textContent()).toMatch(/\S/);
  // Nothing makes the page longer than its window, where a key or a click could move it.
  for (const [place, drawn] of [
    ['At a glance', '.glance'],
    ['Pictures', '.picture-page'],
    ['Farm', '.form-sheet'],
    ['Plantings', '.row-panel'],
  ] as const) {
    await page.locator('.sheet-list button', { hasText: place }).first().click();
    await page.locator(drawn).first().waitFor();
    const sizes = await page.evaluate(() => [
      document.documentElement.scrollHeight,
      document.documentElement.scrollWidth,
    ]);
    expect(sizes, place).toEqual(await page.evaluate(() => [innerHeight, innerWidth]));
  }
  await drawFrames(page, 30);
  expect(problems).toEqual([]);
  expect(requestsElsewhere).toEqual([]);
  expect(requestsAfterLoad).toEqual([]);
});

test('the policy in the page forbids code made from text and inline scripts', async () => {
  const { page } = await openWorkbook({ bare: true });
  const policy = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
  expect(policy).toContain("script-src 'self';");
  expect(policy).not.toContain('unsafe');
  expect(await page.locator('script:not([src])').count()).toBe(0);
  const answer = await page.request.get(workbookAddress());
  expect(answer.headers()['content-security-policy']).toContain(policy);
});

test('a console error, a blocked script and a request elsewhere are noticed', async () => {
  const { page, problems, requestsElsewhere, requestsAfterLoad } = await openWorkbook({ bare: true });
  await page.evaluate(() => {
    console.error('a line on the console');
    const script = document.createElement('script');
    script.textContent = 'globalThis.ranInline = true;';
    document.head.append(script);
    setTimeout(() => {
      throw new Error('thrown by the page');
    });
  });
  const evaluated = await page.evaluate(() => {
    const frame = document.createElement('img');
    frame.src = 'http://127.0.0.1:9/picture.png';
    document.body.append(frame);
    void fetch('./asked-after-load').catch(() => undefined);
    return Reflect.get(globalThis, 'ranInline') === true;
  });
  expect(evaluated).toBe(false);
  await expect.poll(() => problems.join('\n')).toMatch(/a line on the console/);
  await expect.poll(() => problems.join('\n')).toMatch(/uncaught: thrown by the page/);
  await expect.poll(() => problems.join('\n')).toMatch(/blocked by the policy: script-src-elem inline/);
  await expect.poll(() => problems.join('\n')).toMatch(/blocked by the policy: img-src http:\/\/127\.0\.0\.1:9/);
  await expect.poll(() => requestsAfterLoad.join('\n')).toMatch(/asked-after-load/);
  expect(requestsElsewhere.every((address) => address.startsWith('http://127.0.0.1:9/'))).toBe(true);
});

test('the window, its colours and its storage are the ones asked for', async () => {
  const narrow = await openWorkbook({ width: 390, height: 844, colorScheme: 'dark', bare: true });
  expect(await narrow.page.evaluate(() => [innerWidth, matchMedia('(prefers-color-scheme: dark)').matches])).toEqual([
    390,
    true,
  ]);
  await narrow.page.evaluate(() => localStorage.setItem('left', 'here'));
  const other = await openWorkbook({ bare: true });
  expect(await other.page.evaluate(() => localStorage.getItem('left'))).toBeNull();
});
