// The short way into a season of one's own, as a newcomer goes it: a town, twelve months, beds, crops; every answer stands in the
// workbook at once, and the way ends in a plan.

import { expect, test } from 'vitest';
import { openWorkbook, reload, workbookAddress } from '../harness.ts';
import { faults } from '../looks/guidelines.ts';
import { openSmallWorkbook } from '../small-workbook.ts';

const MONTHS = [
  'January 8 25',
  'February 12 30',
  'March 23 41',
  'April 35 57',
  'May 46 69',
  'June 56 78',
  'July 60 82',
  'August 58 80',
  'September 49 71',
  'October 38 58',
  'November 26 41',
  'December 14 29',
];

test('from four answers to a plan', async () => {
  const fetched: string[] = [];
  const { page, problems } = await openWorkbook({
    width: 1440,
    height: 900,
    bare: true,
    prepare: async (context) => context.on('request', (made) => fetched.push(new URL(made.url()).pathname)),
  });
  // Nothing is worked out, nor the demo fetched, before one is chosen; keys that want a workbook do nothing.
  for (const way of ['Begin my season', 'Open the demo farm', 'Open a file']) {
    await page.getByRole('button', { name: way }).waitFor();
  }
  expect(fetched.filter((path) => /farm|demo/.test(path))).toEqual([]);
  for (const keys of ['Control+z', 'Control+k', 'Control+f', 'Delete']) await page.keyboard.press(keys);
  expect(await faults(page, { within: 'main' })).toEqual([]);

  await page.getByRole('button', { name: 'Begin my season' }).click();
  const visit = page.getByRole('main', { name: 'A new season' });
  await visit.waitFor();

  const town = visit.getByLabel('A town near you');
  await town.fill('Nowhere');
  await page.keyboard.press('Tab');
  await visit.getByText('“Nowhere” is not in the list').waitFor();
  // A town that may be meant is taken with a press, and the keys go on from where it was asked for.
  await town.fill('Portland');
  await page.keyboard.press('Tab');
  await visit.getByRole('button', { name: 'Portland, Maine' }).click();
  expect(await town.inputValue()).toBe('Portland, Maine');
  expect(await town.evaluate((box) => box === document.activeElement)).toBe(true);
  await town.fill('Madison');
  await page.keyboard.press('Tab');
  await visit.getByText('The longest day has 15.4 h').waitFor();

  const months = visit.getByLabel(/^Twelve months/);
  await months.fill(MONTHS.slice(1).join('\n'));
  await page.keyboard.press('Tab');
  await visit.getByText('11 lines could be read').waitFor();
  // Degrees of the other scale are noticed, and taken as what they are.
  const celsius = MONTHS.map((line) => {
    return line.replace(/-?\d+(\.\d+)?/g, (degrees) => ((Number(degrees) - 32) / 1.8).toFixed(1));
  });
  await months.fill(celsius.join('\n'));
  await page.keyboard.press('Tab');
  await visit.getByText(/Even the warmest month is too cold/).waitFor();
  await visit.getByRole('button', { name: 'They are in °C' }).click();
  await visit.getByText(/Even the warmest month is too cold/).waitFor({ state: 'detached' });
  await visit.getByText(/In the average year no frost falls from/).waitFor();
  await months.fill(MONTHS.join('\n'));
  await page.keyboard.press('Tab');
  await visit.getByText(/In the average year no frost falls from/).waitFor();

  await visit.getByLabel('How many').fill('6');
  await visit.getByRole('button', { name: 'Lay them out' }).click();
  await visit.getByText('6 beds, 300 ft in all.').waitFor();

  for (const crop of ['lettuces', 'carrots', 'kale']) {
    await visit.getByLabel('Find a crop').fill(crop);
    await visit.locator('.first-crops').getByRole('checkbox').first().click();
  }
  const plan = visit.getByRole('region', { name: 'Plantings so far' });
  await expect.poll(() => plan.locator('tbody tr').count()).toBe(3);
  expect(await plan.locator('tbody tr', { hasText: 'Carrot' }).textContent()).toMatch(
    /direct seed.*in5\d+ \w+ 2\d\d\d/,
  );

  await visit.getByRole('button', { name: 'Find beds for the 3 that have none' }).click();
  await expect.poll(() => plan.locator('tbody td', { hasText: /^Bed \d$/ }).count()).toBe(3);
  expect(await faults(page, { within: 'main' })).toEqual([]);

  await visit.getByRole('button', { name: 'To the season at a glance' }).click();
  const glance = page.getByRole('main', { name: 'The season at a glance' });
  await glance.getByRole('button', { name: /^Carrot, Carrot, on Bed \d/ }).waitFor();
  // The browser's own way back leads to the questions, and leaves the program only once it was said.
  await page.goBack();
  await visit.waitFor();
  await page.goBack();
  await page.locator('.message', { hasText: 'One more step back leaves the program' }).waitFor();
  expect(await visit.count()).toBe(1);
  await visit.getByRole('button', { name: 'To the season at a glance' }).click();
  await glance.getByRole('button', { name: 'Back to the first questions' }).waitFor();

  // However short the names of its rows, a sheet says in full where a new one begins.
  await page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: /^Beds/ }).first().click();
  const newRow = page.locator('.ag-cell:has(.new-row)');
  expect(await newRow.textContent()).toBe('New row');
  expect(await newRow.evaluate((cell) => cell.scrollWidth <= cell.clientWidth)).toBe(true);
  expect(problems).toEqual([]);
});

