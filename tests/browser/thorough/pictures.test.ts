// The pictures of the farm, as a person looks at them: each opens by its name, says in words what it shows, is read by keys and as a
// table, in light and dark and at three widths, without a part that reaches past the page.

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { faults, faultsInBoth } from '../looks/guidelines.ts';
import { onePage } from '../one-page.ts';
import { openSmallWorkbook } from '../small-workbook.ts';

async function openPictures(page: Page): Promise<void> {
  await page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: 'Pictures' }).click();
  await page.getByRole('main', { name: 'Pictures' }).waitFor();
  await page.locator('.farm-picture').first().waitFor();
}

async function choose(page: Page, name: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Pictures' }).getByRole('button', { name, exact: true }).click();
  await page.getByRole('region', { name, exact: true }).locator('.chart').first().waitFor();
}

/** Whether anything of the page's middle reaches past its right edge. */
function pastTheEdge(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    const main = document.querySelector('.picture-page');
    return main === null || main.scrollWidth > main.clientWidth + 1;
  });
}

/** What stands around a picture is looked at where the sheets are. */
const AROUND = ['.sheet-list', '.top-line', '.bottom-line'];

const NAMES = [
  'Calendar of beds',
  'Map of beds',
  'Room and hands',
  'Supply and demand',
  'Money',
  'How sure',
  'Spacing',
  'Plants in a block',
  'Seed with age',
  'Frost',
  'Climate',
];

test('every picture opens, fits wide and narrow windows, and keeps to the guidelines in light and dark', async () => {
  const { page, problems } = await onePage();
  await openPictures(page);
  for (const name of NAMES) {
    await choose(page, name);
    expect(await page.locator('.chart-says').first().textContent(), name).toMatch(/\.$/);
    expect(await pastTheEdge(page), name).toBe(false);
    expect(await faultsInBoth(page, { without: AROUND }), name).toEqual([]);
    await page.setViewportSize({ width: 1024, height: 900 });
    await expect.poll(() => pastTheEdge(page), { message: `${name} at 1024` }).toBe(false);
    expect(await faults(page, { within: 'main', rules: 'structure' }), `${name} at 1024`).toEqual([]);
    await page.setViewportSize({ width: 1440, height: 900 });
  }
  // Climate, the last of them: what a crop likes lies over the days' lows and highs and lets them be seen.
  const { covers, likes } = await page.evaluate(() => {
    const bands = [...document.querySelectorAll('.farm-picture path[class^="band-"]')];
    return { covers: bands.length, likes: Number(getComputedStyle(bands.at(-1) ?? document.body).fillOpacity) };
  });
  expect(covers).toBe(2);
  expect(likes).toBeLessThan(0.5);
  await page.emulateMedia({ forcedColors: 'active' });
  const filled = (...marks: readonly string[]): Promise<readonly string[]> =>
    page.evaluate(
      (all) =>
        all.map((mark) => {
          const drawn = document.querySelector(`.farm-picture ${mark}`);
          return drawn === null ? mark : getComputedStyle(drawn).fill;
        }),
      marks,
    );
  await choose(page, 'Room and hands');
  const room = await filled('rect.mark-second');
  await choose(page, 'Map of beds');
  const fills = [...room, ...(await filled('.picture-legend .mark-over', '.hatch-line'))];
  // What is too much has another colour than what is not, and the same in the picture and its legend.
  expect(new Set(fills).size).toBe(2);
  expect(fills[1]).toBe(fills[2]);
  // Bars of the calendar, what is soft at their ends, and rules, as the legend and the map have them, not in the theme's pale ones.
  await choose(page, 'Calendar of beds');
  const drawn = await page.evaluate(() => {
    const style = (mark: string, of: 'fill' | 'stroke' | 'stopColor'): string => {
      const found = document.querySelector(`.farm-picture ${mark}`);
      return found === null ? mark : getComputedStyle(found)[of];
    };
    return {
      ground: [style('.bar-body', 'fill'), style('.picture-legend .mark-planting', 'fill')],
      ink: [
        style('.bar-body', 'stroke'),
        style('.soft-from', 'stopColor'),
        style('.axis-rule', 'stroke'),
        style('.bed-name', 'fill'),
        style('.picture-legend .mark-planting', 'stroke'),
      ],
    };
  });
  expect(new Set(drawn.ground).size).toBe(1);
  expect(new Set(drawn.ink).size, drawn.ink.join(' ')).toBe(1);
  await choose(page, 'Room and hands');
  const border = (name: string): Promise<string> =>
    page
      .getByRole('navigation', { name: 'Pictures' })
      .getByRole('button', { name, exact: true })
      .evaluate((button) => getComputedStyle(button).borderTopWidth);
  expect(await border('Room and hands')).not.toBe(await border('Climate'));
  const chosen = await page.getByRole('group', { name: 'Units' }).evaluate((group) =>
    [...group.querySelectorAll('input')].map(({ checked, nextElementSibling }) => ({
      checked,
      ground: nextElementSibling === null ? '' : getComputedStyle(nextElementSibling).backgroundColor,
    })),
  );
  expect(chosen.map(({ checked }) => checked).toSorted()).toEqual([false, true]);
  expect(chosen[0]?.ground).not.toBe(chosen[1]?.ground);
  await page.emulateMedia({ forcedColors: 'none' });
  expect(problems).toEqual([]);
});

