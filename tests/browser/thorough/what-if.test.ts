// What if, used as a person would: a branch made, worked in, compared, taken over and thrown away; a value sought; a table of two
// inputs; the season drawn by chance.

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { reload } from '../harness.ts';
import { faults } from '../looks/guidelines.ts';
import { oneOnionPage, onePage } from '../one-page.ts';

const PLANTING = 'Keeper clumps';

async function goTo(page: Page, row: string): Promise<void> {
  await page.locator('#go-to').fill(row);
  await page.getByRole('option', { name: row }).filter({ hasText: 'row of' }).first().click();
  if ((await page.locator('.panel-inside').count()) === 0) await page.locator('.fold').click();
  await page.locator('.row-panel h2', { hasText: row }).waitFor();
}

async function typeSpacing(page: Page, entry: string): Promise<void> {
  const field = page.locator('.spacing > .field');
  await field.locator('.field-value').click();
  await field.locator('.entry-box').fill(entry);
  await page.keyboard.press('Enter');
}

async function spacing(page: Page): Promise<string> {
  return ((await page.locator('.spacing > .field .field-value').textContent()) ?? '').trim();
}

async function whatIf(page: Page) {
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: 'What if' }).click();
  const dialog = page.getByRole('dialog', { name: 'What if' });
  await dialog.waitFor();
  return dialog;
}

test('a branch is worked in, compared, taken over by single changes and thrown away', async () => {
  const { page } = await oneOnionPage();
  await goTo(page, PLANTING);
  const before = await spacing(page);
  const dialog = await whatIf(page);
  await dialog.getByRole('textbox', { name: 'Name of a new branch', exact: true }).fill('Wider');
  await dialog.getByRole('button', { name: 'Branch the plan' }).click();
  const bar = page.locator('.branch-bar');
  await bar.getByText('Wider').waitFor();
  await typeSpacing(page, '14 in');
  await expect.poll(() => spacing(page)).toContain('14');
  await bar.getByRole('button', { name: 'Back to the plan' }).click();
  await bar.waitFor({ state: 'detached' });
  await expect.poll(() => spacing(page)).toBe(before);

  const again = await whatIf(page);
  const branch = again.getByRole('article', { name: 'Wider' });
  await branch.getByText('In-row spacing: 14 in').waitFor();
  const totals = again.locator('table', { hasText: 'Totals' });
  const margin = await totals.locator('tr', { hasText: 'Margin' }).textContent();
  expect(margin).toMatch(/[+−][\d.,]+ USD/);
  expect(await faults(page, { within: 'dialog.what-if' })).toEqual([]);

  await branch.getByRole('button', { name: 'Take over' }).click();
  await branch.getByText('Nothing is changed in it yet.').waitFor();
  await branch.getByRole('button', { name: 'Throw it away' }).click();
  await branch.waitFor({ state: 'detached' });
  await again.getByRole('button', { name: 'Close' }).click();
  await expect.poll(() => spacing(page)).toContain('14');
  // One step back brings the branch again, another takes what was taken over back.
  await page.locator('.top-acts').getByRole('button', { name: /^Undo/ }).click();
  await page.locator('.top-acts').getByRole('button', { name: /^Undo/ }).click();
  await expect.poll(() => spacing(page)).toBe(before);
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Versions', exact: true }).click();
  await page.getByRole('listitem').filter({ hasText: 'Before a branch was taken over' }).waitFor();
});

