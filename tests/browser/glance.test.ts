// The season at a glance, as a person uses it: a workbook opens on it, every part is a door, jobs are ticked, a planting is moved
// on the calendar by keys, by buttons and by dragging, and what follows is shown meanwhile.

import { expect, test } from 'vitest';
import { atSheet, onePage } from './one-page.ts';

test('a workbook opens on the season at a glance, and each part leads to its sheet', async () => {
  const { page, problems } = await onePage();
  const glance = page.getByRole('main', { name: 'The season at a glance' });
  await glance.waitFor();
  await glance.getByRole('heading', { name: 'This week' }).waitFor();
  // Half the years have frost outside it: the band says of which frosts it speaks.
  expect(await glance.getByRole('img', { name: /^The year\./ }).textContent()).toMatch(
    /between the average frosts, \d+ \w+ \d{4} to \d+ \w+ \d{4}/,
  );
  expect(await glance.locator('.season-calendar .bar').count()).toBeGreaterThan(20);

  const list = page.getByRole('navigation', { name: 'Sheets' });
  const home = list.getByRole('button', { name: 'At a glance' });
  expect(await home.getAttribute('aria-current')).toBe('page');
  await glance.getByRole('button', { name: /Hours of work/ }).click();
  await page.getByRole('main', { name: 'Budget', exact: true }).waitFor();
  await home.click();
  await glance.getByRole('button', { name: /^All (jobs of the year|\d+ of this week, and the rest)$/ }).click();
  await page.getByRole('main', { name: 'Tasks', exact: true }).waitFor();
  await home.click();
  const first = glance.locator('.glance-attention button').first();
  const sheet = ((await first.locator('.where').textContent()) ?? '').split(':')[0] ?? '';
  await first.click();
  await page.getByRole('main', { name: sheet, exact: true }).waitFor();
  expect(problems).toEqual([]);
});

test('a job is ticked off where it stands, and undo takes the tick back', async () => {
  const { page } = await onePage();
  const open = page.locator('.glance-jobs li:not(.is-done)');
  await open.first().waitFor();
  const before = await open.count();
  const toDo = async (): Promise<number> => {
    const says = await page.getByText(/^Week \d+: \d+ jobs? to do/).textContent();
    return Number(/: (\d+) job/.exec(says ?? '')?.[1]);
  };
  const jobs = await toDo();
  await open.first().getByRole('checkbox').click();
  await expect.poll(() => open.count()).toBe(before - 1);
  await expect.poll(toDo).toBe(jobs - 1);
  await page.locator('.message').getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => open.count()).toBe(before);
  await expect.poll(toDo).toBe(jobs);
});

test('a job of an earlier week that is not done stands first, as late', async () => {
  const { book, page } = await atSheet('Tasks');
  await book.press(0, 'Done');
  await page.keyboard.type('no');
  await page.keyboard.press('Enter');
  await page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: 'At a glance' }).click();
  await expect.poll(() => page.locator('.glance-jobs li').first().textContent()).toContain('Late');
});

test('the keys walk the bars, take one in hand, move it and set it', async () => {
  const { page, problems } = await onePage();
  const bar = page.getByRole('button', { name: /^Lettuce 2,/ });
  const before = await bar.getAttribute('aria-label');
  await page.locator('.season-calendar .bar[tabindex="0"]').focus();
  await page.keyboard.press('ArrowDown');
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(/on Barn 2/);
  await bar.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowDown');
  const follows = page.getByRole('region', { name: 'Lettuce 2 in hand' });
  await follows.getByRole('heading', { name: 'Lettuce 2: 7 days later, to Barn 5.' }).waitFor();
  await follows.getByText('31 May 2027').waitFor();
  // With its buttons and all that changes it leaves most of the page to the calendar.
  const told = await follows.boundingBox();
  expect(told?.height ?? 0).toBeGreaterThan(100);
  expect(told?.height ?? 0).toBeLessThan(300);

  await page.keyboard.press('Escape');
  await expect.poll(() => follows.count()).toBe(0);
  expect(await bar.getAttribute('aria-label')).toBe(before);
  expect(await page.getByRole('button', { name: /^Undo/ }).isDisabled()).toBe(true);

  await bar.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expect.poll(() => bar.getAttribute('aria-label')).toContain('31 May 2027');
  expect(await page.locator('.message').textContent()).toContain('Lettuce 2: 7 days later.');
  await page.locator('.message').getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => bar.getAttribute('aria-label')).toBe(before);

  // Carried as far as it goes, it stands at the season's end and keeps the keys; those of another bar are that bar's.
  await bar.focus();
  await page.keyboard.press('Enter');
  for (let week = 0; week < 40; week += 1) await page.keyboard.press('ArrowRight');
  await follows.getByText('31 Dec 2027').first().waitFor();
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(/^Lettuce 2,/);
  await page.getByRole('button', { name: /^Lettuce 1,/ }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('region', { name: 'Lettuce 1 in hand' }).waitFor();
  await page.keyboard.press('Escape');
  await expect.poll(() => bar.getAttribute('aria-label')).toBe(before);
  expect(problems).toEqual([]);
});