test('a picture is read place by place with keys, and as a table', async () => {
  const { page } = await onePage();
  await openPictures(page);
  await choose(page, 'Room and hands');
  const slider = page.getByRole('slider', { name: 'Read the picture: Bench by week' });
  await slider.focus();
  await page.keyboard.press('End');
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowRight');
  expect(await slider.getAttribute('aria-valuetext')).toMatch(/^Week of 4 Jan 2027, 0 ft² of 160 ft² of bench/);
  const twin = page.locator('.farm-picture').first().locator('details');
  await twin.locator('summary').click();
  // The table is made when it is opened.
  await expect.poll(() => twin.locator('tbody tr').count()).toBeGreaterThan(50);
});

test('money against spacing says where most is left over, or why there is no such curve', async () => {
  const { page, problems } = await onePage();
  await openPictures(page);
  await choose(page, 'Spacing');
  const picture = page.getByRole('region', { name: 'Spacing', exact: true });
  const mass = picture.getByRole('slider', { name: 'Read the picture: Mean plant mass against spacing' });
  await mass.focus();
  await page.keyboard.press('End');
  expect(await mass.getAttribute('aria-valuetext')).toMatch(/^[\d.]+ in: [\d.]+ \w+\.$/);
  await picture
    .getByText(/^Most is left over at [\d.]+ in: -?[\d,.]+ USD\. Now, [\d.]+ in: -?[\d,.]+ USD\.$/)
    .waitFor();
  // Grown for bunches that nobody is to pay for.
  await picture.getByRole('combobox').first().selectOption({ label: 'Bunched carrots 3' });
  await expect
    .poll(() => picture.locator('.no-curve').allTextContents())
    .toContain('No curve of money against spacing. Blank, because Revenue is blank.');
  expect(problems).toEqual([]);
});

test('the map goes through the weeks and each bed leads to its row', async () => {
  const { page } = await onePage();
  await openPictures(page);
  await choose(page, 'Map of beds');
  const week = page.getByRole('slider', { name: 'Week' });
  await week.fill('24');
  await page.getByText('Week of 14 Jun 2027').waitFor();
  const bed = page.getByRole('button', { name: /^Barn 4: Lettuce 1 \(25 ft\), Lettuce 2 \(25 ft\)/ });
  await bed.focus();
  await page.locator('.map-looked', { hasText: /^Barn 4: Lettuce 1 \(25 ft\), Lettuce 2 \(25 ft\)/ }).waitFor();
  await page.keyboard.press('Enter');
  await page.getByRole('main', { name: 'Beds', exact: true }).waitFor();
});

test('what stands on the map are closed boxes on open ground, and names end within their boxes', async () => {
  const { page } = await onePage();
  await openPictures(page);
  await choose(page, 'Map of beds');
  await page.getByRole('slider', { name: 'Week' }).fill('26');
  await page.getByText('Week of 28 Jun 2027').waitFor();
  const drawn = await page.evaluate(() => {
    const around = (mark: string) =>
      [...document.querySelectorAll(`.bed-map ${mark}`)].map((part) => ({
        text: part.textContent,
        box: part.getBoundingClientRect(),
      }));
    const boxes = around('.mark-planted').map(({ box }) => box);
    const past = around('.piece-name').flatMap(({ text, box }) => {
      if (text === '') return [];
      const own = boxes.find(
        ({ left, right, top, bottom }) => left <= box.left && box.left < right && top < box.bottom && box.top < bottom,
      );
      return own === undefined || box.right > own.right ? [text] : [];
    });
    const edges = [...document.querySelectorAll('.bed-map .map-ground:not(.mark-cover)')].map(
      (ground) => getComputedStyle(ground).stroke,
    );
    const cut = around('.piece-name').filter(({ text }) => text.endsWith('\u2026')).length;
    return { past, cut, boxes: boxes.length, edges: [...new Set(edges)], ground: around('.free-ground').length };
  });
  expect(drawn.past).toEqual([]);
  expect(drawn.cut).toBeGreaterThan(3);
  expect(drawn.boxes).toBeGreaterThan(40);
  expect(drawn.edges).toEqual(['none']);
  expect(drawn.ground).toBeGreaterThan(30);
});

