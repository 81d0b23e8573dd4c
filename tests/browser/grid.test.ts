// Working in the grid as a person would: reading, typing in units, being refused, picking from lists, ranges, rows,
// overrides, keys. What cells should read is worked out by the engine beside the page.

import { expect, test } from 'vitest';
import { reload } from './harness.ts';
import { atOnionSheet } from './one-page.ts';
import { onionBook, onionsAsTheyCome } from './workbook-page.ts';

test('figures of a column stand under each other on the decimal mark', async () => {
  const { book, page } = await atOnionSheet('Beds');
  await book.type(0, 'Length', '62.25');
  await book.type(1, 'Length', '7');
  const marks = () =>
    page.evaluate(() => {
      const right = (row: number): number => {
        const cell = document.querySelector(`.ag-row[row-index="${row}"] .ag-cell[col-id="length"]`);
        const text = (cell?.querySelector('.face') ?? cell)?.firstChild;
        if (!(text instanceof Text)) return Number.NaN;
        const range = document.createRange();
        const point = text.data.indexOf('.');
        range.setStart(text, 0);
        range.setEnd(text, point < 0 ? text.data.length : point);
        return range.getBoundingClientRect().right;
      };
      return [0, 1, 2].map(right);
    });
  // The entries are drawn in the frame after they are taken.
  await expect
    .poll(async () => {
      const [decimal = 0, whole = 0, other = 0] = await marks();
      return Math.max(Math.abs(decimal - whole), Math.abs(decimal - other));
    })
    .toBeLessThan(0.6);
});

test('measures are taken in any unit and shown as typed', async () => {
  const { book } = await atOnionSheet('Beds');
  for (const [typed, shown] of [
    ['60', '60'],
    ['20 m', /^20\sm$/],
    ['2 ft 6 in', /2.5|2\sft\s6\sin/],
    ['1 1/2 yd', /1.5\syd/],
  ] as const) {
    await book.type(0, 'Length', typed);
    await expect.poll(() => book.read(0, 'Length')).toMatch(shown);
  }
});

test('two steps taken back within one frame leave no stale figure', async () => {
  const { book, page } = await atOnionSheet('Beds');
  const before = [await book.read(0, 'Length'), await book.read(1, 'Width')];
  await book.type(0, 'Length', '61');
  await book.type(1, 'Width', '31');
  await expect.poll(() => book.read(1, 'Width')).toBe('31');
  await book.press(2, 'Bed');
  await page.evaluate(() => {
    for (let press = 0; press < 2; press += 1) {
      const undo = new KeyboardEvent('keydown', { key: 'z', ctrlKey: true, bubbles: true, cancelable: true });
      document.activeElement?.dispatchEvent(undo);
    }
  });
  await expect.poll(() => book.undoButton().isDisabled()).toBe(true);
  await expect.poll(async () => [await book.read(0, 'Length'), await book.read(1, 'Width')]).toEqual(before);
});

test('a range is copied, pasted, filled down, cleared, and undone step by step', async () => {
  const { book, page } = await atOnionSheet('Beds');
  const before = await book.read(5, 'Length');
  await book.type(0, 'Length', '44');
  await book.type(1, 'Length', '45');
  await book.press(0, 'Length');
  await page.keyboard.press('Shift+ArrowDown');
  await expect.poll(() => page.locator('.summary').textContent()).toMatch(/Sum 89 ft.*Mean 44.5 ft/);
  await page.keyboard.press('Control+c');
  await book.press(4, 'Length');
  await page.keyboard.press('Control+v');
  await expect.poll(() => book.read(5, 'Length')).toBe('45');
  await book.press(4, 'Length');
  for (let i = 0; i < 3; i += 1) await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Control+d');
  await expect.poll(() => book.read(7, 'Length')).toBe('44');
  await page.keyboard.press('Delete');
  await expect.poll(async () => (await book.cell(7, 'Length')).getAttribute('class')).toContain('origin-default');
  for (let i = 0; i < 3; i += 1) await page.keyboard.press('Control+z');
  await expect.poll(() => book.read(5, 'Length')).toBe(before);
});

