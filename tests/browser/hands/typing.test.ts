// Typing as hands know it: taking an entry and going on, undoing it, filling a range with one, today, input methods, questions
// that are put before an entry is taken.

import { expect, test } from 'vitest';
import { atSmallBeds } from '../small-workbook.ts';
import { at, inHand, putOnClipboard, selected, spareRow, undo } from './hands.ts';

test('type, Tab, undo takes back what was typed', async () => {
  const { book, page, problems } = await at('Beds');
  const before = await book.read(0, 'Length');
  await book.press(0, 'Length');
  await page.keyboard.type('61');
  await page.keyboard.press('Tab');
  expect(await inHand(page)).toBe('0 width');
  await expect.poll(() => book.read(0, 'Length')).toBe('61');
  await undo(page);
  await expect.poll(() => book.read(0, 'Length')).toBe(before);
  expect(problems).toEqual([]);
});

test('Tab along a row, Enter to the start of the next; Shift goes back; arrows take what was typed', async () => {
  const { book, page } = await at('Beds');
  await book.press(0, 'Length');
  await page.keyboard.type('61');
  await page.keyboard.press('Tab');
  await page.keyboard.type('31');
  await page.keyboard.press('Enter');
  expect(await inHand(page)).toBe('1 length');
  await page.keyboard.type('62');
  await page.keyboard.press('Shift+Enter');
  expect(await inHand(page)).toBe('0 length');
  await page.keyboard.type('63');
  await page.keyboard.press('ArrowDown');
  expect(await inHand(page)).toBe('1 length');
  await page.keyboard.press('Shift+Tab');
  expect((await inHand(page)).startsWith('1 ')).toBe(true);
  expect(await book.read(0, 'Length')).toBe('63');
  expect(await book.read(1, 'Length')).toBe('62');
  expect(await book.read(0, 'Width')).toBe('31');
});

test('Esc gives an entry up, F2 opens what stands there, a press elsewhere takes it', async () => {
  const { book, page } = await at('Beds');
  const before = await book.read(0, 'Length');
  await book.press(0, 'Length');
  await page.keyboard.type('99');
  await page.keyboard.press('Escape');
  expect(await book.read(0, 'Length')).toBe(before);
  expect(await inHand(page)).toBe('0 length');
  await page.keyboard.press('F2');
  await page.locator('.entry-box').waitFor();
  await page.keyboard.press('End');
  await page.keyboard.type('.5');
  await book.press(3, 'Length');
  await expect.poll(() => book.read(0, 'Length')).toBe(`${before}.5`);
});

test('a text of several lines stays as it is when it is only looked at, and takes another line', async () => {
  const { book, page } = await at('Beds');
  const [press, text] = [page.keyboard, 'Upper end\nwet in spring'];
  const written = async (): Promise<string> => {
    await book.press(0, 'Field');
    return book.formulaBox().inputValue();
  };
  await book.press(0, 'Field');
  await putOnClipboard(page, { text: `"${text}"` });
  await press.press('Control+v');
  await expect.poll(written).toBe(text);
  await press.press('F2');
  expect(await page.locator('.entry-box').inputValue()).toBe(text);
  await press.press('Enter');
  expect(await written()).toBe(text);
  await (await book.cell(0, 'Field')).dblclick();
  await book.press(2, 'Length');
  expect(await written()).toBe(text);
  await press.press('F2');
  await press.press('Control+End');
  await press.press('Alt+Enter');
  await press.type('stony');
  await press.press('Enter');
  expect(await written()).toBe(`${text}\nstony`);
  // Lines of a letter, or of a spreadsheet's single cell, go where the caret is; what stands in the row below stays.
  const below = await book.read(1, 'Field');
  await press.type('Lower ');
  await putOnClipboard(page, { text: 'end\ndry' });
  await press.press('Control+v');
  await putOnClipboard(page, { text: '"\nand ""light"""\r\n' });
  await press.press('Control+v');
  await press.press('Enter');
  expect(await written()).toBe('Lower end\ndry\nand "light"');
  expect(await book.read(1, 'Field')).toBe(below);
  // Of a long text the cell in hand shows as much as it has room for, and nothing of it behind its neighbours.
  await putOnClipboard(page, { text: 'Heavy soil at the lower end. '.repeat(150) });
  await press.press('Control+v');
  await expect.poll(written).toContain('lower end');
  const cell = await book.cell(0, 'Field');
  expect(await cell.evaluate((at) => at.scrollWidth > at.clientWidth)).toBe(true);
  expect(await cell.evaluate((at) => getComputedStyle(at).overflowX)).toBe('hidden');
  // The name of a row has one line, so that lists can offer it.
  const name = await book.read(0, 'Bed');
  await book.press(0, 'Bed');
  await press.press('F2');
  await press.press('End');
  await press.press('Alt+Enter');
  await press.type('x');
  await press.press('Enter');
  expect(await book.read(0, 'Bed')).toBe(`${name}x`);
});