test('buttons move it as the keys do', async () => {
  const { page } = await onePage();
  const bar = page.getByRole('button', { name: /^Lettuce 2,/ });
  await bar.click();
  const follows = page.getByRole('region', { name: 'Lettuce 2 in hand' });
  await follows.getByRole('button', { name: 'Day earlier' }).click();
  await follows.getByRole('combobox', { name: 'Bed' }).selectOption({ label: 'Orchard 2' });
  await follows.getByRole('heading', { name: 'Lettuce 2: 1 day earlier, to Orchard 2.' }).waitFor();
  await follows.getByRole('button', { name: 'Set it' }).click();
  await expect.poll(() => bar.getAttribute('aria-label')).toMatch(/on Orchard 2, 23 May 2027/);
});

test('in a low window what is moved by keys stays in sight above what is said of it', async () => {
  const { page } = await onePage();
  await page.setViewportSize({ width: 1280, height: 600 });
  const bar = page.getByRole('button', { name: /^Lettuce 2,/ });
  await bar.evaluate((each) => each.scrollIntoView({ block: 'end' }));
  await bar.focus();
  await page.keyboard.press('Enter');
  const follows = page.locator('.follows');
  const under = async (): Promise<number> => {
    const [told, held] = [await follows.boundingBox(), await page.locator('.bar.is-in-hand').boundingBox()];
    return held === null || told === null ? Number.NaN : held.y + held.height - told.y;
  };
  await expect.poll(under).toBeLessThanOrEqual(0);
  for (let bed = 0; bed < 6; bed += 1) {
    await page.keyboard.press('ArrowDown');
    await follows.getByText('Harvest from').waitFor();
    await expect.poll(under).toBeLessThanOrEqual(0);
  }
  await page.keyboard.press('Escape');
  await page.setViewportSize({ width: 1440, height: 900 });
});

test('a bar dragged along and down moves in time and to another bed; what follows is shown on the way', async () => {
  const { page } = await onePage();
  await page.locator('.season-calendar .bar').first().waitFor();
  const bar = page.getByRole('button', { name: /^Lettuce 1,/ });
  await bar.locator('.bar-body').waitFor();
  // The tests before have scrolled: the bar and the bed that it goes to are both in sight.
  await bar.evaluate((each) => each.scrollIntoView({ block: 'center' }));
  const box = await bar.locator('.bar-body').boundingBox();
  const target = await page.locator('.bed-name', { hasText: 'Creek 2' }).boundingBox();
  if (box === null || target === null) throw new Error('The calendar is not drawn.');
  await page.mouse.move(box.x + 20, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + 60, box.y + box.height / 2, { steps: 4 });
  await page.mouse.move(box.x + 140, target.y + target.height / 2, { steps: 4 });
  const follows = page.getByRole('region', { name: 'Lettuce 1 in hand' });
  await follows.getByText('Harvest from').waitFor();
  // What it says lies over the foot of the calendar, of which most stays in sight, with the bed under the pointer.
  const told = await follows.boundingBox();
  const view = await page.getByRole('main', { name: 'The season at a glance' }).boundingBox();
  if (told === null || view === null) throw new Error('What follows is not drawn.');
  expect(told.height).toBeLessThan(view.height / 3);
  expect(told.y).toBeGreaterThan(target.y + target.height);
  expect(await follows.getByRole('button').count()).toBe(0);
  await page.mouse.up();
  await expect.poll(() => bar.getAttribute('aria-label')).toContain('on Creek 2');
  await page.getByRole('button', { name: 'Undo Move Lettuce 1' }).waitFor();
});