test('a block with one bad cell is not pasted before it is mended or left out, and the sentence says which', async () => {
  const { book, page } = await atOnionSheet('Beds');
  const rows = onionsAsTheyCome().rows('Beds').length;
  await book.press(rows, 'Bed');
  await page.evaluate(() => {
    const data = new DataTransfer();
    data.setData('text/plain', 'Ditch 1\tDitch\t40\nDitch 2\tDitch\tbanana');
    document.activeElement?.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true }));
  });
  const dialog = page.getByRole('dialog', { name: 'Paste into Beds' });
  await expect.poll(() => dialog.textContent()).toMatch(/2 new rows.*One cell doesn’t fit.*banana/);
  expect(await dialog.getByRole('button', { name: /^Paste/ }).isDisabled()).toBe(true);
  await dialog.getByRole('button', { name: 'Cancel' }).click();
  expect(await book.undoButton().isDisabled()).toBe(true);
});

test('rows are added in the empty line, duplicated and removed; a row others rest on stays', async () => {
  const { book, page } = await atOnionSheet('Beds');
  const rows = onionsAsTheyCome().rows('Beds').length;
  await page.getByRole('button', { name: 'Add a row' }).click();
  await page.keyboard.type('Ditch 1');
  await page.keyboard.press('Enter');
  await expect.poll(() => book.read(rows, 'Bed')).toBe('Ditch 1');
  await (await book.cell(rows, 'Bed')).click({ button: 'right' });
  await page.getByRole('menuitem', { name: 'Duplicate the row' }).click();
  await expect.poll(() => book.read(rows + 1, 'Bed')).toBe('Ditch 2');
  await (await book.cell(rows, 'Bed')).click({ button: 'right' });
  await page.getByRole('menuitem', { name: 'Remove the row' }).click();
  await expect.poll(() => book.read(rows, 'Bed')).toBe('Ditch 2');
  await (await book.cell(0, 'Bed')).click({ button: 'right' });
  await page.getByRole('menuitem', { name: 'Remove the row' }).click();
  await expect.poll(() => book.message().textContent()).toMatch(/Barn 1 is still named in Plantings/);
  expect(await book.read(0, 'Bed')).toBe('Barn 1');
});

test('metric units change what is shown, what was typed in a unit stays, and undo goes back', async () => {
  const { book, page } = await atOnionSheet('Beds');
  await book.type(1, 'Length', '20 m');
  const area = await book.read(0, 'Area');
  await page.getByText('cm, kg').click();
  await expect.poll(async () => (await book.header('Length')).locator('.column-unit').textContent()).toBe('m');
  await expect.poll(() => book.read(1, 'Length')).toMatch(/^20/);
  await expect.poll(() => book.read(0, 'Area')).not.toBe(area);
  await book.press(0, 'Bed');
  await page.keyboard.press('Control+z');
  await expect.poll(() => book.read(0, 'Area')).toBe(area);
});