test('Ctrl with Enter fills every selected cell with the entry, as one step', async () => {
  const { book, page } = await at('Beds');
  const before = [await book.read(1, 'Length'), await book.read(2, 'Length'), await book.read(5, 'Length')];
  await book.press(1, 'Length');
  await page.keyboard.press('Shift+ArrowDown');
  await (await book.cell(5, 'Length')).click({ modifiers: ['Control'] });
  await page.keyboard.type('47');
  await page.keyboard.press('Control+Enter');
  for (const row of [1, 2, 5]) await expect.poll(() => book.read(row, 'Length')).toBe('47');
  expect((await selected(page)).length).toBe(3);
  await undo(page);
  await expect.poll(() => book.read(5, 'Length')).toBe(before[2]);
  expect([await book.read(1, 'Length'), await book.read(2, 'Length')]).toEqual(before.slice(0, 2));
});

test('Ctrl and ; types today into a date, and nothing elsewhere', async () => {
  const { book, page } = await at('Plantings');
  await book.press(0, 'Sown');
  await page.keyboard.press('Control+;');
  const now = new Date();
  const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
  const today = `${now.getUTCDate()} ${months[now.getUTCMonth()]} ${now.getUTCFullYear()}`;
  await expect.poll(() => book.read(0, 'Sown')).toBe(today);
});

test('an input method begins on a selected cell', async () => {
  const { book, page } = await atSmallBeds();
  const spare = await spareRow(page);
  await book.press(spare, 'Bed');
  const session = await page.context().newCDPSession(page);
  await session.send('Input.imeSetComposition', { text: 'はたけ', selectionStart: 3, selectionEnd: 3 });
  await session.send('Input.insertText', { text: '畑' });
  await expect.poll(() => page.locator('.entry-box').inputValue()).toBe('畑');
  await page.keyboard.press('Enter');
  await expect.poll(() => book.read(spare, 'Bed')).toBe('畑');
  // Again on the same page, in a cell whose sheet was left and come back to.
  await book.openSheet('Trays');
  await book.openSheet('Beds');
  await book.press(0, 'Bed');
  await session.send('Input.imeSetComposition', { text: 'うね', selectionStart: 2, selectionEnd: 2 });
  await session.send('Input.insertText', { text: '畝' });
  await expect.poll(() => page.locator('.entry-box').inputValue()).toBe('畝');
  await page.keyboard.press('Escape');
});

test('a name in a script that runs from right to left is taken, found, shown in its own direction, and bends nothing around it', async () => {
  const { book, page } = await at('Beds');
  const name = 'ערוגה 7 (צפון)';
  await book.press(0, 'Bed');
  // As from a panel of signs or spoken: without a key.
  await page.keyboard.insertText(name.slice(0, 5));
  await page.locator('.entry-box').waitFor();
  await page.keyboard.insertText(name.slice(5));
  expect(await page.locator('.entry-box').evaluate((box) => getComputedStyle(box).direction)).toBe('rtl');
  await page.keyboard.press('Enter');
  await expect.poll(() => book.read(0, 'Bed')).toBe(name);
  const cell = await book.cell(0, 'Bed');
  await cell.click();
  // In the cell the first letter stands right of the last, at the left edge where every name begins.
  const places = await cell.evaluate((at) => {
    const letter = (index: number): DOMRect => {
      const nodes = document.createTreeWalker(at, NodeFilter.SHOW_TEXT);
      const text = nodes.nextNode();
      const range = document.createRange();
      if (text === null) return range.getBoundingClientRect();
      range.setStart(text, index);
      range.setEnd(text, index + 1);
      return range.getBoundingClientRect();
    };
    return {
      first: letter(0).left,
      digit: letter(6).left,
      last: letter(13).left,
      cell: at.getBoundingClientRect().left,
    };
  });
  expect(places.first).toBeGreaterThan(places.digit);
  expect(places.digit).toBeGreaterThan(places.last);
  expect(places.last - places.cell).toBeLessThan(30);
  await expect.poll(() => page.locator('.formula-line').textContent()).toContain(`Beds / ${name} / Bed`);
  await page.keyboard.press('Control+k');
  await page.keyboard.insertText('ערוגה');
  await page
    .getByRole('option', { name: new RegExp(name.slice(0, 5)) })
    .first()
    .waitFor();
  await page.keyboard.press('Escape');
  await undo(page);
  await expect.poll(() => book.read(0, 'Bed')).not.toBe(name);
});