test('a value is sought, two are tabled, the season is drawn, and the answers are there after a reload', async () => {
  const { page } = await oneOnionPage();
  await goTo(page, PLANTING);
  await typeSpacing(page, '13 in');
  await page.getByText(/kept on this computer, \d\d:\d\d/).waitFor();
  const dialog = await whatIf(page);
  const cell = async (legend: string, column: string) => {
    const group = dialog.getByRole('group', { name: legend });
    await group.locator('select').nth(0).selectOption({ label: 'Plantings' });
    await group.locator('select').nth(1).selectOption({ label: PLANTING });
    await group.locator('select').nth(2).selectOption({ label: column });
  };
  await dialog.getByText('Seek', { exact: true }).click();
  await cell('Cell to try', 'Bed length used');
  await dialog.getByRole('textbox', { name: 'From', exact: true }).fill('10 ft');
  await dialog.getByRole('textbox', { name: 'To', exact: true }).fill('60 ft');
  await dialog.getByRole('group', { name: 'Figure' }).locator('select').selectOption({ label: 'Yield to sell' });
  await dialog.getByRole('textbox', { name: 'Goal', exact: true }).fill('1 USD');
  await dialog.getByRole('button', { name: 'Seek' }).click();
  await dialog.getByText('1 USD is an amount of money; this figure wants a mass, such as 8 lb.').waitFor();
  // A bare goal is in the unit in which the figure is shown.
  await dialog.getByRole('textbox', { name: 'Goal', exact: true }).fill('1');
  await dialog.getByRole('button', { name: 'Seek' }).click();
  await dialog.getByText(/never reaches 1 lb\. It comes nearest at 10 ft/).waitFor();

  await dialog.getByText('Table', { exact: true }).click();
  await cell('Down', 'In-row spacing');
  await cell('Across', 'Bed length used');
  await dialog.getByRole('textbox', { name: 'Values down', exact: true }).fill('6 in; 9 in; 12 in');
  await dialog.getByRole('textbox', { name: 'Values across, or none', exact: true }).fill('20..40 ft by 20 ft');
  await dialog.getByRole('button', { name: 'Make the table' }).click();
  const heat = dialog.locator('table.heat');
  await heat.waitFor();
  expect(await heat.locator('td').count()).toBe(6);
  expect(await heat.locator('td').first().textContent()).toMatch(/USD$/);

  await dialog.getByText('How likely', { exact: true }).click();
  await dialog.getByRole('textbox', { name: 'Seasons', exact: true }).fill('20');
  await dialog.getByRole('button', { name: 'Draw the season' }).click();
  await dialog.getByText(/20 seasons, seed 1/).waitFor();
  await dialog.getByText(/in half below .* USD/).waitFor();
  expect(await dialog.locator('meter').count()).toBeGreaterThan(0);

  // What is cancelled leaves no answer, and the workers stay for the next drawing, which is the same.
  const likely = await dialog.locator('output').textContent();
  const workers = page.workers();
  expect(workers.length).toBeGreaterThan(0);
  await dialog.getByRole('textbox', { name: 'Seasons', exact: true }).fill('20000');
  await dialog.getByRole('button', { name: 'Draw the season' }).click();
  await dialog.getByRole('progressbar', { name: 'Seasons drawn' }).waitFor();
  await dialog.getByRole('button', { name: 'Cancel' }).click();
  expect(await dialog.locator('progress, output').count()).toBe(0);
  await dialog.getByRole('textbox', { name: 'Seasons', exact: true }).fill('20');
  await dialog.getByRole('button', { name: 'Draw the season' }).click();
  await dialog.getByText(/20 seasons, seed 1/).waitFor();
  expect(await dialog.locator('output').textContent()).toBe(likely);
  expect(page.workers()).toEqual(workers);
  expect(await faults(page, { within: 'dialog.what-if' })).toEqual([]);
  await dialog.getByRole('button', { name: 'Close' }).click();

  const bar = page.locator('.likely-bar');
  await bar.waitFor();
  const said = await bar.locator('span').textContent();
  await reload(page);
  await bar.waitFor();
  expect(await bar.locator('span').textContent()).toBe(said);
  await goTo(page, PLANTING);
  await typeSpacing(page, '12 in');
  await bar.getByText('Old, the plan has changed since:').waitFor();
  await page.getByText(/kept on this computer, \d\d:\d\d/).waitFor();
  await reload(page);
  await bar.getByText('Old, the plan has changed since:').waitFor();
  await bar.getByRole('button', { name: 'Draw again' }).click();
  await dialog.getByText('(old: the plan has changed since)').waitFor();
  await dialog.getByText('Seek', { exact: true }).click();
  await dialog.getByText(/Old, the plan has changed since: .*never reaches 1 lb/).waitFor();
  await dialog.getByRole('button', { name: 'Close' }).click();
  await bar.getByRole('button', { name: 'Put away' }).click();
  await bar.waitFor({ state: 'detached' });
});