test('a crop unticked is gone, and the demo farm is one press away', async () => {
  const { page } = await openSmallWorkbook({ width: 1024, height: 768 });
  await page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: 'At a glance' }).click();
  await page.getByRole('button', { name: 'Begin a season of your own' }).click();
  const visit = page.getByRole('main', { name: 'A new season' });
  await visit.getByLabel('Find a crop').fill('kale');
  const tick = visit.locator('.first-crops').getByRole('checkbox', { name: 'Kale', exact: true });
  await tick.click();
  await visit.getByRole('region', { name: 'Plantings so far' }).waitFor();
  // Half answered, the questions are there again after a reload.
  await page.getByText(/kept on this computer, \d\d:\d\d/).waitFor();
  await reload(page);
  await visit.getByRole('region', { name: 'Plantings so far' }).waitFor();
  await visit.getByLabel('Find a crop').fill('kale');
  await tick.click();
  await expect.poll(() => visit.getByRole('region', { name: 'Plantings so far' }).count()).toBe(0);
  await visit.getByRole('button', { name: 'Open the demo farm' }).click();
  await page.getByRole('main', { name: 'The season at a glance' }).waitFor();
  // What is not changed yet is there again by its address; once changed it is what the bare address opens.
  await reload(page);
  await page.getByRole('main', { name: 'The season at a glance' }).waitFor();
  await page.getByText('cm, kg', { exact: true }).click();
  await page.getByText(/kept on this computer, \d\d:\d\d/).waitFor();
  await page.goto('about:blank');
  await page.goto(workbookAddress());
  await page.getByRole('main', { name: 'The season at a glance' }).waitFor();
  expect(await page.locator('.first-choice').count()).toBe(0);
});

test('south of the equator the season runs over New Year, and the climate of another place is noticed', async () => {
  const { page, problems } = await openWorkbook({
    width: 1440,
    height: 900,
    bare: true,
    prepare: async (context) => {
      await context.addInitScript(() => {
        Object.defineProperty(navigator, 'languages', { get: () => ['de-DE'] });
      });
    },
  });
  await page.getByRole('button', { name: 'Begin my season' }).click();
  const visit = page.getByRole('main', { name: 'A new season' });
  await visit.getByLabel('A town near you').fill('Cape Town');
  await page.keyboard.press('Tab');
  await visit.getByText(/The longest day has/).waitFor();
  const type = async (name: string, entry: string): Promise<void> => {
    const field = visit.getByLabel(name, { exact: true });
    await field.click();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type(entry);
    await page.keyboard.press('Enter');
  };
  await type('Average last frost', '20.8.');
  await type('Average first frost', '10. Juni');
  await visit.getByText(/no frost falls from 20\. Aug\. (\d+) to 10\. Juni \d+: 29\d days\./).waitFor();
  // Never a negative number of days.
  await type('Average first frost', '2027-06-10');
  await visit.getByText(/does not come after the last of spring, 20\. Aug\./).waitFor();
  expect(await visit.textContent()).not.toMatch(/-\d+ days/);
  // A northern summer under a southern latitude.
  await visit
    .getByLabel(/^Twelve months/)
    .fill(MONTHS.join('\n').replace(/-?\d+/g, (f) => String(Math.round((Number(f) - 32) / 1.8))));
  await page.keyboard.press('Tab');
  await visit.getByText(/The climate is warmest in July, in the middle of winter at this latitude/).waitFor();
  await type('Latitude', '43');
  await visit.getByText(/The climate is warmest in July/).waitFor({ state: 'detached' });
  expect(problems).toEqual([]);
});