test('a column keeps every text in full after entries of mixed length', async () => {
  const { book, page } = await at('Beds');
  await book.type(0, 'Length', '2000.125 cm');
  await book.type(1, 'Length', '61.125');
  await expect.poll(() => book.read(0, 'Length')).toMatch(/2000.125\scm/);
  const cut = await page.evaluate(
    (id) =>
      [...document.querySelectorAll(`.ag-row .ag-cell[col-id="${id}"]`)].filter((cell) => {
        const range = document.createRange();
        range.selectNodeContents(cell);
        const text = range.getBoundingClientRect();
        const box = cell.getBoundingClientRect();
        return cell.textContent !== '' && (text.left < box.left || text.right > box.right);
      }).length,
    await book.columnId('Length'),
  );
  expect(cut).toBe(0);
});

test('clearing a range with a column that can’t be empty clears the rest and says so', async () => {
  const { book, page } = await at('Beds');
  await book.type(1, 'Length', '41');
  await book.press(1, 'Bed');
  const name = await book.read(1, 'Bed');
  for (let step = 0; step < 4; step += 1) await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Delete');
  await expect.poll(() => book.message().textContent()).toMatch(/Cleared .*Bed can’t be empty and stays/);
  expect(await book.read(1, 'Bed')).toBe(name);
  await expect.poll(async () => (await book.cell(1, 'Length')).getAttribute('class')).toContain('origin-default');
});

test('a date far from the season asks, and the same entry again is meant', async () => {
  const { book, page } = await at('Plantings');
  const before = await book.read(0, 'Sown');
  await book.press(0, 'Sown');
  await page.keyboard.type('15 Mar 2072');
  await page.keyboard.press('Enter');
  await expect.poll(() => book.entryAnswer().textContent()).toMatch(/after the season 2027.*Enter again/);
  expect(await page.locator('.entry-box').inputValue()).toBe('15 Mar 2072');
  await page.keyboard.press('Escape');
  expect(await book.read(0, 'Sown')).toBe(before);
  // Going elsewhere is no answer: a press in the grid leads back, another sheet leaves the cell as it is and says so.
  await book.press(1, 'Sown');
  const stood = await book.read(1, 'Sown');
  await page.keyboard.type('5 Mar 1950');
  await page.locator('.ag-row[row-index="2"] .ag-cell[col-id="sown"]').click();
  expect(await page.locator('.entry-box').inputValue()).toBe('5 Mar 1950');
  await book.openSheet('Beds');
  await expect.poll(() => book.message().textContent()).toMatch(/“5 Mar 1950” was not taken/);
  await book.openSheet('Plantings');
  await expect.poll(() => book.read(1, 'Sown')).toBe(stood);
  await book.message().getByRole('button', { name: 'Take it' }).click();
  await expect.poll(() => book.read(1, 'Sown')).toBe('5 Mar 1950');
});

test('an order of day and month that stays open is shown as it was read, before it is taken', async () => {
  const { book, page } = await at('Plantings');
  await book.press(0, 'Sown');
  await page.keyboard.type('3/4');
  await expect.poll(() => book.entryAnswer().textContent()).toMatch(/Read as 4 Mar 2027.*If 3 Apr 2027 is meant/);
  await page.keyboard.press('Enter');
  await expect.poll(() => book.read(0, 'Sown')).toBe('4 Mar 2027');
});

test('a message goes with what it was about', async () => {
  const { book, page } = await at('Beds');
  await putOnClipboard(page, { text: 'x' });
  await book.press(0, 'Bed');
  await (await book.cell(0, 'Bed')).click({ button: 'right' });
  await page.getByRole('menuitem', { name: /^Remove the row/ }).click();
  await expect.poll(() => book.message().textContent()).toMatch(/still named in/);
  await book.openSheet('Trays');
  await expect.poll(() => book.message().count()).toBe(0);
});