test('what stays in sight at the left covers what is scrolled under it, without a colour worked out for each cell', async () => {
  const { page } = await atOnionSheet('Plantings');
  const { fronts, rules, asked } = await page.evaluate(() => {
    const inside = (within: CSSStyleSheet | CSSGroupingRule | CSSStyleRule): readonly CSSStyleRule[] =>
      [...within.cssRules].flatMap((rule) => [
        ...(rule instanceof CSSStyleRule ? [rule] : []),
        ...(rule instanceof CSSStyleRule || rule instanceof CSSGroupingRule ? inside(rule) : []),
      ]);
    const sheets = document.querySelectorAll<HTMLStyleElement>('style[data-ag-css]');
    const all = [...sheets].flatMap(({ sheet }) => (sheet === null ? [] : inside(sheet)));
    const fronts = document.querySelectorAll('.ag-row .ag-grid-pinned-left-cells');
    return {
      fronts: [...fronts].map((front) => getComputedStyle(front).backgroundColor),
      rules: all.length,
      asked: all.filter(({ style }) => style.backgroundColor === 'inherit').map(({ cssText }) => cssText),
    };
  });
  expect(fronts.length).toBeGreaterThan(2);
  expect(new Set(fronts)).toEqual(new Set([expect.stringMatching(/^rgb\(/)]));
  expect(rules).toBeGreaterThan(100);
  expect(asked).toEqual([]);
});

test('a bad entry gets its sentence, stays as typed, and Esc gives the cell back', async () => {
  const { book, page } = await atOnionSheet('Plantings');
  const before = await book.read(0, 'In-row spacing');
  await book.type(0, 'In-row spacing', 'banana');
  await expect.poll(() => book.entryAnswer().textContent()).toMatch(/banana.*length/);
  const box = page.locator('.entry-box');
  expect(await box.inputValue()).toBe('banana');
  await (await book.cell(3, 'In-row spacing')).click({ force: true });
  expect(await box.inputValue()).toBe('banana');
  await page.keyboard.press('Escape');
  expect(await book.read(0, 'In-row spacing')).toBe(before);
  expect(await book.undoButton().isDisabled()).toBe(true);
});

test('seeds below nothing and a variety that does not exist are refused with a sentence', async () => {
  const { book, page } = await atOnionSheet('Plantings');
  await book.type(0, 'Seeds per station', '-3');
  await expect.poll(() => book.entryAnswer().textContent()).toMatch(/\S+ .*\./);
  await page.keyboard.press('Escape');
  await book.type(0, 'Variety', 'Nobody has bred this');
  await expect.poll(() => book.entryAnswer().textContent()).toMatch(/Nobody has bred this/);
  await page.keyboard.press('Escape');
  expect(await book.read(0, 'Variety')).toBe('Lamplight');
  expect(await book.undoButton().isDisabled()).toBe(true);
});

test('a variety is picked from a list that narrows while it is typed', async () => {
  const { book, page } = await atOnionSheet('Plantings');
  await book.press(0, 'Variety');
  await page.keyboard.press('Enter');
  const list = page.getByRole('listbox', { name: 'What Variety can be' });
  expect(await list.getByRole('option').count()).toBe(onionsAsTheyCome().rows('Varieties').length);
  await page.keyboard.type('kettle');
  await expect.poll(() => list.getByRole('option').allTextContents()).toEqual(['Copper Kettle']);
  await page.keyboard.press('Enter');
  await expect.poll(() => book.read(0, 'Variety')).toBe('Copper Kettle');
});

test('what is typed over a formula is marked and can be taken back', async () => {
  const { book, page } = await atOnionSheet('Plantings');
  const before = await book.read(0, 'Stations');
  await book.type(0, 'Stations', '250');
  await expect.poll(() => book.read(0, 'Stations')).toBe('250');
  const cell = await book.cell(0, 'Stations');
  expect(await cell.getAttribute('aria-description')).toMatch(/typed over the formula/);
  await book.press(0, 'Stations');
  await page.keyboard.press('Alt+Backspace');
  await expect.poll(() => book.read(0, 'Stations')).toBe(before);
});

test('looking into a computed cell and leaving it types nothing over it', async () => {
  const { book, page } = await atOnionSheet('Plantings');
  await book.press(0, 'Stations');
  await page.keyboard.press('F2');
  await page.keyboard.press('Enter');
  expect(await book.undoButton().isDisabled()).toBe(true);
  expect(await (await book.cell(0, 'Stations')).getAttribute('aria-description')).toBe('computed');
});

test('only the cells that a change names are drawn again', async () => {
  const { book, page } = await atOnionSheet('Plantings');
  await book.cell(0, 'In-row spacing');
  // The grid lays a cell out before it draws what stands in it: until every cell shown is dressed, none counts as drawn.
  await expect
    .poll(() =>
      page.evaluate(
        () =>
          document.querySelectorAll('.ag-row:not(.spare-row) .ag-cell:not(.row-handle):not([class*="role-"])').length,
      ),
    )
    .toBe(0);
  await page.evaluate(() => {
    for (const cell of document.querySelectorAll('.ag-cell')) Reflect.set(cell, 'drawnBefore', cell.firstChild);
  });
  await book.type(0, 'In-row spacing', '7.5 in');
  await expect.poll(() => book.read(0, 'In-row spacing')).toMatch(/^7.5/);
  const fresh = await page.evaluate(() =>
    [...document.querySelectorAll('.ag-row:not(.spare-row) .ag-cell')].flatMap((cell) => {
      const now = cell.firstChild;
      const row = cell.closest('.ag-row')?.getAttribute('row-index');
      const before: unknown = Reflect.get(cell, 'drawnBefore');
      // A cell that is typed in holds its text in a face, which is not the same as being drawn again.
      const drawnAgain = before instanceof Node && now !== null && now !== before && !now.contains(before);
      return drawnAgain ? [`${row} ${cell.getAttribute('col-id')}`] : [];
    }),
  );
  expect(fresh).toContain('0 in-row-spacing');
  expect(fresh).not.toContain('5 in-row-spacing');
  // The same edit beside the page: its change set, and the columns in which something new was found or is no longer.
  const beside = onionBook();
  const found = () => new Set(beside.attention().map(({ table, column, says }) => `${table} / ${column}: ${says}`));
  const before = found();
  const place = { table: 'Plantings', row: beside.rows('Plantings')[0] ?? -1, column: 'In-row spacing' };
  const change = beside.edit([{ edit: 'cell', ...place, entry: '7.5 in' }]);
  if (change.refused) throw new Error(change.why);
  const after = found();
  const moved = [...before, ...after].filter((each) => before.has(each) !== after.has(each));
  const names = [
    ...change.cells.filter(({ table }) => table === 'Plantings').map(({ column }) => column),
    ...moved.map((each) => /^Plantings \/ (.*?): /.exec(each)?.[1] ?? ''),
  ];
  const named = new Set(names.map((name) => beside.column('Plantings', name)?.id ?? ''));
  expect(fresh.map((cell) => cell.slice(cell.indexOf(' ') + 1)).filter((column) => !named.has(column))).toEqual([]);
  expect(named.has('variety')).toBe(false);
});

test('Home brings a sheet that was scrolled to its end back to its first columns', async () => {
  const { book, page } = await atOnionSheet('Plantings');
  const scrolled = () => page.locator('.ag-grid-viewport').evaluate((grid) => grid.scrollLeft);
  await book.press(1, 'Planting');
  await page.keyboard.press('End');
  await expect.poll(scrolled).toBeGreaterThan(1_000);
  await page.keyboard.press('Home');
  await expect.poll(scrolled).toBe(0);
});

test('the page is not styled anew from one sheet to the next', async () => {
  const { book, page } = await atOnionSheet('Plantings');
  const styles = await page.evaluateHandle(() => [...document.querySelectorAll('style[data-ag-css]')]);
  await book.openSheet('Trays');
  await expect.poll(() => page.locator('.ag-root').count()).toBe(1);
  const kept = await styles.evaluate((before) => {
    const now = new Set<Element>(document.querySelectorAll('style[data-ag-css]'));
    return before.length > 0 && before.length === now.size && before.every((style) => now.has(style));
  });
  expect(kept).toBe(true);
});

test('Home and End go to the ends of the row, with Ctrl to the ends of the sheet', async () => {
  const { book, page } = await atOnionSheet('Trays');
  const focused = () =>
    page.evaluate(() => {
      const cell = document.activeElement;
      return `${cell?.closest('.ag-row')?.getAttribute('row-index')} ${cell?.getAttribute('col-id')}`;
    });
  const beside = onionsAsTheyCome();
  const last = beside.table('Trays')?.columns.at(-1)?.id;
  await book.press(2, 'Holds');
  await page.keyboard.press('End');
  expect(await focused()).toBe(`2 ${last}`);
  await page.keyboard.press('Home');
  expect(await focused()).toBe('2 tray');
  await page.keyboard.press('Control+End');
  expect(await focused()).toBe(`${beside.rows('Trays').length - 1} ${last}`);
  await page.keyboard.press('Control+Home');
  expect(await focused()).toBe('0 tray');
});

test('an item of the attention list leads to its cell', async () => {
  const { page } = await atOnionSheet('Trays');
  await page.getByRole('button', { name: /Needs attention/ }).click();
  const item = page.getByRole('region', { name: 'Needs attention' }).getByRole('listitem').first();
  const where = (await item.locator('.where').textContent()) ?? '';
  await item.getByRole('button').click();
  await expect.poll(() => page.locator('.formula-address').textContent()).toBe(where);
});

test('go to finds a row and a column by name', async () => {
  const { page } = await atOnionSheet('Trays');
  await page.keyboard.press('Control+k');
  await page.keyboard.type('Red clumps');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.locator('.formula-address').textContent()).toMatch(/^Plantings \/ Red clumps/);
  await page.keyboard.press('Control+k');
  await page.keyboard.type('Curing area');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.locator('.formula-address').textContent()).toBe('Farm / Curing area');
});