test('beds are placed where they lie by hand and by keys, kept as steps of undo, and laid out by field again', async () => {
  const { page, problems } = await openSmallWorkbook();
  await openPictures(page);
  await choose(page, 'Map of beds');
  await page.getByRole('button', { name: 'Place them as they lie' }).click();
  const bed = page.getByRole('button', { name: /^Row B:/ });
  const lies = async (): Promise<readonly number[]> => {
    const [, east, , north, side] =
      /Lies (\d+\.\d) ft (east|west), (\d+\.\d) ft (north|south)/.exec((await bed.getAttribute('aria-label')) ?? '') ??
      [];
    return [Number(east), side === 'south' ? -Number(north) : Number(north)];
  };
  await expect.poll(lies).toEqual([0, -6]);
  const box = await bed.boundingBox();
  if (box === null) throw new Error('The bed is not in sight.');
  await page.mouse.move(box.x + 20, box.y + 6);
  await page.mouse.down();
  await page.mouse.move(box.x + 120, box.y + 60, { steps: 4 });
  await page.mouse.up();
  await expect.poll(async () => ((await lies())[0] ?? 0) > 0 && ((await lies())[1] ?? 0) < -6).toBe(true);
  const [east = 0, north = 0] = await lies();
  await bed.focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowUp');
  await expect.poll(lies).toEqual([east + 2, north + 10]);
  for (const before of [
    [east + 2, north],
    [east, north],
    [0, -6],
  ]) {
    await page.keyboard.press('Control+z');
    await expect.poll(lies).toEqual(before);
  }
  const flat = await bed.boundingBox();
  await bed.focus();
  await page.keyboard.press('r');
  await expect.poll(() => bed.getAttribute('aria-label')).toMatch(/, north to south$/);
  const turned = await bed.boundingBox();
  expect((flat?.width ?? 0) > (flat?.height ?? 0)).toBe(true);
  expect((turned?.height ?? 0) > (turned?.width ?? 0)).toBe(true);
  await page.keyboard.press('Control+z');
  await expect.poll(() => bed.getAttribute('aria-label')).not.toMatch(/north to south/);
  await page.getByRole('button', { name: 'Lay them out by field' }).click();
  await page.getByRole('button', { name: 'Place them as they lie' }).waitFor();
  expect(problems).toEqual([]);
});

test('the year plays week after week and stops when it is asked to', async () => {
  const { page } = await onePage();
  await openPictures(page);
  await choose(page, 'Map of beds');
  const week = page.getByRole('slider', { name: 'Week' });
  const before = Number(await week.inputValue());
  await page.getByRole('button', { name: 'Play the year' }).click();
  await expect.poll(async () => Number(await week.inputValue()), { timeout: 10_000 }).toBeGreaterThan(before + 1);
  await page.getByRole('button', { name: 'Stop' }).click();
  await page.getByRole('button', { name: 'Play the year' }).waitFor();
});

test('a bar held at the foot of the calendar brings beds from below into sight, and is set on one of them', async () => {
  const { page, problems } = await onePage();
  await openPictures(page);
  await choose(page, 'Calendar of beds');
  await page.setViewportSize({ width: 1440, height: 600 });
  const bar = page.locator('.season-calendar .bar').first();
  const told = (await bar.getAttribute('aria-label')) ?? '';
  const [, bed = ''] = / on ([^,]+),/.exec(told) ?? [];
  const beforehand = await bar.boundingBox();
  if (beforehand === null) throw new Error('The bar is not in sight.');
  const scrolled = (): Promise<number> => page.locator('.picture-page').evaluate((view) => view.scrollTop);
  const before = await scrolled();
  const x = beforehand.x + beforehand.width / 2;
  await page.mouse.move(x, beforehand.y + beforehand.height / 2);
  await page.mouse.down();
  await page.mouse.move(x, beforehand.y + beforehand.height / 2 + 20, { steps: 3 });
  await page.mouse.move(x, 560, { steps: 3 });
  await expect.poll(scrolled).toBeGreaterThan(before + 150);
  // Back among what is in sight, it comes to rest.
  await page.mouse.move(x, 300, { steps: 3 });
  const rest = await scrolled();
  await page.mouse.move(x, 301);
  expect(await scrolled()).toBe(rest);
  await page.mouse.up();
  await expect.poll(() => page.locator('.message').textContent()).toMatch(/: to \S/);
  expect(await page.locator('.message').textContent()).not.toContain(`to ${bed}.`);
  await page.keyboard.press('Control+z');
  await page.setViewportSize({ width: 1440, height: 900 });
  expect(problems).toEqual([]);
});