test('a drawing goes on while the plan is changed and its part opened again, and its answer is marked old', async () => {
  const { page } = await oneOnionPage();
  const dialog = await whatIf(page);
  await dialog.getByText('How likely', { exact: true }).click();
  await dialog.getByRole('textbox', { name: 'Seasons', exact: true }).fill('6000');
  await dialog.getByRole('button', { name: 'Draw the season' }).click();
  await dialog.getByRole('progressbar', { name: 'Seasons drawn' }).waitFor();
  await dialog.getByRole('button', { name: 'Close' }).click();
  await goTo(page, PLANTING);
  await typeSpacing(page, '11 in');
  await whatIf(page);
  await dialog.getByText('How likely', { exact: true }).click();
  await dialog.getByRole('progressbar', { name: 'Seasons drawn' }).waitFor();
  await dialog.getByText('(old: the plan has changed since)').waitFor({ timeout: 60_000 });
});

test('figures by week fan out, an input is drawn against several figures, and amounts are chosen', async () => {
  const { page } = await onePage();
  await goTo(page, PLANTING);
  await page.getByText('cm, kg').click();
  const dialog = await whatIf(page);
  await dialog.getByText('Seek', { exact: true }).click();
  await dialog.locator('select').nth(2).selectOption({ label: 'Bed length used' });
  await dialog.getByRole('textbox', { name: 'From', exact: true }).fill('3');
  await dialog.getByRole('textbox', { name: 'To', exact: true }).fill('20');
  await dialog.getByRole('group', { name: 'Figure' }).locator('select').selectOption({ label: 'Yield to sell' });
  await dialog.getByRole('textbox', { name: 'Goal', exact: true }).fill('1');
  await dialog.getByRole('button', { name: 'Seek' }).click();
  await dialog.getByText(/From 3 m to 20 m, Yield to sell stays between .* never reaches 1 kg\./).waitFor();

  await dialog.getByText('How likely', { exact: true }).click();
  await dialog.locator('select').first().selectOption('week hours-over');
  await dialog.getByRole('textbox', { name: 'Goal', exact: true }).fill('14 m');
  await dialog.getByRole('button', { name: 'Draw the season' }).click();
  await dialog.getByText(/14 m is a length; this figure wants/).waitFor();
  await dialog.getByRole('textbox', { name: 'Goal', exact: true }).fill('');
  await dialog.getByRole('textbox', { name: 'Seasons', exact: true }).fill('20');
  await dialog.getByRole('button', { name: 'Draw the season' }).click();
  await dialog.getByText(/20 seasons, seed 1/).waitFor();
  await dialog
    .getByText(/More work than hands/)
    .first()
    .waitFor();
  await dialog.getByText('Show as table').click();
  expect(await dialog.locator('.farm-picture th').allTextContents()).toContain('More work than hands');

  await dialog.getByText('Curves', { exact: true }).click();
  await dialog.locator('select').nth(2).selectOption({ label: 'In-row spacing' });
  await dialog.getByRole('textbox', { name: 'Values', exact: true }).fill('6 in; 8 in');
  await dialog.getByRole('button', { name: 'Draw the curves' }).click();
  await expect.poll(() => dialog.locator('.farm-picture').count()).toBe(3);
  expect(await faults(page, { within: 'dialog.what-if' })).toEqual([]);

  await dialog.getByText('Choose', { exact: true }).first().click();
  await dialog.getByRole('button', { name: 'Choose', exact: true }).click();
  await dialog.getByText('What holds it back').waitFor();
  expect(await faults(page, { within: 'dialog.what-if' })).toEqual([]);
  await dialog.getByRole('button', { name: 'Keep as a branch' }).click();
  await page.locator('.branch-bar').getByText('Most margin').waitFor();
});