test('rows are drawn where scrolling comes to rest, whatever moved them before', async () => {
  const { book, page } = await atOnionSheet('Climate');
  await book.read(0, 'Day');
  await page.evaluate(async () => {
    const bar = document.querySelector('.ag-body-vertical-scroll-viewport');
    const rows = document.querySelector('.ag-grid-viewport');
    if (bar === null || rows === null) throw new Error('Nothing scrolls here.');
    const frame = () => new Promise((drawn) => requestAnimationFrame(drawn));
    // The echo of a scroll that comes late: the grid hears its own bar first, then nothing else for a while.
    rows.scrollTop = 1600;
    await frame();
    await new Promise((later) => setTimeout(later, 400));
    bar.dispatchEvent(new Event('scroll'));
    rows.scrollTop = 0;
    await frame();
  });
  const top = () =>
    page.evaluate(() => {
      const box = document.querySelector('.ag-row[row-index="0"]')?.getBoundingClientRect();
      return box !== undefined && document.elementFromPoint(box.left + 60, box.top + 16)?.closest('.ag-row') !== null;
    });
  await expect.poll(top).toBe(true);
});

test('what stays in sight at the left does so while a sheet is scrolled down, and sideways, and both', async () => {
  const { page } = await atOnionSheet('Beds');
  const front = (across: number, down: number) =>
    page.evaluate(
      async ([left, top]) => {
        const grid = document.querySelector('.ag-grid-viewport');
        if (grid === null) throw new Error('There is no sheet to scroll.');
        grid.scrollBy(left, top);
        // The frame that hears of it: no rest comes between.
        await new Promise((drawn) => requestAnimationFrame(drawn));
        const fronts = [...document.querySelectorAll('.ag-row .ag-grid-pinned-left-cells')];
        const start = grid.getBoundingClientRect().left;
        return {
          out: fronts.filter((one) => Math.abs(one.getBoundingClientRect().left - start) > 1).length,
          positions: [...new Set(fronts.map((one) => getComputedStyle(one).position))],
        };
      },
      [across, down] as const,
    );
  expect(await front(0, 200)).toEqual({ out: 0, positions: ['relative'] });
  expect(await front(300, 0)).toEqual({ out: 0, positions: ['sticky'] });
  expect(await front(0, 200)).toEqual({ out: 0, positions: ['sticky'] });
  expect(await front(-300, -100)).toEqual({ out: 0, positions: ['relative'] });
  await expect.poll(async () => (await front(0, 0)).positions).toEqual(['sticky']);
});

test('the farm is a form under the same entry rules', async () => {
  const { page, book } = await atOnionSheet('Farm');
  const field = page.getByRole('main').getByRole('button', { name: /^Latitude / });
  await field.click();
  await page.keyboard.type('far north');
  await page.keyboard.press('Enter');
  await expect.poll(() => book.entryAnswer().textContent()).toMatch(/far north/);
  await page.keyboard.press('Escape');
  await field.click();
  await page.keyboard.type('50.25');
  await page.keyboard.press('Enter');
  await expect.poll(() => field.textContent()).toContain('50.25');
  await page.keyboard.press('Control+z');
  await expect.poll(() => field.textContent()).toContain('44.6');
  // Keys that come before the change was drawn.
  await field.click();
  await page.keyboard.type('51');
  await page.evaluate(() => {
    const press = (on: Element | null, key: string, ctrlKey: boolean): void => {
      on?.dispatchEvent(new KeyboardEvent('keydown', { key, ctrlKey, bubbles: true, cancelable: true }));
    };
    press(document.activeElement, 'Enter', false);
    press(document.body, 'z', true);
  });
  await expect.poll(() => page.locator('p.spoken[role="status"]').textContent()).toMatch(/^Undone: .*51/);
  await expect.poll(() => field.textContent()).toContain('44.6');
});

test('a unit in general use is taken once the list of them has come, at the first Enter', async () => {
  const { book, page, problems } = await atOnionSheet('Beds');
  const lists: string[] = [];
  page.on('request', (request) => {
    if (request.url().includes('general-units')) lists.push(request.url());
  });
  await book.type(0, 'Length', '60 ft');
  expect(lists).toEqual([]);
  await book.type(0, 'Length', '4 rod');
  await expect.poll(() => book.read(0, 'Length')).toMatch(/^4\srods$/);
  expect(lists).toHaveLength(1);
  // What is no unit anywhere is refused with its sentence as before.
  await book.type(0, 'Length', '4 bananas');
  await expect.poll(() => book.entryAnswer().textContent()).toMatch(/bananas/);
  await page.keyboard.press('Escape');
  // A workbook that holds one opens with it.
  await book.kept();
  await reload(page);
  await book.openSheet('Beds');
  expect(await book.read(0, 'Length')).toMatch(/^4\srods$/);
  expect(problems).toEqual([]);
});
